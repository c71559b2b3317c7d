import {
  bandOf,
  combine,
  mean,
  STATISTICS_STEP,
  type Band,
  type Estimate,
  type Term,
} from '../../reading/estimate.ts';
import {
  absolute,
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
} from '../../length/length.ts';
import { canProve } from '../../reading/settle.ts';
import {
  gapTerms,
  neededChange,
  outOfParallelBy,
  type OutOfParallel,
  type Proof,
  type StackChange,
} from './stack-change.ts';
import {
  longerPart,
  staysOutOfParallel,
  newPart,
  sharedTrim,
  trimOffer,
  type LongerPart,
  type NewPart,
  type SharedTrim,
  type TrimOffer,
} from './stack-trim.ts';
import { usualStackWants } from './tables/stack-wants.ts';
import { verdictOf, type Limits, type Verdict } from '../../reading/verdict.ts';

export type StackPart = {
  readonly name: string;
  readonly thickness: Estimate;
  /** Pieces of this thickness; a trim or a new part is one of them. */
  readonly count: number;
  readonly adjustable: boolean;
  readonly leastLength?: Length;
  /** How much thicker it is at one side than at the other: it goes with the part, or with a facing cut over all of it. */
  readonly taper?: Length;
};

/** `limits` and `aim` speak of the gap, for a clamp of how far the parts stand proud. */
export type StackWant = {
  readonly kind: 'float' | 'end-play' | 'clamp';
  readonly limits: Limits & { readonly lower: Length; readonly upper: Length };
  readonly aim: Length;
  /**
   * How much more of it there is at one side than at the other, and at which it is judged: what parts clamp where they are
   * thick and where they are thin, a gap that was read at both sides.
   */
  readonly taper?: { readonly by: Length; readonly at: 'least' | 'most' };
};

export type StackQuestion = {
  /** The sleeve, or the opening between faces. */
  readonly fixed: { readonly name: string; readonly length: Estimate };
  readonly parts: readonly StackPart[];
  readonly want: StackWant;
  /** The dial's step for lengths. */
  readonly step: Length;
  /** How short a part may become of which nobody said so; .020 in where it is left out. */
  readonly usualLeast?: Length;
  /** The place of the part that gives first where more than one may, from 0; without it the leftmost. */
  readonly first?: number;
  /** The gap itself, read with a feeler or an indicator: replaces the sum. */
  readonly direct?: Estimate;
};

/** How thick shims should be in all. */
export type ShimWanted = Proof & {
  readonly thickness: Length;
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
  /** How much shorter the parts have to become in all, below zero longer, whichever of them gives. */
  readonly needed: StackChange;
  readonly trims: readonly TrimOffer[];
  /** Where none of the parts that may be cut can give it all alone. */
  readonly shared?: SharedTrim;
  readonly shim?: ShimWanted;
  /** Of the parts that may be cut; where nobody said which, of every part. */
  readonly longerParts: readonly LongerPart[];
  /** A spacer put in besides, where it is more than a shim. */
  readonly newPart?: NewPart;
  /** The parts are further out of parallel than the limits are apart: what is put in or faced elsewhere cures nothing. */
  readonly outOfParallel?: OutOfParallel;
};

type Gap = Pick<StackAnswer, 'gap' | 'band' | 'worstCase' | 'rss' | 'direct'>;

/**
 * What a stack of parts leaves in its sleeve or opening, whether that is what is wanted, and what has to give.
 *
 * Units:   gap = fixed − Σ count · thickness; negative: the parts stand proud. A clamp wants −gap, the others the gap.
 *          A direct reading of the gap replaces the sum. Trim: L − (aim − gap), rounded metal-on to the dial's step;
 *          its limits are what the band leaves of the want, said as a length of the part. Too big: a shim of gap − aim,
 *          a part of L + (gap − aim), or a spacer of gap − aim besides. An aim that the band reaches past a limit from
 *          counts as what is left there.
 * Range:   trims where the gap is below the aim and the verdict isn't good; shim, longer parts and new part where it is
 *          above. Where the band leaves nothing of the want each figure stands all the same, not `proved`, with the
 *          limits whole. A float and a clamp of nothing are never good: what just touches neither floats nor is held.
 * Refuses: per trim: below-least-length, no-step-in-limits, each with the figure that stands instead.
 * Source:  sum of a dimension chain; worst case Σ|c|·U and root-sum-square √Σ(c·U)², common practice.
 */
