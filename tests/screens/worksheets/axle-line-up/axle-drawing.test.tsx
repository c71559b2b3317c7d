import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import type { AxleLayoutName } from '../../../../src/engine/worksheets/axle-line-up/axle-layout.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { apart, axleScale } from '../../../../src/screens/worksheets/axle-line-up/axle-drawing-scale.ts';
import { drawAxle } from '../../../../src/screens/worksheets/axle-line-up/axle-drawing.tsx';
import type { DrawingBox, Drawn } from '../../../../src/screens/worksheets/frame/drawn.ts';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

type Sizes = Readonly<Record<string, string>>;

const inch = (text: string) => lengthOf(`${text} in`);
const USUAL: DrawingBox = { width: 390, height: 184 };

const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
};
const trailer: Sizes = { seat: '5.250', hub: '3.875', mount: '1.500', wheelPlace: '2.000' };
const two: Sizes = {
  width: '8.000',
  hub: '4.500',
  centre: '2.300',
  leftDisc: '.300',
  rightDisc: '.350',
  leftSlot: '.150',
  leftBracket: '.500',
  leftFloat: '.020',
};
const drum: Sizes = { width: '7.000', hub: '4.000', centre: '1.900', plate: '.625' };
const rear: Sizes = { ...front, sprocket: '.200', chainLine: '2.460' };

type Asked = {
  readonly side?: 'left' | 'right';
  readonly onHand?: Sizes;
  readonly unit?: 'in' | 'mm';
  readonly box?: DrawingBox;
};

function drawnOf(layout: AxleLayoutName | undefined, sizes: Sizes, asked: Asked = {}): Drawn {
  const { side = 'right', onHand = {}, unit = 'in', box = USUAL } = asked;
  const all = {
    ...sizes,
    ...Object.fromEntries(Object.entries(onHand).map(([name, size]) => [`onHand-${name}`, size])),
  };
  const given = worksheetOf('axle-line-up', {
    unit,
    choices: layout === undefined ? {} : { layout, side },
    sizes: Object.fromEntries(Object.entries(all).map(([name, size]) => [name, typedSize(size)])),
  });
  return drawAxle(givenOf(given), box);
}

function draw(layout: AxleLayoutName, sizes: Sizes, asked: Asked = {}) {
  cleanup();
  const drawn = drawnOf(layout, sizes, asked);
  const { container } = render(
    <FormDrawing drawn={drawn} box={asked.box ?? USUAL} hrefFor={(field) => `#${field}`} />,
  );
  const parts = [...container.querySelectorAll('.drawing-part')];
  const numbers = [...container.querySelectorAll('rect')].flatMap((one) => [
    Number(one.getAttribute('x')),
    Number(one.getAttribute('width')),
  ]);
  return {
    spoken: screen.getByRole('group').getAttribute('aria-label') ?? '',
    text: container.textContent,
    brass: parts.filter((one) => one.classList.contains('drawing-changes')).length,
    whole: numbers.every((one) => Number.isFinite(one)) && !container.innerHTML.includes('NaN'),
    letters: drawn.sizes
      .filter(({ name }) => /^[A-D]$/.test(name))
      .toSorted((a, b) => a.x - b.x)
      .map(({ name }) => name),
    // Above and below the middle.
    legs: container.querySelectorAll('.axle-leg').length / 2,
    wantedLines: container.querySelectorAll('path[stroke-dasharray="7 5"]').length,
  };
}

