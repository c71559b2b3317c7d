import type { Estimate } from '../reading/estimate.ts';
import type { Length } from '../length/length.ts';
import type { MeasuringTool } from '../reading/measuring-tool.ts';
import type { Dial } from '../length/metal-on.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Fields, NamesOf } from './fields.ts';

/** A size with what is known of it and the words that say where it comes from. */
export type GivenSize = { readonly tightest: Estimate; readonly loosest: Estimate; readonly words: string };

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
 * All that a worksheet is worked out from, as the engine sees it: what was typed, chosen and read, and what the shop has.
 * A name that is no field of the worksheet doesn't compile.
 */
export type Given<F extends Fields> = Asked<
  NamesOf<F, 'size'>,
  NamesOf<F, 'choice' | 'thread'>,
  NamesOf<F, 'number'>
>;

/** The same for whoever doesn't know which kind it is for: any name may be asked. */
export type AnyGiven = Asked<string, string, string>;

type Asked<Sizes, Choices, Numbers> = {
  /** What is known of a size; nothing while it isn't given or has no reading left. */
  readonly size: (name: Sizes) => GivenSize | undefined;
  /** A size where only the figure counts: a limit, a reach, a wall. */
  readonly exact: (name: Sizes) => Length | undefined;
  readonly choice: (name: Choices) => string | undefined;
  readonly number: (name: Numbers) => number | undefined;
  /** From left to right. */
  readonly parts: readonly GivenPart[];
  readonly drawer: readonly GivenPiece[];
  readonly tools: readonly MeasuringTool[];
  readonly dial: Dial;
  readonly unit: ShownUnit;
};