export function spacerStack(q: StackQuestion): StackAnswer {
  const { want, parts } = q;
  const { gap, ...known } = gapOf(q);
  const wanted = want.kind === 'clamp' ? negate(gap) : gap;
  const { halfWidth } = known.band;
  const verdict = stackVerdict({ want, wanted, band: known.band });
  const needed = neededChange({ gap, want, band: known.band });
  const isGood = verdict.kind === 'good';
  const isTooSmall = !isGood && isMore(needed.aim, zero);
  const isTooBig = !isGood && isLess(needed.aim, zero);
  const outOfParallel = isGood ? undefined : outOfParallelBy(want);
  const mayGive = parts.some((part) => part.adjustable);
  const trims = isTooSmall
    ? firstFirst(
        q,
        parts.flatMap((part, place) =>
          part.adjustable && !staysOutOfParallel(q, part) ? trimOffer(q, gap, place, part) : [],
        ),
      )
    : [];
  const isAlone = trims.some(
    ({ result, figure, instead }) => result.ok || figure || (instead && !instead.still),
  );
  const shared =
    isTooSmall && mayGive && !isAlone && !outOfParallel
      ? sharedTrim(q, gap, parts.filter(canGive), known.band)
      : undefined;
  const mayAdd = isTooBig && !outOfParallel;
  const extra = mayAdd ? newPart(q, needed) : undefined;
  return {
    gap,
    wanted,
    ...known,
    partsTotal: combine(partTerms(parts, 1)).value,
    verdict,
    provable: canProve({ limits: want.limits, halfWidth }),
    needed,
    trims,
    ...(shared && { shared }),
    ...(mayAdd && { shim: shimFor(needed) }),
    longerParts: isTooBig
      ? firstFirst(
          q,
          parts.flatMap((part, place) =>
            part.adjustable || !mayGive || outOfParallel ? (longerPart(q, gap, place, part) ?? []) : [],
          ),
        )
      : [],
    ...(extra && { newPart: extra }),
    ...(outOfParallel && { outOfParallel }),
  };
}

/**
 * Whether a stack does what is wanted of it.
 *
 * Range:   a float and a clamp of nothing are too close to call at the best, whatever least was given: parts that just
 *          touch neither slide nor are held. What is good at one side is judged at the other as well.
 */
export function stackVerdict({
  want,
  wanted,
  band,
}: {
  readonly want: StackWant;
  readonly wanted: Length;
  readonly band: Band;
}): Verdict {
  const verdict = verdictOf({ value: wanted, ...band, limits: want.limits });
  if (verdict.kind === 'good' && want.taper) {
    const { taper, ...atOther } = want;
    const there = taper.at === 'least' ? plus(wanted, taper.by) : minus(wanted, taper.by);
    return stackVerdict({ want: atOther, wanted: there, band });
  }
  const isProvedAtAll = want.kind === 'end-play' || isMore(minus(wanted, band.halfWidth), zero);
  if (verdict.kind !== 'good' || isProvedAtAll) return verdict;
  return { kind: 'too-close', near: 'lower', short: absolute(minus(wanted, want.limits.lower)) };
}

/**
 * Which place of what was read in the assembled stack rules it: the least, and where that is good the most, should that not
 * be. A float that is right at one side and too loose at the other is not good.
 *
 * Units:   of what is wanted: a float or end play, or how far the parts stand proud.
 */
export function rulingPlace(
  want: StackWant,
  { least, most }: { readonly least: Estimate; readonly most: Estimate },
): Estimate {
  const isGood = (estimate: Estimate) =>
    stackVerdict({ want, wanted: mean(estimate), band: bandOf(estimate) }).kind === 'good';
  return isGood(least) && !isGood(most) ? most : least;
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

function gapOf(q: StackQuestion): Gap {
  const terms = gapTerms(q);
  const { value, band, worstCase } = combine(terms);
  const direct = q.direct !== undefined;
  return { gap: value, band, worstCase, rss: direct ? band.halfWidth : rootSumSquare(terms), direct };
}

/** The part that is to give first stands first; the others from left to right. */
function firstFirst<T extends { readonly place: number }>(
  { first }: Pick<StackQuestion, 'first'>,
  offers: readonly T[],
): readonly T[] {
  return [...offers.filter(({ place }) => place === first), ...offers.filter(({ place }) => place !== first)];
}

function canGive({ adjustable }: StackPart): boolean {
  return adjustable;
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

function shimFor({ aim, least, most, halfWidth, proved }: StackChange): ShimWanted {
  return {
    thickness: negate(aim),
    lower: largest(zero, negate(most)),
    upper: negate(least),
    halfWidth,
    proved,
  };
}
