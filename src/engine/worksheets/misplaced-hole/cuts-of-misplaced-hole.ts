import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { minus, zero } from '../../length/length.ts';
import type { Dial } from '../../length/metal-on.ts';
import { targetBetween } from '../../length/target-between.ts';
import { leastCleanUp } from '../../fit/tables/least-walls.ts';
import { leftToReam, mostReamed } from '../../press/tables/press-practice.ts';
import { insideBored, openedBore, outsideTurned } from '../bushing/cuts-of-bushing.ts';
import type { MisplacedHoleAnswer, MisplacedHoleQuestion } from './misplaced-hole.ts';

/**
 * What is cut for a hole in the wrong place, in the order of work: the hole opened, the bushing's outside turned, its bore off
 * the middle in a four-jaw chuck, and to size once it is in and locked.
 *
 * Range:   only what is still to be done; none while the wall or the press speaks against it.
 * Source:  as a bushing's; what is left for the last cut: tables/press-practice.ts.
 */
export function cutsOfMisplacedHole(
  q: MisplacedHoleQuestion,
  answer: MisplacedHoleAnswer,
  dial: Dial,
): readonly CutWay[] {
  if (mustStop(answer)) return [];
  const { press, off } = answer;
  const bushed = { ...q.bushed, keepsAxis: q.inRightPlace };
  const opened = q.bushed.reamed ? [] : openedBore(bushed, openedWhere(q, answer), dial);
  const offers = [
    ...opened.map((offer, index) => (q.inRightPlace && index === 0 ? inItsPlace(offer) : offer)),
    ...outsideTurned(q.bushed, press),
    ...(off ? [boredOffMiddle(q, answer)] : []),
    insideBored(q.bushed, press),
  ];
  const isUnsure = answer.judgedPlace.verdict.kind !== 'good' || answer.wall.verdict.kind !== 'good';
  return wayOf({
    id: 'bushing',
    name: off ? 'Offset bushing' : 'Bushing in its right place',
    offers,
    ...(isUnsure && { unsure: true }),
  });
}

/** A bushing that is no good in the press is turned right; a wall too thin, or a part that gives way, is not cured so. */
export function mustStop({ wall, press }: MisplacedHoleAnswer): boolean {
  const isTurnedRight = press.measured?.verdict.kind === 'no-good';
  return (
    wall.verdict.kind === 'no-good' ||
    (!isTurnedRight && press.warnings.some(({ weighs }) => weighs === 'stop'))
  );
}

/** In its right place the hole is clean from the least size on, whichever side it has worn to: no reamer may follow it before. */
function openedWhere({ inRightPlace }: MisplacedHoleQuestion, { press, least }: MisplacedHoleAnswer) {
  return inRightPlace ? { ...press, axis: { shift: zero, onOldAxis: least } } : press;
}

function inItsPlace(offer: CutOffer): CutOffer {
  return { ...offer, name: 'Bore, opened in its right place', operation: 'bore' };
}

/** The bushing's bore as it leaves the chuck: pressing closes it, so that something is left for the last cut. */
export function boreInChuck(
  { bushed: { step } }: MisplacedHoleQuestion,
  { press: { insideTo } }: Pick<MisplacedHoleAnswer, 'press'>,
) {
  const limits = { lower: minus(insideTo, mostReamed), upper: minus(insideTo, leastCleanUp.in) };
  return { ...limits, target: targetBetween({ ...limits, aim: minus(insideTo, leftToReam) }, 'bore', step) };
}

export const OFF_MIDDLE = 'Bushing, bored off its middle';

function boredOffMiddle(q: MisplacedHoleQuestion, answer: MisplacedHoleAnswer): CutOffer {
  const { off } = answer;
  return {
    name: OFF_MIDDLE,
    part: 'bushing',
    operation: 'bore',
    of: 'bore',
    ...boreInChuck(q, answer),
    limitsFrom: 'what the last cut is left: common practice, no source',
    material: q.bushed.bushing.id,
    ...(off && { setOver: { by: off.by, within: off.within } }),
  };
}
