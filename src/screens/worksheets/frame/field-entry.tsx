import type { ComponentChildren } from 'preact';
import { allThreads } from '../../../engine/thread/threads.ts';
import type { ChoiceField, Field } from '../../../engine/worksheets/fields.ts';
import { Button } from '../../common/button.tsx';
import { NumberEntry } from '../number-entry.tsx';
import { SizeEntry } from '../size-entry.tsx';
import { slipAround } from '../slip-around.ts';
import { ThreadPicker } from '../thread-picker.tsx';
import type { WorksheetData } from '../worksheet-data.ts';
import type { useGiveField } from './use-give-field.ts';

type FieldEntryProps = {
  readonly data: WorksheetData;
  readonly name: string;
  readonly field: Field;
  readonly give: ReturnType<typeof useGiveField>;
  readonly children?: ComponentChildren;
};

/** What one thing is given with: the pad for a size or a number, chips for a choice, the threads. */
export function FieldEntry({ data, name, field, give, children }: FieldEntryProps) {
  const draftKey = `worksheet/${data.worksheet.id}/${name}`;
  const chosen = data.worksheet.choices[name];
  switch (field.enter) {
    case 'size': {
      const { measures } = field;
      return (
        <SizeEntry
          data={data}
          label={field.ask}
          draftKey={draftKey}
          signed={field.signed === true}
          direct={field.direct === true}
          now={data.worksheet.sizes[name]}
          around={slipAround(data, name, measures)}
          inForm
          {...(measures && { measures, onMeasure: () => give.measure(measures) })}
          onSize={give.giveSize}
          onNext={give.stepOn}
        >
          {children}
        </SizeEntry>
      );
    }
    case 'number':
      return (
        <NumberEntry
          label={field.ask}
          draftKey={draftKey}
          bounds={field}
          onNumber={give.giveChoice}
          onNext={give.stepOn}
        >
          {children}
        </NumberEntry>
      );
    case 'choice':
      return <Chips field={field} chosen={chosen} onChosen={give.giveChoice} />;
    case 'thread':
      return <ThreadPicker chosen={chosen} threads={allThreads} onThread={give.giveChoice} />;
    default:
      return field satisfies never;
  }
}

type ChipsProps = {
  readonly field: ChoiceField;
  readonly chosen: string | undefined;
  readonly onChosen: (value: string) => unknown;
};

/** A choice that no drawing can carry: its few answers as keys. */
function Chips({ field, chosen, onChosen }: ChipsProps) {
  return (
    <fieldset class="form-chips">
      <legend>{field.ask}</legend>
      {field.options.map(({ value, words, more }) => (
        <Button key={value} chosen={chosen === value} onPress={() => onChosen(value)}>
          <span class="form-chip">
            {words}
            {more !== undefined && <small>{more}</small>}
          </span>
        </Button>
      ))}
    </fieldset>
  );
}
