import { expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { limitSlip } from '../../../src/screens/fit-up/limit-slip.ts';
import { typedSize } from '../worksheets/worksheet-for-test.ts';

function meant(
  check: Parameters<typeof limitSlip>[0],
  side: 'lower' | 'upper',
  typed: string,
  unit: 'in' | 'mm' = 'in',
) {
  const entry = readEntry(typed, { unit });
  return entry.ok ? limitSlip(check, side, entry.value)?.meant.map((one) => one.typed) : undefined;
}

const float = { by: 'gap', lower: typedSize('.008') } as const;

test.each([
  {
    fact: 'a lost point beside the other limit',
    check: float,
    side: 'upper',
    typed: '.085',
    meant: '.0085 in',
  },
  { fact: 'millimetres typed as inches', check: float, side: 'upper', typed: '3.05', meant: '3.05 mm' },
  // Beside the other limit, 25.4 times it: .00833 in · 25.4
  {
    fact: 'the other unit beside the other limit',
    check: float,
    side: 'upper',
    typed: '.2117',
    meant: '.2117 mm',
  },
  {
    fact: 'inches typed as millimetres, of a length',
    check: { by: 'length', upper: typedSize('2.412') },
    side: 'lower',
    typed: '2.408',
    unit: 'mm',
    meant: '2.408 in',
  },
] as const)('a limit of a check is asked about: $fact', ({ check, side, typed, meant: one, ...more }) => {
  expect(meant(check, side, typed, 'unit' in more ? more.unit : 'in')).toContain(one);
});

test.each([
  { check: float, side: 'upper', typed: '.012' },
  { check: { by: 'gap' }, side: 'lower', typed: '.020' },
  { check: { by: 'gap', lower: typedSize('1/2') }, side: 'upper', typed: '.750' },
  { check: { by: 'runout' }, side: 'upper', typed: '.004' },
  { check: { by: 'length' }, side: 'lower', typed: '6.5' },
] as const)('$typed of a check is none', ({ check, side, typed }) => {
  expect(meant(check, side, typed)).toBeUndefined();
});
