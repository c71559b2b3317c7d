import type { CuttingTool, Operation } from './cut.ts';
import { largest, smallest, times, type Length } from '../length/length.ts';
import { isDiameter, type CutKind } from '../length/metal-on.ts';
import type { Takes } from './pass-plan.ts';
import {
  shareOfLargest,
  TAKES_SOURCE,
  threadDepths,
  turningDepths,
  unknownDepths,
  type Depths,
} from './tables/cut-takes.ts';
import { rowOf, type MaterialId } from '../material/tables/materials.ts';

export type TakesQuestion = {
  readonly of: CutKind;
  readonly operation: Operation;
  readonly cuttingTool: CuttingTool;
  /** Left out: not known, and the most careful figures stand in. */
  readonly material?: MaterialId;
  /** The cut's own figures, off the size; they rule. */
  readonly largestTake?: Length;
  readonly finishTake?: Length;
};

export type TakesWithSource = Takes & { readonly source: string };

/**
 * How much one pass may take, at most and at least, and what is left for the last two: the cut's own figures, else the
 * usual ones for this material, operation and cutting tool.
 *
 * Units:   off the size: twice the depth of cut on a diameter. The usual finish allowance is never less than two passes
 *          of the least depth, nor more than two of the largest.
 * Range:   a largest take of the user's own that is smaller than the usual least lowers the least to it: the user knows
 *          the tool.
 * Source:  tables/cut-takes.ts, common practice, no source.
 */
export function takesFor(q: TakesQuestion): TakesWithSource {
  const depths = depthsFor(q);
  const offSize = (depth: Length) => (isDiameter(q.of) ? times(depth, 2) : depth);
  const most = q.largestTake ?? offSize(times(depths.largest, shareOfLargest[q.operation]));
  const least = smallest(offSize(depths.least), most);
  const finish = q.finishTake ?? offSize(depths.finish);
  const isOwn = q.largestTake !== undefined && q.finishTake !== undefined;
  return {
    largest: most,
    least,
    finish: smallest(largest(finish, times(least, 2)), times(most, 2)),
    source: isOwn ? 'your own figures' : TAKES_SOURCE,
  };
}

function depthsFor({ operation, cuttingTool, material }: TakesQuestion): Depths {
  const turning =
    material === undefined ? unknownDepths[cuttingTool] : turningDepths[cuttingTool][rowOf(material)];
  if (operation !== 'thread') return turning;
  // What hardens where it is rubbed does so in a thread too.
  return { ...threadDepths, least: largest(threadDepths.least, turning.least) };
}
