import type { Giver } from './axle-layout.ts';
import type { Evaluated } from './chain.ts';
import { knownLength } from './chain-form.ts';
import { mean, type Estimate } from '../../reading/estimate.ts';
import {
  dividedBy,
  isLess,
  isMore,
  isNegative,
  isZero,
  largest,
  plus,
  smallest,
  times,
  zero,
  type Length,
} from '../../length/length.ts';

/** A size that can give alone: by how much it has to change (below zero: shrink), and to what. */
export type Give = { readonly of: string; readonly by: Length; readonly to: Length };

type Known = Readonly<Record<string, Estimate>>;

/**
 * Which sizes could give, each alone, so that no spacer comes out below zero, and by how much at least.
 *
 * Units:   a spacer of length v in which a size counts q times comes to v + q·Δ; Δ is the change nearest to none that
 *          leaves every one of them at zero or more.
 * Range:   only ways the size can go (`may`), and never to below zero where it can only shrink. Empty where nothing
 *          alone is enough.
 */
export function givesForRoom(
  spacers: readonly Evaluated[],
  givers: readonly Giver[],
  known: Known,
): readonly Give[] {
  return givers.flatMap((giver) => {
    const change = leastChange(spacers, giver.of);
    return change ? giveOf(giver, change, known) : [];
  });
}

/** Which sizes could give, each alone, so that a miss becomes none. */
export function givesForMiss(miss: Evaluated, givers: readonly Giver[], known: Known): readonly Give[] {
  if (isZero(miss.value)) return [];
  return givers.flatMap((giver) => {
    const change = changeToNone(miss, giver.of);
    return change ? giveOf(giver, change, known) : [];
  });
}

function leastChange(spacers: readonly Evaluated[], of: string): Length | undefined {
  const ends = spacers.map((spacer) => ({
    spacer,
    end: changeToNone(spacer, of),
    share: shareIn(spacer, of),
  }));
  if (ends.some(({ spacer, end }) => !end && isNegative(spacer.value))) return undefined;
  const least = ends.flatMap(({ end, share }) => (end && share > 0 ? end : []));
  const most = ends.flatMap(({ end, share }) => (end && share < 0 ? end : []));
  const lower = least[0] && largest(least[0], ...least);
  const upper = most[0] && smallest(most[0], ...most);
  if (lower && upper && isMore(lower, upper)) return undefined;
  if (lower && isMore(lower, zero)) return lower;
  return upper && isLess(upper, zero) ? upper : undefined;
}

/** The change of one size that brings a sum to exactly nothing: −v / q. */
function changeToNone({ value, terms }: Evaluated, of: string): Length | undefined {
  const term = terms.find((one) => one.of === of);
  return term && dividedBy(times(value, -term.bottom), term.top);
}

function shareIn({ terms }: Evaluated, of: string): number {
  const term = terms.find((one) => one.of === of);
  return term ? term.top / term.bottom : 0;
}

function giveOf({ of, may }: Giver, by: Length, known: Known): readonly Give[] {
  const to = plus(mean(knownLength(known, of)), by);
  const shrinks = isNegative(by);
  if (may === (shrinks ? 'grow' : 'shrink')) return [];
  if (may === 'shrink' && isNegative(to)) return [];
  return [{ of, by, to }];
}
