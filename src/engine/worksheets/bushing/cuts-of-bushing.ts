import type { BushingAnswer, BushingQuestion } from '../../press/bushing.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { LESS_THE_BAND, wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { isMore, isZero, largest, minus, sameLength, smallest, type Length } from '../../length/length.ts';
import { sayWhereOpened } from '../../fit/worn-axis.ts';
import { sizeStep, type Dial } from '../../length/metal-on.ts';
import { leastCleanUp } from '../../fit/tables/least-walls.ts';
import { leftToReam, mostReamed } from '../../press/tables/press-practice.ts';
import { allReamers, type Reamer } from '../../fit/tables/reamer-sizes.ts';

/**
 * What is cut for a bushing, in the order of work: the worn bore opened and reamed, the bushing's outside turned, its
 * inside bored once it is in.
 *
 * Units:   diameters. A bore with more to come off than a reamer takes is bored first.
 * Range:   only what is still to be done: a reamed bore isn't reamed again, an outside that was measured is only turned
 *          again where it is no good. None while something has to be put right before any cut; unsure while the readings leave
 *          open whether it holds.
 * Source:  limits of the class; what a reamer is left: tables/press-practice.ts, tables/least-walls.ts.
 */
export function cutsOfBushing(q: BushingQuestion, answer: BushingAnswer, dial: Dial): readonly CutWay[] {
  if (mustStop(answer)) return [];
  const offers = [
    ...(q.reamed ? [] : openedBore(q, answer, dial)),
    ...outsideTurned(q, answer),
    insideBored(q, answer),
  ];
  const mayNotHold = answer.warnings.some(({ code }) => code === 'band-too-wide');
  return wayOf({ id: 'bushing', name: 'Bushing', offers, ...(mayNotHold && { unsure: true }) });
}

// What a bushing that is no good would do in the press is cured by turning it right; a wall that is too thin is not.
function mustStop({ warnings, measured }: BushingAnswer): boolean {
  const stops = warnings.filter(({ weighs }) => weighs === 'stop');
  return measured?.verdict.kind === 'no-good'
    ? stops.some(({ code }) => code === 'thin-bushing' || code === 'thin-part')
    : stops.length > 0;
}

/** The part’s hole opened: bored first where a reamer has too much to take, or would follow a hole that isn’t where it has to be. */
export function openedBore(q: BushingQuestion, answer: BushingAnswer, dial: Dial): readonly CutOffer[] {
  const present = mean(q.bore.tightest);
  const { ream, pressFit, axis } = answer;
  const reamer = reamerOf(answer);
  const where = sayWhereOpened(axis, q.keepsAxis);
  const common = { part: 'bore', of: 'bore', material: q.part.id } as const;
  const finish = {
    name: reamer ? `Bore, reamed ${reamer.name}` : 'Bore, bored for the bushing',
    ...common,
    operation: reamer ? 'ream' : 'bore',
    target: ream.size,
    ...pressFit.hole,
    limitsFrom: pressFit.source,
  } as const;
  const first = openedFirst(q, answer, sizeStep('bore', dial));
  if (!first) return [{ ...finish, name: `${finish.name}${where}`, present }];
  return [{ ...first, name: `${first.name}${where}`, ...common, present }, finish];
}

/** The reamer that is stamped with the size it is opened to; none where it is bored. */
export function reamerOf({ ream }: Pick<BushingAnswer, 'ream'>): Reamer | undefined {
  return allReamers.find(({ size }) => sameLength(size, ream.size));
}

/**
 * What a bore is opened to before its reamer: where that would have too much to take, and on the old axis however little
 * there is to take, as a reamer follows the hole it finds.
 */
export function openedFirst(
  { keepsAxis, shop = 'in' }: BushingQuestion,
  answer: BushingAnswer,
  step: Length,
) {
  const { ream, reamTakes, axis } = answer;
  if (!reamerOf(answer) || (keepsAxis !== true && !isMore(reamTakes, mostReamed))) return undefined;
  const touches = keepsAxis === true && axis ? minus(axis.onOldAxis, leastCleanUp[shop]) : undefined;
  return boredFirst(ream.size, step, touches);
}

/** A bore opened for a reamer; `atLeast` is where it touches metal all round, so that the wear leads no reamer after it. */
export function boredFirst(reamer: Length, step: Length, atLeast?: Length) {
  const usual = { lower: minus(reamer, mostReamed), aim: minus(reamer, leftToReam) };
  const upper = minus(reamer, leastCleanUp.in);
  // Never past what the reamer still has to take, however far the wear goes.
  const lower = atLeast ? smallest(largest(usual.lower, atLeast), upper) : usual.lower;
  const limits = { lower, upper };
  return {
    name: 'Bore, opened for the reamer',
    operation: 'bore',
    target: targetBetween({ ...limits, aim: largest(usual.aim, lower) }, 'bore', step),
    ...limits,
    limitsFrom: 'what a reamer is left to take: common practice, no source',
  } as const;
}

/** Nothing where it was measured and isn’t too large. */
export function outsideTurned(q: BushingQuestion, answer: BushingAnswer): readonly CutOffer[] {
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

/** The last cut: pressing closes the bore. */
export function insideBored(
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
