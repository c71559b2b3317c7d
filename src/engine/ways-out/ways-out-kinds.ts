import type { BushingAnswer, BushingRefusal } from '../press/bushing.ts';
import type { FormRefusal, PartFor } from '../fit/fit-check.ts';
import type { IsoRefusal } from '../fit/fits-iso.ts';
import type { FitLimits, Range } from '../fit/fits.ts';
import type { Length } from '../length/length.ts';
import type { CutKind } from '../length/metal-on.ts';
import type { Settler } from '../reading/settle.ts';
import type { ShimPick, ShimRefusal } from '../shim/shims.ts';
import type { Verdict } from '../reading/verdict.ts';

export type WayOutKind =
  | 'measure-again'
  | 'next-class'
  | 'new-mate'
  | 'bush'
  | 'sleeve'
  | 'shim'
  | 'new-part';

export type WayOutReason =
  | IsoRefusal
  | FormRefusal
  | BushingRefusal
  /** It is past the limit by more than the tool can err. */
  | { readonly code: 'proved-past'; readonly past: Length; readonly halfWidth: Length }
  | { readonly code: 'mate-not-known' }
  | { readonly code: 'no-class-met'; readonly clearance: Length; readonly system: FitLimits['system'] }
  | { readonly code: 'bushing-warned'; readonly warnings: BushingAnswer['warnings'] }
  | { readonly code: 'no-sleeve-on-ring' }
  | {
      readonly code: 'core-too-thin';
      readonly turnTo: Length;
      readonly least: Length;
      readonly source: string;
    };

type Open<Kind extends WayOutKind, Figures> = {
  readonly kind: Kind;
  readonly state: 'open';
  /** Cuts in metal that is there: they can't be taken back. */
  readonly irreversibleSteps: number;
} & Figures;

export type WayOut =
  | Open<
      'measure-again',
      {
        readonly past: Length;
        /** Left out where no measuring tool is named. */
        readonly halfWidth?: Length;
        readonly settler?: Settler;
      }
    >
  | Open<
      'next-class',
      {
        readonly fit: FitLimits;
        readonly clearance: Length;
        readonly halfWidth: Length;
        readonly verdict: Verdict;
        /** It is the class it was cut for: the other part makes up for it. */
        readonly stillMet: boolean;
      }
    >
  /** The part it runs with is made to suit: a pin for a bore, a bore for a shaft. */
  | Open<'new-mate', { readonly fit: FitLimits; readonly make: 'pin' | 'bore'; readonly limits: PartFor }>
  | Open<
      'bush',
      {
        readonly openTo: Length;
        readonly takes: Length;
        readonly outside: Range;
        readonly inside: Range;
        readonly wall: Length;
        readonly partWall?: Length;
        readonly fit: FitLimits;
        readonly pressFit: FitLimits;
        readonly warnings: BushingAnswer['warnings'];
        /** The part's metal is not known: worked out for low carbon steel. */
        readonly metalAssumed: boolean;
      }
    >
  | Open<
      'sleeve',
      {
        /** Left out where the shaft is small enough as it is. */
        readonly turnTo?: Length;
        /** Between what, so that the sleeve goes on with room to bond. */
        readonly turn?: Range;
        readonly inside: Range;
        readonly outside: Range;
        readonly wall: Length;
      }
    >
  | Open<
      'shim',
      {
        /** What is missing, and from where to where a shim does. */
        readonly missing: Length;
        readonly lower: Length;
        readonly upper: Length;
        readonly pick?: ShimPick;
        readonly whyNoPick?: ShimRefusal;
      }
    >
  | Open<
      'new-part',
      {
        readonly of: CutKind;
        /** The blank: at least this outside or long; a hole, recess or slot in it at most this. */
        readonly blank: Length;
        readonly finish: Length;
      }
    >
  | { readonly kind: WayOutKind; readonly state: 'out'; readonly why: WayOutReason };

/** A way that can't be gone, and why. */
export function ruledOut(kind: WayOutKind, why: WayOutReason): WayOut {
  return { kind, state: 'out', why };
}
