import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawHoleAndPin } from '../../../../src/screens/worksheets/hole-and-pin/hole-drawing.tsx';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const box = { width: 390, height: 184 };

function draw(sizes: Readonly<Record<string, string>>, choices: Readonly<Record<string, string>> = located) {
  const typed = Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)]));
  const drawn = drawHoleAndPin(givenOf(worksheetOf('hole-and-pin', { sizes: typed, choices })), box);
  const { container } = render(
    <FormDrawing drawn={drawn} box={box} asked="wall" hrefFor={(field) => `#${field}`} />,
  );
  const [hole, solid] = [...container.querySelectorAll('circle')].map((circle) => ({
    y: Number(circle.getAttribute('cy')),
    radius: Number(circle.getAttribute('r')),
  }));
  return {
    spoken: screen.getByRole('group').getAttribute('aria-label'),
    text: container.textContent,
    brass: container.querySelectorAll('path.drawing-changes').length,
    hole: hole ?? { y: NaN, radius: NaN },
    pin: solid ?? { y: NaN, radius: NaN },
  };
}

const located = { joint: 'located' };

describe('a bore with its pin in it', () => {
  test('is spoken with its three sizes', () => {
    // .4487 − .4375 = .0112
    expect(draw({ bore: '.4487', pin: '.4375' }).spoken).toBe(
      'Bore .4487 in, pin .4375 in, clearance .0112 in.',
    );
  });

  test('with a gap too small to see is drawn with a larger one and says so', () => {
    const { hole, pin, text } = draw({ bore: '.4487', pin: '.4375' });
    expect(text).toContain('gap drawn larger');
    // To scale it would be .0112 / .4487, a fortieth of the hole; nobody sees less than a gap of 5.
    expect(2 * (hole.radius - pin.radius)).toBeCloseTo(5);
  });

  test('with a gap that can be seen is drawn to scale and says nothing of it', () => {
    const { hole, pin, text } = draw({ bore: '.500', pin: '.400' });
    expect(text).not.toContain('drawn larger');
    expect(pin.radius / hole.radius).toBeCloseTo(0.8);
  });

  test('lies on the bottom of it: the whole gap is on top', () => {
    const { hole, pin } = draw({ bore: '.500', pin: '.400' });
    expect(pin.y + pin.radius).toBeCloseTo(hole.y + hole.radius);
  });

  test('has its gap in brass while there is something to cure, and not when all is good', () => {
    expect(draw({ bore: '.4487', pin: '.4375' }).brass).toBe(1);
    cleanup();
    expect(draw({ bore: '.4387', pin: '.4375' }).brass).toBe(0);
  });

  test('larger than the bore shows no gap and is called tight', () => {
    const { text, brass } = draw({ bore: '.4370', pin: '.4375' });
    expect(text).toContain('tight .0005');
    expect(text).not.toContain('drawn larger');
    expect(brass).toBe(0);
  });

  test('of no size at all, typed by a slip, is drawn all the same', () => {
    expect(draw({ bore: '0', pin: '.4375' }).spoken).toContain('Bore 0 in');
  });

  test('names a bolt by its thread, and each size is one press from being typed again', () => {
    draw({ bore: '.4545', pin: '.4365' }, { thread: '7/16-20 UNF' });
    expect(screen.getByRole('link', { name: 'bolt 7/16-20 .4365: type or measure it' })).toBeTruthy();
    expect(screen.getByRole('link', { current: 'step' }).getAttribute('href')).toBe('#wall');
  });

  test('shows what the two come to before anybody said how it runs', () => {
    expect(draw({ bore: '.4545', pin: '.4365' }, {}).text).toContain('slop .018');
  });

  test('in a thin wall has less metal round it', () => {
    const thick = draw({ bore: '.500', pin: '.499', wall: '.500' });
    cleanup();
    const thin = draw({ bore: '.500', pin: '.499', wall: '.100' });
    expect(thin.hole.radius).toBeGreaterThan(thick.hole.radius);
  });
});
