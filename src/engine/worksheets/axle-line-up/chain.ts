import { addForms, evaluate, formOf, lessForm, NOTHING, timesForm } from './chain-form.ts';
import type { Evaluated, Form, Share } from './chain-form.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { divideFractions, NONE, WHOLE, type Fraction } from '../../length/exact-fraction.ts';

export type { Evaluated, Share } from './chain-form.ts';

/** A part that lies with its left face against the right face of the part before it. */
export type ChainPart = { readonly name: string; readonly length: readonly Share[] };

/** A place along the chain: a face of a part, or a datum named before. */
export type Place = { readonly part: string; readonly face: 'left' | 'right' } | { readonly datum: string };

/** A plane tied to a place: `at` to the right of it, below zero to the left. */
export type Datum = { readonly name: string; readonly from: Place; readonly at: readonly Share[] };

/** How far `to` has to lie to the right of `from`. */
export type Condition = {
  readonly name: string;
  readonly from: Place;
  readonly to: Place;
  readonly is: readonly Share[];
};

/** Parts in their order from left to right, the planes tied to them, and what has to hold; earlier conditions go first. */
export type Chain = {
  readonly parts: readonly ChainPart[];
  readonly datums: readonly Datum[];
  readonly conditions: readonly Condition[];
};

export type SolvedLength = Evaluated & { readonly name: string };

/** A condition that earlier ones leave no say in. `value` is where it comes out less where it is wanted, + to the right. */
export type BoundCondition = Evaluated & {
  readonly name: string;
  /** The earlier conditions it stands against. */
  readonly against: readonly string[];
};

export type FreeLength = { readonly name: string; readonly hangsOn: readonly string[] };

export type ChainSolution = {
  readonly solved: readonly SolvedLength[];
  /** Over-determined: what earlier conditions make of these; a value that isn't zero can't hold. */
  readonly bound: readonly BoundCondition[];
  /** Under-determined: lengths no condition fixes, and what each hangs on; alone, it may be chosen at will. */
  readonly free: readonly FreeLength[];
};

/** 0 = Σ lengths, with the conditions it was put together from. */
type Row = { readonly lengths: Form; readonly from: Form };
type SolvedRow = Row & { readonly unknown: string };

/**
 * Every unknown length of a chain, from the lengths that are known and the conditions that have to hold.
 *
 * Units:   x grows to the right, the left face of the first part is 0. A length without an estimate in `known` is an
 *          unknown. The chain is solved for the share that every known length has in every unknown, as exact fractions;
 *          sizes come in at the end, and each sum is divided once. So every result carries the band of its readings.
 * Range:   any number of parts and conditions; conditions count in their order. One that earlier ones decide already is
 *          reported with its miss (exactly zero: it holds); one that can't hold changes nothing else.
 * Source:  Gauss–Jordan elimination; sum of a dimension chain.
 */
export function solveChain(chain: Chain, known: Readonly<Record<string, Estimate>>): ChainSolution {
  const isUnknown = (name: string) => !(name in known);
  const { rows, spare } = eliminate(
    chain.conditions.map((one) => conditionRow(chain, one)),
    isUnknown,
  );
  const unknowns = unknownsOf(chain, isUnknown);
  const results = unknowns.map((name) => resultFor(name, rows, isUnknown));
  return {
    solved: results.flatMap(({ name, form, hangsOn }) =>
      form && hangsOn.length === 0 ? [{ name, ...evaluate(form, known) }] : [],
    ),
    bound: spare.map(({ lengths, from, name }) => ({
      name,
      against: chain.conditions
        .map((other) => other.name)
        .filter((other) => other !== name && from.has(other)),
      ...evaluate(lengths, known),
    })),
    free: results.flatMap(({ name, form, hangsOn }) =>
      !form || hangsOn.length > 0 ? [{ name, hangsOn }] : [],
    ),
  };
}

/** Where `to` lies to the right of `from`, as shares of lengths, known and unknown. */
export function distanceForm(chain: Chain, from: Place, to: Place): Form {
  return lessForm(placeForm(chain, to), placeForm(chain, from));
}

function conditionRow(chain: Chain, { name, from, to, is }: Condition): Row {
  return {
    lengths: lessForm(distanceForm(chain, from, to), formOf(is)),
    from: new Map([[name, WHOLE]]),
  };
}

function placeForm(chain: Chain, place: Place): Form {
  if ('datum' in place) {
    const index = chain.datums.findIndex(({ name }) => name === place.datum);
    const datum = chain.datums[index];
    if (!datum) throw new Error(`the chain has no datum ${place.datum}`);
    // Only datums named before it: a plane can't hang on itself.
    return addForms(
      placeForm({ ...chain, datums: chain.datums.slice(0, index) }, datum.from),
      formOf(datum.at),
    );
  }
  const index = chain.parts.findIndex(({ name }) => name === place.part);
  if (index === -1) throw new Error(`the chain has no part ${place.part}`);
  const before = chain.parts.slice(0, place.face === 'left' ? index : index + 1);
  return before.reduce((so, { length }) => addForms(so, formOf(length)), NOTHING);
}

type SpareRow = Row & { readonly name: string };

/** Each row in turn is freed of the unknowns found so far; what is left of it finds one more, or is spare. */
function eliminate(conditions: readonly Row[], isUnknown: (name: string) => boolean) {
  let rows: readonly SolvedRow[] = [];
  const spare: SpareRow[] = [];
  for (const condition of conditions) {
    const left = rows.reduce((so, row) => without(so, row), condition);
    const unknown = [...left.lengths.keys()].find(isUnknown);
    if (unknown === undefined) {
      spare.push({ ...left, name: [...condition.from.keys()].join() });
    } else {
      const found = scaled(left, unknown);
      rows = [...rows.map((row) => ({ ...without(row, found), unknown: row.unknown })), found];
    }
  }
  return { rows, spare };
}

/** A row less as much of a solved one as takes that one's unknown out of it. */
function without(row: Row, solved: SolvedRow): Row {
  const share = row.lengths.get(solved.unknown) ?? NONE;
  return {
    lengths: lessForm(row.lengths, solved.lengths, share),
    from: lessForm(row.from, solved.from, share),
  };
}

function scaled(row: Row, unknown: string): SolvedRow {
  const factor = divideFractions(WHOLE, shareIn(row.lengths, unknown));
  return { unknown, lengths: timesForm(row.lengths, factor), from: timesForm(row.from, factor) };
}

function shareIn(form: Form, name: string): Fraction {
  return form.get(name) ?? NONE;
}

/** The unknowns in the order in which the parts, then the planes, then the conditions name them. */
function unknownsOf({ parts, datums, conditions }: Chain, isUnknown: (name: string) => boolean) {
  const shares = [
    ...parts.flatMap(({ length }) => length),
    ...datums.flatMap(({ at }) => at),
    ...conditions.flatMap(({ is }) => is),
  ];
  return [...new Set(shares.map(({ of }) => of))].filter(isUnknown);
}

/** 0 = unknown + Σ others, so the unknown is the others with their sign turned. */
function resultFor(name: string, rows: readonly SolvedRow[], isUnknown: (name: string) => boolean) {
  const row = rows.find((one) => one.unknown === name);
  if (!row) return { name, form: undefined, hangsOn: [] };
  const form = lessForm(new Map([[name, WHOLE]]), row.lengths);
  return { name, form, hangsOn: [...form.keys()].filter(isUnknown) };
}
