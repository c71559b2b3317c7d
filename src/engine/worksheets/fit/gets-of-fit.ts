import type { CutWay } from '../../cut/cuts-of-way.ts';
import type { GetOffer } from '../../job/get-list.ts';
import { stockFor } from '../../job/stock.ts';
import type { ShownUnit } from '../../length/show.ts';

/** The bar for a pin that is made new, where that is the way that is gone. */
export function getsOfFit(
  ways: readonly CutWay[],
  way: string | undefined,
  unit: ShownUnit,
): readonly GetOffer[] {
  return ways
    .filter(({ id }) => id === way)
    .flatMap(({ offers }) => offers)
    .filter(({ of, present }) => of === 'outside' && present === undefined)
    .map(({ part, target }) => stockFor({ part, outside: target }, unit));
}
