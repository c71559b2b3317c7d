import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { lengthOf, minus } from '../../../src/engine/length/length.ts';
import { BoreDrawing } from '../../../src/screens/worksheets/bore-drawing.tsx';

afterEach(cleanup);

function draw({ bore, pin, good = false }: { bore: string; pin: string; good?: boolean }) {
  const sizes = { bore: lengthOf(bore), pin: lengthOf(pin) };
  const { container } = render(
    <BoreDrawing
      bore={typedEstimate(sizes.bore)}
      pin={typedEstimate(sizes.pin)}
      clearance={minus(sizes.bore, sizes.pin)}
      unit="in"
      good={good}
    />,
  );
  const [hole, solid] = [...container.querySelectorAll('circle')].map((circle) => ({
    y: Number(circle.getAttribute('cy')),
    radius: Number(circle.getAttribute('r')),
  }));
  return {
    spoken: screen.getByRole('img').getAttribute('aria-label'),
    text: container.textContent,
    brass: container.querySelectorAll('path.drawing-changes').length,
    hole: hole ?? { y: NaN, radius: NaN },
    pin: solid ?? { y: NaN, radius: NaN },
  };
}

describe('a bore with its pin in it', () => {
  test('is spoken with its three sizes', () => {
    // .4487 − .4375 = .0112
    expect(draw({ bore: '.4487 in', pin: '.4375 in' }).spoken).toBe(
      'Bore .4487 in, pin .4375 in, clearance .0112 in.',
    );
  });

  test('with a gap too small to see is drawn with a larger one and says so', () => {
    const { hole, pin, text } = draw({ bore: '.4487 in', pin: '.4375 in' });
    expect(text).toContain('gap drawn larger');
    // To scale the gap would be 2 · 74 · .0112 / .4487 = 3.7; it is drawn at 12.
    expect(2 * (hole.radius - pin.radius)).toBeCloseTo(12);
  });

  test('with a gap that can be seen is drawn to scale and says nothing of it', () => {
    const { hole, pin, text } = draw({ bore: '.500 in', pin: '.400 in' });
    expect(text).not.toContain('drawn larger');
    expect(pin.radius / hole.radius).toBeCloseTo(0.8);
  });

  test('lies on the bottom of it: the whole gap is on top', () => {
    const { hole, pin } = draw({ bore: '.500 in', pin: '.400 in' });
    expect(pin.y + pin.radius).toBeCloseTo(hole.y + hole.radius);
  });

  test('has its gap in brass while there is something to cure, and not when all is good', () => {
    expect(draw({ bore: '.4487 in', pin: '.4375 in' }).brass).toBe(1);
    cleanup();
    expect(draw({ bore: '.4387 in', pin: '.4375 in', good: true }).brass).toBe(0);
  });

  test('larger than the bore shows no gap and is called interference', () => {
    const { text, brass } = draw({ bore: '.4370 in', pin: '.4375 in' });
    expect(text).toContain('interference.0005 in');
    expect(text).not.toContain('drawn larger');
    expect(brass).toBe(0);
  });

  test('of no size at all, typed by a slip, is drawn all the same', () => {
    expect(draw({ bore: '0 in', pin: '.4375 in' }).spoken).toContain('Bore 0 in');
  });
});
