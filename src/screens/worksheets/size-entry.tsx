import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { canMeasure, type FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { sayOutOfRange } from '../../engine/reading/say-readings.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { sizeSlip, type SlipAround } from '../../engine/reading/size-slip.ts';
import { asTyped, figure, show } from '../../engine/length/show.ts';
import type { SizeInput } from '../../store/records.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import type { TypedBy } from '../common/hands-free.ts';
import { SizePad } from '../common/size-pad.tsx';
import { SlipQuestion, type Slip } from '../common/slip-question.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize } from '../common/use-settings.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import {
  ToolOfSizeChoice,
  briefToolWords,
  toolKept,
  toolOfSizeWords,
  useToolOfSize,
} from './tool-of-size.tsx';
import { afterKey, isUnitKey } from '../common/pad-text.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { ReadAlready, ReadKeys } from './read-already.tsx';
import './size-entry.css';

type SizeEntryProps = {
  readonly data: WorksheetData;
  readonly label: string;
  readonly draftKey: string;
  readonly measures?: FeatureKind;
  /** What stands there now: its tool stays with it until another is chosen. */
  readonly now?: SizeInput | undefined;
  readonly signed?: boolean;
  /** What it is held against, so that a slip is asked about. */
  readonly around?: SlipAround;
  /** What fit-up checks read is offered too: the size is one that is read in place. */
  readonly direct?: boolean;
  /** Under the drawing that is the form: what was read is offered on keys beside the tool's. */
  readonly inForm?: boolean;
  readonly onSize: (size: SizeInput, draftKey?: string) => unknown;
  /** Measure it now: makes a feature for it and opens the pad. */
  readonly onMeasure?: () => unknown;
  /** Where a foot switch steps on to. */
  readonly onNext?: (() => void) | undefined;
  readonly children?: ComponentChildren;
};

/** A size for a worksheet: the job's readings of that kind to choose from, or the pad. Nothing of it stays for the next size. */
export function SizeEntry(props: SizeEntryProps) {
  return <OneSize key={props.draftKey} {...props} />;
}

function OneSize({
  data,
  label,
  draftKey,
  measures,
  now,
  signed = false,
  around,
  direct = false,
  inForm = false,
  onSize,
  onMeasure,
  onNext,
  children,
}: SizeEntryProps) {
  const { measuring, known, change } = useMeasuring(measures, { jobId: data.job.id });
  const [isChoosing, setChoosing] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const [slip, setSlip] = useState<Slip>();
  const draft = useSizeDraft(draftKey, measuring?.unit ?? data.unit);
  const padSize = usePadSize();
  const takeRead = (featureId: string) => onSize({ from: 'feature', featureId }, draftKey);
  const half = readEntry(draft.half.typed, { unit: draft.half.unit, signed });
  const size = half.ok ? half.value.exact : undefined;
  const { toolFor, choose } = useToolOfSize({ data, kind: measures, now });
  const tool = toolFor(size);
  const fitting = data.features.filter(
    ({ kind, checkId }) => kind === measures && (direct || checkId === undefined),
  );
  // Which tool a size counts with has to be known before it can be taken.
  if (measures && !known) return <div class="size-entry" aria-busy="true" />;
  const commit = (by: TypedBy) => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit, signed });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    const question = around && sizeSlip(entry.value, around);
    return question ? setSlip({ question, typed: entry.value, by }) : take(entry.value, by);
  };
  const take = (entry: Entry, by: TypedBy) => {
    setSlip(undefined);
    const { exact, typed, unit } = entry;
    const readBy = toolFor(exact);
    if (readBy?.by === 'none')
      return setTrouble(`No tool in Shop reads ${asTyped(entry)}. Choose how it is known.`);
    if (measures && readBy?.by === 'tool' && !canMeasure(readBy.tool, measures, exact))
      return setTrouble(sayOutOfRange(readBy.tool, entry, data.unit));
    if (by === 'gauge') announce(`${label}: ${show(exact, unit)}, from the gauge.`);
    return onSize({ from: 'typed', exact, typed, unit, ...toolKept(readBy) }, draftKey);
  };
  if (measures && tool && isChoosing)
    return (
      <div class="size-entry">
        <ToolOfSizeChoice
          data={data}
          kind={measures}
          size={size}
          tool={tool}
          onBack={() => setChoosing(false)}
          onChoose={(toolId) => {
            choose(toolId);
            setTrouble(undefined);
            setChoosing(false);
          }}
        />
      </div>
    );
  return (
    <div class="size-entry">
      {!inForm && trouble === undefined && !slip && (fitting.length > 0 || onMeasure) && (
        <ReadAlready data={data} features={fitting} onTake={takeRead} onMeasure={onMeasure} />
      )}
      <SizePad
        label={label}
        readWith={tool && briefToolWords(tool)}
        half={draft.half}
        padSize={padSize}
        onChange={(half) => {
          setTrouble(undefined);
          setSlip(undefined);
          draft.change(half);
          if (measuring && isUnitKey(half, measuring.unit)) change({ unit: half.unit });
        }}
        commit={{ text: 'Use it', onPress: commit }}
        onNext={onNext}
        {...(slip
          ? { message: <SlipQuestion slip={slip} onMeant={take} /> }
          : trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
      >
        {(tool !== undefined || signed || children !== undefined || inForm) && (
          <div class="size-entry-extras">
            {inForm && <ReadKeys data={data} features={fitting} onTake={takeRead} onMeasure={onMeasure} />}
            {signed && (
              <Button
                chosen={draft.half.typed.startsWith('-')}
                onPress={() => draft.change(afterKey(draft.half, '-'))}
              >
                Below zero
              </Button>
            )}
            {tool && (
              <Button
                label={`Read with: ${toolOfSizeWords(tool, data.unit)}`}
                onPress={() => setChoosing(true)}
              >
                {inForm ? (
                  <span class="read-already-key">
                    {briefToolWords(tool)}
                    {tool.by === 'tool' && <strong>±{figure(tool.tool.mpe, data.unit)}</strong>}
                  </span>
                ) : (
                  toolOfSizeWords(tool, data.unit)
                )}
              </Button>
            )}
            {children}
          </div>
        )}
      </SizePad>
    </div>
  );
}
