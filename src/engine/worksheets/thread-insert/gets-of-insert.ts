import type { Need } from '../../job/get-list.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { LeggedAnswer, LeggedQuestion } from './insert-in-legs.ts';

/** An insert for each leg, by its thread and length; its tap and drill are asked for by the cuts. */
export function getsOfInsert(
  { thread }: Pick<LeggedQuestion, 'thread'>,
  { legs }: Pick<LeggedAnswer, 'legs'>,
  unit: ShownUnit,
): readonly Omit<Need, 'purpose'>[] {
  const name = `insert ${thread.designation.replace('x', ' × ')}`;
  return legs.map(({ thickness, chosen }) => ({
    kind: 'insert',
    what: thickness
      ? `${name}, ${chosen.times}, ${show(chosen.nominal, unit)}`
      : `${name}, its length not known yet`,
    count: 1,
  }));
}
