import { expect, test } from 'vitest';
import { broughtWords } from '../../../src/screens/shop/restore-words.ts';

test('what a file brought is counted in words that fit one and many, and nothing is left out of none', () => {
  expect(broughtWords({ added: 1, changed: 0, same: 1, canUndo: true })).toBe(
    '1 entry new, 1 was here already',
  );
  expect(broughtWords({ added: 2, changed: 3, same: 1200, canUndo: true })).toBe(
    '2 entries new, 3 changed, 1,200 were here already',
  );
});
