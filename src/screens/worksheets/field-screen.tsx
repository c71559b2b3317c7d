import { useState } from 'preact/hooks';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { allThreads } from '../../engine/thread/threads.ts';
import { sayStore } from '../../store/say-store.ts';
import type { SizeInput } from '../../store/records.ts';
import type { StoreResult } from '../../store/store-refusal.ts';
import { setChoice, setSize } from '../../store/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { featureFor } from './measure-for.ts';
import { limitFault } from './limit-fault.ts';
import { NumberEntry } from './number-entry.tsx';
import { slipAround } from './slip-around.ts';
import { SizeEntry } from './size-entry.tsx';
import { ThreadPicker } from './thread-picker.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { withWarmthOfDay } from './warm-sizes.ts';
import { nextAfter, nextNeed, type FieldPlan, type WorksheetPlan } from './worksheet-plan.ts';
import { fieldsBesides } from './fields-besides.ts';

const LIMIT_NAMES: ReadonlySet<string> = new Set(['lower', 'upper', 'aim']);

type FieldScreenProps = {
  readonly data: WorksheetData;
  readonly plan: WorksheetPlan;
  readonly field: FieldPlan;
};

/** One thing a worksheet asks for. When it is given, the next one it needs follows, else the answer. */
export function FieldScreen({ data, plan, field }: FieldScreenProps) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const { worksheet, job } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const onward = (result: StoreResult<typeof worksheet>) => {
    if (!result.ok) return setTrouble(sayStore(result.refusal));
    const wasNeeded = plan.needs.includes(field.name);
    const next = wasNeeded ? nextNeed(plan, result.value) : undefined;
    return go({ ...here, ...(next !== undefined && { field: next }) });
  };
  const takeSize = async (size: SizeInput | undefined, draftKey?: string) => {
    const fault =
      size?.from === 'typed' && LIMIT_NAMES.has(field.name)
        ? limitFault(data, field.name, size.exact)
        : undefined;
    if (fault !== undefined) return setTrouble(fault);
    const kept = size && withWarmthOfDay(data, field.name, size, Date.now());
    return onward(await setSize(store, worksheet.id, field.name, kept, draftKey));
  };
  const takeChoice = async (value: string | undefined) => {
    const besides = fieldsBesides(data, field, value);
    const kept = await setChoice(store, worksheet.id, field.name, value, besides);
    onward(kept);
    return kept.ok;
  };
  const isGiven = worksheet.sizes[field.name] !== undefined || worksheet.choices[field.name] !== undefined;
  const measureNow = async (kind: FeatureKind) => {
    const made = await featureFor(store, data, { kind, name: field.label });
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    const taken = await setSize(store, worksheet.id, field.name, {
      from: 'feature',
      featureId: made.value.id,
    });
    if (!taken.ok) return setTrouble(sayStore(taken.refusal));
    return go({ at: 'feature', jobId: job.id, featureId: made.value.id, choosing: `for/${worksheet.id}` });
  };
  const onNext = nextAfter(plan, worksheet, field.name);
  const toNext =
    onNext === undefined ? undefined : () => go({ ...here, ...(onNext !== 'answer' && { field: onNext }) });
  const { measures } = { measures: undefined, ...field };
  const leaveOut = () => void (field.enter === 'size' ? takeSize(undefined) : takeChoice(undefined));
  return (
    <div class={field.enter === 'size' || field.enter === 'number' ? 'pad-screen' : undefined}>
      <Page
        title={field.ask}
        subtitle={worksheet.title}
        back={{ href: hrefOf(here), to: 'the worksheet' }}
        aside={isGiven && !plan.needs.includes(field.name) && <Button onPress={leaveOut}>Leave out</Button>}
      >
        {trouble !== '' && (
          <p role="alert" class="text-field-trouble">
            {trouble}
          </p>
        )}
        {field.enter === 'size' && (
          <SizeEntry
            data={data}
            label={field.label}
            draftKey={`worksheet/${worksheet.id}/${field.name}`}
            signed={field.signed === true}
            direct={field.direct === true}
            now={worksheet.sizes[field.name]}
            around={slipAround(data, field.name, measures)}
            {...(measures && { measures, onMeasure: () => measureNow(measures) })}
            onSize={takeSize}
            onNext={toNext}
          >
            {field.name === 'pin' && (
              <Button onPress={() => go({ ...here, field: 'thread' })}>It is a bolt: pick its thread</Button>
            )}
          </SizeEntry>
        )}
        {field.enter === 'number' && (
          <NumberEntry
            label={field.label}
            draftKey={`worksheet/${worksheet.id}/${field.name}`}
            bounds={field}
            onNumber={takeChoice}
            onNext={toNext}
          />
        )}
        {field.enter === 'choice' && (
          <ul>
            {field.options.map(({ value, words, more }) => (
              <li key={value}>
                <Row
                  title={words}
                  {...(more !== undefined && { detail: more })}
                  mark={
                    worksheet.choices[field.name] === value ? <span class="row-now">chosen</span> : undefined
                  }
                  onPress={() => takeChoice(value)}
                />
              </li>
            ))}
          </ul>
        )}
        {field.enter === 'thread' && (
          <ThreadPicker
            chosen={worksheet.choices[field.name]}
            {...(worksheet.kind === 'thread-engagement' && { threads: allThreads })}
            onThread={takeChoice}
          />
        )}
      </Page>
    </div>
  );
}
