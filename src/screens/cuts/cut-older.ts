import { basisWithout, isOlder } from '../../store/basis.ts';
import type { Cut, Feature, ReadingRecord, Worksheet } from '../../store/records.ts';
import { readingsIn, readInPlace, withoutReadInPlace } from '../fit-up/check-from-offer.ts';

/** What a cut's figures are held against: the readings are all those of its job. */
export type CutsGround = {
  readonly worksheet: Worksheet | undefined;
  readonly features: readonly Feature[];
  readonly readings: readonly ReadingRecord[];
};

/**
 * Whether a cut's figures were worked out from readings or inputs that no longer stand. One that is to size was proved
 * by what is read on the machine since: that alone doesn't make it look out of date.
 */
export function isCutOlder({ basis, state }: Pick<Cut, 'basis' | 'state'>, ground: CutsGround): boolean {
  if (!basis) return false;
  const { worksheet, features, readings } = ground;
  if (!worksheet) return isOlder(basis, undefined, readings);
  if (state !== 'to-size') return isOlder(basis, worksheet, readingsIn(worksheet, readings));
  const ofChecks = new Set(features.flatMap(({ id, checkId }) => (checkId === undefined ? [] : id)));
  const proofs = readings.filter(({ featureId }) => ofChecks.has(featureId)).map(({ id }) => id);
  const without = withoutReadInPlace({}, worksheet, features);
  return isOlder(
    basisWithout(basis, { sizes: readInPlace(worksheet), readings: new Set(proofs) }),
    without,
    readingsIn(without, readings),
  );
}
