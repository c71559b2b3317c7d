import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawRing } from '../../../../src/screens/worksheets/ring/ring-drawing.tsx';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const box = { width: 390, height: 184 };

function ringOf(sizes: Readonly<Record<string, string>>) {
  const typed = Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)]));
  const drawn = drawRing(givenOf(worksheetOf('ring', { sizes: typed })), box);
  return render(<FormDrawing drawn={drawn} box={box} asked="stem" hrefFor={(field) => `#${field}`} />)
    .container;
}

describe('a ring drawn', () => {
  test('is spoken with its sizes, where it sits and how it stands', () => {
    const container = ringOf({ recess: '1.500', stem: '.750', depth: '.093', stayFree: '.020' });
    // 1.500 − .003, .750 + .020, .093 − .020
    expect(screen.getByRole('group').getAttribute('aria-label')).toBe(
      'Ring outside 1.497 in, inside .770 in, .073 in thick, in a recess 1.500 in wide round a stem of .750 in. It lies .020 in below the face. Gaps are drawn larger.',
    );
    expect(container.textContent).toContain('1.497 × .770 × .073');
    expect(container.textContent).toContain('.020 below');
    expect(container.textContent).toContain('gaps drawn larger');
  });

  test('standing proud says so, without a depth says that', () => {
    expect(ringOf({ recess: '1.500', stem: '.750', depth: '.093', stayFree: '-.010' }).textContent).toContain(
      '.010 proud',
    );
    cleanup();
    expect(ringOf({ recess: '1.500', stem: '.750' }).textContent).toContain('depth not given');
    cleanup();
    expect(ringOf({ recess: '1.500', stem: '.750', depth: '.093' }).textContent).toContain('level');
  });

  test.each([
    { fact: 'hardly any wall', sizes: { recess: '1.500', stem: '1.424' } },
    { fact: 'a stem like a needle', sizes: { recess: '1.500', stem: '.010' } },
  ])('with $fact keeps its parts one inside the other', ({ sizes }) => {
    const container = ringOf({ ...sizes, depth: '.093' });
    const [left, right] = [...container.querySelectorAll('rect.drawing-changes')];
    expect(Number(left?.getAttribute('width'))).toBeGreaterThan(0);
    expect(Number(right?.getAttribute('width'))).toBeGreaterThan(0);
  });
});

describe('the drawing that is the form', () => {
  test('asks for the next size by name, each size one press from being typed again', () => {
    ringOf({ recess: '1.500' });
    expect(screen.getByRole('link', { current: 'step' }).getAttribute('href')).toBe('#stem');
    expect(screen.getByRole('link', { name: 'recess 1.500: type or measure it' })).toBeTruthy();
    expect(screen.getByRole('link', { name: 'depth, not given yet: type or measure it' })).toBeTruthy();
  });
});
