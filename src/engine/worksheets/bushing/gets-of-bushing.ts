import type { GetOffer } from '../../job/get-list.ts';
import { stockFor } from '../../job/stock.ts';
import type { ShownUnit } from '../../length/show.ts';
import type { BushingAnswer, BushingQuestion } from '../../press/bushing.ts';
import { outsideTurned } from './cuts-of-bushing.ts';

/** The bar a bushing is turned from, where it isn't turned yet or one that is too small is made anew. */
export function getsOfBushing(
  q: BushingQuestion,
  answer: BushingAnswer,
  unit: ShownUnit,
): readonly GetOffer[] {
  const fromBar = outsideTurned(q, answer).filter(({ present }) => present === undefined);
  return fromBar.map(({ part, target }) =>
    stockFor({ part, outside: target, length: q.length, metal: q.bushing.name }, unit),
  );
}
