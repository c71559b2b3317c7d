import { expect, test } from 'vitest';
import { undoWords } from '../../../src/screens/common/undo-words.ts';

test.each([
  { label: 'Changed M8 bolt', words: 'Undo: changed M8 bolt' },
  { label: 'Struck out .4487 in', words: 'Undo: struck out .4487 in' },
  { label: 'Re-checked: Bolts', words: 'Undo: re-checked: Bolts' },
  { label: 'M8 bolt: to size', words: 'Undo: M8 bolt: to size' },
  { label: 'Setter ring: over', words: 'Undo: Setter ring: over' },
])('"$label" is offered as "$words": a name keeps its letters', ({ label, words }) => {
  expect(undoWords(label)).toBe(words);
});
