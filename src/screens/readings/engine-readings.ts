import { trueBoreAcrossJaws, type Reading } from '../../engine/reading.ts';
import type { FeatureKind } from '../../engine/measuring-tool.ts';
import type { ReadingRecord } from '../../store/records.ts';

/** The readings that count, as the engine takes them: struck-out ones left out, a bore across caliper flats put right. */
export function engineReadings(
  kind: FeatureKind,
  records: readonly ReadingRecord[],
): readonly [Reading, ...Reading[]] | undefined {
  const [first, ...rest] = records
    .filter((record) => record.struckOut === undefined)
    .map((record) => engineReading(kind, record));
  return first && [first, ...rest];
}

function engineReading(kind: FeatureKind, record: ReadingRecord): Reading {
  const { exact, tool, zeroChecked, place, direction } = record;
  const acrossFlats = kind === 'bore' && tool.kind === 'caliper' && tool.jawWidth !== undefined;
  return {
    exact: acrossFlats ? trueBoreAcrossJaws({ measured: exact, flatWidth: tool.jawWidth }) : exact,
    asRead: exact,
    tool,
    zeroChecked,
    ...(place && { place }),
    ...(direction && { direction }),
  };
}
