import { expect, test } from 'vitest';
import { wantedIn, wordsIn } from '../../../src/store/search/words-in.ts';

test.each([
  { text: '7/16-20 UNF', words: ['7/16-20', '7/16', '20', 'unf'] },
  { text: 'Left-hand hub, 4.412 in.', words: ['left-hand', 'left', 'hand', 'hub', '4.412', 'in'] },
  { text: 'Müller’s Gespann', words: ['muller', 's', 'gespann'] },
  // A decimal comma is a point; a zero before the point is left out on one phone and typed on the other.
  { text: '0,4487', words: ['.4487'] },
  { text: 'M10×1,5', words: ['m10', '1.5'] },
  { text: '1½', words: ['1', '1/2'] },
  { text: '!!! – .', words: [] },
])('$text is found by $words', ({ text, words }) => {
  // The sign of multiplication parts words where the alphabet of the text doesn't.
  expect(wordsIn(text)).toEqual(words);
});

test('a figure is looked for as typed, and as the size it is in inches and in millimetres', () => {
  // 7/16 in = 0.4375 × 25.4 = 11.1125 mm; 7/16 mm is 0.4375 mm.
  expect(wantedIn('7/16')).toEqual({
    words: [{ begins: '7/16', sizes: ['=11.1125', '=0.4375'] }],
    whole: [],
  });
  // 1.5 × 25.4 = 38.1
  expect(wantedIn('1 1/2').whole).toEqual(['=38.1', '=1.5']);
  expect(wantedIn('28.2702 mm').whole).toEqual(['=28.2702']);
});

test('a text of a thousand words is cut to what a hand could type', () => {
  expect(wantedIn('hub '.repeat(1000)).words.length).toBeLessThan(20);
});
