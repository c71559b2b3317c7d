import { cleanup, render } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { NEXT_PART, withTyped, type TypedPart } from '../../../../src/screens/worksheets/frame/typed-part.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawSpacerStack } from '../../../../src/screens/worksheets/spacer-stack/stack-drawing.tsx';
import {
  featureOf,
  ofFeature,
  partOf,
  readingOf,
  tool,
  typedSize,
  worksheetOf,
} from '../worksheet-for-test.ts';

afterEach(cleanup);

type Part = { name: string; size: string; count?: number; adjustable?: boolean };
type Given = { sleeve?: string; isOpen?: boolean; width?: number; height?: number; typing?: TypedPart };

function draw(parts: readonly Part[], { sleeve, isOpen = false, typing, ...box }: Given = {}) {
  const { width = 390, height = 184 } = box;
  const data = worksheetOf('spacer-stack', {
    sizes: sleeve === undefined ? {} : { fixed: typedSize(sleeve) },
    choices: isOpen ? { parts: 'open' } : {},
    parts: Object.fromEntries(
      parts.map(({ name, size, count = 1, adjustable = true }, order) => [
        `part-${order}`,
        { name, order, count, adjustable, size: typedSize(size) },
      ]),
    ),
  });
  const drawn = drawSpacerStack(withTyped(givenOf(data), typing), { width, height });
  const { container } = render(<FormDrawing drawn={drawn} box={{ width, height }} />);
  const rectangles = [...container.querySelectorAll('.drawing-part')];
  return {
    spoken: drawn.words,
    running: drawn.running?.text,
    sizes: drawn.sizes,
    text: container.textContent,
    brass: rectangles.filter((part) => part.classList.contains('drawing-changes')).length,
    drawn: rectangles.length,
    widths: rectangles.map((part) => Number(part.getAttribute('width'))),
  };
}

const spacers: readonly Part[] = [
  { name: 'left spacer', size: '.480' },
  { name: 'shim', size: '.010', count: 2, adjustable: false },
  { name: 'right spacer', size: '.460', adjustable: false },
];

describe('a stack in its sleeve', () => {
  test('is spoken from left to right with what is left over', () => {
    // .480 + 2 · .010 + .460 = .960; .970 − .960 = .010
    expect(draw(spacers, { sleeve: '.970' }).spoken).toBe(
      'From left to right: left spacer .480 in, 2 times shim .010 in, right spacer .460 in; together .960 in in sleeve .970 in; a gap of .010 in is left.',
    );
  });

  test('that stands proud is spoken so, and its running figure says it', () => {
    // .955 − .960 = −.005
    const { spoken, running } = draw(spacers, { sleeve: '.955' });
    expect(spoken).toContain('they stand .005 in proud.');
    expect(running).toBe('proud .005');
  });

  test('with a gap that would vanish is drawn with a larger one and says so', () => {
    // To scale: 322 · .010 / .970 = 3.3
    const { text, running } = draw(spacers, { sleeve: '.970' });
    expect(running).toBe('left .010');
    expect(text).toContain('gap drawn larger');
  });

  test('with a gap that can be seen is drawn to scale and says nothing of it', () => {
    // .970 − .900 = .070; 322 · .070 / .970 = 23
    const { text, running } = draw([{ name: 'spacer', size: '.900' }], { sleeve: '.970' });
    expect(running).toBe('left .070');
    expect(text).not.toContain('drawn larger');
  });

  test('shows a thick spacer wider than a thin one, by their sizes', () => {
    const { widths } = draw(
      [
        { name: 'a', size: '.600' },
        { name: 'b', size: '.400' },
      ],
      { sleeve: '1.070' },
    );
    // Each part is cut above and below the axis: two rectangles.
    expect(widths).toHaveLength(4);
    expect((widths[0] ?? 0) / (widths[2] ?? 1)).toBeCloseTo(1.5);
  });

  test('has the part that is to be cut in brass, above and below the axis, and no other', () => {
    // left spacer, two shims, right spacer
    const { brass, drawn } = draw(spacers, { sleeve: '.955' });
    expect(drawn).toBe(8);
    expect(brass).toBe(2);
  });

  test('with nothing to cut has no brass part', () => {
    expect(draw(spacers, { sleeve: '.970' }).brass).toBe(0);
  });

  test.each([
    { fact: 'a part', sleeve: '.970', size: '0' },
    { fact: 'the sleeve and the part', sleeve: '0', size: '0' },
    { fact: 'the sleeve', sleeve: '0', size: '.480' },
  ])('where $fact has no size at all, typed by a slip, is drawn all the same', ({ sleeve, size }) => {
    const { widths } = draw([{ name: 'spacer', size }], { sleeve });
    expect(widths.every((width) => Number.isFinite(width))).toBe(true);
  });
});

