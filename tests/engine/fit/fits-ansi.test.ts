import { describe, expect, test } from 'vitest';
import { ansiClasses, ansiFit } from '../../../src/engine/fit/fits-ansi.ts';
import { fitLimits } from '../../../src/engine/fit/fits.ts';
import { lengthOf, minus, plus, sameLength, type Length } from '../../../src/engine/length/length.ts';
import { readReference } from '../../reference/read-csv.ts';

const rows = readReference('ansi_b41.csv');
const thou = (text: string): Length => lengthOf(`${text.replace('+', '')} thou`);

test.each(
  rows.map((row) => ({
    name: `${row.cell('class')} over ${row.cell('over_in')} to ${row.cell('up_to_in')} in`,
    row,
  })),
)('$name is as printed, hole, pin and clearance', ({ row }) => {
  const ends = [
    plus(lengthOf(`${row.cell('over_in')} in`), lengthOf('.0001 in')),
    lengthOf(`${row.cell('up_to_in')} in`),
  ];
  for (const nominal of ends) {
    const fit = fitLimits({ fitClass: row.cell('class'), nominal });
    if (!fit.ok) throw new Error(fit.refusal.code);
    const { hole, pin, clearance, source } = fit.value;
    const same = (size: Length, column: string) => sameLength(minus(size, nominal), thou(row.cell(column)));
    expect(same(hole.upper, 'hole_upper_thou')).toBe(true);
    expect(same(hole.lower, 'hole_lower_thou')).toBe(true);
    expect(same(pin.upper, 'shaft_upper_thou')).toBe(true);
    expect(same(pin.lower, 'shaft_lower_thou')).toBe(true);
    expect(sameLength(clearance.lower, thou(row.cell('clearance_min_thou')))).toBe(true);
    expect(sameLength(clearance.upper, thou(row.cell('clearance_max_thou')))).toBe(true);
    expect(source.includes('from memory')).toBe(row.cell('basis') === 'memory');
  }
});

test('every class of the reference is there, in its order', () => {
  expect(ansiClasses).toEqual([...new Set(rows.map((row) => row.cell('class')))]);
});

describe('outside the table', () => {
  test.each([
    { fitClass: 'RC5', nominal: '4.7301 in', code: 'size-outside-fit-table' },
    { fitClass: 'RC5', nominal: '0 in', code: 'size-outside-fit-table' },
    { fitClass: 'LT3', nominal: '.24 in', code: 'class-not-at-size' },
    { fitClass: 'FN3', nominal: '.95 in', code: 'class-not-at-size' },
    { fitClass: 'RC10', nominal: '1 in', code: 'no-such-class' },
    { fitClass: 'toString', nominal: '1 in', code: 'no-such-class' },
  ])('$fitClass at $nominal is refused: $code', ({ fitClass, nominal, code }) => {
    expect(ansiFit(lengthOf(nominal), fitClass)).toMatchObject({ ok: false, refusal: { code } });
  });
});
