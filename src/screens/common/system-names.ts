import type { System, Touched } from '../../engine/job/safety.ts';
import { listed } from '../../engine/length/say-words.ts';

export const SYSTEMS: readonly System[] = ['brake', 'steering', 'axle', 'wheel', 'engine'];

/** What a job touches, in a line: that it touches none, or that nobody said it yet. */
export function touchWords({ systems, touchesNone }: Touched): string {
  if (systems.length > 0) return listed(systems);
  return touchesNone === true ? 'no brake, steering, axle or wheel' : 'not said what it touches';
}
