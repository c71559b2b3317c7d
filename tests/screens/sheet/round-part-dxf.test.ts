import { Decimal } from 'decimal.js';
import Parser, {
  type ICircleEntity,
  type ILineEntity,
  type ILwpolylineEntity,
  type IPolylineEntity,
} from 'dxf-parser';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeDecimalsWith } from '../../../src/engine/length/decimal-mark.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { roundPartDxf } from '../../../src/screens/sheet/round-part-dxf.ts';
import { roundPartsOf } from '../../../src/screens/sheet/round-parts.ts';
import { typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

const ring = {
  name: 'Dust ring',
  outside: lengthOf('1.9980 in'),
  inside: lengthOf('1.1265 in'),
  length: lengthOf('0.0640 in'),
};

describe('a ring as a file for a drafting program, read by another reader', () => {
  test('outside and inside come back as the very decimals, in inches', () => {
    const read = readDxf(roundPartDxf(ring, 'in'));
    expect(read.diameters).toEqual(['1.998', '1.1265']);
    expect(read.header['$INSUNITS']).toBe(1); // DXF reference, header variables: 1 is inches
    expect(read.header['$MEASUREMENT']).toBe(0); // the same: 0 is English
  });

  test('the same ring in millimetres is 25.4 times as large', () => {
    const read = readDxf(roundPartDxf(ring, 'mm'));
    // 1.9980 × 25.4 = 50.7492; 1.1265 × 25.4 = 28.6131
    expect(read.diameters).toEqual(['50.7492', '28.6131']);
    expect(read.header['$INSUNITS']).toBe(4); // 4 is millimetres
  });

  test('has points in its words and its numbers in a shop that types commas too', () => {
    writeDecimalsWith(',');
    try {
      const file = roundPartDxf(ring, 'mm');
      expect(file).toContain('outside 50.749 mm'); // 1.9980 × 25.4 = 50.7492
      expect(file).not.toMatch(/\d,\d/);
    } finally {
      writeDecimalsWith('.');
    }
  });

  test('its side is as wide as the ring is thick and as high as its outside', () => {
    const { side } = readDxf(roundPartDxf(ring, 'in'));
    expect(side).toEqual({ width: '0.064', height: '1.998' });
  });

  test('the bore is dashed in the side view', () => {
    const { lines } = readDxf(roundPartDxf(ring, 'in'));
    const bore = lines
      .filter(({ layer }) => layer === 'BORE')
      .map(({ vertices }) => vertices.map(({ y }) => y));
    // half of 1.1265
    expect(bore).toEqual([
      [-0.56325, -0.56325],
      [0.56325, 0.56325],
    ]);
  });

  // A dash of 3 mm is .118 in; on a bore .064 long a sixth of it, or the line would be one dash.
  test.each([
    { unit: 'in', part: ring, dash: 0.064 / 6 },
    { unit: 'in', part: { ...ring, length: lengthOf('2 in') }, dash: 3 / 25.4 },
    { unit: 'mm', part: { ...ring, length: lengthOf('2 in') }, dash: 3 },
    { unit: 'mm', part: ring, dash: (0.064 * 25.4) / 6 },
  ] as const)('its dashes are of the drawing’s own unit: $dash $unit', ({ unit, part, dash }) => {
    const file = roundPartDxf(part, unit);
    const { header, lineTypes } = readDxf(file);
    expect(lineTypes['HIDDEN']?.pattern[0]).toBeCloseTo(dash, 5);
    expect(lineTypes['CENTER']?.pattern).toHaveLength(4);
    expect(lineTypes['CENTER']?.patternLength).toBeLessThan(unit === 'in' ? 0.6 : 15);
    expect(header['$LTSCALE']).toBe(1);
    // DXF reference, LAYER: group 2 its name, group 6 its line type.
    expect(file).toMatch(/\n\s*2\r?\nBORE\r?\n(?:.*\r?\n)*?\s*6\r?\nHIDDEN\r?\n/);
    expect(file).toMatch(/\n\s*2\r?\nCENTRE\r?\n(?:.*\r?\n)*?\s*6\r?\nCENTER\r?\n/);
  });

  test('a taper is drawn as one: both ends in the face, its flanks in the side, no bore', () => {
    const taper = {
      name: 'Taper',
      outside: lengthOf('.750 in'),
      outsideFar: lengthOf('.650 in'),
      length: lengthOf('1.200 in'),
    };
    const read = readDxf(roundPartDxf(taper, 'in'));
    expect(read.diameters).toEqual(['0.75', '0.65']);
    const flanks = read.lines.filter(({ layer }) => layer === 'OUTLINE').map(({ vertices }) => vertices);
    // From .750 to the right, half of .750 high; 1.200 further half of .650.
    const ends = flanks.map((line) => line.map(({ x, y }) => [x, y]));
    expect(ends).toContainEqual([
      [0.75, -0.375],
      [1.95, -0.325],
    ]);
    expect(ends).toContainEqual([
      [1.95, 0.325],
      [0.75, 0.375],
    ]);
    expect(read.lines.filter(({ layer }) => layer === 'BORE')).toEqual([]);
  });

  test('a tapered bore is dashed along its flanks', () => {
    const socket = {
      ...ring,
      insideFar: lengthOf('1.0265 in'),
    };
    const bore = readDxf(roundPartDxf(socket, 'in')).lines.filter(({ layer }) => layer === 'BORE');
    // Half of 1.1265 at its mouth, half of 1.0265 at the far end.
    expect(bore.map(({ vertices }) => vertices.map(({ y }) => y))).toEqual([
      [-0.56325, -0.51325],
      [0.56325, 0.51325],
    ]);
  });

  test('a bore that stands off the middle is drawn there, in the face and in the side', () => {
    const read = readDxf(roundPartDxf({ ...ring, offCentre: lengthOf('.0600 in') }, 'in'));
    expect(read.diameters).toEqual(['1.998', '1.1265']);
    expect(read.middles).toEqual([
      { x: 0, y: 0 },
      { x: 0, y: 0.06 },
    ]);
    // .0600 ∓ half of 1.1265
    const bore = read.lines.filter(({ layer }) => layer === 'BORE');
    expect(bore.map(({ vertices }) => vertices.map(({ y }) => y))).toEqual([
      [-0.50325, -0.50325],
      [0.62325, 0.62325],
    ]);
    expect(read.words.at(-1)).toBe('bore .060 in off its middle');
  });

  test('without a thickness there is only its face', () => {
    const { length: _thickness, ...flat } = ring;
    const read = readDxf(roundPartDxf(flat, 'in'));
    expect(read.diameters).toHaveLength(2);
    expect(read.side).toBeUndefined();
  });

  test('its name and sizes stand beside it', () => {
    expect(readDxf(roundPartDxf(ring, 'in')).words).toEqual([
      'Dust ring',
      'outside 1.998 in',
      'inside 1.1265 in',
      'long .064 in',
    ]);
  });

  test('a line break in a name does not break the file', () => {
    const read = readDxf(roundPartDxf({ ...ring, name: 'Ring\n0\nEOF' }, 'in'));
    expect(read.diameters).toEqual(['1.998', '1.1265']);
    expect(read.words[0]).toBe('Ring 0 EOF');
  });

  test('any size to a ten-thousandth of an inch comes back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 400_000 }), fc.constantFrom('in', 'mm'), (steps, unit) => {
        const inches = new Decimal(steps).div(10_000);
        const outside = lengthOf(`${inches.toFixed()} in`);
        const read = readDxf(roundPartDxf({ name: 'Ring', outside, inside: lengthOf('0.0001 in') }, unit));
        const expected = unit === 'in' ? inches : inches.times('25.4');
        expect(read.diameters[0]).toBe(expected.toFixed());
      }),
    );
  });
});

