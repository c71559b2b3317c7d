import * as fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  distanceForm,
  solveChain,
  type Chain,
  type Condition,
  type Place,
} from '../../../../src/engine/worksheets/axle-line-up/chain.ts';
import { knownLength } from '../../../../src/engine/worksheets/axle-line-up/chain-form.ts';
import { fraction } from '../../../../src/engine/length/exact-fraction.ts';
import {
  estimateOf,
  toleranceEstimate,
  typedEstimate,
  type Estimate,
} from '../../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  exactDecimalText,
  floatMm,
  lengthOf,
  toText,
} from '../../../../src/engine/length/length.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';

const one = (of: string) => ({ of, top: 1, bottom: 1 });
const part = (name: string) => ({ name, length: [one(name)] });
const left = (name: string): Place => ({ part: name, face: 'left' });
const right = (name: string): Place => ({ part: name, face: 'right' });
const found = usualTools.find(({ id }) => id === 'digital-caliper');
if (!found) throw new Error('no digital caliper among the usual tools');
const usualCaliper = found;
const inch = (text: string) => typedEstimate(lengthOf(`${text} in`));

function lengthsOf(chain: Chain, known: Readonly<Record<string, Estimate>>) {
  const { solved, bound, free } = solveChain(chain, known);
  return {
    solved: Object.fromEntries(solved.map(({ name, value }) => [name, exactDecimalText(value, 'in')])),
    bound: bound.map(({ name, value, against }) => [name, exactDecimalText(value, 'in'), against]),
    free: free.map(({ name, hangsOn }) => [name, hangsOn]),
  };
}

/** Two spacers either side of a hub between two legs. */
const hubInLegs: Chain = {
  parts: [part('left'), part('hub'), part('right')],
  datums: [{ name: 'centre', from: left('hub'), at: [one('centre')] }],
  conditions: [
    { name: 'fills', from: left('left'), to: right('right'), is: [one('width')] },
    {
      name: 'centred',
      from: left('left'),
      to: { datum: 'centre' },
      is: [{ of: 'width', top: 1, bottom: 2 }],
    },
  ],
};
const sizes = { width: inch('6.500'), hub: inch('4.412'), centre: inch('2.206') };

