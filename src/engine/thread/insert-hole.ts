import { bandOf, mean, type Band, type Estimate } from '../reading/estimate.ts';
import type { InsertDrillChoice } from './insert-drill.ts';
import { percentOfThread, type InsertLimits } from './insert-limits.ts';
import { isMore, largest, minus, type Length } from '../length/length.ts';
import type { Thread } from './threads.ts';
import { verdictOf } from '../reading/verdict.ts';

export type InsertHoleState = 'solid' | 'drill' | 'run-drill-through-anyway' | 'straight-to-tap' | 'over';

export type InsertHole = {
  readonly state: InsertHoleState;
  /** Percent of thread at the loosest place as the hole is now. */
  readonly percent?: number;
  /** Percent of thread at the loosest place once the drill of this answer has been through, where it has to go. */
  readonly percentAfterDrill?: number;
  readonly tightest?: Length;
  readonly loosest?: Length;
  /** Of the tightest place, which decides about the drill. */
  readonly band?: Band;
  readonly overBy?: Length;
  /** The loosest place lies too close to the maximum to be called inside or over. */
  readonly closeToMost?: boolean;
  /** Over in its loosest place, and still not proved large enough for the tap in its tightest. */
  readonly drillTightest?: boolean;
};

export type MeasuredHole = { readonly tightest: Estimate; readonly loosest: Estimate };

type HoleQuestion = {
  readonly thread: Thread;
  readonly limits: InsertLimits;
  readonly drill: InsertDrillChoice;
  readonly hole?: MeasuredHole;
};

/**
 * What a hole needs before the insert's tap: its tightest place is held against the least minor diameter, its loosest
 * against the greatest, each with its band.
 *
 * Range:  tightest clearly below: drill. Too close to call: run the drill through anyway. Clearly large enough:
 *         straight to the tap. Loosest above the greatest, by however little: over, with the thread that is left.
 * Source: ISO 14253-1 idea, through `verdictOf`; the loosest place counts as over from its mean, because metal can't be
 *         put back and the percent says what it costs.
 */
export function insertHole({ thread, limits, drill, hole }: HoleQuestion): InsertHole {
  if (!hole) return { state: 'solid', percentAfterDrill: drill.percent };
  const tightest = mean(hole.tightest);
  const loosest = mean(hole.loosest);
  const band = bandOf(hole.tightest);
  const needsDrill = drillState(tightest, band, limits);
  const isOver = isMore(loosest, limits.minorMost);
  return {
    state: isOver ? 'over' : needsDrill,
    percent: percentOfThread(thread, loosest),
    ...(needsDrill !== 'straight-to-tap' && {
      percentAfterDrill: percentOfThread(thread, largest(loosest, drill.drill.size)),
    }),
    tightest,
    loosest,
    band,
    ...(isOver && { overBy: minus(loosest, limits.minorMost) }),
    ...(isCloseToMost(hole.loosest, limits) && { closeToMost: true }),
    ...(isOver && needsDrill !== 'straight-to-tap' && { drillTightest: true }),
  };
}

function drillState(
  tightest: Length,
  band: Band,
  limits: InsertLimits,
): 'drill' | 'run-drill-through-anyway' | 'straight-to-tap' {
  const verdict = verdictOf({
    value: tightest,
    ...band,
    limits: { lower: limits.minorLeast, source: limits.minorMostSource },
  });
  if (verdict.kind === 'no-good') return 'drill';
  return verdict.kind === 'good' ? 'straight-to-tap' : 'run-drill-through-anyway';
}

function isCloseToMost(loosest: Estimate, limits: InsertLimits): boolean {
  const verdict = verdictOf({
    value: mean(loosest),
    ...bandOf(loosest),
    limits: { upper: limits.minorMost, source: limits.minorMostSource },
  });
  return verdict.kind === 'too-close';
}
