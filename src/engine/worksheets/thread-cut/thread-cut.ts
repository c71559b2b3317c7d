import type { Infeed, Threading } from '../../cut/cut.ts';
import type { LatheDial } from '../../cut/dial.ts';
import { passPlan, type PlannedPass } from '../../cut/pass-plan.ts';
import { takesFor } from '../../cut/pass-plan-takes.ts';
import {
  dividedBy,
  isLess,
  isMore,
  lengthOf,
  minus,
  plus,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { onDial, sizeStep } from '../../length/metal-on.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import type { ShownUnit } from '../../length/show.ts';
import { targetBetween } from '../../length/target-between.ts';
import type { Material } from '../../material/tables/materials.ts';
import { bandOf, mean, type Estimate } from '../../reading/estimate.ts';
import {
  externalLimits,
  hasLimits,
  internalLimits,
  type ExternalLimits,
  type InternalLimits,
} from '../../thread/thread-limits.ts';
import {
  bestWireIn,
  overWiresAtTouch,
  sizeOverWires,
  wireRange,
  wiresOffered,
  type WireOffer,
  type WireRange,
} from '../../thread/three-wires.ts';
import type { Thread } from '../../thread/threads.ts';
import { studFor, type Stud, type StudQuestion } from './stud.ts';

export type ThreadCutQuestion = {
  readonly thread: Thread;
  /** What is there now, at its smallest and its largest place. */
  readonly outside: { readonly least: Estimate; readonly most: Estimate };
  /** Left out: the best wire, and exactly that. */
  readonly wire: Estimate | undefined;
  readonly infeed: Infeed;
  readonly hand: Threading['hand'];
  /** That the tool is fed in by. */
  readonly dial: LatheDial;
  readonly steps: { readonly outside: Length; readonly length: Length };
  readonly material: Material | undefined;
  readonly stud: StudQuestion | undefined;
  readonly unit: ShownUnit;
};

export type CutSize = { readonly target: Length; readonly lower: Length; readonly upper: Length };

export type OverWiresCut = CutSize & {
  /** As if the wires lay in the thread when the tool just touches. */
  readonly from: Length;
};

export type ThreadCutAnswer = {
  readonly limits: ExternalLimits;
  readonly nut: InternalLimits;
  readonly outside: CutSize;
  /** The outside is inside its limits already. */
  readonly isTurned: boolean;
  readonly wire: { readonly size: Length; readonly isBest: boolean };
  readonly range: WireRange;
  readonly offered: readonly (WireOffer & { readonly lower: Length; readonly upper: Length })[];
  readonly overWires: OverWiresCut;
  /** From the outside to the root, as the tool goes in; and what the slide moves for it. */
  readonly depth: Length;
  readonly slideMoves: Length;
  readonly passes: readonly PlannedPass[];
  /** Of the nut's pitch diameter over the thread's. */
  readonly play: { readonly least: Length; readonly most: Length };
  readonly room: { readonly start: Length; readonly runOut: Length; readonly groove: Length };
  readonly stud: Stud | undefined;
};

export type ThreadCutRefusal =
  | { readonly code: 'class-not-in-table'; readonly thread: Thread }
  | { readonly code: 'wire-sinks'; readonly wire: Length; readonly range: WireRange; readonly best: Length }
  | {
      readonly code: 'wire-on-crests';
      readonly wire: Length;
      readonly range: WireRange;
      readonly best: Length;
    }
  | { readonly code: 'wire-not-known'; readonly halfWidth: Length }
  | {
      readonly code: 'dial-too-coarse';
      readonly step: Length;
      readonly room: Length;
      readonly infeed: Infeed;
    }
  | { readonly code: 'too-small'; readonly outside: Length; readonly least: Length };

export const finest: Readonly<Record<ShownUnit, Length>> = {
  in: lengthOf('.0001 in'),
  mm: lengthOf('0.001 mm'),
};

/** Common practice, no source: room for the half-nuts to close, and for a hand to open them. */
const START_PITCHES = 3;
const RUN_OUT_PITCHES = 3;

/** From the pitch diameter down to the root of a thread rounded by a sixth of its height: 2/3 · √3/2. */
const TO_ROOT = '0.577350269';

/**
 * A thread cut with a single point: what the outside is turned to, how deep the tool goes, and the limits over the wires.
 *
 * Units:   outside and pitch diameter by class 2A or 6g. Over the wires by `sizeOverWires` of both limits, less three times
 *          what the wire itself is not known to. The tool's root is rounded or flat by a sixth of the sharp height, so that
 *          it goes in 0.61343 P on the basic profile; a sharper or blunter point is found out by the first measurement.
 * Range:   the nut is the same thread's 2B or 6H.
 * Refuses: class-not-in-table; wire-sinks (not proud of the crests), wire-on-crests; wire-not-known; dial-too-coarse (a step
 *          of the slide is wider than the limits); too-small.
 * Source:  ASME B1.1, ISO 965-1 (thread/thread-limits.ts); three wires and 0.61343 P: handbook, ISO 68-1.
 */
export function threadCut(q: ThreadCutQuestion): Result<ThreadCutAnswer, ThreadCutRefusal> {
  if (!hasLimits(q.thread)) return refuse({ code: 'class-not-in-table', thread: q.thread });
  const limits = externalLimits(q.thread);
  const outside = outsideCut(q, limits);
  const least = plus(mean(q.outside.least), bandOf(q.outside.least).halfWidth);
  if (isLess(least, outside.lower))
    return refuse({ code: 'too-small', outside: mean(q.outside.least), least: outside.lower });
  const wire = wireFor(q, limits);
  if (!wire.ok) return wire;
  const isTurned = !isMore(mean(q.outside.most), outside.upper);
  const turned = isTurned ? mean(q.outside.most) : outside.target;
  const overWires = overWiresCut(q, { limits, wire: wire.value, turned });
  if (!overWires.ok) return overWires;
  const passes = passesTo(q, overWires.value);
  if (!passes.ok) return passes;
  return worked({
    ...fittedTo(q.thread, limits),
    outside,
    isTurned,
    wire: wire.value,
    range: wireRange(q.thread, limits),
    offered: wiresOffered(q.thread.pitch, wireRange(q.thread, limits), q.unit).map((offer) => ({
      ...offer,
      ...limitsOver(q.thread, limits, offer.size),
    })),
    overWires: overWires.value,
    ...depthOf(q, overWires.value),
    passes: passes.value,
    stud: q.stud && studFor(q.thread, q.stud),
  });
}

function fittedTo(
  thread: Thread,
  limits: ExternalLimits,
): Pick<ThreadCutAnswer, 'limits' | 'nut' | 'play' | 'room'> {
  const nut = internalLimits(thread);
  return {
    limits,
    nut,
    play: {
      least: minus(nut.pitchLeast, limits.pitchMost),
      most: minus(nut.pitchMost, limits.pitchLeast),
    },
    room: {
      start: times(thread.pitch, START_PITCHES),
      runOut: times(thread.pitch, RUN_OUT_PITCHES),
      groove: minus(limits.pitchLeast, times(thread.pitch, TO_ROOT)),
    },
  };
}

function outsideCut({ steps }: ThreadCutQuestion, { majorLeast, majorMost }: ExternalLimits): CutSize {
  const sides = { lower: majorLeast, upper: majorMost };
  return { ...sides, target: targetBetween(sides, 'outside', steps.outside) };
}

/** The wire on hand, or the best one; refused where it can't measure this thread. */
function wireFor(
  { thread, wire, unit }: ThreadCutQuestion,
  limits: ExternalLimits,
): Result<ThreadCutAnswer['wire'] & { readonly halfWidth: Length }, ThreadCutRefusal> {
  const best = bestWireIn(thread.pitch, unit);
  if (!wire) return worked({ size: best, isBest: true, halfWidth: zero });
  const range = wireRange(thread, limits);
  const size = mean(wire);
  if (isLess(size, range.least)) return refuse({ code: 'wire-sinks', wire: size, range, best });
  if (isMore(size, range.most)) return refuse({ code: 'wire-on-crests', wire: size, range, best });
  return worked({ size, isBest: false, halfWidth: bandOf(wire).halfWidth });
}

/** Both pitch diameter limits as they read over such wires. */
function limitsOver({ pitch }: Thread, { pitchLeast, pitchMost }: ExternalLimits, wire: Length) {
  return {
    lower: sizeOverWires({ pitchDiameter: pitchLeast, pitch, wire }),
    upper: sizeOverWires({ pitchDiameter: pitchMost, pitch, wire }),
  };
}

type Measured = {
  readonly limits: ExternalLimits;
  readonly wire: { readonly size: Length; readonly halfWidth: Length };
  readonly turned: Length;
};

function overWiresCut(
  q: ThreadCutQuestion,
  { limits, wire, turned }: Measured,
): Result<OverWiresCut, ThreadCutRefusal> {
  const { lower, upper } = limitsOver(q.thread, limits, wire.size);
  const doubt = times(wire.halfWidth, 3);
  const sides = { lower: plus(lower, doubt), upper: minus(upper, doubt) };
  const room = minus(sides.upper, sides.lower);
  if (isLess(room, times(finest[q.unit], 2)))
    return refuse({ code: 'wire-not-known', halfWidth: wire.halfWidth });
  return worked({
    ...sides,
    target: targetBetween(sides, 'outside', finest[q.unit]),
    from: overWiresAtTouch({ outside: turned, pitch: q.thread.pitch, wire: wire.size }),
  });
}

function passesTo(
  { dial, infeed, material }: ThreadCutQuestion,
  { from, target, lower, upper }: OverWiresCut,
): Result<readonly PlannedPass[], ThreadCutRefusal> {
  const step = sizeStep('outside', dial);
  const room = minus(upper, lower);
  const plan = passPlan({
    of: 'outside',
    present: from,
    threadFrom: from,
    target,
    lower,
    upper,
    dial,
    takes: takesFor({
      of: 'outside',
      operation: 'thread',
      cuttingTool: 'hss',
      ...(material && { material: material.id }),
    }),
  });
  // Where the plan starts anew at each measurement, only a step inside the limits surely lands.
  if (isMore(step, room) || !plan.ok) return refuse({ code: 'dial-too-coarse', step, room, infeed });
  return worked(plan.value.passes);
}

function depthOf({ dial }: ThreadCutQuestion, { from, target }: OverWiresCut) {
  const off = minus(from, target);
  return { depth: dividedBy(off, 2), slideMoves: onDial('outside', dial, off) };
}