describe('a hub of 4.412 between legs 6.500 apart', () => {
  test('centred, leaves 1.044 on either side', () => {
    // 6.500 / 2 − 2.206 = 1.044; 6.500 − 1.044 − 4.412 = 1.044
    expect(lengthsOf(hubInLegs, sizes)).toEqual({
      solved: { left: '1.044', right: '1.044' },
      bound: [],
      free: [],
    });
  });

  test('with no wish for its centre leaves both spacers open: one hangs on the other', () => {
    const [fills] = hubInLegs.conditions;
    const chain = { ...hubInLegs, conditions: fills ? [fills] : [] };
    expect(lengthsOf(chain, { width: inch('6.500'), hub: inch('4.412') })).toEqual({
      solved: {},
      bound: [],
      free: [
        ['left', ['right']],
        ['right', []],
        ['centre', []],
      ],
    });
  });

  test('with the left spacer given can’t be on centre too: it comes out .044 too far left, against the wish before it', () => {
    // Left 1.000: centre at 1.000 + 2.206 = 3.206, wanted 3.250. Only the centre's own condition speaks of it.
    expect(lengthsOf(hubInLegs, { ...sizes, left: inch('1.000') })).toEqual({
      solved: { right: '1.088' },
      bound: [['centred', '-0.044', []]],
      free: [],
    });
  });

  test('with both spacers given and one .010 too long stands .010 proud of its legs', () => {
    const result = lengthsOf(hubInLegs, { ...sizes, left: inch('1.044'), right: inch('1.054') });
    expect(result.bound).toEqual([
      ['fills', '0.01', []],
      ['centred', '0', []],
    ]);
  });

  test('wanted at two places at once misses the later one, and says which it stands against', () => {
    const elsewhere: Condition = {
      name: 'elsewhere',
      from: { datum: 'centre' },
      to: right('right'),
      is: [one('room')],
    };
    const chain = { ...hubInLegs, conditions: [...hubInLegs.conditions, elsewhere] };
    // Centred, the right leg is 3.250 from the centre; 3.000 was wanted: .250 too far.
    expect(lengthsOf(chain, { ...sizes, room: inch('3.000') }).bound).toEqual([
      ['elsewhere', '0.25', ['fills', 'centred']],
    ]);
  });

  test('carries the band of every size by its share in the spacer', () => {
    const known = {
      width: toleranceEstimate(lengthOf('6.500 in'), lengthOf('.004 in')),
      hub: toleranceEstimate(lengthOf('4.412 in'), lengthOf('.001 in')),
      centre: toleranceEstimate(lengthOf('2.206 in'), lengthOf('.002 in')),
    };
    const [first, second] = solveChain(hubInLegs, known).solved;
    // A = W/2 − c: √(.002² + .002²) = .002828, at the worst .004
    expect(first && decimalText(first.band.halfWidth, 'in', 6)).toBe('0.002828');
    expect(first && decimalText(first.worstCase, 'in', 6)).toBe('0.004000');
    // C = W/2 − H + c: √(.002² + .001² + .002²) = .003, at the worst .005
    expect(second && decimalText(second.band.halfWidth, 'in', 6)).toBe('0.003000');
    expect(second && decimalText(second.worstCase, 'in', 6)).toBe('0.005000');
    expect(first?.terms).toEqual([
      { of: 'width', top: 1, bottom: 2 },
      { of: 'centre', top: -1, bottom: 1 },
    ]);
  });

  test('measured with one caliper has that caliper’s error once, by its net share', () => {
    const caliper = { ...usualCaliper, most: lengthOf('12 in') }; // 6.500 is past a 6 in one
    const read = (size: string) =>
      estimateOf([{ exact: lengthOf(`${size} in`), tool: caliper, zeroChecked: false }]);
    const known = { width: read('6.500'), hub: read('4.412'), centre: inch('2.206') };
    const second = solveChain(hubInLegs, known).solved.find(({ name }) => name === 'right');
    // C = W/2 − H + c. Repeats: (¼ + 1)·r²; error limit: net −½, but no less than √1¼ of it.
    const repeat = floatMm(caliper.repeatability) ** 2 * 1.25;
    const limit = (floatMm(caliper.mpe) ** 2 * 1.25) / 3;
    expect(second && floatMm(second.band.halfWidth)).toBeCloseTo(1.959964 * Math.sqrt(repeat + limit), 6);
  });
});

test('a third of an inch cut three times leaves nothing: no share is rounded on the way', () => {
  const third = { of: 'width', top: 1, bottom: 3 };
  const chain: Chain = {
    parts: [part('a'), part('b'), part('c'), part('rest')],
    datums: [],
    conditions: [
      { name: 'a', from: left('a'), to: right('a'), is: [third] },
      { name: 'b', from: left('b'), to: right('b'), is: [third] },
      { name: 'c', from: left('c'), to: right('c'), is: [third] },
      { name: 'fills', from: left('a'), to: right('rest'), is: [one('width')] },
    ],
  };
  const { solved } = solveChain(chain, { width: inch('1') });
  expect(solved.map(({ name, value }) => [name, toText(value).slice(0, 12)])).toEqual([
    ['a', '8.4666666666'],
    ['b', '8.4666666666'],
    ['c', '8.4666666666'],
    ['rest', '0'],
  ]);
});

test('a chain that names a part, a plane or a length it doesn’t have is a broken promise', () => {
  const lost = (place: Place): Chain => ({
    ...hubInLegs,
    conditions: [{ name: 'lost', from: left('left'), to: place, is: [] }],
  });
  expect(() => distanceForm(lost(left('x')), left('left'), right('x'))).toThrow('no part x');
  expect(() => solveChain(lost({ datum: 'y' }), sizes)).toThrow('no datum y');
  const onItself: Chain = {
    ...hubInLegs,
    datums: [{ name: 'loop', from: { datum: 'loop' }, at: [] }],
    conditions: [{ name: 'lost', from: left('left'), to: { datum: 'loop' }, is: [] }],
  };
  expect(() => solveChain(onItself, sizes)).toThrow('no datum loop');
});

