import { toolThatCounts } from '../../engine/reading/measuring-tool.ts';
import { sayDegrees } from '../../engine/reading/say-warmth.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import { featuresIn } from '../../store/kept/worksheets.ts';
import type { Feature, ReadingRecord } from '../../store/base/records.ts';
import { kindName } from '../readings/feature-kinds.ts';
import { warmthLine, warmthOfDay } from '../readings/warmth.ts';
import { countedRecords, isElsewhere, whereElsewhere } from '../readings/elsewhere.ts';
import { formOfReadings, summaryOf } from '../readings/feature-summary.ts';
import { readingFigure, readingWords } from '../readings/reading-figure.ts';
import type { SheetData } from './sheet-data.ts';
import { SheetTable, type SheetRow } from './sheet-table.tsx';
import { momentOf } from './sheet-words.ts';

const HEADS = ['As read', 'Where', 'Tool, error limit', 'When'];

/** Every reading with its tool, behind what came of it; those of a check stand with the check. */
export function ReadingsSheet({ data }: { data: SheetData }) {
  const features = data.features.filter(({ checkId }) => checkId === undefined);
  if (features.length === 0) return null;
  const inUse = new Set(data.worksheets.flatMap((worksheet) => [...featuresIn(worksheet)]));
  // A part that was taken out of its stack keeps its readings, behind those that something stands on.
  const isApart = ({ id }: Feature) => data.worksheets.length > 0 && !inUse.has(id);
  const inOrder = [...features.filter((one) => !isApart(one)), ...features.filter(isApart)];
  return (
    <section class="sheet-section">
      <h3>Readings</h3>
      {inOrder.map((feature) => {
        const readings = data.readings.filter((one) => one.featureId === feature.id);
        return (
          <section key={feature.id} class="sheet-part sheet-readings">
            <FeatureHead feature={feature} isApart={isApart(feature)} readings={readings} data={data} />
            {readings.length > 0 && <ReadingsTable readings={readings} unit={data.unit} />}
            {isElsewhere(feature, readings) && (
              <ReadingsTable readings={countedRecords(feature, readings)} unit={data.unit} />
            )}
          </section>
        );
      })}
    </section>
  );
}

type FeatureHeadProps = {
  readonly feature: Feature;
  readonly isApart: boolean;
  readonly readings: readonly ReadingRecord[];
  readonly data: SheetData;
};

/** What it is, and what its readings come to. */
function FeatureHead({ feature, isApart, readings, data: { unit, parts } }: FeatureHeadProps) {
  const form = formOfReadings(feature.kind, countedRecords(feature, readings), feature.material);
  const summary = form && summaryOf(form, unit);
  const warmth = warmthLine(readings, unit);
  const part = parts.find(({ id }) => id === feature.partId);
  const besides = [
    kindName(feature.kind).toLowerCase(),
    part?.name === feature.name ? undefined : part?.name,
    isApart ? 'in no worksheet' : undefined,
  ];
  return (
    <h4>
      {feature.name}{' '}
      <small>
        {`(${besides.filter((word) => word !== undefined).join(', ')}): `}
        {summary ? (
          <>
            <strong>{`${summary.size} ${summary.band}`}</strong>
            {` ${summary.form}`}
            {isElsewhere(feature, readings) &&
              ` of ${whereElsewhere(feature.elsewhere)}; not read on this one`}
          </>
        ) : (
          'no reading that counts'
        )}
        {warmth !== '' && ` ${warmth}`}
      </small>
    </h4>
  );
}

type ReadingsTableProps = { readonly readings: readonly ReadingRecord[]; readonly unit: ShownUnit };

/** Readings as they were taken; struck-out ones keep their line. */
export function ReadingsTable({ readings, unit }: ReadingsTableProps) {
  return <SheetTable figures heads={HEADS} rows={rowsOf(readings, unit)} />;
}

function rowsOf(readings: readonly ReadingRecord[], unit: ShownUnit): readonly SheetRow[] {
  return readings.map((reading) => ({
    key: reading.id,
    cells: [
      asRead(reading, unit),
      whereOf(reading),
      `${toolBeside(reading)} ±${show(toolThatCounts(reading.tool, reading.exact).mpe, unit)}${reading.zeroChecked ? ', zero checked' : ''}${warmthWords(warmthOfDay(reading, readings))}`,
      momentOf(reading.at),
    ],
    ...(reading.struckOut && { struckOut: reading.struckOut.why }),
  }));
}

/** As typed, and in the shop's own unit where that is another figure. */
function asRead(reading: ReadingRecord, unit: ShownUnit): string {
  const words = readingWords(reading);
  const figure = readingFigure(reading, unit);
  return words.startsWith(figure) ? words : `${words} = ${figure} ${unit}`;
}

function warmthWords({ warmth }: Pick<ReadingRecord, 'warmth'>): string {
  return warmth ? `, at ${sayDegrees(warmth)}, counts at 20 °C` : '';
}

function whereOf({ place, direction }: ReadingRecord): string {
  return [place, direction && `${direction}°`].filter((word) => word !== undefined).join(' ');
}
