import type { Length } from '../length/length.ts';
import type { FeatureKind } from '../reading/measuring-tool.ts';

type Option = {
  readonly value: string;
  readonly words: string;
  readonly more?: string;
  /** Bought by this name in a metric shop: first on its list, last on that of an inch shop. */
  readonly ofMetricShop?: true;
  /** Of many options: what it stands under. The group is pressed first, then one of its few. */
  readonly group?: string;
};

type Named = {
  readonly label: string;
  /** What the screen asks, in the fitter's words. */
  readonly ask: string;
};

/** A size by pad or from readings. */
export type SizeField = Named & {
  readonly enter: 'size';
  /** A size that is measured: readings of this kind are offered, and a typed one counts as a reading. */
  readonly measures?: FeatureKind;
  /** It may lie below zero. */
  readonly signed?: boolean;
  /** Read on the assembled thing in place of a sum: what a fit-up check read is offered here too. */
  readonly direct?: true;
  /** What is said of it in place of a size, on a key beside the pad: "No hole yet" chooses that for another field. */
  readonly instead?: { readonly key: string; readonly choice: string; readonly value: string };
  /** What a slipped point or unit shows against; without it the usual range of what it measures. */
  readonly slip?: SlipOfField;
  /** Another field that gives it too, with the words of its key: a bolt’s thread gives its pin. */
  readonly givenBy?: { readonly field: string; readonly key: string };
};

/** What a size that is typed is held against: a range met in the trade (common practice, no source), sizes beside it. */
export type SlipOfField = {
  readonly usual?: { readonly least: Length; readonly most: Length };
  /** Fields of the same round thing: one of them is near the other. */
  readonly near?: readonly string[];
  /** The field that it can't be longer than. */
  readonly goesInto?: string;
  /** It holds the parts of a stack. */
  readonly holdsParts?: true;
};

/** One of a few plain choices. */
export type ChoiceField = Named & { readonly enter: 'choice'; readonly options: readonly Option[] };

export type ThreadField = Named & { readonly enter: 'thread' };

/** A number that is no length, kept as text among the choices: degrees, a temperature, a strength. */
export type NumberField = Named & {
  readonly enter: 'number';
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** What is counted: holes of a circle. */
  readonly whole?: boolean;
};

/**
 * The parts of a stack, put in one after the other as on a tape. It is called `parts` in every kind that has them: `given.has`
 * says whether all of them are in.
 */
export type PartsField = Named & {
  readonly enter: 'parts';
  /** What of a part is measured. */
  readonly measures: FeatureKind;
  /** What such parts are called in the trade, the likeliest first. */
  readonly names: readonly string[];
  readonly slip?: SlipOfField;
};

/** One thing a worksheet is told. */
export type Field = SizeField | ChoiceField | ThreadField | NumberField | PartsField;

/** By name, in the order in which they are listed. */
export type Fields = Readonly<Record<string, Field>>;

/** The names of the fields that are entered so. */
export type NamesOf<F extends Fields, Enter extends Field['enter']> = {
  [Name in keyof F]: F[Name] extends { readonly enter: Enter } ? Name : never;
}[keyof F] &
  string;
