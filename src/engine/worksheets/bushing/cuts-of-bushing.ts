import type { BushingAnswer, BushingQuestion } from '../../press/bushing.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { LESS_THE_BAND, wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { isMore, isZero, minus, sameLength, type Length } from '../../length/length.ts';
import { sizeStep, type Dial } from '../../length/metal-on.ts';
import { leastCleanUp } from '../../fit/tables/least-walls.ts';
import { leftToReam, mostReamed } from '../../press/tables/press-practice.ts';
import { allReamers } from '../../fit/tables/reamer-sizes.ts';

/**
 * What is cut for a bushing, in the order of work: the worn bore opened and reamed, the bushing's outside turned, its
 * inside bored once it is in.
 *
 * Units:   diameters. A bore with more to come off than a reamer takes is bored first.
 * Range:   only what is still to be done: a reamed bore isn't reamed again, an outside that was measured is only turned
 *          again where it is no good. None while something has to be put right before any cut.
 * Source:  limits of the class; what a reamer is left: tables/press-practice.ts, tables/least-walls.ts.
 */
export function cutsOfBushing(q: BushingQuestion, answer: BushingAnswer, dial: Dial): readonly CutWay[] {
  if (mustStop(answer)) return [];
  const offers = [
    ...(q.reamed ? [] : openedBore(q, answer, dial)),
    ...outsideTurned(q, answer),
    insideBored(q, answer),
  ];
  return wayOf({ id: 'bushing', name: 'Bushing', offers });
}

// What a bushing that is no good would do in the press is cured by turning it right; a wall that is too thin is not.
function mustStop({ warnings, measured }: BushingAnswer): boolean {
  const stops = warnings.filter(({ weighs }) => weighs === 'stop');
  return measured?.verdict.kind === 'no-good'
    ? stops.some(({ code }) => code === 'thin-bushing' || code === 'thin-part')
    : stops.length > 0;
}

function openedBore(q: BushingQuestion, answer: BushingAnswer, dial: Dial): readonly CutOffer[] {
  const present = mean(q.bore.tightest);
  const { ream, reamTakes, pressFit } = answer;
  const isReamer = allReamers.some(({ size }) => sameLength(size, ream.size));
  const common = { part: 'bore', of: 'bore', material: q.part.id } as const;
  const finish = {
    name: isReamer ? `Bore, reamed ${ream.name}` : 'Bore, bored for the bushing',
    ...common,
    operation: isReamer ? 'ream' : 'bore',
    target: ream.size,
    ...pressFit.hole,
    limitsFrom: pressFit.source,
  } as const;
  // A reamer follows the hole it finds: on the old axis it is bored first, however little there is to take.
  if (!isReamer || (q.keepsAxis !== true && !isMore(reamTakes, mostReamed))) return [{ ...finish, present }];
  return [{ ...boredFirst(ream.size, sizeStep('bore', dial)), ...common, present }, finish];
}

/** What a bore is opened to before a reamer that would have too much to take. */
export function openedFirst(reamer: Length, step: Length): Length {
  return boredFirst(reamer, step).target;
}

export function boredFirst(reamer: Length, step: Length) {
  const limits = { lower: minus(reamer, mostReamed), upper: minus(reamer, leastCleanUp) };
  return {
    name: 'Bore, opened for the reamer',
    operation: 'bore',
    target: targetBetween({ ...limits, aim: minus(reamer, leftToReam) }, 'bore', step),
    ...limits,
    limitsFrom: 'what a reamer is left to take: common practice, no source',
  } as const;
}

function outsideTurned(q: BushingQuestion, answer: BushingAnswer): readonly CutOffer[] {
  const { measured, turn, turnTo, pressFit } = answer;
  const verdict = measured?.verdict;
  if (q.outside && verdict?.kind !== 'no-good') return [];
  // One that is too large can be turned down; for one that is too small there is only a new one.
  const present = verdict?.kind === 'no-good' && verdict.way === 'over' && q.outside;
  const isPlated = q.plating !== undefined && !isZero(q.plating);
  return [
    {
      name: 'Bushing, outside turned',
      part: 'bushing',
      operation: 'turn',
      of: 'outside',
      ...(present && { present: mean(present.tightest) }),
      target: turnTo,
      ...turn,
      limitsFrom: `${pressFit.source}${q.reamed ? ', to the bore as reamed' : ''}${isPlated ? ', before plating' : ''}`,
      material: q.bushing.id,
    },
  ];
}

function insideBored(
  q: BushingQuestion,
  { inside, insideTo, insideFit, insideProvable }: BushingAnswer,
): CutOffer {
  return {
    name: 'Bushing, bored once it is in',
    part: 'bushing',
    operation: 'bore',
    of: 'bore',
    target: insideTo,
    ...inside,
    limitsFrom: `${insideFit.source}, to the pin as measured${insideProvable ? `, ${LESS_THE_BAND}` : '; its readings are too coarse to be sure of any'}`,
    material: q.bushing.id,
  };
}