describe('which round parts a worksheet asks to be made', () => {
  test('a stack short of float: each part that could be trimmed, as long as it will be', () => {
    const data = worksheetOf('spacer-stack', {
      // 2.000 − 1.500 − .495 = .005 of float, .010 wanted: the spacer goes to .490
      sizes: {
        fixed: typedSize('2.000'),
        lower: typedSize('.008'),
        upper: typedSize('.012'),
        aim: typedSize('.010'),
      },
      choices: { want: 'float' },
      parts: {
        bracket: { name: 'Bracket', order: 0, size: typedSize('1.500'), count: 1, adjustable: false },
        spacer: { name: 'Spacer', order: 1, size: typedSize('.495'), count: 1, adjustable: true },
      },
    });
    expect(roundPartsOf(data)).toEqual([{ name: 'Spacer', length: lengthOf('0.490 in') }]);
  });

  test('a stack with its float as wanted asks for none', () => {
    const data = worksheetOf('spacer-stack', {
      sizes: {
        fixed: typedSize('2.000'),
        lower: typedSize('.008'),
        upper: typedSize('.012'),
        aim: typedSize('.010'),
      },
      choices: { want: 'float' },
      parts: { spacer: { name: 'Spacer', order: 0, size: typedSize('1.990'), count: 1, adjustable: true } },
    });
    expect(roundPartsOf(data)).toEqual([]);
  });

  test('a ring with both its diameters', () => {
    const [made] = roundPartsOf(
      worksheetOf('ring', { sizes: { recess: typedSize('2.000'), stem: typedSize('1.125') } }),
    );
    expect(made?.name).toBe('Ring');
    expect(made?.outside).toBeDefined();
    expect(made?.inside).toBeDefined();
  });
});

function readDxf(text: string) {
  const read = new Parser().parseSync(text);
  const entities = read?.entities ?? [];
  const circles = entities.filter((one): one is ICircleEntity => one.type === 'CIRCLE');
  const outline = entities.find(
    (one): one is ILwpolylineEntity | IPolylineEntity =>
      one.type.endsWith('POLYLINE') && one.layer === 'OUTLINE',
  );
  return {
    header: read?.header ?? {},
    lineTypes: read?.tables.lineType.lineTypes ?? {},
    middles: circles.map(({ center: { x, y } }) => ({ x, y })),
    diameters: circles.map(({ radius }) => new Decimal(radius).times(2).toFixed()),
    lines: entities.filter((one): one is ILineEntity => one.type === 'LINE'),
    words: entities.flatMap((one) => (one.type === 'TEXT' && 'text' in one ? [one.text] : [])),
    ...(outline && { side: extent(outline.vertices) }),
  };
}

function extent(points: readonly { readonly x: number; readonly y: number }[]) {
  const across = (values: readonly number[]) =>
    Decimal.max(...values.map(String))
      .minus(Decimal.min(...values.map(String)))
      .toFixed();
  return { width: across(points.map(({ x }) => x)), height: across(points.map(({ y }) => y)) };
}
