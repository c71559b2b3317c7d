import type { Length } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import type { Estimate } from '../../reading/estimate.ts';
import type { HolesKnown } from './pattern.ts';
import type { Spot } from './spots.ts';

/** A pattern with what its holes are. */
export type PatternAsked = {
  readonly known: HolesKnown;
  readonly hole: Length;
  readonly head?: Head | undefined;
};

/** A counterbore for a bolt's head. */
export type Head = { readonly across: Length; readonly deep?: Length | undefined };

export type Outline =
  | { readonly is: 'none' }
  | { readonly is: 'round'; readonly across: Estimate }
  | {
      readonly is: 'rectangle';
      readonly wide: Estimate;
      readonly high: Estimate;
      /** The middle of pattern A from the left and from the lower edge; without it the middle of the plate. */
      readonly fromLeft?: Estimate | undefined;
      readonly fromBelow?: Estimate | undefined;
    };

/** Where both slides read zero: the middle of pattern A, the left and lower edges, or the first hole. */
export type Zero = 'middle' | 'edges' | 'first-hole';

export type PlateQuestion = {
  readonly a: PatternAsked;
  readonly b?:
    | (PatternAsked & { readonly shift: Spot; readonly turnDegrees?: number | undefined })
    | undefined;
  readonly outline: Outline;
  /** The hole in the middle that something passes through. */
  readonly bore?: Length | undefined;
  readonly thick?: Estimate | undefined;
  readonly zero: Zero;
  /** How far a drilled hole may stand off its place. */
  readonly within: Length;
  readonly ownWeb?: Length | undefined;
  readonly ownEdge?: Length | undefined;
  /** What usual figures are round in; inches where it is left out. */
  readonly shop?: ShownUnit;
  /** The finest figure that is shown: coordinates are set to it. */
  readonly finest: Length;
};
