import { cleanup, render } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { alignmentWorksheet } from '../../../../src/engine/worksheets/alignment/worksheet.ts';
import { drawAlignment } from '../../../../src/screens/worksheets/alignment/alignment-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

type Given = NonNullable<Parameters<typeof worksheetOf>[1]>;

const outfitSizes = {
  toeFront: typedSize('41.000'),
  toeRear: typedSize('41.125'),
  apart: typedSize('60'),
  fittings: typedSize('22'),
};
const outfit = (more: Given = {}) =>
  givenOf(
    worksheetOf('alignment', {
      ...more,
      sizes: { ...outfitSizes, ...more.sizes },
      choices: { of: 'outfit', ...more.choices },
    }),
  );
const trailer = (more: Given['sizes'] = {}) =>
  givenOf(
    worksheetOf('alignment', {
      sizes: { left: typedSize('100.5'), right: typedSize('100'), track: typedSize('60'), ...more },
      choices: { of: 'trailer' },
    }),
  );
const leadOf = (given: ReturnType<typeof outfit>) => blocksOf(alignmentWorksheet.account(given), 'lead')[0];
const rowsOf = (given: ReturnType<typeof outfit>, title: string) =>
  Object.fromEntries(
    blocksOf(alignmentWorksheet.account(given), 'rows')
      .filter((block) => block.title === title)
      .flatMap(({ rows }) => rows.map(({ what, figure, more }) => [what, [figure, more]])),
  );

describe('what is asked and listed', () => {
  test('an outfit by its straight edges and fittings, a trailer by its diagonals', () => {
    expect(alignmentWorksheet.needs(outfit())).toEqual(['of', 'toeFront', 'toeRear', 'apart', 'fittings']);
    expect(alignmentWorksheet.needs(trailer())).toEqual(['of', 'left', 'right', 'track']);
    const listed = (given: ReturnType<typeof outfit>) => Object.keys(alignmentWorksheet.fieldsFor(given));
    expect(listed(outfit())).not.toContain('left');
    expect(listed(trailer())).not.toContain('fittings');
    expect(listed(trailer())).toContain('flange');
  });
});

describe('what is said of an outfit', () => {
  test('which fitting goes which way, by how much, and what that makes of the toe-in', () => {
    // (.5625 − .125) · 22/60 = .1604
    expect(leadOf(outfit())).toMatchObject({
      label: 'Move the front fitting in',
      figure: '.1604',
      change: 'toe-in .125 → .5625',
    });
    expect(leadOf(outfit({ choices: { moves: 'rear' } }))?.label).toBe('Move the rear fitting out');
  });

  test('in turns of a turnbuckle: 20 to the inch, both ends: .1604 · 10', () => {
    const given = outfit({ choices: { adjuster: 'turnbuckle', thread: '1/2-20 UNF' } });
    expect(leadOf(given)?.limits).toBe('1.6 turns of the turnbuckle');
  });

  test('read by a tape the figure goes no further than it is known, and says to what', () => {
    const by = tool('tape-measure');
    const given = outfit({ sizes: { toeFront: typedSize('41', by), toeRear: typedSize('41.125', by) } });
    expect(leadOf(given)?.figure).toMatch(/^\.160?$/);
    expect(leadOf(given)?.limits).toMatch(/^by shims, or in its clamp, known to ±\.0\d+$/);
  });

  test('lead and lean-out say what they move too', () => {
    const given = outfit({
      sizes: { lead: typedSize('6.5'), strutUp: typedSize('18'), strutAcross: typedSize('20') },
      choices: { lean: '0' },
    });
    const rows = rowsOf(given, 'Move too');
    // Half-way between 8 and 14 is 11.
    expect(rows['Slide it forward']).toEqual(['4.500', 'lead 6.500 → 11.000']);
    // √(18² + 20² + 2·18·20·sin 1.75°) − √(18² + 20²): √(724 + 720 · .030539) − √724 = 27.3128 − 26.9072 = .4056
    expect(rows['Upper strut']?.[0]).toMatch(/^\.40[56] longer$/);
  });

  test('in line it is left as it is, and good', () => {
    const given = outfit({ sizes: { toeRear: typedSize('41.5') } });
    expect(alignmentWorksheet.verdict(given).found).toBe('good');
    expect(leadOf(given)?.label).toBe('Toe-in as it is');
    expect(rowsOf(given, 'Move too')).toEqual({});
  });

  test('the manual’s own figure takes the place of what is usual', () => {
    const given = outfit({ sizes: { toeLeast: typedSize('.100'), toeMost: typedSize('.200') } });
    expect(alignmentWorksheet.verdict(given).found).toBe('good');
    expect(alignmentWorksheet.assumed(given)).toEqual([]);
    expect(alignmentWorksheet.assumed(outfit())).toHaveLength(1);
  });
});

