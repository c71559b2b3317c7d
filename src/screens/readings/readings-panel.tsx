import { sayCaution } from '../../engine/reading/say-readings.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import type { Feature, Job, ReadingRecord } from '../../store/base/records.ts';
import { strikeOut } from '../../store/kept/readings.ts';
import { useOnePress } from '../common/one-press.ts';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useStore } from '../common/store-context.ts';
import { unbroken } from '../common/unbroken.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { countSentence } from './readings-screen.tsx';
import { isElsewhere, sayElsewhere } from './elsewhere.ts';
import { formOfReadings, formSentence, summaryOf } from './feature-summary.ts';
import { readingFigure } from './reading-figure.ts';
import { warmthAsked, warmthLine } from './warmth.ts';
import './readings-panel.css';

type ReadingsPanelProps = {
  readonly job: Job;
  readonly feature: Feature;
  readonly readings: readonly ReadingRecord[];
  /** Where all readings are. */
  readonly all: string;
  /** What the readings are wanted for, and what they prove of it. */
  readonly note: string | undefined;
};

/** What was logged, newest first, and what it proves; scribed on layout blue. Leads to all readings. */
export function ReadingsPanel({ job, feature, readings, all, note }: ReadingsPanelProps) {
  const unit = useShownUnit();
  const form = formOfReadings(feature.kind, readings, feature.material);
  const warmth = warmthLine(readings, unit) || (form ? warmthAsked(form, readings, { job, unit }) : '');
  const last = readings.findLast((reading) => !reading.struckOut);
  const said = note !== undefined && (
    <span class="readings-panel-line readings-panel-note">{unbroken(note)}</span>
  );
  return (
    <section class="readings-panel" aria-label="Readings">
      <div class="readings-panel-card">
        <a class="readings-panel-all" href={all}>
          <span class="readings-panel-head">
            {form && <strong>{`${summaryOf(form, unit).size} ${summaryOf(form, unit).band}`}</strong>}
            {/* Beside a size there is no room for it on a phone, and the list below shows it. */}
            <span {...(form && { class: 'unseen' })}>
              {countSentence(readings.filter((reading) => !reading.struckOut))}
            </span>
          </span>
          {/* A check is read for its verdict: that stands before the readings it is made of. */}
          {feature.checkId !== undefined && said}
          {readings.length > 0 && (
            <span class="readings-panel-list">
              {readings.toReversed().map((reading) => (
                <OneReading key={reading.id} reading={reading} unit={unit} />
              ))}
            </span>
          )}
          {form && formSentence(form, unit) !== '' && (
            <span class="readings-panel-line">{formSentence(form, unit)}</span>
          )}
          {warmth !== '' && <span class="readings-panel-line">{warmth}</span>}
          {feature.checkId === undefined && said}
          {form?.cautions.map((caution) => (
            <span key={caution} class="readings-panel-line">
              {sayCaution(caution)}
            </span>
          ))}
          <BeforeTheFirst feature={feature} readings={readings} note={note} />
        </a>
      </div>
      {last && <StrikeOutLast last={last} unit={unit} />}
    </section>
  );
}

type BeforeTheFirstProps = Pick<ReadingsPanelProps, 'feature' | 'readings'> & {
  readonly note: string | undefined;
};

/** While no reading counts: what another one came to, or how many tell something. */
function BeforeTheFirst({ feature, readings, note }: BeforeTheFirstProps) {
  const unit = useShownUnit();
  if (isElsewhere(feature, readings))
    return <span class="readings-panel-line">{sayElsewhere(feature, feature.elsewhere, unit)}</span>;
  if (readings.length > 0 || note !== undefined) return null;
  return <span class="readings-panel-line">Three readings at one place tell more than one.</span>;
}

function StrikeOutLast({ last, unit }: { last: ReadingRecord; unit: ShownUnit }) {
  const store = useStore();
  const strike = useOnePress();
  return (
    <button
      type="button"
      class="readings-panel-strike"
      aria-label={`Strike out last reading, ${show(last.exact, unit)}`}
      // What is last afterwards is another reading: a second press would strike that out too.
      onClick={() =>
        strike.take(() => saidIfRefused(strikeOut(store, last.id, 'from the pad')), { commits: true })
      }
    >
      strike out last
    </button>
  );
}

function OneReading({ reading, unit }: { reading: ReadingRecord; unit: ShownUnit }) {
  const where = [
    reading.place === 'bottom' ? 'low' : reading.place === 'middle' ? 'mid' : reading.place,
    reading.direction && `${reading.direction}°`,
  ]
    .filter((word) => word !== undefined)
    .join(' ');
  const size = readingFigure(reading, unit);
  return (
    <span class="readings-panel-one">
      {where !== '' && <small>{where} </small>}
      {reading.struckOut ? <s>{size}</s> : size}
    </span>
  );
}