test('a part over nothing is a broken promise too', () => {
  const over = { ...hubInLegs, parts: [{ name: 'left', length: [{ of: 'left', top: 1, bottom: 0 }] }] };
  expect(() => distanceForm(over, left('left'), right('left'))).toThrow('without a bottom');
  expect(() => knownLength({}, 'width')).toThrow('no length width');
});

test('a bottom below zero turns the sign of the top', () => {
  expect(fraction(2n, -4n)).toEqual({ top: -1n, bottom: 2n });
});

// ——— Against another way: positions as rows of numbers, reduced in fraction.js by columns, not by conditions. ———

type Row = readonly Fraction[];
const nought = new Fraction(0);
const cell = (row: Row, column: number): Fraction => row[column] ?? nought;

/** Reduced row echelon form, the textbook way: column by column over the whole matrix at once. */
function reduced(matrix: readonly Row[], columns: number): { rows: Row[]; pivots: number[] } {
  const rows = matrix.map((row) => [...row]);
  const pivots: number[] = [];
  for (let column = 0; column < columns; column += 1) {
    const at = rows.findIndex((row, index) => index >= pivots.length && !cell(row, column).equals(0));
    const found = rows[at];
    if (!found) continue;
    const top = pivots.length;
    const swapped = rows[top] ?? found;
    rows[at] = swapped;
    const scaled = found.map((value) => value.div(cell(found, column)));
    rows[top] = scaled;
    rows.forEach((row, index) => {
      if (index !== top)
        rows[index] = row.map((value, i) => value.sub(cell(row, column).mul(cell(scaled, i))));
    });
    pivots.push(column);
  }
  return { rows, pivots };
}

type RandomChain = {
  readonly sizes: readonly (number | undefined)[];
  readonly halves: readonly boolean[];
  readonly conditions: readonly { from: number; to: number; is: number; over: number }[];
};

const randomChain: fc.Arbitrary<RandomChain> = fc.integer({ min: 2, max: 7 }).chain((count) =>
  fc.record({
    sizes: fc.array(fc.option(fc.integer({ min: 1, max: 5000 }), { nil: undefined, freq: 1 }), {
      minLength: count,
      maxLength: count,
    }),
    halves: fc.array(fc.boolean(), { minLength: count, maxLength: count }),
    conditions: fc.array(
      fc.record({
        from: fc.integer({ min: 0, max: count }),
        to: fc.integer({ min: 0, max: count }),
        is: fc.oneof(fc.integer({ min: -3000, max: 9000 }), fc.constant(0)),
        over: fc.constantFrom(1, 2, 3, 4, 7),
      }),
      { minLength: 0, maxLength: 6 },
    ),
  }),
);

/** Face n of a chain: the left of part n, or the right of the last. */
function face(index: number, count: number): Place {
  return index < count ? left(`part ${index}`) : right(`part ${count - 1}`);
}

function built({ sizes: parts, halves, conditions }: RandomChain) {
  const chain: Chain = {
    parts: parts.map((_, index) => ({
      name: `part ${index}`,
      length: [{ of: `part ${index}`, top: 1, bottom: halves[index] === true ? 2 : 1 }],
    })),
    datums: [],
    conditions: conditions.map(({ from, to, over }, index) => ({
      name: `condition ${index}`,
      from: face(from, parts.length),
      to: face(to, parts.length),
      is: [{ of: `is ${index}`, top: 1, bottom: over }],
    })),
  };
  const known = Object.fromEntries([
    ...parts.flatMap((size, index) =>
      size === undefined ? [] : [[`part ${index}`, typedEstimate(lengthOf(`${size}/1000 mm`))] as const],
    ),
    ...conditions.map(({ is }, index) => {
      const text = is < 0 ? `-${-is}/1000 mm` : `${is}/1000 mm`;
      return [`is ${index}`, typedEstimate(lengthOf(text))] as const;
    }),
  ]);
  return { chain, known };
}

