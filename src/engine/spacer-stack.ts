import { aimedInside, type Change } from './change-wanted.ts';
import { bandOf, combine, mean, STATISTICS_STEP, type Band, type Estimate, type Term } from './estimate.ts';
import {
  floatMm,
  isLess,
  isMore,
  largest,
  lengthFromFloat,
  minus,
  negate,
  plus,
  zero,
  type Length,
} from './length.ts';
import { cutTarget, metalOnTarget, roundMetalOn } from './metal-on.ts';
import { refuse, worked, type Result } from './refusal.ts';
import { canProve } from './settle.ts';
import { usualStackWants } from './tables/stack-wants.ts';
import { verdictOf, type Limits, type Verdict } from './verdict.ts';

export type StackPart = {
  readonly name: string;
  readonly thickness: Estimate;
  /** Pieces of this thickness; a trim or a new part is one of them. */
  readonly count: number;
  readonly adjustable: boolean;
  readonly leastLength?: Length;
};

/** `limits` and `aim` speak of the gap, for a clamp of how far the parts stand proud. */
export type StackWant = {
  readonly kind: 'float' | 'end-play' | 'clamp';
  readonly limits: Limits & { readonly lower: Length; readonly upper: Length };
  readonly aim: Length;
};

export type StackQuestion = {
  /** The sleeve, or the opening between faces. */
  readonly fixed: { readonly name: string; readonly length: Estimate };
  readonly parts: readonly StackPart[];
  readonly want: StackWant;
  /** The dial's step for lengths. */
  readonly step: Length;
  /** The gap itself, read with a feeler or an indicator: replaces the sum. */
  readonly direct?: Estimate;
};

export type Trim = {
  readonly part: string;
  readonly from: Length;
  readonly to: Length;
  readonly take: Length;
  readonly lower: Length;
  readonly upper: Length;
};

export type TrimOffer = { readonly part: string; readonly result: Result<Trim> };

export type LongerPart = {
  readonly part: string;
  readonly from: Length;
  readonly to: Length;
  readonly lower: Length;
  readonly upper: Length;
};

export type StackAnswer = {
  readonly gap: Length;
  readonly wanted: Length;
  readonly band: Band;
  readonly worstCase: Length;
  readonly rss: Length;
  readonly partsTotal: Length;
  readonly verdict: Verdict;
  readonly direct: boolean;
  /** Whether readings as close as these can prove the limits at all. */
  readonly provable: boolean;
  readonly trims: readonly TrimOffer[];
  readonly shim?: { readonly thickness: Length; readonly lower: Length; readonly upper: Length };
  readonly longerParts: readonly LongerPart[];
};

type Gap = Pick<StackAnswer, 'gap' | 'band' | 'worstCase' | 'rss' | 'direct'>;

/**
 * What a stack of parts leaves in its sleeve or opening, whether that is what is wanted, and what has to give.
 *
 * Units:   gap = fixed − Σ count · thickness; negative: the parts stand proud. A clamp wants −gap, the others the gap.
 *          A direct reading of the gap replaces the sum. Trim: L − (aim − gap), rounded metal-on to the dial's step;
 *          its limits are what the band leaves of the want, said as a length of the part. Too big: a shim of gap − aim,
 *          or a part of L + (gap − aim). An aim that the band reaches past a limit from counts as what is left there.
 * Range:   trims where the gap is below the aim and the verdict isn't good; shim and longer parts where it is above.
 *          No shim and no longer part is offered where the band leaves nothing of the want (`provable` is false), no
 *          longer part where no step of the dial lies inside.
 * Refuses: per trim: no-proof, below-least-length, no-step-in-limits.
 * Source:  sum of a dimension chain; worst case Σ|c|·U and root-sum-square √Σ(c·U)², common practice.
 */
export function spacerStack(q: StackQuestion): StackAnswer {
  const { want } = q;
  const { gap, ...known } = gapOf(q);
  const wanted = want.kind === 'clamp' ? negate(gap) : gap;
  const halfWidth = known.band.halfWidth;
  const verdict = verdictOf({ value: wanted, halfWidth, limits: want.limits });
  const change = neededChange({ gap, want, halfWidth });
  const isGood = verdict.kind === 'good';
  const isTooSmall = !isGood && isMore(change.aim, zero);
  const isTooBig = !isGood && isLess(change.aim, zero);
  const shim = isTooBig ? shimFor(change) : undefined;
  return {
    gap,
    wanted,
    ...known,
    partsTotal: combine(partTerms(q.parts, 1)).value,
    verdict,
    provable: canProve({ limits: want.limits, halfWidth }),
    trims: isTooSmall ? adjustable(q).map((part) => trimOffer(part, change, halfWidth, q)) : [],
    ...(shim && { shim }),
    longerParts: isTooBig ? adjustable(q).flatMap((part) => longerPart(part, change, q.step)) : [],
  };
}

