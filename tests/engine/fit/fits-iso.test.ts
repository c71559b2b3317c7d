import { describe, expect, test } from 'vitest';
import {
  isoGrades,
  isoHole,
  isoPin,
  isoTolerance,
  type Deviations,
} from '../../../src/engine/fit/fits-iso.ts';
import {
  lengthOf,
  minus,
  plus,
  sameLength,
  toText,
  zero,
  type Length,
} from '../../../src/engine/length/length.ts';
import { readReference } from '../../reference/read-csv.ts';

const tolerances = readReference('iso286_it.csv');
const deviations = readReference('iso286_deviations.csv');

const micron = lengthOf('0.001 mm');
const microns = (length: Length) => Number(toText(length)) * 1000;

/** A size just over a step's start and one exactly at its end: both belong to the step. */
const sizesOf = (over: string, upTo: string) => [
  plus(lengthOf(`${over} mm`), micron),
  lengthOf(`${upTo} mm`),
];

function got<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

test.each(
  tolerances.map((row) => ({
    name: `IT${row.cell('grade').slice(2)} over ${row.cell('over_mm')} to ${row.cell('up_to_mm')} mm`,
    row,
  })),
)('$name is as ISO 286-1 table 1 prints it', ({ row }) => {
  const grade = isoGrades.find((one) => `IT${one}` === row.cell('grade'));
  if (!grade) throw new Error(row.cell('grade'));
  for (const nominal of sizesOf(row.cell('over_mm'), row.cell('up_to_mm')))
    expect(microns(got(isoTolerance(nominal, grade)))).toBeCloseTo(Number(row.cell('tolerance_um')), 6);
});

const GRADES: Readonly<Record<string, readonly number[]>> = {
  all: [5, 6, 7, 8, 9, 10, 11, 12, 13, 14],
  'IT4-IT7': [5, 6, 7],
  IT5: [5],
  IT6: [6],
  IT7: [7],
  IT8: [8],
  'above IT7': [8, 9, 10, 11, 12, 13, 14],
  'above IT8': [9, 10, 11, 12, 13, 14],
};

const LIMIT: Readonly<Record<string, (found: Deviations) => Length>> = {
  es: ({ upper }) => upper,
  ES: ({ upper }) => upper,
  ei: ({ lower }) => lower,
  EI: ({ lower }) => lower,
};

const printed = deviations.filter((row) => row.cell('value_um') !== '');

test.each(
  printed.map((row) => ({
    name: `${row.cell('letter')} ${row.cell('grades')} over ${row.cell('over_mm')} to ${row.cell('up_to_mm')} mm`,
    row,
  })),
)('$name is as printed', ({ row }) => {
  const limit = LIMIT[row.cell('deviation')];
  const grades = GRADES[row.cell('grades')];
  if (!limit || !grades) throw new Error(row.cell('grades'));
  const made = row.cell('kind') === 'shaft' ? isoPin : isoHole;
  const sizes = sizesOf(row.cell('over_mm'), row.cell('up_to_mm'));
  // N above IT8 is not used up to 1 mm, as the row itself notes.
  const used = row.cell('note').startsWith('N above IT8') ? sizes.slice(-1) : sizes;
  for (const nominal of used)
    for (const grade of grades)
      expect(microns(limit(got(made(nominal, `${row.cell('letter')}${grade}`))))).toBeCloseTo(
        Number(row.cell('value_um')),
        6,
      );
});

test.each(deviations.filter((row) => row.cell('letter').toLowerCase() === 'js').map((row) => ({ row })))(
  'js and JS are half the tolerance to each side at every size',
  ({ row }) => {
    const made = row.cell('kind') === 'shaft' ? isoPin : isoHole;
    for (const nominal of sizesOf(row.cell('over_mm'), row.cell('up_to_mm')))
      for (const grade of isoGrades) {
        const { lower, upper } = got(made(nominal, `${row.cell('letter')}${grade}`));
        expect(sameLength(plus(lower, upper), zero)).toBe(true);
        expect(sameLength(minus(upper, lower), got(isoTolerance(nominal, grade)))).toBe(true);
      }
  },
);

