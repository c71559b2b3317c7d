import { aimedInside, type Change } from '../../shim/change-wanted.ts';
import type { Band } from '../../reading/estimate.ts';
import {
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  negate,
  plus,
  smallest,
  sum,
  type Length,
} from '../../length/length.ts';
import { verdictOf, worseVerdict, type Limits, type Verdict } from '../../reading/verdict.ts';

/** What a size should come to. */
export type SettingWant = {
  readonly limits: Limits & { readonly lower: Length; readonly upper: Length };
  readonly aim: Length;
};

/** One of the places where a thing was read: what it comes to there, and by how much that place wants it changed. */
export type Place = {
  readonly value: Length;
  readonly band: Band;
  readonly verdict: Verdict;
  readonly change: Change;
};

/** The same with the size there that metal can be cut off. */
export type CutPlace = Place & { readonly of: Length };

export type Places<P extends Place = Place> = readonly [P, ...P[]];

export function placeOf({ value, band }: Pick<Place, 'value' | 'band'>, { limits, aim }: SettingWant): Place {
  const { halfWidth, doubt } = band;
  const change = aimedInside({
    aim: minus(value, aim),
    least: minus(value, minus(limits.upper, halfWidth)),
    most: minus(value, plus(limits.lower, halfWidth)),
  });
  return { value, band, verdict: verdictOf({ value, halfWidth, limits, doubt }), change };
}

/** The place that rules the verdict; the first where none is worse. */
export function worstOf<P extends Place>([first, ...more]: Places<P>): P {
  return more.reduce((worst, one) => {
    if (one.verdict.kind === 'good') return worst;
    return worseVerdict(one.verdict, worst.verdict) === one.verdict ? one : worst;
  }, first);
}

/**
 * By how much all places together have to lose, below zero to gain, where one thing moves all of them alike: a shim, a nut.
 *
 * Range:   aimed for the middle of the places, inside what each of them bears. Undefined where what one place wants takes
 *          another out of its limits. Where a band leaves nothing of the limits, least and most are crossed.
 */
export function changeOfAll(places: Places, want: SettingWant): Change | undefined {
  const [{ change }, ...more] = places;
  const least = largest(change.least, ...more.map((one) => one.change.least));
  const most = smallest(change.most, ...more.map((one) => one.change.most));
  if (isMore(least, most) && places.every(isProvable)) return undefined;
  return aimedInside({ aim: minus(middleOf(places.map(({ value }) => value)), want.aim), least, most });
}

/** A size to cut to, from where the most metal stands. */
export type CutOfAll = {
  readonly from: Length;
  readonly aim: Length;
  readonly lower: Length;
  readonly upper: Length;
};

/**
 * The one size that a cut leaves all round: a floor as deep, a face as long everywhere.
 *
 * Units:   a recess grows by what is to be lost, a length shrinks by it.
 * Range:   undefined where no one size does for all places, or where the metal of one is gone past it already.
 */
export function cutOfAll(
  places: Places<CutPlace>,
  want: SettingWant,
  kind: 'length' | 'recess-depth',
): CutOfAll | undefined {
  const isDepth = kind === 'recess-depth';
  const after = (of: Length, change: Length) => plus(of, isDepth ? change : negate(change));
  const lowerOf = ({ of, change: { least, most } }: CutPlace) => after(of, isDepth ? least : most);
  const upperOf = ({ of, change: { least, most } }: CutPlace) => after(of, isDepth ? most : least);
  const [first, ...others] = places;
  const lower = largest(lowerOf(first), ...others.map(lowerOf));
  const upper = smallest(upperOf(first), ...others.map(upperOf));
  const shallowest = smallest(first.of, ...others.map(({ of }) => of));
  const deepest = largest(first.of, ...others.map(({ of }) => of));
  const aim = middleOf(places.map(({ of, value }) => after(of, minus(value, want.aim))));
  const size = { from: isDepth ? shallowest : deepest, aim, lower, upper };
  if (isMore(lower, upper)) return places.every(isProvable) ? undefined : size;
  const isGone = places.length > 1 && (isDepth ? isMore(deepest, upper) : isLess(shallowest, lower));
  return isGone ? undefined : { ...size, aim: smallest(largest(aim, lower), upper) };
}

/** How far its places are from each other. */
export function spreadOf([first, ...more]: Places): Length {
  const values = more.map(({ value }) => value);
  return minus(largest(first.value, ...values), smallest(first.value, ...values));
}

function isProvable({ change: { least, most } }: Place): boolean {
  return !isMore(least, most);
}

function middleOf(sizes: readonly Length[]): Length {
  return dividedBy(sum(sizes), sizes.length);
}