describe('an axle drawn from leg to leg', () => {
  test('is spoken from left to right, with what is to be done and where wheel and disc lie', () => {
    // Disc 1.075 + 4.412 + .312 = 5.799
    expect(draw('front-one-disc', front).spoken).toBe(
      'From left to right: left spacer 1.075 in, make; hub 4.412 in; hub to bracket .120 in, make; half the float .005 in; bracket .500 in; half the float .005 in; bracket to leg .633 in, make. Sleeve 1.263 in. Wheel centre 3.375 in from the left. Disc 5.799 in from the left.',
    );
  });

  test('with its disc on the left is spoken and drawn the other way round', () => {
    const { spoken, letters } = draw('front-one-disc', front, { side: 'left' });
    expect(spoken.startsWith('From left to right: bracket to leg .445 in')).toBe(true);
    // The letter stays with the spacer: A is on the side away from the disc.
    expect(letters).toEqual(['C', 'B', 'A']);
    expect(draw('front-one-disc', front).letters).toEqual(['A', 'B', 'C']);
  });

  test('has in brass what has to be made, trimmed or shimmed, and nothing that is kept', () => {
    // Three spacers, cut above and below the axis, and the sleeve.
    expect(draw('front-one-disc', front).brass).toBe(7);
    const onHand = { far: '1.075', inner: '.120', outer: '.633', sleeve: '1.263' };
    expect(draw('front-one-disc', front, { onHand }).brass).toBe(0);
  });

  test('has nothing in brass while a size is missing, and asks for it by its name', () => {
    const { hub: _hub, ...others } = front;
    const { brass, whole, spoken } = draw('front-one-disc', others);
    expect(brass).toBe(0);
    expect(whole).toBe(true);
    expect(spoken).toContain('not worked out yet');
    expect(screen.getByRole('link', { name: 'hub, not given yet: type or measure it' })).toBeTruthy();
    expect(screen.getByRole('link', { name: 'legs 6.750: type or measure it' })).toBeTruthy();
  });

  test('has a letter on each spacer, pressed to give the one on hand', () => {
    draw('front-one-disc', front);
    const a = screen.getByRole('link', { name: 'A, left spacer: type or measure the one on hand' });
    expect(a.getAttribute('href')).toBe('#onHand-far');
  });

  test.each<{ sizes: Sizes; left: string | undefined }>([
    { sizes: {}, left: undefined },
    { sizes: { width: '6.750' }, left: '6.750' },
    { sizes: { width: '6.750', hub: '4.412' }, left: '2.338' },
    // 6.750 − 4.412 − .500 − .010
    { sizes: front, left: '1.828' },
  ])('says all the time what is left for the spacers: $left', ({ sizes, left }) => {
    expect(drawnOf('front-one-disc', sizes).running?.text).toBe(left);
  });

  test('of two discs counts the right bracket as the left one while it isn’t given', () => {
    // 8.000 − 4.500 − 2 · .500 − 2 · .020
    expect(drawnOf('front-two-discs', two).running?.text).toBe('2.460');
  });

  test('says that what is narrow is drawn wider, and only then', () => {
    expect(draw('front-one-disc', front).text).toContain('what is narrow is drawn wider');
    expect(draw('drum', drum).text).not.toContain('drawn wider');
  });

  test('says what is short', () => {
    const { spoken, whole } = draw('front-one-disc', { ...front, slot: '.370' });
    expect(spoken).toContain('hub to bracket .063 in short');
    expect(whole).toBe(true);
  });

  test('shows where the chain runs when the sprocket can’t be there, and says it', () => {
    const { spoken, wantedLines } = draw('rear-sprocket', rear);
    expect(wantedLines).toBe(1);
    expect(spoken).toContain('It comes out .040 too far left');
    expect(draw('rear-sprocket', { ...rear, chainLine: '2.500' }).wantedLines).toBe(0);
  });

  test('on a stub axle has a shoulder and a nut in place of two legs', () => {
    expect(draw('trailer-hub', trailer).legs).toBe(1);
    expect(draw('trailer-hub', trailer, { side: 'left' }).legs).toBe(1);
    expect(draw('front-one-disc', front).legs).toBe(2);
  });

  test('with two discs has both sleeves', () => {
    expect(draw('front-two-discs', two).spoken).toContain('Left sleeve 1.700 in. Right sleeve 1.800 in.');
  });

  test('with sizes of nothing, typed by a slip, is drawn all the same', () => {
    const nothing = Object.fromEntries(Object.keys(front).map((name) => [name, '0']));
    expect(draw('front-one-disc', nothing).whole).toBe(true);
  });

  test('is there before it is known what sits on it, with no size to press', () => {
    expect(drawnOf(undefined, {}).sizes).toEqual([]);
  });
});

type Extent = { readonly words: string; readonly from: number; readonly to: number; readonly row: number };