describe('what the rules say', () => {
  test.each([
    // ISO 286-1:2010 does not round an odd tolerance: IT7 at 10 mm is 15 µm
    { nominal: '10 mm', pin: 'js7', lower: -7.5, upper: 7.5 },
    // k8 starts at the nominal size: IT8 at 25 mm is 33 µm
    { nominal: '25 mm', pin: 'k8', lower: 0, upper: 33 },
    { nominal: '25 mm', pin: 'k7', lower: 2, upper: 23 },
    // t starts above 24 mm: IT6 at 30 mm is 13 µm
    { nominal: '30 mm', pin: 't6', lower: 41, upper: 54 },
    { nominal: '24.001 mm', pin: 't6', lower: 41, upper: 54 },
  ])('$pin at $nominal lies from $lower to $upper µm', ({ nominal, pin, lower, upper }) => {
    const found = got(isoPin(lengthOf(nominal), pin));
    expect(microns(found.lower)).toBeCloseTo(lower, 6);
    expect(microns(found.upper)).toBeCloseTo(upper, 6);
  });

  test.each([
    // Special case of the table: −9, where −20 + (32 − 23) would be −11; IT6 is 32
    { nominal: '250.001 mm', hole: 'M6', lower: -41, upper: -9 },
    { nominal: '315 mm', hole: 'M6', lower: -41, upper: -9 },
    // Either side of it the rule holds: −17 + (29 − 20) = −8, −21 + (36 − 25) = −10
    { nominal: '250 mm', hole: 'M6', lower: -37, upper: -8 },
    { nominal: '315.001 mm', hole: 'M6', lower: -46, upper: -10 },
    // P7 at 40: −26 + (25 − 16) = −17; P8 has no delta: −26
    { nominal: '40 mm', hole: 'P7', lower: -42, upper: -17 },
    { nominal: '40 mm', hole: 'P8', lower: -65, upper: -26 },
    // N8 at 40: −17 + (39 − 25) = −3; N9 is 0
    { nominal: '40 mm', hole: 'N8', lower: -42, upper: -3 },
    { nominal: '40 mm', hole: 'N9', lower: -62, upper: 0 },
    // No delta to 3 mm: N7 is −4
    { nominal: '3 mm', hole: 'N7', lower: -14, upper: -4 },
    { nominal: '3.001 mm', hole: 'N7', lower: -16, upper: -4 },
  ])('$hole at $nominal lies from $lower to $upper µm', ({ nominal, hole, lower, upper }) => {
    const found = got(isoHole(lengthOf(nominal), hole));
    expect(microns(found.lower)).toBeCloseTo(lower, 6);
    expect(microns(found.upper)).toBeCloseTo(upper, 6);
  });

  test.each([
    { made: isoPin, what: 't6', nominal: '24 mm', code: 'class-not-at-size' },
    { made: isoHole, what: 'K9', nominal: '40 mm', code: 'class-not-at-size' },
    { made: isoHole, what: 'N9', nominal: '1 mm', code: 'class-not-at-size' },
    { made: isoHole, what: 'T7', nominal: '40 mm', code: 'no-such-class' },
    { made: isoHole, what: 'U7', nominal: '40 mm', code: 'no-such-class' },
    { made: isoHole, what: 'h7', nominal: '40 mm', code: 'no-such-class' },
    { made: isoPin, what: 'G6', nominal: '40 mm', code: 'no-such-class' },
    { made: isoPin, what: 'g4', nominal: '40 mm', code: 'no-such-class' },
    { made: isoPin, what: 'g15', nominal: '40 mm', code: 'no-such-class' },
    { made: isoPin, what: 'x6', nominal: '40 mm', code: 'no-such-class' },
    { made: isoPin, what: '', nominal: '40 mm', code: 'no-such-class' },
    { made: isoPin, what: 'g6', nominal: '0 mm', code: 'size-outside-fit-table' },
    { made: isoPin, what: 'g6', nominal: '500.001 mm', code: 'size-outside-fit-table' },
    { made: isoHole, what: 'H7', nominal: '0 mm', code: 'size-outside-fit-table' },
  ])('$what at $nominal is refused: $code', ({ made, what, nominal, code }) => {
    expect(made(lengthOf(nominal), what)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('the table of tolerances ends at 500 mm', () => {
    expect(isoTolerance(lengthOf('500 mm'), 7).ok).toBe(true);
    expect(isoTolerance(lengthOf('501 mm'), 7)).toMatchObject({ ok: false });
  });

  test('K8 and N9 are still made where the rule allows them', () => {
    expect(isoHole(lengthOf('40 mm'), 'K8').ok).toBe(true);
    expect(isoHole(lengthOf('1.001 mm'), 'N9').ok).toBe(true);
    expect(isoHole(lengthOf('1 mm'), 'N8').ok).toBe(true);
  });
});
