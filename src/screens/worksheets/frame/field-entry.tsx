import type { ComponentChildren, VNode } from 'preact';
import { useState } from 'preact/hooks';
import { allThreads } from '../../../engine/thread/threads.ts';
import type { ChoiceField, Field, NumberField, SizeField } from '../../../engine/worksheets/fields.ts';
import { boundsInShop, keptOfShop } from '../../../engine/worksheets/number-in-shop.ts';
import { Button } from '../../common/button.tsx';
import { NumberEntry } from '../number-entry.tsx';
import { slipAround } from '../slip-around.ts';
import { ThreadPicker } from '../thread-picker.tsx';
import type { WorksheetData } from '../worksheet-data.ts';
import { PartTape } from '../spacer-stack/part-tape.tsx';
import { SizeOnForm } from './size-on-form.tsx';
import type { TypedPart } from './typed-part.ts';
import type { useGiveField } from './use-give-field.ts';

/** Where a field is given: under the drawing, with what stands beside the heading meanwhile. */
export type OnForm = (parts: {
  readonly body: VNode;
  readonly aside?: VNode;
  /** A part of a stack as it stands on the pad: the drawing shows it before it is put in. */
  readonly typing?: TypedPart | undefined;
}) => VNode;

type FieldEntryProps = {
  readonly data: WorksheetData;
  readonly name: string;
  readonly field: Field;
  readonly give: ReturnType<typeof useGiveField>;
  readonly form: OnForm;
  readonly children?: ComponentChildren;
};

/** What one thing is given with: the pad for a size or a number, chips for a choice, the threads. */
export function FieldEntry({ field, ...entry }: FieldEntryProps) {
  const { data, form } = entry;
  switch (field.enter) {
    case 'size':
      return <SizeOfField {...entry} field={field} />;
    case 'number':
      return form({ body: <NumberOfField {...entry} field={field} /> });
    case 'choice':
      return form({ body: <ChoiceKeys {...entry} field={field} /> });
    case 'thread':
      return form({ body: <ThreadKeys {...entry} /> });
    case 'parts':
      return <PartTape data={data} field={field} form={form} />;
    default:
      return field satisfies never;
  }
}

type EntryProps = Omit<FieldEntryProps, 'field'>;
type EntryOf<F> = EntryProps & { readonly field: F };

function draftKeyOf({ data, name }: EntryProps): string {
  return `worksheet/${data.worksheet.id}/${name}`;
}

function SizeOfField({ field, ...entry }: EntryOf<SizeField>) {
  const { data, name, give, form, children } = entry;
  const { measures, givenBy } = field;
  const draftKey = draftKeyOf(entry);
  return (
    <SizeOnForm
      key={draftKey}
      data={data}
      label={field.ask}
      draftKey={draftKey}
      signed={field.signed === true}
      direct={field.direct === true}
      now={data.worksheet.sizes[name]}
      around={slipAround(data, name, measures)}
      form={form}
      {...(givenBy && { givenBy: { key: givenBy.key, go: () => give.goTo(givenBy.field) } })}
      {...(measures && { measures, onMeasure: () => give.measure(measures) })}
      onSize={give.giveSize}
      onNext={give.stepOn}
    >
      {children}
    </SizeOnForm>
  );
}

function NumberOfField({ field, ...entry }: EntryOf<NumberField>) {
  const { data, give, children } = entry;
  const bounds = boundsInShop(field, data.unit);
  return (
    <NumberEntry
      label={field.ask}
      // What is half typed in degrees Fahrenheit never goes on as Celsius.
      draftKey={bounds === field ? draftKeyOf(entry) : `${draftKeyOf(entry)}/${bounds.unit}`}
      bounds={bounds}
      onNumber={(text) => give.giveChoice(keptOfShop(text, field.unit, data.unit))}
      onNext={give.stepOn}
    >
      {children !== undefined && <div class="size-entry-extras">{children}</div>}
    </NumberEntry>
  );
}

function ChoiceKeys({ data, name, field, give, children }: EntryOf<ChoiceField>) {
  return (
    <Chips field={field} chosen={data.worksheet.choices[name]} onChosen={give.giveChoice}>
      {children}
    </Chips>
  );
}

function ThreadKeys({ data, name, give, children }: EntryProps) {
  return (
    <div class="form-threads">
      <ThreadPicker
        chosen={data.worksheet.choices[name]}
        threads={allThreads}
        metricFirst={data.unit === 'mm'}
        onThread={give.giveChoice}
      />
      {children !== undefined && <div class="form-besides">{children}</div>}
    </div>
  );
}

type ChipsProps = {
  readonly field: ChoiceField;
  readonly chosen: string | undefined;
  readonly onChosen: (value: string) => unknown;
  readonly children: ComponentChildren;
};

/** A choice that no drawing can carry: its few answers as keys where the pad would be. */
function Chips({ field, chosen, onChosen, children }: ChipsProps) {
  const { options } = field;
  const groups = [...new Set(options.flatMap(({ group }) => group ?? []))];
  const [open, setOpen] = useState(options.find(({ value }) => value === chosen)?.group);
  const shown = groups.length > 1 ? options.filter(({ group }) => group === open) : options;
  return (
    <fieldset class="form-chips">
      <legend class="unseen">{field.ask}</legend>
      {groups.length > 1 && (
        <div class="form-chip-groups">
          {groups.map((group) => (
            <Button key={group} chosen={group === open} onPress={() => setOpen(group)}>
              {group}
            </Button>
          ))}
        </div>
      )}
      <div class="form-chips-grid" data-wide={shown.some(({ words, more }) => isWide(words, more))}>
        {shown.map(({ value, words, more }) => (
          <Button key={value} chosen={chosen === value} onPress={() => onChosen(value)}>
            <span class="form-chip">
              {words}
              {more !== undefined && <small>{more}</small>}
            </span>
          </Button>
        ))}
        {children}
      </div>
    </fieldset>
  );
}

// Chosen by eye: what would take more than three lines on half of a narrow phone.
const LETTERS_OF_HALF = 34;

function isWide(words: string, more = ''): boolean {
  return words.length + more.length > LETTERS_OF_HALF;
}
