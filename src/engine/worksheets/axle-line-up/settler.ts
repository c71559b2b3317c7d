import { dividedBy, negate, times, type Length } from '../../length/length.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { WHICH_STANDS } from '../../reading/say-readings.ts';
import { saySettler } from '../../reading/say-verdict.ts';
import { legOf, whatCouldProve, whatWouldSettle, type Leg, type Settler } from '../../reading/settle.ts';
import type { Limits } from '../../reading/verdict.ts';
import type { ProofBlock } from '../account.ts';
import type { AnyGiven } from '../given.ts';
import type { Share } from './chain.ts';
import { axleFields, isAxleSize, onHandField } from './fields.ts';
import type { LineUpAnswer, LineUpQuestion, Spacer } from './line-up.ts';
import { unprovedOf } from './line-up-spacer.ts';

type Shop = Pick<AnyGiven, 'tools' | 'unit'>;

type TooClose = {
  readonly value: Length;
  readonly limits: Limits;
  readonly terms: readonly Share[];
  readonly sizes: Readonly<Record<string, Estimate>>;
  /** Parts that are still to be cut: what reads them then is a choice, too. */
  readonly toCut?: Readonly<Record<string, Length>>;
};

const ON_HAND = 'on hand';

/** The one line under the figures: which of the shop's tools, and how many readings, tell what they can't tell yet. */
export function proofOfLineUp(q: LineUpQuestion, answer: LineUpAnswer, shop: Shop): ProofBlock | undefined {
  const { checks, shared, spacers } = answer;
  const check = [...checks, ...shared].find(({ verdict }) => verdict.kind === 'too-close');
  const part = spacers.find(({ deed }) => deed.kind === 'too-close');
  const unproved = spacers.find(({ deed }) => unprovedOf(deed));
  const sentence =
    (part && settlerSaid(shop, q, part)) ??
    (check && settled(shop, q, { ...check, sizes: { ...q.sizes, ...q.onHand }, toCut: toCutOf(spacers) })) ??
    (unproved && provenBy(shop, q, unproved));
  return sentence === undefined ? undefined : { is: 'proof', sentence };
}

/** Which tools would tell whether the part on hand will do. */
export function settlerSaid(shop: Shop, question: LineUpQuestion, { deed, name }: Spacer): string {
  const onHand = question.onHand[name];
  if (deed.kind !== 'too-close' || !onHand) return '';
  return settled(shop, question, {
    value: deed.off,
    limits: deed.limits,
    terms: deed.terms,
    sizes: { ...question.sizes, [ON_HAND]: onHand, [onHandField(name)]: onHand },
  });
}

/** Which tools would settle a sum of sizes that is too close to call; only what was measured is measured again. */
export function settled(shop: Shop, q: LineUpQuestion, sum: TooClose): string {
  const { value, limits } = sum;
  const { legs, whole } = legsOf(q, sum);
  if (legs.some(({ known }) => known?.doubt)) return WHICH_STANDS;
  const settler = whatWouldSettle({
    value: times(value, whole),
    limits: ofSoMany(limits, whole),
    legs,
    tools: shop.tools,
  });
  return said(settler, whole, shop);
}

/** A length that its readings, or those of the part once it is cut, know to no better than it may be off. */
function provenBy(shop: Shop, q: LineUpQuestion, { terms, name, value }: Spacer): string {
  const { legs: measured, whole } = legsOf(q, { terms, sizes: q.sizes });
  const legs = [...measured, { kind: 'length', size: value, coefficient: -whole } as const];
  if (legs.some((leg) => 'known' in leg && leg.known?.doubt)) return WHICH_STANDS;
  const { spacer, opening } = q.limits;
  const fills = q.layout.ends.some(({ kind, is }) => kind === 'opening' && is.some(({ of }) => of === name));
  const { by, source } = fills ? opening : spacer;
  const limits = ofSoMany({ lower: negate(by), upper: by, source }, whole);
  return said(whatCouldProve({ limits, legs, tools: shop.tools }), whole, shop);
}

/** Tools are asked for whole multiples: halves are doubled first, and the band halved again. */
function legsOf(
  { layout }: LineUpQuestion,
  { terms, sizes, toCut = {} }: Pick<TooClose, 'terms' | 'sizes' | 'toCut'>,
) {
  const whole = Math.max(1, ...terms.map(({ bottom }) => bottom));
  const legs = terms.flatMap(({ of, top, bottom }): Leg[] => {
    const length = toCut[of];
    if (length) return [{ kind: 'length', size: length, coefficient: (top * whole) / bottom }];
    const kind = of === ON_HAND || layout.spacers.includes(of) ? 'length' : measuredAs(of);
    const size = sizes[of];
    return kind && size?.tool ? [legOf(kind, size, (top * whole) / bottom)] : [];
  });
  return { legs, whole };
}

function toCutOf(spacers: readonly Spacer[]): Readonly<Record<string, Length>> {
  const toCut = spacers.filter(({ deed: { kind } }) => kind === 'make' || kind === 'trim' || kind === 'shim');
  return Object.fromEntries(toCut.map(({ name, fitted }) => [name, fitted]));
}

function measuredAs(name: string) {
  const field = isAxleSize(name) ? axleFields[name] : undefined;
  return field?.enter === 'size' ? field.measures : undefined;
}

function ofSoMany({ lower, upper, source }: Limits, many: number): Limits {
  return {
    ...(lower && { lower: times(lower, many) }),
    ...(upper && { upper: times(upper, many) }),
    source,
  };
}

function said(settler: Settler | undefined, whole: number, { unit }: Shop): string {
  if (!settler) return NO_TOOL;
  return saySettler({ ...settler, halfWidth: dividedBy(settler.halfWidth, whole) }, unit);
}

/** As a fitter does it: the last part is cut to what the others leave, and what counts is read in place. */
const NO_TOOL = 'No tool in Shop can settle it. Cut the last one to the others, then read it in place.';
