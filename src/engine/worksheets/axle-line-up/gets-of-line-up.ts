import type { GetOffer } from '../../job/get-list.ts';
import { shimsToGet, stockFor } from '../../job/stock.ts';
import type { ShownUnit } from '../../length/show.ts';
import { stockOfNewLengths } from '../new-parts.ts';
import { cutsOfLineUp, NEW_FOR_SHIMS } from './cuts-of-line-up.ts';
import type { LineUpAnswer, LineUpQuestion } from './line-up.ts';
import { spacerName } from './say-line-up-names.ts';

/**
 * Stock for every spacer that is made, and the shim beside each that wants one.
 *
 * Range: nothing while no spacer can be cut; one that is cut last has no length yet. In the way that makes new what a shim
 *        would do for, no shim.
 */
export function getsOfLineUp(
  q: LineUpQuestion,
  answer: LineUpAnswer,
  { way, unit }: { readonly way: string | undefined; readonly unit: ShownUnit },
): readonly GetOffer[] {
  const ways = cutsOfLineUp(q, answer);
  const made = ways.find(({ id }) => id === way) ?? ways[0];
  return [
    ...stockOfNewLengths(made, unit),
    ...answer.spacers.flatMap(({ name, deed }) => {
      const part = spacerName(name, q).toLowerCase();
      if (deed.kind === 'last' && !q.onHand[name]) return [stockFor({ part }, unit)];
      if (deed.kind !== 'shim' || !deed.shim.ok || made?.id === NEW_FOR_SHIMS) return [];
      const { to: aim, lower, upper } = deed.shim.value;
      return [shimsToGet({ aim, lower, upper }, unit)];
    }),
  ];
}
