import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawJoint } from '../../../../src/screens/worksheets/thread-engagement/joint-drawing.tsx';
import { placeOf, slotsToScale } from '../../../../src/screens/worksheets/thread-engagement/joint-slots.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const boxes = [
  { width: 320, height: 130 },
  { width: 380, height: 118 },
  { width: 390, height: 184 },
  { width: 420, height: 210 },
];
const choices = { thread: '1/2-13 UNC', grade: 'sae-5', parent: 'cast-aluminium' };

function draw(sizes: Readonly<Record<string, string>>, more: Record<string, string> = {}, box = boxes[2]) {
  const given = givenOf(
    worksheetOf('thread-engagement', {
      choices: { ...choices, ...more },
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)])),
    }),
  );
  const room = box ?? { width: 390, height: 184 };
  const drawn = drawJoint(given, room);
  render(<FormDrawing drawn={drawn} box={room} hrefFor={(field) => `#${field}`} />);
  return drawn;
}

describe('a bolt in its joint', () => {
  test('shows the legs, what is engaged, and the lengths to buy', () => {
    // 1-3/8 to 1-7/8: worked in joint-account.test.ts.
    const drawn = draw({ leg1: '.375', leg2: '.250' }, { held: 'nut' });
    expect(drawn.running?.text).toBe('1-3/8 to 1-7/8 in');
    expect(screen.getByRole('link', { name: 'leg 1 .375: type or measure it' })).toBeTruthy();
    expect(screen.getByRole('link', { name: 'leg 3, not given yet: type or measure it' })).toBeTruthy();
    expect(drawn.words).toContain('leg 1 on leg 2, .375 in from under the head');
  });

  test('has a nut’s height where it is held by one, and what is engaged where the part is tapped', () => {
    const fields = (held: string) => draw({ leg1: '.375' }, { held }).sizes.map(({ field }) => field);
    expect(fields('nut')).toContain('nutHeight');
    expect(fields('tapped')).not.toContain('nutHeight');
    expect(fields('tapped')).toContain('engaged');
  });

  test('counts a stud’s legs from its part, on the right', () => {
    const drawn = draw({ leg1: '.375', leg2: '.250' }, { held: 'stud', legs: 'all' });
    const x = (field: string) => drawn.sizes.find((size) => size.field === field)?.x ?? 0;
    expect(x('leg2')).toBeLessThan(x('leg1'));
    expect(x('leg1')).toBeLessThan(x('engaged'));
  });

  test.each(boxes)('of four legs has no label over another in $width × $height', (box) => {
    for (const held of ['nut', 'tapped', 'stud']) {
      const legs = { leg1: '1.2345', leg2: '.1250', leg3: '2.5000', leg4: '.0625' };
      const { sizes, running } = draw({ ...legs, boltLength: '5.500', shank: '4.250' }, { held }, box);
      const above = sizes
        .filter(({ y }) => y === 18)
        .map(({ x }) => x)
        .toSorted((a, b) => a - b);
      const apart = above.slice(1).map((x, index) => x - (above[index] ?? 0));
      // A figure of five at 19 px, five times 10.6, with a little air.
      expect(apart.filter((gap) => gap < 55)).toEqual([]);
      // Under it each begins behind the one before: name at 8.4, figure at 10.6 a letter; so does the running figure.
      const under = sizes.filter(({ y }) => y !== 18);
      for (const { name, figure = '?', x, y } of under) {
        const end = x + name.length * 8.4 + (figure.length + 1) * 10.6;
        const next = under.filter((other) => other.y === y && other.x > x).map((other) => other.x);
        const start = y === box.height - 10 && running ? running.x - running.text.length * 10 : box.width;
        expect(end).toBeLessThanOrEqual(Math.min(start, ...next));
      }
      cleanup();
    }
  });
});

describe('parts side by side', () => {
  test('are to one scale where each is wide enough for its label', () => {
    // 1 : 3 of 200
    expect(slotsToScale([1, 3], { left: 0, width: 200, least: 40 })).toEqual([
      { left: 0, right: 50 },
      { left: 50, right: 200 },
    ]);
  });

  test('too thin for its label one is drawn wider, and the others keep their scale', () => {
    // 40, and 1 : 3 of the 160 that are left
    expect(slotsToScale([0.1, 1, 3], { left: 0, width: 200, least: 40 })).toEqual([
      { left: 0, right: 40 },
      { left: 40, right: 80 },
      { left: 80, right: 200 },
    ]);
  });

  test('have a length that ends in one of them in the same share of it', () => {
    const slots = slotsToScale([1, 3], { left: 10, width: 200, least: 40 });
    // Half of the second: 60 + 75
    expect(placeOf(2.5, [1, 3], slots)).toBe(135);
    expect(placeOf(0.5, [1, 3], slots)).toBe(35);
  });
});
