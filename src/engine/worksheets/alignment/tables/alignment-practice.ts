import { lengthOf, type Length } from '../../../length/length.ts';
import type { ShownUnit } from '../../../length/show.ts';

type Range = { readonly lower: Length; readonly upper: Length };

/** What stands beside every figure of this page. */
export const PRACTICE = 'common practice, no source: the manual’s figure rules';

const inBoth = (inch: readonly [string, string], mm: readonly [string, string]) =>
  ({
    in: { lower: lengthOf(`${inch[0]} in`), upper: lengthOf(`${inch[1]} in`) },
    mm: { lower: lengthOf(`${mm[0]} mm`), upper: lengthOf(`${mm[1]} mm`) },
  }) as const satisfies Record<ShownUnit, Range>;

/**
 * Toe-in of a sidecar's wheel between its places, most of a machine's length apart. One service manual has 5 to 15 mm, rules of
 * thumb go by the lead and come to 10 to 30: common practice between them.
 */
export const usualToe = inBoth(['3/8', '3/4'], ['10', '20']);
/** Wheel lead: figures from 0 to 450 mm are met, mostly 250 to 350. */
export const usualLead = inBoth(['8', '14'], ['200', '350']);
/** Lean-out, degrees: manuals and rules of thumb have 0 to 3 and 2 to 5. */
export const usualLeanDegrees = { lower: 0.5, upper: 3 } as const;
/** A digital level on a brake disc or fork leg. */
export const USUAL_LEAN_WITHIN_DEGREES = 0.2;
/** Diagonals of a trailer: an eighth of an inch is what is mostly said. */
export const usualDiagonal: Readonly<Record<ShownUnit, Length>> = {
  in: lengthOf('1/8 in'),
  mm: lengthOf('3 mm'),
};
/** Toe of a trailer's wheels: none, or a little in. */
export const usualTrailerToe = inBoth(['0', '1/8'], ['0', '3']);