describe('what is said of a trailer', () => {
  test('which seat slides forward, and that it is out of square', () => {
    expect(alignmentWorksheet.verdict(trailer())).toMatchObject({
      found: 'no-good',
      said: 'Out of square: diagonals differ by .500, want .125 or less.',
    });
    expect(leadOf(trailer())?.label).toBe('Slide the left seat forward');
  });

  test('toe-out gets its shim behind the rear bolts of each flange', () => {
    const given = trailer({
      toeFront: typedSize('60.25'),
      toeRear: typedSize('60'),
      apart: typedSize('30'),
      flange: typedSize('4'),
    });
    // (.0625 + .25) · 4/30 / 2 = .0208
    expect(rowsOf(given, 'Move too')['Shim each flange']).toEqual(['.0208', 'behind its rear bolts']);
  });
});

test('both caution of what kills, and both can be proved once they are tight', () => {
  for (const given of [outfit(), trailer()]) {
    expect(blocksOf(alignmentWorksheet.account(given), 'caution').map(({ of }) => of)).toEqual(['alignment']);
    expect(alignmentWorksheet.checks(given).map(({ name }) => name)).toContain('Fittings tight');
    expect(alignmentWorksheet.steps(given).some(({ torqueIn }) => torqueIn === 'lbf-ft')).toBe(true);
  }
  expect(alignmentWorksheet.canKill).toBe(true);
});

describe('the drawing', () => {
  const turnsIn = (given: ReturnType<typeof outfit>) => {
    const { container } = render(<svg>{drawAlignment(given, { width: 320, height: 130 }).shapes}</svg>);
    const turns = [...container.querySelectorAll('g')].map((group) =>
      Number(/rotate\((-?[\d.]+)/.exec(group.getAttribute('transform') ?? '')?.[1] ?? '0'),
    );
    cleanup();
    return turns;
  };

  test('toe-in turns the sidecar toward the machine, toe-out away from it', () => {
    // Running to the right with the machine above: toward it is against the clock, which SVG counts below zero.
    expect(turnsIn(outfit())[0]).toBeLessThan(0);
    expect(turnsIn(outfit({ sizes: { toeRear: typedSize('40.5') } }))[0]).toBeGreaterThan(0);
  });

  test('stays in its room', () => {
    for (const given of [outfit(), trailer()])
      for (const box of [
        { width: 320, height: 114 },
        { width: 390, height: 184 },
      ]) {
        const { container } = render(<svg>{drawAlignment(given, box).shapes}</svg>);
        const spots = [...container.querySelectorAll('rect')].map((rect) =>
          ['x', 'y', 'width', 'height'].map((name) => Number(rect.getAttribute(name))),
        );
        expect(spots.length).toBeGreaterThan(1);
        for (const [x = -1, y = -1, width = 0, height = 0] of spots) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThanOrEqual(box.width);
          expect(y + height).toBeLessThanOrEqual(box.height);
        }
        cleanup();
      }
  });
});
