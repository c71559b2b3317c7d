import { toolThatCounts } from '../../engine/reading/measuring-tool.ts';
import { goesInSteps } from '../../engine/reading/reading.ts';
import { sayDegrees } from '../../engine/reading/say-warmth.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { show } from '../../engine/length/show.ts';
import type { Feature, ReadingRecord } from '../../store/records.ts';
import { kindName } from '../readings/feature-kinds.ts';
import { warmthLine, warmthOfDay } from '../readings/warmth.ts';
import { formOfReadings, summaryOf } from '../readings/feature-summary.ts';
import { readingFigure, readingWords } from '../readings/reading-figure.ts';
import type { SheetData } from './sheet-data.ts';
import { SheetTable } from './sheet-table.tsx';
import { momentOf } from './sheet-words.ts';

/** Every reading with its tool; those of a check stand with the check. */
export function ReadingsSheet({ data }: { data: SheetData }) {
  const features = data.features.filter(({ checkId }) => checkId === undefined);
  if (features.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Readings</h3>
      {features.map((feature) => (
        <FeatureSheet key={feature.id} feature={feature} data={data} />
      ))}
    </section>
  );
}

function FeatureSheet({ feature, data }: { feature: Feature; data: SheetData }) {
  const { unit, parts } = data;
  const readings = data.readings.filter((one) => one.featureId === feature.id);
  const form = formOfReadings(feature.kind, readings);
  const summary = form && summaryOf(form, unit);
  const warmth = warmthLine(readings, unit);
  const part = parts.find(({ id }) => id === feature.partId);
  return (
    <section class="sheet-part">
      <h4>
        {feature.name}{' '}
        <small>{`(${[kindName(feature.kind).toLowerCase(), part?.name].filter(Boolean).join(', ')})`}</small>
      </h4>
      {summary ? (
        <p>
          <strong>{`${summary.size} ${summary.band}`}</strong> {summary.form}
        </p>
      ) : (
        <p>No reading that counts.</p>
      )}
      {warmth !== '' && <p>{warmth}</p>}
      {readings.length > 0 && <ReadingsTable readings={readings} unit={unit} />}
    </section>
  );
}

/** Readings as they were taken; struck-out ones keep their line. */
export function ReadingsTable({
  readings,
  unit,
}: {
  readonly readings: readonly ReadingRecord[];
  readonly unit: SheetData['unit'];
}) {
  return (
    <SheetTable
      figures
      heads={['As read', unit === 'in' ? 'inches' : 'mm', 'Where', 'Tool, error limit', 'When']}
      rows={readings.map((reading) => ({
        key: reading.id,
        cells: [
          readingWords(reading),
          goesInSteps(reading.tool) ? readingFigure(reading, unit) : show(reading.exact, unit),
          whereOf(reading),
          `${toolBeside(reading)} ±${show(toolThatCounts(reading.tool, reading.exact).mpe, unit)}${reading.zeroChecked ? ', zero checked' : ''}${warmthWords(warmthOfDay(reading, readings))}`,
          momentOf(reading.at),
        ],
        ...(reading.struckOut && { struckOut: reading.struckOut.why }),
      }))}
    />
  );
}

function warmthWords({ warmth }: Pick<ReadingRecord, 'warmth'>): string {
  return warmth ? `, at ${sayDegrees(warmth)}, counts at 20 °C` : '';
}

function whereOf({ place, direction }: ReadingRecord): string {
  return [place, direction && `${direction}°`].filter((word) => word !== undefined).join(' ');
}