/** How wide words are at most: 8.4 px a letter of 16 px bold, 10.6 a digit of 19 px, 9.4 a letter of the running figure. */
function extents({ sizes, running }: Drawn, { height }: DrawingBox): readonly Extent[] {
  const labels = sizes
    .filter(({ beside }) => !beside)
    .map(({ name, figure = '', x, y }): Extent => {
      const half = Math.max(name.length * 8.4, figure.length * 10.6) / 2;
      return { words: `${name} ${figure}`, from: x - half, to: x + half, row: y < height / 2 ? 0 : 1 };
    });
  const left = running && {
    words: running.text,
    from: running.x - running.text.length * 9.4,
    to: running.x,
    row: 1,
  };
  return left ? [...labels, left] : labels;
}

const boxes = [
  { width: 320, height: 130 },
  USUAL,
  { width: 380, height: 118 },
  { width: 380, height: 226 },
  { width: 420, height: 210 },
];
const inMillimetres = (sizes: Sizes) =>
  Object.fromEntries(
    Object.entries(sizes).map(([name, size]) => [name, `${(Number(size) * 25.4).toFixed(2)} mm`]),
  );
const axles = (
  [
    ['front-one-disc', front],
    ['front-two-discs', two],
    ['drum', drum],
    ['rear-sprocket', rear],
    ['trailer-hub', trailer],
  ] as const
).flatMap(([layout, sizes]) =>
  (['in', 'mm'] as const).map((unit) => ({
    layout,
    unit,
    sizes: unit === 'in' ? sizes : inMillimetres(sizes),
  })),
);

describe.each(boxes)('in $width by $height', (box) => {
  test.each(axles)(
    'no size of $layout lies on another in $unit, or is cut off',
    ({ layout, unit, sizes }) => {
      for (const side of ['left', 'right'] as const) {
        const all = extents(drawnOf(layout, sizes, { unit, side, box }), box);
        expect(all.filter(({ from, to }) => from < 0 || to > box.width)).toEqual([]);
        for (const row of [0, 1]) {
          const inRow = all.filter((one) => one.row === row).toSorted((a, b) => a.from - b.from);
          const on = inRow.filter((one, index) => index > 0 && one.from < (inRow[index - 1]?.to ?? 0));
          expect(on).toEqual([]);
        }
      }
    },
  );

  test('every need is a label to press, and each stands inside', () => {
    for (const { layout, sizes } of axles) {
      const drawn = drawnOf(layout, sizes, { box });
      const fields = drawn.sizes.map(({ field }) => field);
      expect(fields).toEqual(expect.arrayContaining(Object.keys(sizes)));
      expect(drawn.sizes.filter(({ y }) => y < 14 || y > box.height - 4)).toEqual([]);
    }
  });
});

describe('the scale of an axle', () => {
  const laid = (...lengths: readonly [string, string][]) =>
    lengths.map(([name, length]) => ({ name, length: inch(length) }));

  test('is true where everything can be seen', () => {
    const { parts, at, widened } = axleScale(laid(['far', '2'], ['hub', '5'], ['outer', '3']), 30, 300);
    expect(parts.map(({ x, width }) => [x, width])).toEqual([
      [30, 60],
      [90, 150],
      [240, 90],
    ]);
    expect(widened).toBe(false);
    expect(at(inch('4.5'))).toBeCloseTo(30 + 135);
  });

  test('widens what is narrow and keeps the whole between the legs', () => {
    const { parts, widened } = axleScale(laid(['far', '.010'], ['hub', '5'], ['outer', '3']), 30, 300);
    // Room for its letter.
    expect(parts[0]?.width).toBeCloseTo(20);
    expect(parts.reduce((so, { width }) => so + width, 0)).toBeCloseTo(300);
    expect(widened).toBe(true);
  });

  test('keeps labels apart and inside', () => {
    const labels = (...middles: readonly number[]) => middles.map((at) => ({ at, width: 80 }));
    expect(apart(labels(50, 60, 300, 310), 10, 10, 380)).toEqual([50, 140, 250, 340]);
    expect(apart(labels(100, 300), 10, 10, 380)).toEqual([100, 300]);
  });

  test('lets the gaps between labels give way before the labels do', () => {
    const wide = [100, 110, 120].map((at) => ({ at, width: 80 }));
    // 250 for three of 80: 5 between them.
    expect(apart(wide, 10, 0, 250)).toEqual([40, 125, 210]);
  });
});