/** One row a condition: the shares of the unknown parts, then what they have to come to. */
function matrixOf({ sizes: parts, halves, conditions }: RandomChain): Row[] {
  return conditions.map(({ from, to, is, over }) => {
    const [low, high] = from < to ? [from, to] : [to, from];
    const sign = from < to ? 1 : -1;
    const share = (index: number) =>
      index >= low && index < high ? new Fraction(sign, halves[index] === true ? 2 : 1) : nought;
    const fixed = parts.reduce(
      (so: Fraction, size, index) => (size === undefined ? so : so.add(share(index).mul(size))),
      nought,
    );
    const open = parts.map((size, index) => (size === undefined ? share(index) : nought));
    return [...open, new Fraction(is, over).sub(fixed)];
  });
}

describe('hundreds of random chains, against a linear solver in exact fractions', () => {
  const seed = 20_261_125;

  test(`come out alike: what is fixed, what is free, what can’t hold (seed ${seed})`, () => {
    const met = { fixed: 0, free: 0, bound: 0, missed: 0 };
    fc.assert(
      fc.property(randomChain, (random) => {
        const { chain, known } = built(random);
        const { solved, free, bound } = solveChain(chain, known);
        const columns = random.sizes.length;
        const matrix = matrixOf(random);
        // A condition is bound when its row adds nothing to the rank of those before it.
        const rank = (upTo: number) => reduced(matrix.slice(0, upTo), columns).pivots.length;
        const isBound = matrix.map((_, index) => rank(index + 1) === rank(index));
        expect(bound.map(({ name }) => name)).toEqual(
          isBound.flatMap((yes, index) => (yes ? [`condition ${index}`] : [])),
        );
        const sound = matrix.filter((_, index) => isBound[index] !== true);
        const { rows, pivots } = reduced(sound, columns);
        const unknown = random.sizes.flatMap((size, index) => (size === undefined ? [index] : []));
        for (const column of unknown) {
          const row = rows[pivots.indexOf(column)];
          const others = unknown.filter((other) => other !== column);
          const isFixed = row !== undefined && others.every((other) => cell(row, other).equals(0));
          const found = solved.find(({ name }) => name === `part ${column}`);
          expect(found !== undefined).toBe(isFixed);
          expect(free.some(({ name }) => name === `part ${column}`)).toBe(!isFixed);
          const right = found && row && sameNumber(toText(found.value), cell(row, columns).div(1000));
          expect(right ?? true).toBe(true);
          met[isFixed ? 'fixed' : 'free'] += 1;
        }
        for (const miss of bound) {
          const index = Number(miss.name.slice('condition '.length));
          const row = matrix[index] ?? [];
          // What the sound rows before it make of its left side, less what it wants.
          const before = reduced(
            matrix.filter((_, at) => at < index && isBound[at] !== true),
            columns,
          );
          const comes = before.pivots.reduce(
            (so: Fraction, column, at) => so.add(cell(row, column).mul(cell(before.rows[at] ?? [], columns))),
            nought,
          );
          expect(sameNumber(toText(miss.value), comes.sub(cell(row, columns)).div(1000))).toBe(true);
          met[comes.equals(cell(row, columns)) ? 'bound' : 'missed'] += 1;
        }
      }),
      { numRuns: 800, seed },
    );
    // The chains were not all of one kind.
    expect(Math.min(met.fixed, met.free, met.bound, met.missed)).toBeGreaterThan(50);
  });
});

/** The 40 places of a decimal against a fraction. */
function sameNumber(decimal: string, exact: Fraction): boolean {
  return (
    new Fraction(decimal)
      .sub(exact)
      .abs()
      .compare(new Fraction(1n, 10n ** 30n)) < 0
  );
}
