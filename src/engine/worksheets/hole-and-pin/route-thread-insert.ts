import { usualLimits } from './hole-and-pin-limits.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import type { Route, RouteContext, RouteStep } from './hole-and-pin-routes.ts';
import { leastPercentWorthKeeping } from '../../thread/insert-drill.ts';
import { tapReach } from '../../thread/insert-limits.ts';
import { dividedBy, isLess, isMore, sameLength, zero, type Length } from '../../length/length.ts';
import { ask, caution, judged, noCureNeeded, out, speaksFor, type Finding } from './route-findings.ts';
import { leastWallSource } from '../../fit/tables/least-walls.ts';
import {
  insertDrill,
  needsDrill,
  threadInsert,
  type InsertAnswer,
  threadLeft,
  type InsertRefusal,
} from '../thread-insert/thread-insert.ts';
import { threadPlay } from '../../thread/thread-play.ts';
import { threadNamed, type Thread } from '../../thread/threads.ts';

/**
 * Tap the hole for a wire thread insert and screw the bolt into the part.
 *
 * Range:   only for a bolt that is threaded and fixed in its place by a nut. What was told is not asked again.
 * Refuses: (as `out`) insert-not-for-this-joint, insert-needs-a-bolt, shank-must-pass, closer-than-thread-play,
 *          no-insert-made, hole-past-insert-thread, too-little-thread, wall-too-thin, not-needed, not-for-a-tight-bore.
 * Source:  the hole, its drill and lengths from `threadInsert`; the thread's play from `threadPlay`.
 */
export function threadInsertRoute(context: RouteContext): Route {
  const { question } = context;
  if (question.joint !== 'located')
    return withoutSteps(out({ code: 'insert-not-for-this-joint', joint: question.joint }));
  if (question.pinThread === undefined) return withoutSteps(out({ code: 'insert-needs-a-bolt' }));
  const noCure = noCureNeeded(context);
  if (noCure) return withoutSteps(noCure);
  const thread = threadNamed(question.pinThread);
  if (!thread) return withoutSteps(ask({ code: 'thread-not-known', thread: question.pinThread }));
  return routeFor(context, thread);
}

function routeFor(context: RouteContext, thread: Thread): Route {
  const { question } = context;
  const insert = threadInsert({
    thread,
    metal: question.metal ?? 'aluminium',
    hole: question.bore,
    ...(question.wall && { wall: { kind: 'present', wall: question.wall } }),
    ...(question.leastWall && { leastWall: question.leastWall }),
    ...(question.thickness && isMore(question.thickness, zero) && { thickness: question.thickness }),
  });
  const use = useFindings(context, thread);
  if (!insert.ok) return withoutSteps(refusedInsert(insert.refusal, thread), ...use);
  const steps = stepsFor(question, thread, insert.value);
  const { wallLeft } = insert.value;
  return {
    kind: 'thread-insert',
    ...judged([
      ...use,
      ...holeFindings(insert.value),
      ...metalFindings(question, thread, insert.value),
      wallFinding(context, thread, insert.value),
    ]),
    steps,
    ...(wallLeft && { wallLeft: wallLeft.wall }),
    takes: tapReach(insert.value.limits, context.bore.tightest),
    irreversibleSteps: cutsOf(insert.value),
  };
}

// How the bolt is used decides before the hole does: what passes through it, what carries it, how close it has to locate.
function useFindings({ question, limits, nominal }: RouteContext, thread: Thread): readonly Finding[] {
  const { shankPasses, clampedFacesCarry } = question;
  const name = thread.designation;
  const play = threadPlay(thread).most;
  const isCloserThanUsual = isLess(limits.upper, usualLimits(question, nominal).upper);
  const threadLocates = clampedFacesCarry === false || isCloserThanUsual;
  return [
    ...(shankPasses === undefined ? [ask({ code: 'ask-shank-passes', thread: name })] : []),
    ...(shankPasses === true ? [out({ code: 'shank-must-pass', thread: name })] : []),
    ...(clampedFacesCarry === undefined ? [ask({ code: 'ask-clamped-faces' })] : []),
    ...(clampedFacesCarry === true ? [speaksFor({ code: 'faces-carry' })] : []),
    ...(clampedFacesCarry === false ? [caution({ code: 'threads-in-shear', thread: name })] : []),
    ...(threadLocates && isLess(limits.upper, play)
      ? [out({ code: 'closer-than-thread-play', play, upper: limits.upper })]
      : []),
  ];
}

