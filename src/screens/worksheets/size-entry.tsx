import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { readEntry } from '../../engine/entry.ts';
import type { FeatureKind } from '../../engine/measuring-tool.ts';
import { sayEntry } from '../../engine/say.ts';
import { show } from '../../engine/show.ts';
import type { SizeInput } from '../../store/records.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import type { TypedBy } from '../common/hands-free.ts';
import { useOnePress } from '../common/one-press.ts';
import { SizePad } from '../common/size-pad.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize } from '../common/use-settings.ts';
import { formOfReadings, summaryOf } from '../readings/feature-summary.ts';
import { countSentence } from '../readings/readings-screen.tsx';
import { useMeasuring } from '../readings/use-measuring.ts';
import { afterKey, isUnitKey } from '../common/pad-text.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './size-entry.css';

type SizeEntryProps = {
  readonly data: WorksheetData;
  readonly label: string;
  readonly draftKey: string;
  readonly measures?: FeatureKind;
  readonly signed?: boolean;
  /** What fit-up checks read is offered too: the size is one that is read in place. */
  readonly direct?: boolean;
  readonly onSize: (size: SizeInput, draftKey?: string) => unknown;
  /** Measure it now: makes a feature for it and opens the pad. */
  readonly onMeasure?: () => unknown;
  /** Where a foot switch steps on to. */
  readonly onNext?: (() => void) | undefined;
  readonly children?: ComponentChildren;
};

/** A size for a worksheet: the job's readings of that kind to choose from, or the pad. */
export function SizeEntry({
  data,
  label,
  draftKey,
  measures,
  signed = false,
  direct = false,
  onSize,
  onMeasure,
  onNext,
  children,
}: SizeEntryProps) {
  const { measuring, known, change } = useMeasuring(measures);
  const [byTool, setByTool] = useState(true);
  const [trouble, setTrouble] = useState<string>();
  const draft = useSizeDraft(draftKey, measuring?.unit ?? data.unit);
  const padSize = usePadSize();
  const measure = useOnePress();
  const fitting = data.features.filter(
    ({ kind, checkId }) => kind === measures && (direct || checkId === undefined),
  );
  // Which tool a size counts with has to be known before it can be taken.
  if (measures && !known) return <div class="size-entry" aria-busy="true" />;
  const commit = (by: TypedBy) => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit, signed });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    const { exact, typed, unit } = entry.value;
    if (by === 'gauge') announce(`${label}: ${show(exact, unit)}, from the gauge.`);
    return onSize(
      { from: 'typed', exact, typed, unit, ...(measuring && byTool && { tool: measuring.tool }) },
      draftKey,
    );
  };
  return (
    <div class="size-entry">
      {trouble === undefined && (fitting.length > 0 || onMeasure) && (
        <ul class="size-entry-features">
          {fitting.map((feature) => {
            const records = data.readings.filter((reading) => reading.featureId === feature.id);
            const form = formOfReadings(feature.kind, records);
            const summary = form && summaryOf(form, data.unit);
            return (
              <li key={feature.id}>
                <button
                  type="button"
                  class="size-entry-feature"
                  onClick={() => onSize({ from: 'feature', featureId: feature.id }, draftKey)}
                >
                  <span>
                    {feature.name}
                    <small>{countSentence(records)}</small>
                  </span>
                  {summary && (
                    <strong>
                      {summary.size}
                      <small>{summary.band}</small>
                    </strong>
                  )}
                </button>
              </li>
            );
          })}
          {onMeasure && (
            <li>
              <button
                type="button"
                class="size-entry-feature"
                onClick={() => measure.take(onMeasure, { commits: true })}
              >
                <span>
                  Measure it now
                  <small>several readings prove more than one</small>
                </span>
              </button>
            </li>
          )}
        </ul>
      )}
      <SizePad
        label={label}
        half={draft.half}
        padSize={padSize}
        onChange={(half) => {
          setTrouble(undefined);
          draft.change(half);
          if (measuring && isUnitKey(half, measuring.unit)) change({ unit: half.unit });
        }}
        commit={{ text: 'Use it', onPress: commit }}
        onNext={onNext}
        {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
      >
        {(measuring !== undefined || signed || children !== undefined) && (
          <div class="size-entry-extras">
            {signed && (
              <Button
                chosen={draft.half.typed.startsWith('-')}
                onPress={() => draft.change(afterKey(draft.half, '-'))}
              >
                Below zero
              </Button>
            )}
            {measuring && (
              <Button chosen={byTool} onPress={() => setByTool(!byTool)}>
                {byTool ? `${measuring.tool.name} ±${show(measuring.tool.mpe, data.unit)}` : 'taken as exact'}
              </Button>
            )}
            {children}
          </div>
        )}
      </SizePad>
    </div>
  );
}
