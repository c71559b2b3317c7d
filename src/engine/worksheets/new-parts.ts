import type { CutWay } from '../cut/cuts-of-way.ts';
import type { GetOffer } from '../job/get-list.ts';
import { stockFor } from '../job/stock.ts';
import type { ShownUnit } from '../length/show.ts';

/** Stock for what a way makes new to a length: no metal of it stands yet. Nothing where no way is gone. */
export function stockOfNewLengths(way: CutWay | undefined, unit: ShownUnit): readonly GetOffer[] {
  return (way?.offers ?? [])
    .filter(({ of, present }) => of === 'length' && present === undefined)
    .map(({ part, target }) => stockFor({ part, length: target }, unit));
}
