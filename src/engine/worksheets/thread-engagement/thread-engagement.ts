import { combine, type Band, type Estimate } from '../../reading/estimate.ts';
import {
  floatMm,
  isMore,
  largest,
  lengthFromFloat,
  lengthOf,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { legOf } from '../../reading/settle.ts';
import type { BoltGradeId } from '../../thread/tables/bolt-grades.ts';
import {
  boltStrength,
  shearAreas,
  stressAreaSquareMm,
  type BoltStrength,
} from '../../thread/thread-strength.ts';
import { hasInserts, type Thread } from '../../thread/threads.ts';
import { verdictOf, type Verdict } from '../../reading/verdict.ts';

export type EngagementQuestion = {
  readonly thread: Thread;
  readonly grade: BoltGradeId;
  /** Least tensile strength of what the thread is in. */
  readonly parentTensileMpa: number;
  /** The full threads that hold; with an insert its nominal length. Left out: only what is needed is worked out. */
  readonly engaged?: Estimate;
  readonly withInsert: boolean;
};

/** What gives first when the bolt is pulled until something does. */
export type GivesFirst = 'bolt' | 'bolt-threads' | 'parent-threads';

export type EngagementAnswer = {
  readonly strength: BoltStrength;
  readonly stressAreaSquareMm: number;
  readonly boltShearSquareMmPerMm: number;
  readonly parentShearSquareMmPerMm: number;
  /** The least length that holds the strongest bolt of its grade, for each thread and for both. */
  readonly least: { readonly bolt: Length; readonly parent: Length; readonly both: Length };
  readonly breaksAtMostN: number;
  readonly engaged?: {
    /** What holds: with an insert 0.75 of a pitch less than its nominal length. */
    readonly length: Length;
    readonly band: Band;
    readonly verdict: Verdict;
    readonly boltThreadsHoldN: number;
    readonly parentThreadsHoldN: number;
    readonly first: GivesFirst;
    /** The weaker thread's load over the strongest bolt's: above 1 the bolt breaks first. */
    readonly timesTheBolt: number;
  };
};

export type EngagementRefusal =
  | { readonly code: 'no-insert-for-thread'; readonly thread: string }
  | { readonly code: 'nothing-engaged' };

// Far finer than any thread is cut: it decides nothing.
const STEP = lengthOf('.00001 mm');
// A thread's shear strength for each unit of tensile strength, the factor 2 of the handbook formula.
const SHEAR_SHARE = 0.5;

export const ENGAGEMENT_SOURCE =
  'FED-STD-H28/2B at the worst of the thread limits; shear taken as half the tensile strength';

/**
 * Whether a bolt breaks before its thread strips, and the least engagement for that.
 *
 * Units:   Lengths; stress in MPa and force in N, floating point.
 * Range:   the bolt is taken at its greatest tensile strength, the part at its least; both threads at the worst of their
 *          limits. With an insert the part is checked at the insert's tapped hole, over the installed length at its least.
 * Refuses: no-insert-for-thread, nothing-engaged (an engagement of nothing, or less than an insert loses in winding in).
 * Source:  FED-STD-H28/2B; Le = 2 At / (π Kn (1/2 + 0.57735 n (Es − Kn))) where both are of one strength.
 */
export function threadEngagement(q: EngagementQuestion): Result<EngagementAnswer, EngagementRefusal> {
  if (q.withInsert && !hasInserts(q.thread))
    return refuse({ code: 'no-insert-for-thread', thread: q.thread.designation });
  const held = q.engaged && heldLength(q.engaged, q);
  if (held && !isMore(held.value, zero)) return refuse({ code: 'nothing-engaged' });
  const strength = boltStrength(q.grade, q.thread.major);
  const areaSquareMm = stressAreaSquareMm(q.thread);
  const shear = shearAreas(q.thread, q.withInsert);
  const breaksAtMostN = areaSquareMm * strength.tensileMostMpa;
  const perMm = {
    // The bolt's own strength stands on both sides here: a stronger bolt has stronger threads.
    bolt: SHEAR_SHARE * strength.tensileMostMpa * shear.boltSquareMmPerMm,
    parent: SHEAR_SHARE * q.parentTensileMpa * shear.parentSquareMmPerMm,
  };
  const bolt = lengthFromFloat(breaksAtMostN / perMm.bolt, STEP);
  const parent = lengthFromFloat(breaksAtMostN / perMm.parent, STEP);
  const least = { bolt, parent, both: largest(bolt, parent) };
  return worked({
    strength,
    stressAreaSquareMm: areaSquareMm,
    boltShearSquareMmPerMm: shear.boltSquareMmPerMm,
    parentShearSquareMmPerMm: shear.parentSquareMmPerMm,
    least,
    breaksAtMostN,
    ...(held && { engaged: engagedAnswer({ held, least: least.both, perMm, breaksAtMostN }) }),
  });
}

type Held = { readonly value: Length; readonly band: Band };

/** An insert is wound in 0.5 to 0.75 of a pitch shorter than its nominal length (ASME B18.29.1). */
function heldLength(engaged: Estimate, { thread, withInsert }: EngagementQuestion): Held {
  const lost = times(thread.pitch, withInsert ? '0.75' : '0');
  const exact: Estimate = { sum: lost, count: 1, scatter: zero, degreesOfFreedom: Infinity };
  return combine([
    { estimate: engaged, coefficient: 1 },
    { estimate: exact, coefficient: -1 },
  ]);
}

function engagedAnswer(q: {
  readonly held: Held;
  readonly least: Length;
  readonly perMm: { readonly bolt: number; readonly parent: number };
  readonly breaksAtMostN: number;
}): NonNullable<EngagementAnswer['engaged']> {
  const lengthMm = floatMm(q.held.value);
  const boltThreadsHoldN = q.perMm.bolt * lengthMm;
  const parentThreadsHoldN = q.perMm.parent * lengthMm;
  const weakerN = Math.min(boltThreadsHoldN, parentThreadsHoldN);
  const weaker = boltThreadsHoldN < parentThreadsHoldN ? 'bolt-threads' : 'parent-threads';
  const verdict = verdictOf({
    value: q.held.value,
    ...q.held.band,
    limits: { lower: q.least, source: ENGAGEMENT_SOURCE },
  });
  return {
    length: q.held.value,
    band: q.held.band,
    verdict,
    boltThreadsHoldN,
    parentThreadsHoldN,
    first: weakerN < q.breaksAtMostN ? weaker : 'bolt',
    timesTheBolt: weakerN / q.breaksAtMostN,
  };
}

/** For asking which tool would settle it. */
export function engagementLegs(engaged: Estimate) {
  return [legOf('depth', engaged, 1)];
}