function holeFindings({ hole, drill }: InsertAnswer): readonly Finding[] {
  const percent = threadLeft({ hole, drill });
  if (hole.state === 'over')
    return percent < leastPercentWorthKeeping
      ? [out({ code: 'too-little-thread', percent, leastPercent: leastPercentWorthKeeping })]
      : [ask({ code: 'hole-over', overBy: hole.overBy ?? zero, percent })];
  if (hole.state === 'straight-to-tap') return [speaksFor({ code: 'straight-to-tap', percent })];
  const code = hole.state === 'run-drill-through-anyway' ? 'drill-anyway' : 'drill-first';
  return [speaksFor({ code, drill: drill.drill, percent })];
}

// The metal is asked for only where it changes the drill.
function metalFindings(
  question: HoleAndPinQuestion,
  thread: Thread,
  answer: InsertAnswer,
): readonly Finding[] {
  if (question.metal !== undefined || !needsDrill(answer)) return [];
  const aluminium = insertDrill(thread, 'aluminium').drill;
  const steel = insertDrill(thread, 'steel').drill;
  return sameLength(aluminium.size, steel.size) ? [] : [ask({ code: 'ask-metal', aluminium, steel })];
}

function wallFinding(
  { question, bore }: RouteContext,
  thread: Thread,
  { wallLeft, limits }: InsertAnswer,
): Finding {
  const source = question.leastWall ? leastWallSource.own : leastWallSource.besideInsert;
  if (!wallLeft) {
    const takes = tapReach(limits, bore.tightest);
    return ask({ code: 'ask-wall', takes, least: question.leastWall ?? leastInsertWall(thread), source });
  }
  const { wall, least, enough } = wallLeft;
  return enough
    ? speaksFor({ code: 'wall-left', wall, least, source })
    : out({ code: 'wall-too-thin', wall, least, source });
}

// As `threadInsert` holds it: half the bolt's diameter, common practice, no source.
function leastInsertWall(thread: Thread): Length {
  return dividedBy(thread.major, 2);
}

// A drill run through to be sure takes no more than the tap would: it is no cut of its own.
function cutsOf(answer: InsertAnswer): number {
  return needsDrill(answer) && answer.hole.state !== 'run-drill-through-anyway' ? 2 : 1;
}

function stepsFor(
  { thickness }: HoleAndPinQuestion,
  thread: Thread,
  answer: InsertAnswer,
): readonly RouteStep[] {
  const length = thickness && answer.lengths.find(({ chosen }) => chosen);
  return [
    ...(needsDrill(answer) ? [{ do: 'drill', drill: answer.drill.drill } as const] : []),
    { do: 'tap-for-insert', thread: thread.designation },
    { do: 'fit-insert', thread: thread.designation, ...(length && { length }) },
  ];
}

function refusedInsert(refusal: InsertRefusal, thread: Thread): Finding {
  if (refusal.code === 'hole-past-insert-thread')
    return out({
      code: 'hole-past-insert-thread',
      thread: refusal.thread,
      hole: refusal.hole,
      major: refusal.major,
    });
  return out({ code: 'no-insert-made', thread: thread.designation });
}

function withoutSteps(...findings: readonly Finding[]): Route {
  return { kind: 'thread-insert', ...judged(findings), steps: [], takes: zero, irreversibleSteps: 2 };
}
