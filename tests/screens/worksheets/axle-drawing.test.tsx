import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import type { AxleLayoutName } from '../../../src/engine/worksheets/axle-line-up/axle-layout.ts';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { lineUp, type LineUpQuestion } from '../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { axleLayouts } from '../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';
import { apart, axleScale } from '../../../src/screens/worksheets/axle-drawing-scale.ts';
import { AxleDrawing } from '../../../src/screens/worksheets/axle-drawing.tsx';

afterEach(cleanup);

type Sizes = Readonly<Record<string, string>>;

const inch = (text: string) => lengthOf(`${text} in`);
const known = (sizes: Sizes) =>
  Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedEstimate(inch(size))]));

const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
};

function draw(layout: AxleLayoutName, sizes: Sizes, more: Partial<LineUpQuestion> = {}) {
  cleanup();
  const question: LineUpQuestion = {
    layout: axleLayouts[layout],
    side: 'right',
    sizes: known(sizes),
    onHand: {},
    limits: usualLineUpLimits.in,
    step: inch('.001'),
    ...more,
  };
  const result = lineUp(question);
  if (!result.ok) throw new Error(result.refusal.code);
  const { container } = render(<AxleDrawing question={question} answer={result.value} unit="in" />);
  const parts = [...container.querySelectorAll('.drawing-part')];
  const numbers = [...container.querySelectorAll('rect')].flatMap((one) => [
    Number(one.getAttribute('x')),
    Number(one.getAttribute('width')),
  ]);
  return {
    spoken: screen.getByRole('img').getAttribute('aria-label') ?? '',
    text: container.textContent,
    brass: parts.filter((one) => one.classList.contains('drawing-changes')).length,
    whole: numbers.every((one) => Number.isFinite(one)) && !container.innerHTML.includes('NaN'),
    labels: [...container.querySelectorAll('text')].map((one) => one.textContent),
    hatched: container.querySelectorAll('rect[height="176"]').length,
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

  test('has the lengths its parts will have, as the assembly says them: left full to the dial, as measured, or none yet', () => {
    // W = 6.7484: A = 1.0742, cut to 1.075; inner one on hand .122, kept; C = 1.2622 − .122 − .500 − .010 = .6302, to .631.
    const { labels } = draw(
      'front-one-disc',
      { ...front, width: '6.7484' },
      { onHand: known({ inner: '.122' }) },
    );
    expect(labels).toEqual(expect.arrayContaining(['A 1.075', 'B .122', 'C .631']));
    // A dial of .005 has no step within .0016 of 1.263: the outer one is cut last, and no length is drawn for it.
    const last = draw('front-one-disc', front, { step: inch('.005') });
    expect(last.labels).toContain('C last');
    expect(last.spoken).toContain('bracket to leg, cut last');
  });

  test('with its disc on the left is spoken and drawn the other way round', () => {
    const { spoken, labels } = draw('front-one-disc', front, { side: 'left' });
    expect(spoken.startsWith('From left to right: bracket to leg .445 in')).toBe(true);
    // The letter stays with the spacer: A is on the side away from the disc.
    expect(labels.filter((text) => /^[A-C] /.test(text ?? ''))).toEqual(['C .445', 'B .120', 'A 1.263']);
  });

  test('has in brass what has to be made, trimmed or shimmed, and nothing that is kept', () => {
    // Three spacers, cut above and below the axis, and the sleeve.
    expect(draw('front-one-disc', front).brass).toBe(7);
    const onHand = known({ far: '1.075', inner: '.120', outer: '.633', sleeve: '1.263' });
    expect(draw('front-one-disc', front, { onHand }).brass).toBe(0);
  });

  test('says that what is narrow is drawn wider, and only then', () => {
    expect(draw('front-one-disc', front).text).toContain('what is narrow is drawn wider');
    const drum = { width: '7.000', hub: '4.000', centre: '1.900', plate: '.625' };
    expect(draw('drum', drum).text).not.toContain('drawn wider');
  });

  test('says what is short', () => {
    const { spoken, labels, whole } = draw('front-one-disc', { ...front, slot: '.370' });
    expect(spoken).toContain('hub to bracket .063 in short');
    expect(labels).toContain('B −.063');
    expect(whole).toBe(true);
  });

  test('shows where the chain runs when the sprocket can’t be there, and says it', () => {
    const rear = { ...front, sprocket: '.200', chainLine: '2.460' };
    const { spoken, wantedLines } = draw('rear-sprocket', rear);
    expect(wantedLines).toBe(1);
    expect(spoken).toContain('it comes out .040 too far left');
    expect(draw('rear-sprocket', { ...rear, chainLine: '2.500' }).wantedLines).toBe(0);
  });

  test('on a stub axle has a shoulder and a nut in place of two legs', () => {
    const trailer = { seat: '5.250', hub: '3.875', mount: '1.500', wheelPlace: '2.000' };
    expect(draw('trailer-hub', trailer).hatched).toBe(1);
    expect(draw('trailer-hub', trailer, { side: 'left' }).hatched).toBe(1);
    expect(draw('front-one-disc', front).hatched).toBe(2);
  });

  test('with two discs has both sleeves', () => {
    const two = {
      width: '8.000',
      hub: '4.500',
      centre: '2.300',
      leftDisc: '.300',
      rightDisc: '.350',
      leftSlot: '.150',
      leftBracket: '.500',
      leftFloat: '.020',
    };
    expect(draw('front-two-discs', two).spoken).toContain('Left sleeve 1.700 in. Right sleeve 1.800 in.');
  });

  test('with sizes of nothing, typed by a slip, is drawn all the same', () => {
    const nothing = Object.fromEntries(Object.keys(front).map((name) => [name, '0']));
    expect(draw('front-one-disc', nothing).whole).toBe(true);
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
    expect(parts[0]?.width).toBeCloseTo(10);
    expect(parts.reduce((so, { width }) => so + width, 0)).toBeCloseTo(300);
    expect(widened).toBe(true);
  });

  test('keeps labels apart and inside', () => {
    expect(apart([50, 60, 300, 310], 90, 48, 340)).toEqual([50, 140, 250, 340]);
    expect(apart([100, 300], 90, 48, 340)).toEqual([100, 300]);
  });
});
