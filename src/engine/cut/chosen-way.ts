import { cutName } from '../thread/tap-name.ts';
import type { CutOffer } from './cut.ts';
import type { CutWay } from './cuts-of-way.ts';

/** What is known of a cut that is on the list already. */
type Listed = Pick<CutOffer, 'name' | 'part' | 'operation' | 'of'>;

/**
 * Which of several ways is gone, by the cuts that were taken from it: the one that most of them are of.
 *
 * Range: undefined where none of them is of any way, or as many are of another. A cut is known by its name; one whose
 *        name the fitter changed by what is cut on which part.
 */
export function chosenWay(ways: readonly CutWay[], listed: readonly Listed[]): CutWay | undefined {
  const names = new Set(ways.flatMap(({ offers }) => offers.map(cutName)));
  const isOf = (cut: Listed, { offers }: CutWay) =>
    offers.some((offer) => (names.has(cutName(cut)) ? cutName(offer) === cutName(cut) : isAlike(offer, cut)));
  const counted = ways
    .map((way) => ({ way, cuts: listed.filter((cut) => isOf(cut, way)).length }))
    .filter(({ cuts }) => cuts > 0)
    .toSorted((a, b) => b.cuts - a.cuts);
  const [most, next] = counted;
  return most && most.cuts !== next?.cuts ? most.way : undefined;
}

function isAlike(a: Listed, b: Listed): boolean {
  return a.part === b.part && a.operation === b.operation && a.of === b.of;
}
