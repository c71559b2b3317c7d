import { cleanup, render } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { drawMisplacedHole } from '../../../../src/screens/worksheets/misplaced-hole/misplaced-hole-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const box = { width: 320, height: 130 };
const whole = { joint: 'turns', partMetal: 'alloy-steel', bushingMetal: 'bearing-bronze' };
const sizes = { bore: typedSize('.5010'), pin: typedSize('.4990'), wall: typedSize('.750') };

function drawn(given: Parameters<typeof worksheetOf>[1]) {
  const drawing = drawMisplacedHole(givenOf(worksheetOf('misplaced-hole', given)), box);
  const { container } = render(<svg>{drawing.shapes}</svg>);
  return { ...drawing, container };
}

/** The two circles of the bushing, its outside and its bore, as middle and radius. */
function bushingOf(container: Element) {
  const path = container.querySelector('path.drawing-part')?.getAttribute('d') ?? '';
  return [...path.matchAll(/M([\d.-]+) ([\d.-]+)a([\d.]+)/g)].map(([, left, y, radius]) => ({
    x: Number(left) + Number(radius),
    y: Number(y),
    radius: Number(radius),
  }));
}

describe('the drawing', () => {
  test.each([
    { toward: '0', x: 1, y: 0 },
    { toward: '90', x: 0, y: -1 },
    { toward: '180', x: -1, y: 0 },
    { toward: '270', x: 0, y: 1 },
  ])('$toward°: the bore stands off toward its right place and inside the bushing', ({ toward, x, y }) => {
    const { container } = drawn({
      sizes: { ...sizes, offBy: typedSize('.0620') },
      choices: { ...whole, found: 'offset', toward },
    });
    const [outside, bore] = bushingOf(container);
    if (!outside || !bore) throw new Error('no bushing');
    const far = Math.hypot(bore.x - outside.x, bore.y - outside.y);
    expect(far).toBeGreaterThan(2);
    expect((bore.x - outside.x) / far).toBeCloseTo(x, 3);
    expect((bore.y - outside.y) / far).toBeCloseTo(y, 3);
    expect(far + bore.radius).toBeLessThan(outside.radius);
  });

  test('in its right place both stand on one middle', () => {
    const { container } = drawn({
      sizes: { ...sizes, offBy: typedSize('.0620') },
      choices: { ...whole, found: 'offset', toward: '0', axis: 'right' },
    });
    const [outside, bore] = bushingOf(container);
    expect([outside?.x, outside?.y]).toEqual([bore?.x, bore?.y]);
  });

  test('asks for the place first, then for the hole; what it is off by stands in it', () => {
    const fieldsOf = (given: Parameters<typeof worksheetOf>[1]) =>
      drawn(given).sizes.map(({ field }) => field);
    expect(fieldsOf({ choices: { found: 'edges' } })).toEqual(['nowX', 'wantX', 'nowY', 'wantY']);
    expect(fieldsOf({ choices: { found: 'apart' } })).toEqual(['apart', 'apartWanted', 'bore', 'pin']);
    const apart = { apart: typedSize('6.062'), apartWanted: typedSize('6') };
    const known = drawn({ choices: { found: 'apart' }, sizes: apart });
    expect(known.sizes.map(({ field }) => field)).toEqual(['bore', 'pin', 'wall']);
    expect(known.container.textContent).toContain('off by .062');
  });

  test('stays in its room, whatever is given', () => {
    for (const wall of ['.05', '.3', '4'])
      for (const offBy of ['.0005', '.062', '.4']) {
        const { container } = drawn({
          sizes: { ...sizes, wall: typedSize(wall), offBy: typedSize(offBy) },
          choices: { ...whole, found: 'offset', toward: '45' },
        });
        for (const circle of container.querySelectorAll('circle')) {
          const [x, y, radius] = ['cx', 'cy', 'r'].map((name) => Number(circle.getAttribute(name)));
          expect([x, y, radius].every((one) => Number.isFinite(one) && Number(one) >= 0)).toBe(true);
          expect(Number(x) - Number(radius)).toBeGreaterThanOrEqual(140);
          expect(Number(y) + Number(radius)).toBeLessThanOrEqual(box.height);
        }
        cleanup();
      }
  });
});