/**
 * The one part that can stand in for several: their sum, leaving the same gap.
 *
 * Units:   band and worst case of the sum, by `combine`.
 */
export function onePartInPlaceOf(parts: readonly StackPart[]): {
  readonly length: Length;
  readonly band: Band;
  readonly worstCase: Length;
} {
  const { value, band, worstCase } = combine(partTerms(parts, 1));
  return { length: value, band, worstCase };
}

/**
 * Usual limits and aim for what a stack is wanted to do.
 *
 * Source:  common practice, no source; the user changes them.
 */
export function stackWantPreset(kind: StackWant['kind'], unit: 'in' | 'mm' = 'in'): StackWant {
  return usualStackWants[unit][kind];
}

function gapOf({ fixed, parts, direct }: StackQuestion): Gap {
  if (direct) {
    const band = bandOf(direct);
    const { halfWidth } = band;
    return { gap: mean(direct), band, worstCase: halfWidth, rss: halfWidth, direct: true };
  }
  const terms = [{ estimate: fixed.length, coefficient: 1 }, ...partTerms(parts, -1)];
  const { value, band, worstCase } = combine(terms);
  return { gap: value, band, worstCase, rss: rootSumSquare(terms), direct: false };
}

function partTerms(parts: readonly StackPart[], sign: 1 | -1): readonly Term[] {
  return parts.map(({ thickness, count }) => ({ estimate: thickness, coefficient: sign * count }));
}

/** √Σ(c·U)²: as if no two sizes shared an error; floating point, then a length again. */
function rootSumSquare(terms: readonly Term[]): Length {
  const sharesMm = terms.map(
    ({ estimate, coefficient }) => coefficient * floatMm(bandOf(estimate).halfWidth),
  );
  return lengthFromFloat(Math.hypot(...sharesMm), STATISTICS_STEP);
}

/** How much shorter the parts have to become. */
function neededChange({
  gap,
  want,
  halfWidth,
}: {
  readonly gap: Length;
  readonly want: StackWant;
  readonly halfWidth: Length;
}): Change {
  const { lower, upper } = want.limits;
  const [aim, least, most] =
    want.kind === 'clamp' ? [negate(want.aim), negate(upper), negate(lower)] : [want.aim, lower, upper];
  return aimedInside({
    aim: minus(aim, gap),
    least: minus(plus(least, halfWidth), gap),
    most: minus(minus(most, halfWidth), gap),
  });
}

function adjustable({ parts }: StackQuestion): readonly StackPart[] {
  return parts.filter((part) => part.adjustable);
}

/** The part's length after the change, and the limits for it: the shortest takes off the most. */
function lengthAfter(from: Length, change: Change) {
  return { aim: minus(from, change.aim), lower: minus(from, change.most), upper: minus(from, change.least) };
}

function trimOffer(
  { name, thickness, leastLength = zero }: StackPart,
  change: Change,
  halfWidth: Length,
  { want, step }: StackQuestion,
): TrimOffer {
  const from = mean(thickness);
  const after = lengthAfter(from, change);
  const { lower: wantLower, upper: wantUpper } = want.limits;
  if (isMore(after.lower, after.upper))
    return {
      part: name,
      result: refuse({ code: 'no-proof', halfWidth, lower: wantLower, upper: wantUpper }),
    };
  if (isLess(after.upper, leastLength)) {
    const missing = minus(leastLength, roundMetalOn(after.aim, 'length', step));
    return {
      part: name,
      result: refuse({ code: 'below-least-length', part: name, least: leastLength, missing }),
    };
  }
  const limits = { lower: largest(after.lower, leastLength), upper: after.upper };
  const cut = cutTarget({
    aim: largest(after.aim, leastLength),
    ...limits,
    present: from,
    kind: 'length',
    step,
  });
  if (!cut.ok) return { part: name, result: cut };
  return {
    part: name,
    result: worked({ part: name, from, to: cut.value.target, take: cut.value.take, ...limits }),
  };
}

function shimFor({ aim, least, most }: Change): StackAnswer['shim'] {
  if (isMore(least, most)) return undefined;
  return { thickness: negate(aim), lower: negate(most), upper: negate(least) };
}

function longerPart({ name, thickness }: StackPart, change: Change, step: Length): readonly LongerPart[] {
  const from = mean(thickness);
  const after = lengthAfter(from, change);
  const target = metalOnTarget(after, 'length', step);
  if (!target.ok) return [];
  return [{ part: name, from, to: target.value, lower: after.lower, upper: after.upper }];
}
