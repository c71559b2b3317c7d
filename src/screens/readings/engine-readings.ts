import { isZero } from '../../engine/length/length.ts';
import {
  goesInSteps,
  nextThatStops,
  trueBoreAcrossJaws,
  type Reading,
} from '../../engine/reading/reading.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { readWarm, unsaidWarmth } from '../../engine/reading/temperature.ts';
import type { ReadingRecord } from '../../store/base/records.ts';
import { warmOf } from '../../store/kept/read-at-20.ts';
import { growsWithWarmth, warmthOfDay } from './warmth.ts';

/**
 * The readings that count, as the engine takes them: struck-out ones left out, a bore across caliper flats put
 * right, a part read warm brought to 20 °C. `material` is what the part is made of, where that was said.
 */
export function engineReadings(
  kind: FeatureKind,
  records: readonly ReadingRecord[],
  material?: string,
): readonly [Reading, ...Reading[]] | undefined {
  const [first, ...rest] = records
    .filter((record) => record.struckOut === undefined)
    .map((record) => engineReading({ kind, material }, { ...record, ...warmthOfDay(record, records) }));
  return first && [first, ...rest];
}

type FeatureRead = { readonly kind: FeatureKind; readonly material: string | undefined };

function engineReading({ kind, material }: FeatureRead, record: ReadingRecord): Reading {
  const { exact, tool, zeroChecked, place, direction } = record;
  const stops = nextThatStops({ exact, tool, ...(record.stops && { stops: record.stops.exact }) }, kind);
  const acrossFlats = kind === 'bore' && tool.kind === 'caliper' && tool.jawWidth !== undefined;
  const size = acrossFlats ? trueBoreAcrossJaws({ measured: exact, flatWidth: tool.jawWidth }) : exact;
  const warm = warmOf(record);
  const cold = warm && readWarm(size, warm);
  const unsaid = warm || !growsWithWarmth(kind) ? undefined : unsaidWarmth(size, materialNamed(material));
  return {
    id: record.id,
    exact: cold?.at20 ?? size,
    ...(cold && { warmthDoubt: cold.doubt }),
    ...(unsaid && { warmthUnsaid: unsaid }),
    // No leaf goes: what was tried is the thinnest one.
    asRead: goesInSteps(tool) && isZero(exact) ? (stops ?? exact) : exact,
    tool,
    ...(stops && { stops: warm ? readWarm(stops, warm).at20 : stops }),
    zeroChecked,
    ...(place && { place }),
    ...(direction && { direction }),
  };
}
