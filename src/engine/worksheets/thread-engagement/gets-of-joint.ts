import type { GetOffer } from '../../job/get-list.ts';
import { isNegative, minus } from '../../length/length.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';
import { sayLengthToBuy } from '../../thread/say-grip.ts';
import { boltGrades } from '../../thread/tables/bolt-grades.ts';
import type { JointAnswer } from './joint.ts';
import type { JointQuestion } from './question.ts';

/**
 * The bolt or stud to buy, with its grade, its thread and the range of its length. None where no length fits or no leg is
 * given; none either where one is on hand, unless that one is no good.
 */
export function getsOfJoint(
  { thread: { thread, grade }, held }: JointQuestion,
  { bolt }: JointAnswer,
  unit: ShownUnit,
): readonly GetOffer[] {
  if (!bolt?.length || bolt.length.holeMissing) return [];
  const { least, most, made } = bolt.length;
  if (isNegative(minus(most, least))) return [];
  const isOnHand = bolt.asked.boltLength !== undefined && bolt.verdict?.kind !== 'no-good';
  if (isOnHand) return [];
  const long = made
    ? `${sayLengthToBuy(bolt.length, unit)} long`
    : `longer than ${show(most, unit)}, to be cut to ${figure(least, unit)} to ${show(most, unit)}`;
  const name = boltGrades.find(({ id }) => id === grade)?.name ?? grade;
  return [
    {
      kind: 'bolt',
      what: `${held === 'stud' ? 'stud' : 'bolt'} ${thread.designation.replace('x', ' × ')}, ${name}, ${long}`,
      count: 1,
    },
  ];
}
