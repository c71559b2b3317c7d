import type { Estimate } from '../reading/estimate.ts';
import type { Length } from '../length/length.ts';
import type { MeasuringTool } from '../reading/measuring-tool.ts';
import type { Infeed } from '../cut/cut.ts';
import type { LatheDial } from '../cut/dial.ts';
import type { CutKind, Dial } from '../length/metal-on.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Fields, NamesOf } from './fields.ts';

/**
 * A size with what is known of it and the words that say where it comes from. `least` and `most` are its smallest and its
 * largest place, each with its own band (of a length the shortest and the longest); `tightest` and `loosest` are the same
 * two by what binds: a bore is tight where it is small, a pin and a length where they are large.
 */
export type GivenSize = {
  readonly least: Estimate;
  readonly most: Estimate;
  readonly tightest: Estimate;
  readonly loosest: Estimate;
  /** Every place that counts. */
  readonly places: readonly Estimate[];
  readonly words: string;
};

/** A part of a stack as the fitter put it in. */
export type GivenPart = {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  readonly adjustable: boolean;
  readonly size: GivenSize | undefined;
  readonly leastLength: Length | undefined;
};

/** A piece of the drawer, with how many of it there are. */
export type GivenPiece = {
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly count: number;
  readonly thickness: Length | undefined;
  readonly inside: Length | undefined;
  readonly outside: Length | undefined;
};

/**
 * Why what was read of the parts put together counts no more: one of them was changed since. `byItsAnswer`: the reading had
 * asked for it, so that the sum of the sizes, which it had shown to be wrong, doesn't stand in for it.
 */
export type ReadBefore = { readonly why: string; readonly byItsAnswer: boolean };

/**
 * All that a worksheet is worked out from, as the engine sees it: what was typed, chosen and read, and what the shop has.
 * A name that is no field of the worksheet doesn't compile.
 */
export type Given<F extends Fields> = Asked<
  NamesOf<F, 'size'>,
  NamesOf<F, 'choice' | 'thread' | 'parts'>,
  NamesOf<F, 'number'>
>;

/** The same for whoever doesn't know which kind it is for: any name may be asked. */
export type AnyGiven = Asked<string, string, string>;

type Asked<Sizes, Choices, Numbers> = {
  /** What is known of a size; nothing while it isn't given or has no reading left. */
  readonly size: (name: Sizes) => GivenSize | undefined;
  /** A size where only the figure counts: a limit, a reach, a wall. */
  readonly exact: (name: Sizes) => Length | undefined;
  /** The unit it was typed in or first read in, whatever is shown now. */
  readonly enteredIn: (name: Sizes) => ShownUnit | undefined;
  /** A choice; of a number its text, as it was typed. */
  readonly choice: (name: Choices | Numbers) => string | undefined;
  readonly number: (name: Numbers) => number | undefined;
  /** Whether it was typed, chosen or linked to readings at all, also where nothing is known of it yet. */
  readonly has: (name: Sizes | Choices | Numbers) => boolean;
  /** From left to right. */
  readonly parts: readonly GivenPart[];
  readonly drawer: readonly GivenPiece[];
  readonly tools: readonly MeasuringTool[];
  readonly dial: Dial;
  /** The dial that such a cut is set on: a length by the slide that was chosen for lengths, a thread by its infeed. */
  readonly dialFor: (of: CutKind, infeed?: Infeed) => LatheDial;
  /** What was read of the whole before its parts were changed; nothing while it counts. */
  readonly readBefore: (name: Sizes) => ReadBefore | undefined;
  readonly unit: ShownUnit;
};
