import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import {
  SeatDrawing,
  SleeveDrawing,
  TaperDrawing,
} from '../../../src/screens/worksheets/bearing-drawing.tsx';

afterEach(cleanup);

const inch = (text: string) => lengthOf(`${text} in`);
const spoken = () => screen.getByRole('img').getAttribute('aria-label');

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
