import type { SpeedRefusal } from './cut-speed.ts';
import type { DialRefusal } from './dial.ts';
import type { PassRefusal } from './pass-plan.ts';
import type { HolePlanRefusal } from './pass-plan-holes.ts';
import { say } from '../length/say.ts';
import { showAgainst } from '../length/show-limits.ts';
import { show, type ShownUnit } from '../length/show.ts';

export type CutRefusal = PassRefusal | HolePlanRefusal | DialRefusal | SpeedRefusal;

/** Why a cut can't be planned, by how much, and what can be done. */
export function sayCutRefusal(refusal: CutRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'metal-gone':
      return say(refusal, unit);
    case 'no-mark-lands':
      return `From ${show(refusal.from, unit)} the dial, in steps of ${show(refusal.step, unit)}, lands on ${sayNeither(refusal, unit)}. Use a finer dial, split a mark by eye, or measure again after a light cut.`;
    case 'take-below-mark':
      return `One mark of the dial takes ${show(refusal.step, unit)}, more than the ${show(refusal.largest, unit)} one pass may take. Allow a deeper pass, or use a finer dial.`;
    case 'too-many-passes':
      return `At ${show(refusal.largest, unit)} a pass that would be ${refusal.passes} passes. Allow a deeper pass, or saw the blank nearer to size.`;
    case 'between-marks':
      return `${show(refusal.take, unit)} falls between two marks of the dial, which moves in steps of ${show(refusal.step, unit)}.`;
    case 'no-diameter-for-speed':
      return 'A speed needs a diameter. Measure the part, or type its size.';
    default:
      return refusal satisfies never;
  }
}

function sayNeither(
  { before, past, lower, upper }: Extract<CutRefusal, { code: 'no-mark-lands' }>,
  unit: ShownUnit,
): string {
  const shown = showAgainst([before, past], { lower, upper }, unit);
  return `${shown.values.join(' or ')} ${unit}, and neither is inside ${shown.lower ?? ''} to ${shown.upper ?? ''} ${unit}`;
}
