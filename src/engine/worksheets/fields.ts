import type { FeatureKind } from '../reading/measuring-tool.ts';

type Option = { readonly value: string; readonly words: string; readonly more?: string };

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
};

/** One thing a worksheet is told. */
export type Field = SizeField | ChoiceField | ThreadField | NumberField;

/** By name, in the order in which they are listed. */
export type Fields = Readonly<Record<string, Field>>;

/** The names of the fields that are entered so. */
export type NamesOf<F extends Fields, Enter extends Field['enter']> = {
  [Name in keyof F]: F[Name] extends { readonly enter: Enter } ? Name : never;
}[keyof F] &
  string;
