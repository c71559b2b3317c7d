import type { GetOffer } from '../../job/get-list.ts';
import { shimsToGet } from '../../job/stock.ts';
import type { ShownUnit } from '../../length/show.ts';
import { typedEstimate } from '../../reading/estimate.ts';
import { shimsFromDrawer } from '../../shim/shims.ts';
import type { GivenPiece } from '../given.ts';
import { stockOfNewLengths } from '../new-parts.ts';
import { cutsOfStack } from './cuts-of-stack.ts';
import { shimsAsked } from './shims-in-stack.ts';
import type { StackAnswer, StackQuestion } from './spacer-stack.ts';

/**
 * Stock for the part that the way in hand makes new; where none is gone and a shim would do, that shim, unless the drawer
 * has some that do.
 */
export function getsOfStack(
  q: StackQuestion,
  answer: StackAnswer,
  {
    drawer,
    way,
    unit,
  }: {
    readonly drawer: readonly GivenPiece[];
    readonly way: string | undefined;
    readonly unit: ShownUnit;
  },
): readonly GetOffer[] {
  if (way !== undefined)
    return stockOfNewLengths(
      cutsOfStack(q, answer).find(({ id }) => id === way),
      unit,
    );
  const { shim, verdict } = answer;
  if (verdict.kind === 'good' || !shim || shimsAreThere(q, answer, drawer)) return [];
  return [shimsToGet({ aim: shim.thickness, ...shim }, unit)];
}

const LIES_FLAT: ReadonlySet<string> = new Set(['shim', 'washer', 'spacer']);

function shimsAreThere(q: StackQuestion, answer: StackAnswer, drawer: readonly GivenPiece[]): boolean {
  const asked = shimsAsked(q, answer);
  const flat = drawer.flatMap(({ id, name, kind, count, thickness }) =>
    LIES_FLAT.has(kind) && thickness ? [{ id, name, count, thickness: typedEstimate(thickness) }] : [],
  );
  const pick = asked && shimsFromDrawer({ drawer: flat, ...asked });
  return pick?.ok === true && pick.value.fits;
}
