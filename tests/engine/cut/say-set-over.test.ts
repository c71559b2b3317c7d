import { expect, test } from 'vitest';
import { saySetOver, totalReading } from '../../../src/engine/cut/say-set-over.ts';
import { floatMm, lengthOf } from '../../../src/engine/length/length.ts';

/** What an indicator on the spindle's own line reads, point by point: where that line meets a circle whose middle goes round. */
function readInTurn(radius: number, off: number): number {
  const read = Array.from({ length: 3600 }, (_, tenth) => {
    const turned = (tenth * Math.PI) / 1800;
    return off * Math.cos(turned) + Math.sqrt(radius ** 2 - (off * Math.sin(turned)) ** 2);
  });
  return Math.max(...read) - Math.min(...read);
}

test.each([
  { radius: 8, off: '1.524 mm' },
  { radius: 30, off: '0.25 mm' },
  { radius: 12.7, off: '6 mm' },
])('set over $off the outside runs out by twice that, whatever its size', ({ radius, off }) => {
  const by = lengthOf(off);
  expect(floatMm(totalReading(by))).toBeCloseTo(readInTurn(radius, floatMm(by)), 9);
});

test('what it may be off is never shown wider than it is', () => {
  // .060 over: .120 in all; .00047 off: .00094, down to .0009
  const within = lengthOf('.00047 in');
  expect(saySetOver({ by: lengthOf('.060 in'), within }, 'in')).toEqual([
    'Four-jaw chuck: set it over .060.',
    'Over a turn the indicator reads .120 in all, ±.00090.',
    'Mark the thin side before you unchuck it.',
  ]);
});

test('where nobody said how close it has to be, nothing is said of it', () => {
  expect(saySetOver({ by: lengthOf('1.5 mm') }, 'mm')[1]).toBe(
    'Over a turn the indicator reads 3.00 mm in all.',
  );
});
