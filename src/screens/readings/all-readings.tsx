import { sayDegrees } from '../../engine/reading/say-warmth.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import { changeFeature, removeFeature } from '../../store/kept/features.ts';
import { strikeOut } from '../../store/kept/readings.ts';
import type { Feature, Job, ReadElsewhere, ReadingRecord } from '../../store/base/records.ts';
import { partsOf } from '../../store/kept/parts.ts';
import { go, hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { growsWithWarmth, warmthLine, warmthToKeep } from './warmth.ts';
import { Row } from '../common/row.tsx';
import { recordsElsewhere, whereElsewhere } from './elsewhere.ts';
import { readingWords } from './reading-figure.ts';
import { timeWords, wholeTimeWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
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
  const { trouble, told } = useTold();
  const rename = async (name: string) => name !== '' && told(changeFeature(store, feature.id, { name }));
  const strike = (reading: ReadingRecord) => told(strikeOut(store, reading.id, 'by hand'));
  const remove = () =>
    told(removeFeature(store, feature.id), () => go({ at: 'readings', jobId: feature.jobId }));
  return (
    <Page title={feature.name} subtitle="all readings" back={{ href: back, to: 'the pad' }}>
      {feature.checkId === undefined && <KeptField label="Name" kept={feature.name} onWords={rename} />}
      {feature.checkId === undefined && <PartOf feature={feature} />}
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
      {feature.elsewhere?.readings.length ? (
        <OfAnother feature={feature} elsewhere={feature.elsewhere} />
      ) : null}
      <Trouble>{trouble}</Trouble>
      {feature.checkId === undefined && (
        <div class="all-readings-remove">
          <Button onPress={() => remove()}>Remove {feature.name}</Button>
        </div>
      )}
    </Page>
  );
}

/** The part that it is a size of: measured once, it is brought into the next job with all its sizes. */
function PartOf({ feature }: { feature: Feature }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { id, jobId, partId } = feature;
  const parts = useLive(`parts/${jobId}`, ['parts'], (from) => partsOf(from, jobId));
  const put = (to: string) => told(changeFeature(store, id, { partId: to === partId ? undefined : to }));
  if (!parts) return null;
  return (
    <>
      <Choice title="A size of">
        {parts.map((part) => (
          <Button key={part.id} chosen={part.id === partId} onPress={() => put(part.id)}>
            {part.name}
          </Button>
        ))}
        <LinkButton href={hrefOf({ at: 'assembly', jobId, field: `parts/new/${id}` })}>New part</LinkButton>
      </Choice>
      <Trouble>{trouble}</Trouble>
    </>
  );
}

/** What was read of another one, as it was logged there; it stays to be read when this one has readings of its own. */
function OfAnother({ feature, elsewhere }: { feature: Feature; elsewhere: ReadElsewhere }) {
  return (
    <section class="all-readings-elsewhere">
      <h2>{`Of ${whereElsewhere(elsewhere)}`}</h2>
      <ul>
        {recordsElsewhere(feature, elsewhere).map((reading) => (
          <li key={reading.id}>
            {readingWords(reading)}
            <span class="all-readings-more">
              {whereTaken(reading)}
              {toolBeside(reading)} · {wholeTimeWords(reading.at)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the next reading is brought to 20 °C from; empty while it isn't said. */
function warmthNow(job: Job, feature: Feature): string {
  const { warmth } = warmthToKeep(job, feature, timeToKeep());
  return warmth ? sayDegrees(warmth) : '';
}

function whereTaken({ place, direction }: ReadingRecord): string {
  const words = [place, direction && `${direction}°`].filter((word) => word !== undefined);
  return words.length === 0 ? '' : `${words.join(' ')} · `;
}
