import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { drawBearing } from '../../../../src/screens/worksheets/bearing-seat/bearing-drawing.tsx';
import { FormDrawing } from '../../../../src/screens/worksheets/frame/form-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const box = { width: 390, height: 184 };

function drawn(choices: Readonly<Record<string, string>>, sizes: Readonly<Record<string, string>>) {
  const typed = Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)]));
  const given = givenOf(worksheetOf('bearing-seat', { choices, sizes: typed }));
  return render(<FormDrawing drawn={drawBearing(given, box)} box={box} hrefFor={(field) => `#${field}`} />)
    .container;
}

const spoken = () => screen.getByRole('group').getAttribute('aria-label');

describe('bearings drawn', () => {
  test.each([
    { sleeve: '2.760', said: '.010 long' },
    { sleeve: '2.748', said: '.002 short' },
    { sleeve: '2.750', said: 'just as long' },
  ])('on a sleeve $sleeve long over 2.750 say so', ({ sleeve, said }) => {
    const container = drawn({ bearing: 'ball' }, { between: '2.750', sleeve });
    expect(spoken()).toBe(
      `Two ball bearings on a sleeve. Distance between their faces 2.750 in, sleeve ${sleeve} in, ${said}. Not to scale.`,
    );
    expect(container.textContent).toContain(said);
  });

  test('on a sleeve still to be made say only its length, .002 more than the distance', () => {
    const container = drawn({ bearing: 'ball' }, { between: '2.750' });
    expect(spoken()).toBe(
      'Two ball bearings on a sleeve. Distance between their faces 2.750 in, sleeve 2.752 in. Not to scale.',
    );
    expect(container.textContent).toContain('make 2.752');
    expect(screen.getByRole('link', { name: 'sleeve, not given yet: type or measure it' })).toBeTruthy();
  });

  // .650 deep
  test.each([
    { width: '.6526', said: 'It stands .0026 in proud of the face.', short: '.0026 proud' },
    { width: '.5906', said: 'It lies .0594 in below the face.', short: '.0594 below' },
    { width: '.650', said: 'It stands level with the face.', short: 'level' },
  ])('in a recess, $width wide, are spoken of as they stand', ({ width, said, short }) => {
    const container = drawn({ bearing: 'seat' }, { depth: '.650', width });
    expect(spoken()).toBe(`A bearing in its recess. ${said} Not to scale.`);
    expect(container.textContent).toContain(short);
  });

  test.each([
    { setBy: 'nut', said: 'the nut', changed: 1 },
    // Cut through, one above and one below the spindle.
    { setBy: 'shim-between', said: 'the shim between', changed: 2 },
    { setBy: 'shim-behind', said: 'the shim behind', changed: 2 },
  ])('of taper rollers show in brass what sets them: $said', ({ setBy, said, changed }) => {
    const container = drawn({ bearing: 'taper', setBy }, { endPlay: '.009' });
    expect(spoken()).toBe(`Two taper roller bearings: end play .009 now. Set by ${said}. Not to scale.`);
    expect(container.querySelectorAll('.drawing-part.drawing-changes')).toHaveLength(changed);
  });

  test('before anything is chosen ask what is asked', () => {
    drawn({}, {});
    expect(spoken()).toBe('Two bearings on a spindle: choose what is asked of them.');
  });
});
