import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import {
  spacerStack,
  stackWantPreset,
  type StackQuestion,
} from '../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { StackDrawing } from '../../../src/screens/worksheets/stack-drawing.tsx';

afterEach(cleanup);

type Part = { name: string; size: string; count?: number };

function draw(sleeve: string, parts: readonly Part[], changing?: string) {
  const question: StackQuestion = {
    fixed: { name: 'sleeve', length: typedEstimate(lengthOf(sleeve)) },
    parts: parts.map(({ name, size, count = 1 }) => ({
      name,
      count,
      adjustable: true,
      thickness: typedEstimate(lengthOf(size)),
    })),
    want: stackWantPreset('float'),
    step: lengthOf('.001 in'),
  };
  const { container } = render(
    <StackDrawing question={question} answer={spacerStack(question)} changing={changing} unit="in" />,
  );
  const rectangles = [...container.querySelectorAll('.drawing-part')];
  return {
    spoken: screen.getByRole('img').getAttribute('aria-label'),
    text: container.textContent,
    brass: rectangles.filter((part) => part.classList.contains('drawing-changes')).length,
    drawn: rectangles.length,
    widths: rectangles.map((part) => Number(part.getAttribute('width'))),
  };
}

const spacers: readonly Part[] = [
  { name: 'left spacer', size: '.480 in' },
  { name: 'shim', size: '.010 in', count: 2 },
  { name: 'right spacer', size: '.460 in' },
];

describe('a stack in its sleeve', () => {
  test('is spoken from left to right with what is left over', () => {
    // .480 + 2 · .010 + .460 = .960; .970 − .960 = .010
    expect(draw('.970 in', spacers).spoken).toBe(
      'From left to right: left spacer .480 in, 2 times shim .010 in, right spacer .460 in; together .960 in in sleeve .970 in; a gap of .010 in is left.',
    );
  });

  test('that stands proud is spoken so', () => {
    // .955 − .960 = −.005
    const { spoken, text } = draw('.955 in', spacers);
    expect(spoken).toContain('they stand .005 in proud.');
    expect(text).toContain('proud .005 now');
  });

  test('with a gap that would vanish is drawn with a larger one and says so', () => {
    // To scale: 286 · .010 / .970 = 2.9, drawn at 14.
    expect(draw('.970 in', spacers).text).toContain('gap .010 now, drawn larger');
  });

  test('with a gap that can be seen is drawn to scale and says nothing of it', () => {
    // .970 − .900 = .070; 286 · .070 / .970 = 20.6
    const { text } = draw('.970 in', [{ name: 'spacer', size: '.900 in' }]);
    expect(text).toContain('gap .070 now');
    expect(text).not.toContain('drawn larger');
  });

  test('shows a thick spacer wider than a thin one, by their sizes', () => {
    const { widths } = draw('1.070 in', [
      { name: 'a', size: '.600 in' },
      { name: 'b', size: '.400 in' },
    ]);
    // Each part is cut above and below the axis: two rectangles.
    expect(widths).toHaveLength(4);
    expect((widths[0] ?? 0) / (widths[2] ?? 1)).toBeCloseTo(1.5);
  });

  test('has the part that is to be cut in brass, above and below the axis, and no other', () => {
    const { brass, drawn } = draw('.955 in', spacers, 'right spacer');
    expect(drawn).toBe(6);
    expect(brass).toBe(2);
  });

  test('with nothing to cut has no brass part', () => {
    expect(draw('.970 in', spacers).brass).toBe(0);
  });

  test.each([
    { fact: 'a part', sleeve: '.970 in', size: '0 in' },
    { fact: 'the sleeve and the part', sleeve: '0 in', size: '0 in' },
    { fact: 'the sleeve', sleeve: '0 in', size: '.480 in' },
  ])('where $fact has no size at all, typed by a slip, is drawn all the same', ({ sleeve, size }) => {
    const { widths } = draw(sleeve, [{ name: 'spacer', size }]);
    expect(widths.every((width) => Number.isFinite(width))).toBe(true);
  });
});
