import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { ring } from '../../../src/engine/worksheets/ring/ring.ts';
import {
  SeatDrawing,
  SleeveDrawing,
  TaperDrawing,
} from '../../../src/screens/worksheets/bearing-drawing.tsx';
import { RingDrawing } from '../../../src/screens/worksheets/ring-drawing.tsx';
import { ringQuestion } from '../../../src/screens/worksheets/ring-question.ts';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

afterEach(cleanup);

const inch = (text: string) => lengthOf(`${text} in`);
const spoken = () => screen.getByRole('img').getAttribute('aria-label');

function drawRing(sizes: Readonly<Record<string, string>>) {
  const typed = Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)]));
  const question = ringQuestion(worksheetOf('ring', { sizes: typed }));
  const result = question && ring(question);
  if (!question || !result?.ok) throw new Error('no ring');
  return render(<RingDrawing question={question} answer={result.value} unit="in" />).container;
}

describe('a ring drawn', () => {
  test('is spoken with its sizes, where it sits and how it stands', () => {
    const container = drawRing({ recess: '1.500', stem: '.750', depth: '.093', stayFree: '.020' });
    // 1.500 − .003, .750 + .020, .093 − .020
    expect(spoken()).toBe(
      'Ring outside 1.497 in, inside .770 in, .073 in thick, in a recess 1.500 in wide round a stem of .750 in. It lies .020 in below the face. Gaps are drawn larger.',
    );
    expect(container.textContent).toContain('1.497 × .770 × .073');
    expect(container.textContent).toContain('.020 below');
    expect(container.textContent).toContain('gaps drawn larger');
  });

  test('standing proud says so, without a depth says that', () => {
    expect(
      drawRing({ recess: '1.500', stem: '.750', depth: '.093', stayFree: '-.010' }).textContent,
    ).toContain('.010 proud');
    cleanup();
    expect(drawRing({ recess: '1.500', stem: '.750' }).textContent).toContain('depth not given');
    cleanup();
    expect(drawRing({ recess: '1.500', stem: '.750', depth: '.093' }).textContent).toContain('level');
  });

  test.each([
    { fact: 'hardly any wall', sizes: { recess: '1.500', stem: '1.424' } },
    { fact: 'a stem like a needle', sizes: { recess: '1.500', stem: '.010' } },
  ])('with $fact keeps its parts one inside the other', ({ sizes }) => {
    const container = drawRing({ ...sizes, depth: '.093' });
    const [left, right] = [...container.querySelectorAll('rect.drawing-changes')];
    expect(Number(left?.getAttribute('width'))).toBeGreaterThan(0);
    expect(Number(right?.getAttribute('width'))).toBeGreaterThan(0);
  });
});

describe('bearings drawn', () => {
  test.each([
    { excess: '.010', said: ', .010 long', larger: true },
    { excess: '-.002', said: ', .002 short', larger: true },
    { excess: '0', said: ', just as long', larger: false },
  ])('on a sleeve $excess longer say so', ({ excess, said, larger }) => {
    const { container } = render(
      <SleeveDrawing between={inch('2.750')} sleeve={inch('2.760')} excess={inch(excess)} unit="in" />,
    );
    expect(spoken()).toContain(`sleeve 2.760 in${said}`);
    expect(container.textContent.includes('drawn larger')).toBe(larger);
  });

  test('on a sleeve still to be made say only its length', () => {
    render(<SleeveDrawing between={inch('2.750')} sleeve={inch('2.752')} unit="in" />);
    expect(spoken()).toBe(
      'Two ball bearings on a sleeve. Distance between their faces 2.750 in, sleeve 2.752 in. Not to scale.',
    );
  });

  test.each([
    { proud: '.0026', said: '.0026 proud' },
    { proud: '-.0594', said: '.0594 below the face' },
    { proud: '0', said: 'level with the face' },
  ])('in a recess, $proud proud, are spoken as $said', ({ proud, said }) => {
    render(<SeatDrawing proud={inch(proud)} unit="in" />);
    expect(spoken()).toBe(`A bearing in its recess: ${said}. Not to scale.`);
  });

  test.each([
    { setBy: 'nut', said: 'the nut' },
    { setBy: 'shim-between', said: 'the shim between' },
    { setBy: 'shim-behind', said: 'the shim behind' },
  ] as const)('of taper rollers show in brass what sets them: $said', ({ setBy, said }) => {
    const { container } = render(<TaperDrawing said="end play .009 now" setBy={setBy} />);
    expect(spoken()).toBe(`Two taper roller bearings: end play .009 now. Set by ${said}. Not to scale.`);
    expect(container.querySelectorAll('.drawing-part.drawing-changes')).toHaveLength(1);
  });
});
