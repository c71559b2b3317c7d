import { cleanup, render } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { adapterPlateWorksheet } from '../../../../src/engine/worksheets/adapter-plate/worksheet.ts';
import { drawAdapterPlate } from '../../../../src/screens/worksheets/adapter-plate/plate-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

const box = { width: 320, height: 130 };
type Given = Parameters<typeof worksheetOf>[1];

function givenFor(given: Given) {
  return givenOf(worksheetOf('adapter-plate', given));
}

function drawn(given: Given) {
  const drawing = drawAdapterPlate(givenFor(given), box);
  const { container } = render(<svg>{drawing.shapes}</svg>);
  const circles = [...container.querySelectorAll('circle')].map((circle) => ({
    kind: circle.getAttribute('class') ?? '',
    x: Number(circle.getAttribute('cx')),
    y: Number(circle.getAttribute('cy')),
    radius: Number(circle.getAttribute('r')),
  }));
  return { ...drawing, circles };
}

const sizes = {
  aCircle: typedSize('4'),
  aHole: typedSize('1/2'),
  bCircle: typedSize('7'),
  bHole: typedSize('1/2'),
  round: typedSize('9'),
};
const choices = { aBy: 'circle', aCount: '4', bBy: 'circle', bCount: '4' };

describe('the drawing', () => {
  test('has every hole to scale where it stands: of four on 4 in a plate of 9, 4/9 out', () => {
    const { circles } = drawn({ sizes, choices });
    const plate = circles.find(({ kind }) => kind === 'drawing-solid');
    const holes = circles.filter(({ kind }) => kind.includes('drawing-part'));
    if (!plate) throw new Error('no plate');
    expect(holes).toHaveLength(4);
    for (const { x, y, radius } of holes) {
      expect(Math.hypot(x - plate.x, y - plate.y) / plate.radius).toBeCloseTo(4 / 9, 6);
      expect(radius / plate.radius).toBeCloseTo(0.5 / 9, 6);
    }
    const [first] = holes;
    expect(first && [first.x > plate.x, first.y]).toEqual([true, plate.y]);
  });

  test('shows the first pattern before anything else is known, and asks for what is next', () => {
    const { circles, sizes: labels } = drawn({
      sizes: { aCircle: sizes.aCircle },
      choices: { aBy: 'circle', aCount: '4' },
    });
    expect(circles.filter(({ kind }) => kind.includes('drawing-part'))).toHaveLength(4);
    expect(labels.map(({ field }) => field)).toEqual(['aCount', 'aCircle', 'aHole']);
  });

  test('of a measured pattern shows the sizes round the one that is asked for', () => {
    const labels = drawn({
      sizes: { aPlug: typedSize('1/2'), a12: typedSize('3.1') },
      choices: { aBy: 'three', aCount: '3' },
    }).sizes.map(({ field }) => field);
    expect(labels).toEqual(['aPlug', 'a12', 'a23', 'a13']);
  });
});

describe('what is asked', () => {
  const needs = (given: Given) => adapterPlateWorksheet.needs(givenFor(given));

  test('goes with how a pattern is known: middle to middle needs no plug', () => {
    expect(needs({ choices: { aBy: 'three', bBy: 'none', outline: 'none' } })).toContain('aPlug');
    expect(needs({ choices: { aBy: 'three', aPinned: 'no', bBy: 'none', outline: 'none' } })).toEqual([
      'aBy',
      'aCount',
      'a12',
      'a23',
      'a13',
      'aHole',
      'bBy',
    ]);
  });

  test('is x and y of as many holes as there are by points', () => {
    expect(needs({ choices: { aBy: 'points', aCount: '2', bBy: 'none', outline: 'none' } })).toEqual([
      'aBy',
      'aCount',
      'a1x',
      'a1y',
      'a2x',
      'a2y',
      'aHole',
      'bBy',
    ]);
  });
});

describe('the page', () => {
  test('says the turn that nobody gave, where it isn’t none', () => {
    const near = { sizes: { ...sizes, bCircle: typedSize('5') }, choices };
    expect(adapterPlateWorksheet.assumed(givenFor(near))).toEqual([{ field: 'turn', words: 'B turned 45°' }]);
    expect(adapterPlateWorksheet.assumed(givenFor({ sizes, choices }))).toEqual([]);
  });

  test('leads with the first hole in the order of work, by its drill and its place', () => {
    const [lead] = blocksOf(adapterPlateWorksheet.account(givenFor({ sizes, choices })), 'lead');
    expect(lead).toMatchObject({
      label: 'Drill B3 at −3.500, 0',
      figure: '1/2',
      unit: 'drill',
      cut: 'Hole B3',
    });
  });

  test('lists every hole of both patterns', () => {
    const rows = blocksOf(adapterPlateWorksheet.account(givenFor({ sizes, choices })), 'rows');
    expect(rows.map(({ rows: holes }) => holes.map(({ what, figure }) => `${what} ${figure}`))).toEqual([
      ['A1 2.000, 0', 'A2 0, 2.000', 'A3 −2.000, 0', 'A4 0, −2.000'],
      ['B1 3.500, 0', 'B2 0, 3.500', 'B3 −3.500, 0', 'B4 0, −3.500'],
    ]);
  });
});
