import { lengthOf, type Length } from '../../../length/length.ts';
import { chainLine } from '../../../fit/tables/chain-line.ts';

const SOURCE = 'common practice, no source';

export type LineUpLimit = { readonly by: Length; readonly source: string };

/** How far things on an axle may be off; every figure is the user's to change. The metric ones are chosen round, not converted. */
export type LineUpLimits = {
  /** The float to either side: the parts share it, and no part alone is off by more. */
  readonly spacer: LineUpLimit;
  /** The room that the parts fill, to either side: legs that are drawn in or spread. The parts that fill it share it. */
  readonly opening: LineUpLimit;
  /** The wheel's centre and the sprocket line, to either side. */
  readonly line: LineUpLimit;
  /** What the float of a bracket that follows its pads must have above their whole wear. */
  readonly wearMargin: LineUpLimit;
  /** The least float there is, and the least room beside a disc: a bracket with none is seized, a disc rubs. */
  readonly leastFloat: LineUpLimit;
  /** What must be left between disc and slot when disc runout, parts and readings have taken theirs: at nothing it rubs. */
  readonly discClearance: LineUpLimit;
  /** What a disc is taken to run out while it isn't read: the most that the usual check lets it have. */
  readonly discRunout: LineUpLimit;
};

const limit = (by: string): LineUpLimit => ({ by: lengthOf(by), source: SOURCE });

export const usualLineUpLimits: Readonly<Record<'in' | 'mm', LineUpLimits>> = {
  in: {
    spacer: limit('.005 in'),
    opening: limit('.005 in'),
    line: { by: chainLine.in, source: SOURCE },
    wearMargin: limit('.010 in'),
    leastFloat: limit('.001 in'),
    discClearance: limit('.005 in'),
    discRunout: limit('.010 in'),
  },
  mm: {
    spacer: limit('0.12 mm'),
    opening: limit('0.12 mm'),
    line: { by: chainLine.mm, source: SOURCE },
    wearMargin: limit('0.25 mm'),
    leastFloat: limit('0.03 mm'),
    discClearance: limit('0.12 mm'),
    discRunout: limit('0.25 mm'),
  },
};