describe('a clamp read in two places is drawn at the place that its verdict goes by', () => {
  const micrometer = tool('micrometer-0-1');
  function clamped(sleeve: readonly string[], part: readonly string[]) {
    const both = { sleeve, part };
    const data = worksheetOf('spacer-stack', {
      sizes: { fixed: ofFeature('sleeve') },
      choices: { want: 'clamp' },
      parts: { a: partOf(1, ofFeature('part')), b: partOf(2, typedSize('.300', micrometer)) },
      features: [featureOf('sleeve', 'length'), featureOf('part', 'length')],
      readings: Object.entries(both).flatMap(([of, sizes]) =>
        sizes.map((size, at) =>
          readingOf(of, size, { tool: micrometer, place: at === 0 ? 'top' : 'bottom' }),
        ),
      ),
    });
    return drawSpacerStack(givenOf(data), { width: 390, height: 184 });
  }

  test.each([
    // The long end: .6335 + .300 − .930 = .0035; by the short one it would be .0065.
    { sleeve: ['.9300', '.9270'], part: ['.6335'], drawn: ['.6335', '.930'], running: 'proud .0035' },
    // The thin side, where it holds too little: .6212 + .300 − .920 = .0012; by the thick one .005.
    { sleeve: ['.9200'], part: ['.6250', '.6212'], drawn: ['.6212', '.920'], running: 'proud .0012' },
    // Thin it doesn't stand proud at all: .9215 − .9212 = .0003.
    { sleeve: ['.9215'], part: ['.6250', '.6212'], drawn: ['.6212', '.9215'], running: 'left .0003' },
  ])('sleeve $sleeve, part $part: $running', ({ sleeve, part, drawn, running }) => {
    const drawing = clamped(sleeve, part);
    expect(drawing.running?.text).toBe(running);
    const figures = drawing.sizes.map(({ figure }) => figure);
    expect(figures).toEqual([drawn[0], '.300', drawn[1]]);
    expect(drawing.words).toContain(`part 1 ${drawn[0]}`);
  });
});

describe('while it is filled', () => {
  const two: readonly Part[] = [
    { name: 'bracket', size: '.500' },
    { name: 'spacer', size: '1.155' },
  ];
  const next = { id: NEXT_PART, name: 'shim', count: 1 };

  test('the part on the pad stands in it in brass, and counts in what is left', () => {
    // 2.412 − .500 − 1.155 = .757, less .032
    const before = draw(two, { sleeve: '2.412', isOpen: true, typing: next });
    const after = draw(two, {
      sleeve: '2.412',
      isOpen: true,
      typing: { ...next, length: lengthOf('.032 in') },
    });
    expect([before.running, after.running]).toEqual(['left .757', 'left .725']);
    expect([before.brass, after.brass]).toEqual([2, 2]);
    expect(after.sizes.find(({ field }) => field === 'parts')).toMatchObject({
      name: 'shim',
      figure: '.032',
    });
  });

  test('nothing of it shouts that there is too much room', () => {
    const { text } = draw(two, { sleeve: '2.412', isOpen: true, typing: next });
    expect(text).not.toMatch(/loose|tight|drawn/);
  });

  test('a sleeve alone has all of itself left', () => {
    expect(draw([], { sleeve: '2.412', typing: next }).running).toBe('left 2.412');
  });
});

describe('its sizes', () => {
  const boxes = [
    { width: 320, height: 130 },
    { width: 390, height: 184 },
    { width: 380, height: 226 },
    { width: 380, height: 118 },
    { width: 420, height: 210 },
  ];
  const six: readonly Part[] = [
    { name: 'bracket', size: '.500' },
    { name: 'outer spacer', size: '1.155' },
    { name: 'washer', size: '1/16', count: 2 },
    { name: 'shim', size: '.032' },
    { name: 'inner spacer', size: '.622' },
    { name: 'thrust washer', size: '.0938' },
  ];

  test.each(boxes)('of six parts all stand in $width × $height', (box) => {
    const { sizes } = draw(six, { sleeve: '2.600', ...box });
    expect(sizes.map(({ field }) => field).toSorted()).toEqual(
      ['fixed', ...six.map((_, index) => `part/part-${index}/size`)].toSorted(),
    );
  });

  test.each(boxes)('lie inside $width × $height and not on one another', (box) => {
    const { sizes } = draw(six, { sleeve: '2.600', ...box });
    // Bold letters at 16 and 19 px are at most so wide.
    const drawn = sizes.map(({ name, figure = '', x, y, beside, unnamed, anchor }) => {
      const words = unnamed ? figure : beside ? `${name} ${figure}` : name;
      const width = Math.max(words.length * 9, beside ? 0 : figure.length * 10.6);
      const left = anchor === 'start' ? x : x - width / 2;
      return { left, right: left + width, top: y - 14, bottom: beside ? y + 3 : y + 24 };
    });
    for (const [index, one] of drawn.entries()) {
      expect(one.left).toBeGreaterThanOrEqual(0);
      expect(one.right).toBeLessThanOrEqual(box.width);
      expect(one.bottom).toBeLessThanOrEqual(box.height);
      for (const other of drawn.slice(index + 1)) {
        const apart =
          one.right <= other.left ||
          other.right <= one.left ||
          one.bottom <= other.top ||
          other.bottom <= one.top;
        expect(apart).toBe(true);
      }
    }
  });

  test('of a dozen parts on the smallest phone stand as figures, none on another', () => {
    const dozen = Array.from({ length: 12 }, (_, index) => ({ name: `part ${index + 1}`, size: '.210' }));
    const { sizes } = draw(dozen, { sleeve: '2.600', width: 320, height: 130 });
    const rows = new Map<number, number[]>();
    for (const { x, y, field } of sizes) if (field !== 'fixed') rows.set(y, [...(rows.get(y) ?? []), x]);
    const gaps = [...rows.values()].flatMap((places) =>
      places.slice(1).map((x, index) => x - (places[index] ?? 0)),
    );
    expect(Math.min(...gaps)).toBeGreaterThan(44);
  });
});
