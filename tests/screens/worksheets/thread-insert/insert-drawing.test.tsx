import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawInsert } from '../../../../src/screens/worksheets/thread-insert/insert-drawing.tsx';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const USUAL = { width: 390, height: 184 };

/** The insert of a 7/16-20 bolt in aluminium, in a hole of this size or in solid metal, in so many legs. */
function draw(sizes: Readonly<Record<string, string>> = {}, box = USUAL, more: Record<string, string> = {}) {
  const given = givenOf(
    worksheetOf('thread-insert', {
      choices: { thread: '7/16-20 UNF', ...more },
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)])),
    }),
  );
  const drawn = drawInsert(given, box);
  const { container } = render(<FormDrawing drawn={drawn} box={box} hrefFor={(field) => `#${field}`} />);
  const radius = (circle: Element | null) => Number(circle?.getAttribute('r'));
  const tapped = radius(container.querySelector('circle.drawing-solid'));
  return {
    drawn,
    container,
    spoken: screen.getByRole('group').getAttribute('aria-label'),
    text: container.textContent,
    // As a part of the circle that the insert's thread ends at.
    brass: [...container.querySelectorAll('circle.drawing-changes')].map((circle) => radius(circle) / tapped),
  };
}

// Least major of the insert's thread: 7/16 + 1.299038 / 20 = .4375 + .06495 = .5025 (ASME B18.29.1, note 3). Least
// minor: .4375 + .216506 / 20 = .4483. The usual drill is 29/64 = .4531.
describe('the hole of a wire insert, end-on', () => {
  test('is spoken with the hole as it is, the drill and the thread', () => {
    expect(draw({ hole: '.4437' }).spoken).toBe(
      '7/16-20 UNF: hole now .4437, drill 29/64, tapped to .5025 at least.',
    );
  });

  test('in solid metal says that there is no hole yet', () => {
    const { spoken } = draw();
    expect(spoken).toBe('7/16-20 UNF: drill 29/64, tapped to .5025 at least.');
    expect(screen.getByRole('link', { name: 'hole, not given yet: type or measure it' })).toBeTruthy();
  });

  test('has the drill in brass, to the scale of the thread around it', () => {
    const { brass, text } = draw({ hole: '.4437' });
    expect(text).toContain('drill 29/64 · 75.9 %');
    // .453125 / .502452 = .90183
    expect(brass).toHaveLength(1);
    expect(brass[0]).toBeCloseTo(0.90183, 4);
  });

  test('large enough already has itself in brass, and no drill', () => {
    // .4500 exactly known lies above the least minor .4483.
    const { brass, text } = draw({ hole: '.4500' });
    expect(text).toContain('no drill');
    // .45 / .502452 = .89561
    expect(brass[0]).toBeCloseTo(0.89561, 4);
  });
});

describe('the legs of an insert, cut through', () => {
  test('are spoken each with its thickness and its insert', () => {
    // 1.5D = .656 in .750; 1D = .4375 in .500
    expect(draw({ hole: '.4500', thickness: '.750', thickness2: '.500' }).spoken).toContain(
      'Leg 1 .750 in thick, insert 1.5D. Leg 2 .500 in thick, insert 1D.',
    );
  });

  test('have brass coils in each that is known', () => {
    const { container } = draw({ thickness: '.750', thickness2: '.500' });
    expect(container.querySelectorAll('path.drawing-changes')).toHaveLength(2);
  });

  test('ask for the next one by name, and offer one more once they are all there', () => {
    draw({ thickness: '.750' });
    expect(screen.getByRole('link', { name: 'leg 2, not given yet: type or measure it' })).toBeTruthy();
    cleanup();
    draw({ thickness: '.750' }, USUAL, { legs: 'all' });
    expect(screen.getByRole('link', { name: '+ leg, not given yet: type or measure it' })).toBeTruthy();
  });

  test.each([
    { width: 320, height: 130 },
    { width: 380, height: 118 },
    { width: 390, height: 184 },
    { width: 420, height: 210 },
  ])('stand side by side in $width × $height, four of them too, none over its neighbour', (box) => {
    for (const count of [1, 2, 3, 4]) {
      const sizes = Object.fromEntries(
        ['thickness', 'thickness2', 'thickness3', 'thickness4']
          .slice(0, count)
          .map((name, index) => [name, index % 2 === 0 ? '1.2345' : '.125']),
      );
      const { drawn } = draw(sizes, box, { legs: 'all' });
      const middles = drawn.sizes.filter(({ field }) => field.startsWith('thickness')).map(({ x }) => x);
      const apart = middles.slice(1).map((x, index) => x - (middles[index] ?? 0));
      // A figure of five at 19 px, five times 10.6, with a little air.
      expect(apart.filter((gap) => gap < 56)).toEqual([]);
      expect(middles.filter((x) => x > box.width - 10)).toEqual([]);
      cleanup();
    }
  });
});
