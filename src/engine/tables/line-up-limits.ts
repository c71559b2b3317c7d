import { lengthOf, type Length } from '../length.ts';

const SOURCE = 'common practice, no source';

export type LineUpLimit = { readonly by: Length; readonly source: string };

/** How far things on an axle may be off; every figure is the user's to change. The metric ones are chosen round, not converted. */
export type LineUpLimits = {
  /** A spacer's length, to either side. */
  readonly spacer: LineUpLimit;
  /** The sprocket line or the wheel centre, whichever gives way, to either side. */
  readonly line: LineUpLimit;
  /** What the float of a bracket that follows its pads must have above their whole wear. */
  readonly wearMargin: LineUpLimit;
};

const limit = (by: string): LineUpLimit => ({ by: lengthOf(by), source: SOURCE });

export const usualLineUpLimits: Readonly<Record<'in' | 'mm', LineUpLimits>> = {
  in: { spacer: limit('.005 in'), line: limit('.030 in'), wearMargin: limit('.010 in') },
  mm: { spacer: limit('0.12 mm'), line: limit('0.80 mm'), wearMargin: limit('0.25 mm') },
};
