import { expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { say, sayEntry } from '../../../src/engine/length/say.ts';

function sentenceFor(typed: string): string {
  const result = readEntry(typed, { unit: 'in' });
  return result.ok ? `${typed} was taken` : sayEntry(result.refusal);
}

test('a fraction over nothing says that the bottom can’t be zero, with what was typed', () => {
  expect(sentenceFor('29/0')).toContain('29/0');
  expect(sentenceFor('29/0')).toMatch(/bottom of a fraction can't be zero/);
});

test('a third says which bottoms a shop fraction has and what to do instead', () => {
  expect(sentenceFor('1/3')).toMatch(/2, 4, 8, 16, 32, 64 or 128/);
  expect(sentenceFor('1/3')).toMatch(/as a decimal/);
});

test('forty digits are counted, not shown', () => {
  expect(sentenceFor('4'.repeat(40))).toContain('40 digits');
  expect(sentenceFor('4'.repeat(40))).not.toContain('444');
});

test('a mark that can be seen is shown, one that can’t is named by its number', () => {
  expect(sentenceFor('5🔧')).toContain('“🔧”');
  expect(sentenceFor('5\0')).toContain('An unseen mark (U+0000) at place 2');
  expect(sentenceFor('\u202E5')).toContain('U+202E');
  expect(sentenceFor('\uD83D')).toContain('U+D83D');
});

test('words that came along are not repeated in the sentence', () => {
  expect(sentenceFor('NaN')).not.toContain('NaN');
  expect(sentenceFor('5 undefined')).not.toContain('undefined');
});

test('a place is counted from one, as a person counts', () => {
  expect(sentenceFor('.44٣')).toContain('at place 4');
});

test('a dial too coarse for the limits says its step and the limits in the user’s unit', () => {
  const refusal = {
    code: 'no-step-in-limits',
    step: lengthOf('.002 in'),
    lower: lengthOf('.4481 in'),
    upper: lengthOf('.4489 in'),
  } as const;
  expect(say(refusal, 'in')).toMatch(/\.002 in.*\.4481 in.*\.4489 in/);
  expect(say(refusal, 'mm')).toMatch(/0\.051 mm.*11\.382 mm.*11\.402 mm/); // 0.0508, 11.38174, 11.40206
});
