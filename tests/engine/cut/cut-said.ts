import type { CutOffer } from '../../../src/engine/cut/cut.ts';
import type { CutWay } from '../../../src/engine/cut/cuts-of-way.ts';
import { decimalText, isLess, isMore, type Length } from '../../../src/engine/length/length.ts';

const four = (length: Length) => decimalText(length, 'in', 4).replace(/^0\./, '.');

/** A cut in one line, inches to four places: `Spacer, faced to length: .3850 → .3770 (.3750 to .3790)`. */
export function cutSaid({ name, present, target, lower, upper }: CutOffer): string {
  const from = present ? `${four(present)} → ` : '';
  return `${name}: ${from}${four(target)} (${four(lower)} to ${four(upper)})`;
}

/** Ways with their cuts in order. */
export function waysSaid(ways: readonly CutWay[]) {
  return Object.fromEntries(ways.map(({ id, offers }) => [id, offers.map(cutSaid)]));
}

/** What must hold for every cut that is offered: its target keeps its own limits. */
export function keepsItsLimits({ target, lower, upper }: CutOffer): boolean {
  return !isLess(target, lower) && !isMore(target, upper);
}
