import {
  addFractions,
  commonBottom,
  fraction,
  multiplyFractions,
  NONE,
  type Fraction,
} from '../../length/exact-fraction.ts';
import { combine, type Band, type Estimate } from '../../reading/estimate.ts';
import { dividedBy, type Length } from '../../length/length.ts';

/** So many times a length: half the width is `{ of: 'width', top: 1, bottom: 2 }`. Whole numbers, bottom not zero. */
export type Share = { readonly of: string; readonly top: number; readonly bottom: number };

/** A sum of shares of named lengths, each name once; a name that is missing counts with nothing. */
export type Form = ReadonlyMap<string, Fraction>;

export const NOTHING: Form = new Map();

export type Evaluated = {
  readonly value: Length;
  readonly band: Band;
  /** If every size's error stood against it at once. */
  readonly worstCase: Length;
  /** What it is made of, in the order the lengths were met. */
  readonly terms: readonly Share[];
};

export function formOf(shares: readonly Share[]): Form {
  return shares.reduce(
    (so, { of, top, bottom }) => addForms(so, new Map([[of, fraction(BigInt(top), BigInt(bottom))]])),
    NOTHING,
  );
}

export function addForms(a: Form, b: Form): Form {
  const sum = new Map(a);
  for (const [name, share] of b) {
    const total = addFractions(sum.get(name) ?? NONE, share);
    if (total.top === 0n) sum.delete(name);
    else sum.set(name, total);
  }
  return sum;
}

export function timesForm(form: Form, factor: Fraction): Form {
  if (factor.top === 0n) return NOTHING;
  return new Map([...form].map(([name, share]) => [name, multiplyFractions(share, factor)]));
}

/** a − factor · b. */
export function lessForm(a: Form, b: Form, factor: Fraction = { top: 1n, bottom: 1n }): Form {
  return addForms(a, timesForm(b, { top: -factor.top, bottom: factor.bottom }));
}

export function sharesOf(form: Form): readonly Share[] {
  return [...form].map(([of, { top, bottom }]) => ({ of, top: Number(top), bottom: Number(bottom) }));
}

/**
 * What a sum of known lengths comes to, and how closely it is known.
 *
 * Units:   brought to one bottom first, summed exactly, and divided once at the end; the band with it.
 * Range:   every name is among the known; shares up to 2^53 over their common bottom.
 * Source:  JCGM 100:2008 5.1.2, as `combine`: the share of each length is its coefficient.
 */
export function evaluate(form: Form, known: Readonly<Record<string, Estimate>>): Evaluated {
  const bottom = commonBottom([...form.values()]);
  const whole = combine(
    [...form].map(([name, share]) => ({
      estimate: knownLength(known, name),
      coefficient: Number((share.top * bottom) / share.bottom),
    })),
  );
  const part = (length: Length) => dividedBy(length, String(bottom));
  return {
    value: part(whole.value),
    band: { ...whole.band, halfWidth: part(whole.band.halfWidth) },
    worstCase: part(whole.worstCase),
    terms: sharesOf(form),
  };
}

/** What is known of a length; that it is known is our own promise. */
export function knownLength(known: Readonly<Record<string, Estimate>>, name: string): Estimate {
  const estimate = known[name];
  if (!estimate) throw new Error(`the chain has no length ${name}`);
  return estimate;
}
