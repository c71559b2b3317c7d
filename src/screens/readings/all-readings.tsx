import { useState } from 'preact/hooks';
import { sayDegrees } from '../../engine/reading/say-warmth.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import { changeFeature, removeFeature } from '../../store/features.ts';
import { strikeOut } from '../../store/readings.ts';
import type { Feature, Job, ReadingRecord } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { go } from '../address.ts';
import { Button } from '../common/button.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { growsWithWarmth, warmthLine, warmthToKeep } from './warmth.ts';
import { Row } from '../common/row.tsx';
import { readingWords } from './reading-figure.ts';
import { timeWords } from '../common/day-words.ts';
import './all-readings.css';

type AllReadingsProps = {
  readonly job: Job;
  readonly feature: Feature;
  readonly readings: readonly ReadingRecord[];
  readonly back: string;
  /** Where it is said how warm it is. */
  readonly warm: string;
};

/** Every reading of a feature, struck-out ones with their line; also where the feature is named or removed; a check's is so with the check. */
export function AllReadings({ job, feature, readings, back, warm }: AllReadingsProps) {
  const store = useStore();
  const unit = useShownUnit();
  const [trouble, setTrouble] = useState('');
  const rename = async (name: string) => name !== '' && (await changeFeature(store, feature.id, { name })).ok;
  const strike = async (reading: ReadingRecord) => {
    const struck = await strikeOut(store, reading.id, 'by hand');
    setTrouble(struck.ok ? '' : sayStore(struck.refusal));
  };
  const remove = async () => {
    const removed = await removeFeature(store, feature.id);
    if (removed.ok) go({ at: 'readings', jobId: feature.jobId });
    else setTrouble(sayStore(removed.refusal));
  };
  return (
    <Page title={feature.name} subtitle="all readings" back={{ href: back, to: 'the pad' }}>
      {feature.checkId === undefined && <KeptField label="Name" kept={feature.name} onWords={rename} />}
      {growsWithWarmth(feature.kind) && (
        <Row
          href={warm}
          title="How warm it is"
          detail={warmthLine(readings, unit) || 'not said: sizes count as they were read'}
          figure={warmthNow(job, feature)}
        />
      )}
      <PhotoStrip owner={{ store: 'features', id: feature.id }} jobId={feature.jobId} />
      {readings.length === 0 && <EmptyLine>No readings yet.</EmptyLine>}
      <ol class="all-readings">
        {readings.toReversed().map((reading) => (
          <li key={reading.id} class="all-readings-row" data-struck={reading.struckOut !== undefined}>
            <p>
              <span class="all-readings-size">{readingWords(reading)}</span>
              <span class="all-readings-more">
                {reading.typed.includes('/') || reading.unit !== unit
                  ? `${show(reading.exact, unit)} · `
                  : ''}
                {whereTaken(reading)}
                {toolBeside(reading)} · {timeWords(reading.at)}
                {reading.struckOut && ` · struck out ${timeWords(reading.struckOut.at)}`}
              </span>
            </p>
            {!reading.struckOut && (
              <Button label={`Strike out ${asTyped(reading)}`} onPress={() => strike(reading)}>
                Strike out
              </Button>
            )}
          </li>
        ))}
      </ol>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      {feature.checkId === undefined && (
        <div class="all-readings-remove">
          <Button onPress={() => remove()}>Remove {feature.name}</Button>
        </div>
      )}
    </Page>
  );
}

/** What the next reading is brought to 20 °C from; empty while it isn't said. */
function warmthNow(job: Job, feature: Feature): string {
  const { warmth } = warmthToKeep(job, feature, Date.now());
  return warmth ? sayDegrees(warmth) : '';
}

function whereTaken({ place, direction }: ReadingRecord): string {
  const words = [place, direction && `${direction}°`].filter((word) => word !== undefined);
  return words.length === 0 ? '' : `${words.join(' ')} · `;
}
