import { inPoints } from '../../engine/length/decimal-text.ts';
import { isSameName } from '../../engine/length/american-words.ts';
import type { CheckOffer } from '../../engine/reading/check-offer.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { sameLength, type Length } from '../../engine/length/length.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { basisOf } from '../../store/kept/basis.ts';
import type { NewCheck } from '../../store/kept/checks.ts';
import type { Basis, Check, Feature, ReadingRecord, Worksheet } from '../../store/base/records.ts';
import { featuresIn } from '../../store/kept/worksheets.ts';
import { fieldsOf } from '../worksheets/kind-fields.ts';

type Known = { readonly features: readonly Feature[]; readonly readings: readonly ReadingRecord[] };

/** The limits a check is held against. */
export function limitsOf({
  lower,
  upper,
  limitsFrom,
}: Pick<Check, 'lower' | 'upper' | 'limitsFrom'>): Limits {
  return { source: limitsFrom, ...(lower && { lower: lower.exact }), ...(upper && { upper: upper.exact }) };
}

/** A worksheet's offer as the check that is kept. */
export function checkFromOffer(
  offer: CheckOffer,
  { worksheet, unit, ...known }: Known & { readonly worksheet: Worksheet; readonly unit: ShownUnit },
): NewCheck {
  const { name, by, how, sizeName } = offer;
  return {
    jobId: worksheet.jobId,
    worksheetId: worksheet.id,
    name,
    by,
    how,
    ...(sizeName !== undefined && { sizeName }),
    ...limitFields(offer.limits, unit),
    basis: checkBasis(offer, worksheet, known),
  };
}

/** Limits as they are kept: with the text they are shown by, as a worksheet works them out and nobody typed them. */
export function limitFields(
  { lower, upper, source }: Limits,
  unit: ShownUnit,
): Pick<Check, 'lower' | 'upper' | 'limitsFrom'> {
  const entry = (exact: Length): Entry => ({ exact, typed: inPoints(() => show(exact, unit)), unit });
  return {
    limitsFrom: source,
    ...(lower && { lower: entry(lower) }),
    ...(upper && { upper: entry(upper) }),
  };
}

/** The offer a check was made from, as the worksheet makes it now. */
export function offerFor(
  check: Pick<Check, 'name' | 'by' | 'sizeName'>,
  offers: readonly CheckOffer[],
): CheckOffer | undefined {
  return offers.find((offer) =>
    check.sizeName === undefined
      ? isSameName(offer.name, check.name) && offer.by === check.by
      : offer.sizeName === check.sizeName,
  );
}

/** The check of a worksheet that was made from an offer; the first, should there be several. */
export function checkOfOffer(
  offer: CheckOffer,
  worksheetId: string,
  checks: readonly Check[],
): Check | undefined {
  return checks.find((check) => check.worksheetId === worksheetId && offerFor(check, [offer]) !== undefined);
}

/**
 * What a check's limits were worked out from: the worksheet without what was read on the machine, as a reading of the
 * check itself must not make its own limits look out of date.
 */
export function checkBasis(
  check: Pick<Check, 'sizeName'>,
  worksheet: Worksheet,
  { features, readings }: Known,
): Basis {
  const inputs = withoutReadInPlace(check, worksheet, features);
  return basisOf(inputs, readingsIn(inputs, readings));
}

export function withoutReadInPlace(
  { sizeName }: Pick<Check, 'sizeName'>,
  worksheet: Worksheet,
  features: readonly Feature[],
): Worksheet {
  const direct = readInPlace(worksheet);
  const ofChecks = new Set(features.flatMap(({ id, checkId }) => (checkId === undefined ? [] : id)));
  const sizes = Object.entries(worksheet.sizes).filter(
    ([name, input]) =>
      name !== sizeName && !direct.has(name) && !(input.from === 'feature' && ofChecks.has(input.featureId)),
  );
  return { ...worksheet, sizes: Object.fromEntries(sizes) };
}

/** The sizes of a worksheet that are read on the machine in place of a sum. */
export function readInPlace(worksheet: Pick<Worksheet, 'kind' | 'choices'>): ReadonlySet<string> {
  const fields = Object.entries(fieldsOf(worksheet));
  return new Set(fields.flatMap(([name, field]) => (field.enter === 'size' && field.direct ? name : [])));
}

export function readingsIn(
  worksheet: Worksheet,
  readings: readonly ReadingRecord[],
): readonly ReadingRecord[] {
  const used = featuresIn(worksheet);
  return readings.filter(({ featureId }) => used.has(featureId));
}

/** Whether two pairs of limits are the same sizes; where they come from may differ. */
export function sameLimits(a: Limits, b: Limits): boolean {
  return sameSide(a.lower, b.lower) && sameSide(a.upper, b.upper);
}

function sameSide(a: Length | undefined, b: Length | undefined): boolean {
  return a && b ? sameLength(a, b) : a === b;
}
