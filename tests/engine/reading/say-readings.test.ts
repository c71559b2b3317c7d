import { expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf, type Unit } from '../../../src/engine/length/length.ts';
import { slipQuestion } from '../../../src/engine/reading/reading.ts';
import { sayCaution, saySlipQuestion } from '../../../src/engine/reading/say-readings.ts';

function asked(typed: string, unit: Unit, others: string): string {
  const entry = readEntry(typed, { unit });
  const question = entry.ok ? slipQuestion(entry.value.exact, [lengthOf(others)]) : undefined;
  return entry.ok && question ? saySlipQuestion(question, entry.value) : '';
}

test.each([
  // 11.4 / .4488 = 25.4
  {
    typed: '11.4',
    unit: 'in',
    others: '.4488 in',
    says: '11.4 in is 25.4 times the others, near .4488 in: millimetres typed as inches?',
  },
  {
    typed: '.4488',
    unit: 'mm',
    others: '11.4 mm',
    says: '.4488 mm is 1/25.4 of the others, near 11.40 mm: inches typed as millimetres?',
  },
  {
    typed: '4.487',
    unit: 'in',
    others: '.4487 in',
    says: '4.487 in stands beside the others, near .4487 in: has the point slipped?',
  },
  {
    typed: '4487',
    unit: 'thou',
    others: '.4487 in',
    says: '4487 thou stands beside the others, near .4487 in: has the point slipped?',
  },
] as const)('$typed $unit beside $others is asked about', ({ typed, unit, others, says }) => {
  expect(asked(typed, unit, others)).toBe(says);
});

test('a size near the others is not asked about', () => {
  expect(asked('.4490', 'in', '.4487 in')).toBe('');
});

test('what two points and flat jaws can’t see is said', () => {
  expect(sayCaution('three-lobed-unseen')).toContain('three-lobed');
  expect(sayCaution('jaw-flats')).toContain('1/2 in');
});
