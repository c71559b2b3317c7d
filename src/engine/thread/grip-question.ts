import type { Band, Estimate } from '../reading/estimate.ts';
import type { Length } from '../length/length.ts';
import type { Thread } from './threads.ts';
import type { Verdict } from '../reading/verdict.ts';

/** How the joint is held: through with a nut, a bolt into the part, a stud in the part with a nut. */
export type Held = 'nut' | 'tapped' | 'stud';

/** A clamped part; `thickest` where its places differ. */
export type GripLeg = { readonly name: string; readonly thickness: Estimate; readonly thickest?: Estimate };

/** The tapped hole: through, or so deep in full thread from the part's face. */
export type TappedHole = 'through' | { readonly depth: Estimate };

export type GripQuestion = {
  readonly thread: Thread;
  readonly held: Held;
  /** Clamped parts, from the head on; those of a stud from the part's face on. */
  readonly legs: readonly GripLeg[];
  readonly headWasher?: Length;
  readonly nutWasher?: Length;
  readonly nutHeight?: Length;
  /** What the part has to hold of the thread, for a bolt into it or a stud. */
  readonly engagement?: Length;
  /** The part holds by an insert, whose first coil lies below the face. */
  readonly withInsert?: boolean;
  readonly hole?: TappedHole;
  /** Plain shank from under the head (a stud: from the part's face) to the first trace of thread. */
  readonly shank?: Estimate;
  readonly shankLongest?: Estimate;
  /** From the same place to where the nut stops, run on by hand: the run-out is measured then. */
  readonly nutRunsTo?: Estimate;
  /** The bolt on hand, from under the head to its end; a stud over all. */
  readonly boltLength?: Estimate;
  readonly boltLongest?: Estimate;
};

/** A face where two parts want to slide past each other, and whether plain shank lies in it. */
export type ShearPlane = {
  readonly between: readonly [string, string];
  /** From under the head; of a stud from the part's face. */
  readonly at: Length;
  readonly from: 'head' | 'part';
  readonly band: Band;
  /** At the face of a part that a bolt is turned into its thread begins: no shank can lie there, and none is judged. */
  readonly isThreadAlways: boolean;
  readonly shank?: { readonly past: Length; readonly halfWidth: Length; readonly verdict: Verdict };
};

export type GripAnswer = {
  /** All that is clamped, washers counted. */
  readonly grip: Length;
  readonly planes: readonly ShearPlane[];
  /**
   * Plain shank wanted: past the last plane between clamped parts, and its run-out clear of the nut or of the tapped part.
   * `missing`: both can't be had without so much more washer.
   */
  readonly shankWanted: { readonly least: Length; readonly most: Length; readonly missing?: Length };
  readonly nutBottoms?: {
    /** From the end of the thread to where the nut clamps, before anything is taken off for the run-out. */
    readonly room: Length;
    /** What the run-out may take of it; zero where it was measured. */
    readonly runOut: Length;
    /** The thread that a bolt of this length usually has, where its shank was not given. */
    readonly usualThread?: Length;
    readonly verdict: Verdict;
  };
  /** What sticks out past the nut, or past what a part must hold. `point`: what of it may be no whole thread. */
  readonly past?: {
    readonly over: Length;
    readonly least: Length;
    readonly point: Length;
    readonly verdict: Verdict;
  };
  /**
   * From the bolt's end to the end of a blind hole's thread, of a stud from what must be in the part; without `room` the hole
   * was not given.
   */
  readonly hole?: { readonly room?: Length; readonly verdict: Verdict };
};
