import type { GetOffer } from '../../job/get-list.ts';
import type { InsertLength } from '../../thread/insert-lengths.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { LeggedAnswer, LeggedQuestion } from './insert-in-legs.ts';

/** An insert for each leg, by its thread and length; its tap and drill are asked for by the cuts. */
export function getsOfInsert(
  { thread }: Pick<LeggedQuestion, 'thread'>,
  { legs }: Pick<LeggedAnswer, 'legs'>,
  unit: ShownUnit,
): readonly GetOffer[] {
  return legs.map(({ thickness, chosen }) =>
    insertToGet(thread.designation, thickness ? chosen : undefined, unit),
  );
}

/** `insert 7/16-20 UNF, 1.5D, .656 in`. */
export function insertToGet(
  thread: string,
  length: Pick<InsertLength, 'times' | 'nominal'> | undefined,
  unit: ShownUnit,
): GetOffer {
  const name = `insert ${thread.replace('x', ' × ')}`;
  return {
    kind: 'insert',
    what: length
      ? `${name}, ${length.times}, ${show(length.nominal, unit)}`
      : `${name}, its length not known yet`,
    count: 1,
  };
}
