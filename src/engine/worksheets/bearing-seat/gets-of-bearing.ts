import type { GetOffer } from '../../job/get-list.ts';
import { shimsToGet } from '../../job/stock.ts';
import { isMore, zero } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import type { CutWay } from '../../cut/cuts-of-way.ts';
import { stockOfNewLengths } from '../new-parts.ts';
import type { BearingAnswer } from './answer.ts';

/** Stock for a sleeve that is made new, or the shim that puts a bearing right; a shim that is there and faced is none. */
export function getsOfBearing(
  answer: BearingAnswer,
  ways: readonly CutWay[],
  { way, unit }: { readonly way: string | undefined; readonly unit: ShownUnit },
): readonly GetOffer[] {
  switch (answer.kind) {
    case 'ball': {
      const shim = answer.found.present?.shim;
      if (way === undefined && shim) return [shimsToGet(shim, unit)];
      return stockOfNewLengths(onlyOr(ways, way), unit);
    }
    case 'taper': {
      const { newShim, provable, verdict } = answer.found;
      const isBought = verdict.kind === 'no-good' && ways.length === 0 && provable;
      return newShim && isBought && isMore(newShim.lower, zero) ? [shimsToGet(newShim, unit)] : [];
    }
    case 'seat':
      return answer.found.shim ? [shimsToGet(answer.found.shim, unit)] : [];
    case 'ring':
      return [];
    default:
      return answer satisfies never;
  }
}

/** The way that is gone; before one is, the only one there is. */
function onlyOr(ways: readonly CutWay[], way: string | undefined): CutWay | undefined {
  return way === undefined && ways.length === 1 ? ways[0] : ways.find(({ id }) => id === way);
}
