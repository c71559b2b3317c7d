import { useState } from 'preact/hooks';
import type { Feature } from '../../store/base/records.ts';
import { Button } from '../common/button.tsx';
import { useOnePress } from '../common/one-press.ts';
import { countedRecords, isElsewhere, whereElsewhere } from '../readings/elsewhere.ts';
import { formOfReadings, summaryOf } from '../readings/feature-summary.ts';
import { countSentence } from '../readings/readings-screen.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import './read-already.css';

type ReadAlreadyProps = {
  readonly data: WorksheetData;
  /** What was read in this job that could be the size. */
  readonly features: readonly Feature[];
  readonly onTake: (featureId: string) => unknown;
  /** Measure it now: makes a feature for it and opens the pad. */
  readonly onMeasure: (() => unknown) | undefined;
};

/** The job's readings that could be the size, each one press from being taken. */
export function ReadAlready({ data, features, onTake, onMeasure }: ReadAlreadyProps) {
  const measure = useOnePress();
  return (
    <ul class="read-already">
      {features.map((feature) => (
        <li key={feature.id}>
          <ReadRow data={data} feature={feature} onTake={onTake} />
        </li>
      ))}
      {onMeasure && (
        <li>
          <button
            type="button"
            class="read-already-row"
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
  );
}

function ReadRow({
  data,
  feature,
  onTake,
}: { feature: Feature } & Pick<ReadAlreadyProps, 'data' | 'onTake'>) {
  const own = readingsOf(data, feature);
  const form = formOfReadings(feature.kind, countedRecords(feature, own), feature.material);
  const summary = form && summaryOf(form, data.unit);
  return (
    <button type="button" class="read-already-row" onClick={() => onTake(feature.id)}>
      <span>
        {feature.name}
        <small>{isElsewhere(feature, own) ? whereElsewhere(feature.elsewhere) : countSentence(own)}</small>
      </span>
      {summary && (
        <strong>
          {summary.size}
          <small>{summary.band}</small>
        </strong>
      )}
    </button>
  );
}

type ReadKeysProps = ReadAlreadyProps & {
  /** There is room for one key: what was read and the way to measure are behind it. */
  readonly isFolded?: boolean;
};

/** The same as keys in one row: the one size it could be by name and figure, several behind a key with their count. */
export function ReadKeys({ data, features, onTake, onMeasure, isFolded = false }: ReadKeysProps) {
  const [isOpen, setOpen] = useState(false);
  const read = features.filter(
    ({ id, elsewhere }) => elsewhere !== undefined || data.readings.some((one) => one.featureId === id),
  );
  const [only, ...others] = read;
  const folds = isFolded && only !== undefined && onMeasure !== undefined;
  return (
    <>
      {only && others.length === 0 && !folds && (
        <Button onPress={() => onTake(only.id)}>
          <span class="read-already-key">
            {isElsewhere(only, readingsOf(data, only)) ? `${only.name}, another one’s` : only.name}
            <strong>{sizeOf(data, only)}</strong>
          </span>
        </Button>
      )}
      {(others.length > 0 || folds) && (
        <Button chosen={isOpen} onPress={() => setOpen(!isOpen)}>
          {folds ? `${read.length} read, or measure` : `${read.length} read`}
        </Button>
      )}
      {onMeasure && !folds && <Button onPress={onMeasure}>Measure</Button>}
      {isOpen && (
        <div class="read-already-open" role="group" aria-label="Sizes read in this job">
          <ReadAlready
            data={data}
            features={read}
            onTake={onTake}
            onMeasure={folds ? onMeasure : undefined}
          />
        </div>
      )}
    </>
  );
}

function readingsOf({ readings }: WorksheetData, { id }: Feature) {
  return readings.filter(({ featureId }) => featureId === id);
}

function sizeOf(data: WorksheetData, feature: Feature): string {
  const form = formOfReadings(feature.kind, countedRecords(feature, readingsOf(data, feature)));
  return form ? summaryOf(form, data.unit).size : '';
}
