import * as z from 'zod/mini';
import { canonicalText } from '../base/paths.ts';
import type { Basis, Id, ReadingRecord, SizeInput, Worksheet } from '../base/records.ts';
import { worksheetInputsSchema } from './worksheet-schema.ts';

type Inputs = Pick<Worksheet, 'sizes' | 'choices' | 'parts'>;
type Counting = Pick<ReadingRecord, 'id' | 'struckOut'>;

/**
 * What an answer was worked out from, for the cut or check that takes it over: the readings of the worksheet's features
 * that count (struck-out ones are left out here), and the worksheet's own inputs.
 */
export function basisOf(worksheet: Inputs, readings: readonly Counting[]): Basis {
  return { readings: countingIds(readings), worksheet: inputsText(worksheet) };
}

/**
 * Whether what was worked out from this basis is older than what is known now: a reading in it was struck out or is no
 * longer there, a newer one counts, or the worksheet's inputs changed. `readings` are all those of the worksheet's
 * features; of a worksheet that was removed all those of its job, as only they can tell.
 */
export function isOlder(basis: Basis, worksheet: Inputs | undefined, readings: readonly Counting[]): boolean {
  const counting = countingIds(readings);
  if (!worksheet) {
    const standing = new Set(counting);
    return basis.readings.some((id) => !standing.has(id));
  }
  return (
    canonicalText(counting) !== canonicalText(basis.readings.toSorted()) ||
    inputsText(worksheet) !== basis.worksheet
  );
}

/** Whether a part of a stack still has the size it had when this basis was taken. */
export function partStandsAsIn(basis: Basis, worksheet: Inputs, partId: Id): boolean {
  const then = inputsIn(basis)?.parts[partId];
  const now = worksheet.parts[partId];
  return then !== undefined && now !== undefined && sizeText(then) === sizeText(now);
}

/** Whether a size of a worksheet is given as it was, or left out as it was, when this basis was taken. */
export function sizeStandsAsIn(basis: Basis, worksheet: Inputs, name: string): boolean {
  const then = inputsIn(basis);
  return (
    then !== undefined && sizeText({ size: then.sizes[name] }) === sizeText({ size: worksheet.sizes[name] })
  );
}

export type LeftOut = {
  readonly sizes: ReadonlySet<string>;
  /** Sizes that are read as one of these go too. */
  readonly features: ReadonlySet<Id>;
  readonly readings: ReadonlySet<Id>;
};

/** A basis as it would be without some of the worksheet's sizes and some of the readings. */
export function basisWithout(basis: Basis, { sizes, features, readings }: LeftOut): Basis {
  const inputs = inputsIn(basis);
  if (!inputs) return basis;
  const left = Object.entries(inputs.sizes).filter(
    ([name, size]) => !sizes.has(name) && !(size.from === 'feature' && features.has(size.featureId)),
  );
  return {
    readings: basis.readings.filter((one) => !readings.has(one)),
    worksheet: inputsText({ ...inputs, sizes: Object.fromEntries(left) }),
  };
}

/** A worksheet's inputs as they stand in such a text. */
export function inputsIn({ worksheet }: Pick<Basis, 'worksheet'>): Inputs | undefined {
  try {
    return z.safeParse(worksheetInputsSchema, JSON.parse(worksheet)).data;
  } catch {
    return undefined; // it came in a backup that someone wrote by hand
  }
}

function sizeText({ size }: { readonly size?: SizeInput | undefined }): string {
  return inputsText({ sizes: size ? { size } : {}, choices: {}, parts: {} });
}

function countingIds(readings: readonly Counting[]): string[] {
  return readings
    .filter(({ struckOut }) => struckOut === undefined)
    .map(({ id }) => id)
    .toSorted();
}

// As it is kept, lengths as decimal text, so that the same inputs give the same text in every later Slipfit.
export function inputsText({ sizes, choices, parts }: Inputs): string {
  return canonicalText(z.encode(worksheetInputsSchema, { sizes, choices, parts }));
}
