import { floatMm } from '../../length/length.ts';
import { mean } from '../../reading/estimate.ts';
import { laidPattern } from './pattern.ts';
import type { PlateQuestion } from './plate-question.ts';
import { floatSpot } from './spots.ts';
import { leastWeb } from './tables/least-webs.ts';

type Round = { readonly x: number; readonly y: number };

// Chosen, not published: no hand sets a pattern finer than half a degree for want of a reason.
const STEPS_A_DEGREE = 2;
const NEARLY = 1e-6;

/**
 * The turn of pattern B to pattern A that leaves most between their holes.
 *
 * Units:   degrees counterclockwise, in halves. The smallest of those that leave as much. Floating point: it is a choice
 *          of turns, and what each leaves is worked out exactly elsewhere.
 * Range:   `keepsNone`: no turn where that leaves enough. None where there is one pattern, or where one can't be laid.
 */
export function bestTurn(
  q: PlateQuestion,
  { keepsNone }: { readonly keepsNone: boolean },
): number | undefined {
  if (!q.b) return undefined;
  const a = laidPattern('A', q.a.known, mean);
  const b = laidPattern('B', q.b.known, mean);
  if (!a.ok || !b.ok) return undefined;
  const ofA = a.value.spots.map(floatSpot);
  const ofB = b.value.spots.map(floatSpot);
  const shift = floatSpot(q.b.shift);
  const enough = floatMm(q.ownWeb ?? leastWeb(q.a.hole, q.b.hole)) + 2 * floatMm(q.within);
  const holes = (floatMm(q.a.hole) + floatMm(q.b.hole)) / 2;
  const leftAt = (degrees: number) =>
    nearest(
      ofA,
      ofB.map((spot) => placed(spot, degrees, shift)),
    ) - holes;
  let best = 0;
  let most = leftAt(0);
  if (keepsNone && most >= enough) return 0;
  for (let step = 1; step < 360 * STEPS_A_DEGREE; step += 1) {
    const left = leftAt(step / STEPS_A_DEGREE);
    if (left <= most + NEARLY) continue;
    best = step / STEPS_A_DEGREE;
    most = left;
  }
  return best;
}

function placed({ x, y }: Round, degrees: number, shift: Round): Round {
  const by = (degrees * Math.PI) / 180;
  return {
    x: x * Math.cos(by) - y * Math.sin(by) + shift.x,
    y: x * Math.sin(by) + y * Math.cos(by) + shift.y,
  };
}

function nearest(some: readonly Round[], others: readonly Round[]): number {
  let least = Infinity;
  for (const one of some)
    for (const other of others) least = Math.min(least, Math.hypot(one.x - other.x, one.y - other.y));
  return least;
}
