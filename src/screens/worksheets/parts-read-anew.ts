import { bandOf, mean, type Estimate } from '../../engine/reading/estimate.ts';
import { featureForm } from '../../engine/reading/feature-form.ts';
import { absolute, isMore, minus, plus } from '../../engine/length/length.ts';
import { sizesOfParts } from '../../store/kept/parts-changed.ts';
import type { Feature, ReadingRecord, Worksheet } from '../../store/base/records.ts';
import { engineReadings } from '../readings/engine-readings.ts';

type Known = {
  readonly worksheet: Worksheet;
  readonly features: readonly Feature[];
  readonly readings: readonly ReadingRecord[];
};

/**
 * The part that was read as another size since a time: what was read of the parts put together then was read of something
 * else. More readings of the same size make no other part of it: they have to differ by more than both are known to.
 */
export function partReadAnew({ worksheet, features, readings }: Known, time: number): string | undefined {
  return sizesOfParts(worksheet).find(({ size }) => {
    const feature = size.from === 'feature' ? features.find(({ id }) => id === size.featureId) : undefined;
    if (!feature) return false;
    const records = readings.filter(({ featureId }) => featureId === feature.id);
    const then = records.filter(({ at }) => at <= time).map((one) => asOf(one, time));
    return isAnother(estimateOf(feature, then), estimateOf(feature, records));
  })?.name;
}

/** A reading that was struck out later still counted then. */
function asOf(reading: ReadingRecord, time: number): ReadingRecord {
  if (!reading.struckOut || reading.struckOut.at <= time) return reading;
  const { struckOut: _later, ...counting } = reading;
  return counting;
}

function estimateOf({ kind, material }: Feature, records: readonly ReadingRecord[]): Estimate | undefined {
  const readings = engineReadings(kind, records, material);
  return readings && featureForm(kind, readings).most.estimate;
}

function isAnother(then: Estimate | undefined, now: Estimate | undefined): boolean {
  if (!then || !now) return false;
  const known = plus(bandOf(then).halfWidth, bandOf(now).halfWidth);
  return isMore(absolute(minus(mean(then), mean(now))), known);
}
