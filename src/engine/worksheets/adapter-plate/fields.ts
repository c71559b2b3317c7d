import { lengthOf } from '../../length/length.ts';
import type { ChoiceField, Field, Fields, NumberField, SizeField } from '../fields.ts';

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const usual = (least: string, most: string) => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});
const ACROSS = usual('.5', '30');
const HOLE = usual('.06', '4');

const over = (label: string, ask: string): SizeField => ({
  enter: 'size',
  label,
  ask,
  measures: 'length',
  slip: usual('.2', '30'),
});

const coordinate = (hole: number, axis: 'x' | 'y'): SizeField => ({
  enter: 'size',
  label: `Hole ${hole}, ${axis}`,
  ask: `Hole ${hole}: how far ${axis === 'x' ? 'to the right' : 'up'} of the pattern’s zero?`,
  signed: true,
  slip: usual('0', '20'),
});

export const MOST_POINTS = 8;
export const POINTS = [1, 2, 3, 4, 5, 6, 7, 8] as const;

const WAYS = [
  { value: 'circle', words: 'A bolt circle', more: 'count and diameter' },
  { value: 'pair', words: 'Two side by side, over plugs', more: 'evenly spaced' },
  { value: 'three', words: 'Three holes over plugs', more: 'the circle through them' },
  { value: 'points', words: 'Points', more: 'by x and y' },
] as const;

const by = (ask: string, options: ChoiceField['options']): ChoiceField => ({
  enter: 'choice',
  label: 'Known by',
  ask,
  options,
});

const degrees = (label: string, ask: string): NumberField => ({
  enter: 'number',
  label,
  ask,
  unit: '°',
  least: -360,
  most: 360,
});

const pointFields = {
  '1x': coordinate(1, 'x'),
  '1y': coordinate(1, 'y'),
  '2x': coordinate(2, 'x'),
  '2y': coordinate(2, 'y'),
  '3x': coordinate(3, 'x'),
  '3y': coordinate(3, 'y'),
  '4x': coordinate(4, 'x'),
  '4y': coordinate(4, 'y'),
  '5x': coordinate(5, 'x'),
  '5y': coordinate(5, 'y'),
  '6x': coordinate(6, 'x'),
  '6y': coordinate(6, 'y'),
  '7x': coordinate(7, 'x'),
  '7y': coordinate(7, 'y'),
  '8x': coordinate(8, 'x'),
  '8y': coordinate(8, 'y'),
} as const satisfies Fields;

/** What is read of a pattern over plugs. */
const readFields = (name: 'A' | 'B') =>
  ({
    plug: {
      enter: 'size',
      label: `Plugs in ${name}`,
      ask: 'How thick are the plugs or bolts in the holes?',
      measures: 'pin',
      instead: { key: 'I have it middle to middle', choice: `${name.toLowerCase()}Pinned`, value: 'no' },
    },
    pinned: {
      enter: 'choice',
      label: `${name} read`,
      ask: 'Did you read over plugs, or middle to middle?',
      options: [
        { value: 'yes', words: 'Over plugs' },
        { value: 'no', words: 'Middle to middle' },
      ],
    },
    over: over(`${name}1 to ${name}2`, `Two holes side by side in ${name}: how far from outside to outside?`),
    '12': over(`${name}1 to ${name}2`, `Holes 1 and 2 of ${name}: how far from outside to outside?`),
    '23': over(`${name}2 to ${name}3`, `Holes 2 and 3 of ${name}: how far from outside to outside?`),
    '13': over(`${name}1 to ${name}3`, `Holes 1 and 3 of ${name}: how far from outside to outside?`),
    '14': over(`${name}1 to ${name}4`, `Holes 1 and 4 of ${name}: how far from outside to outside?`),
    '34': over(`${name}3 to ${name}4`, `Holes 3 and 4 of ${name}: how far from outside to outside?`),
  }) as const satisfies Fields;

/** What a pattern is told. `name` is what it is called on the plate. */
const patternFields = (name: 'A' | 'B', ways: ChoiceField) =>
  ({
    by: ways,
    count: {
      enter: 'number',
      label: `Holes of ${name}`,
      ask: `How many holes has pattern ${name}?`,
      unit: 'holes',
      least: 2,
      most: 24,
      whole: true,
    },
    circle: {
      enter: 'size',
      label: `Circle of ${name}`,
      ask: `How wide is the bolt circle of ${name}, through the holes’ middles?`,
      slip: ACROSS,
    },
    ...readFields(name),
    ...pointFields,
    hole: {
      enter: 'size',
      label: `Holes of ${name}`,
      ask: `How wide are the holes of ${name} to be?`,
      slip: HOLE,
    },
    start: degrees(
      `First hole of ${name}`,
      `At how many degrees is hole 1 of ${name}? 0 is 3 o’clock, 90 is 12.`,
    ),
    head: {
      enter: 'size',
      label: `Counterbore of ${name}`,
      ask: `How wide is the counterbore for the heads of ${name}?`,
      slip: HOLE,
    },
    deep: {
      enter: 'size',
      label: `Counterbore of ${name}, deep`,
      ask: `How deep is the counterbore of ${name}?`,
      slip: usual('.02', '2'),
    },
  }) as const satisfies Fields;

type OfPattern<P extends 'a' | 'b'> = {
  readonly [Name in keyof ReturnType<typeof patternFields> as `${P}${Capitalize<`${Name}`>}`]: ReturnType<
    typeof patternFields
  >[Name];
};

function named<P extends 'a' | 'b'>(pattern: P, fields: Readonly<Record<string, Field>>): OfPattern<P> {
  const entries = Object.entries(fields).map(([name, field]) => [
    `${pattern}${name.charAt(0).toUpperCase()}${name.slice(1)}`,
    field,
  ]);
  // The names are made here as the type makes them.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return Object.fromEntries(entries) as OfPattern<P>;
}

const length = (label: string, ask: string): SizeField => ({
  enter: 'size',
  label,
  ask,
  measures: 'length',
  slip: usual('.5', '40'),
});

export const adapterPlateFields = {
  ...named('a', patternFields('A', by('How are the holes of the first pattern known?', WAYS))),
  ...named(
    'b',
    patternFields(
      'B',
      by('And the second pattern?', [
        ...WAYS,
        { value: 'none', words: 'There is none', more: 'one pattern alone' },
      ]),
    ),
  ),
  turn: degrees('B turned', 'How far is B turned from A, counterclockwise?'),
  shiftX: {
    enter: 'size',
    label: 'B to the right',
    ask: 'How far right of A’s middle is the middle of B?',
    signed: true,
    slip: usual('0', '10'),
  },
  shiftY: {
    enter: 'size',
    label: 'B up',
    ask: 'How far over A’s middle is the middle of B?',
    signed: true,
    slip: usual('0', '10'),
  },
  outline: {
    enter: 'choice',
    label: 'Outline',
    ask: 'What shape is the plate?',
    options: [
      { value: 'round', words: 'Round' },
      { value: 'rectangle', words: 'A rectangle' },
      { value: 'none', words: 'No edge near', more: 'edges are not judged' },
    ],
  },
  round: {
    ...length('Plate across', 'How wide is the plate?'),
    instead: { key: 'It has corners', choice: 'outline', value: 'rectangle' },
  },
  wide: {
    ...length('Plate wide', 'How wide is the plate, left to right?'),
    instead: { key: 'No edge is near', choice: 'outline', value: 'none' },
  },
  high: length('Plate high', 'How high is the plate, lower edge to upper?'),
  fromLeft: length('A from the left edge', 'How far from the left edge is the middle of A?'),
  fromBelow: length('A from the lower edge', 'How far from the lower edge is the middle of A?'),
  bore: {
    enter: 'size',
    label: 'Hole in the middle',
    ask: 'How wide is the hole in the middle?',
    slip: usual('.2', '20'),
  },
  thick: {
    enter: 'size',
    label: 'Plate thick',
    ask: 'How thick is the plate?',
    measures: 'length',
    slip: usual('.06', '4'),
  },
  zero: {
    enter: 'choice',
    label: 'Zero',
    ask: 'Where do both slides read zero?',
    options: [
      { value: 'middle', words: 'Middle of A' },
      { value: 'edges', words: 'Left and lower edge' },
      { value: 'first-hole', words: 'Hole A1' },
    ],
  },
  within: {
    enter: 'size',
    label: 'How close a hole must come',
    ask: 'How far may a hole stand off its place?',
    slip: usual('.0002', '.1'),
  },
  leastWeb: {
    enter: 'size',
    label: 'Least between holes',
    ask: 'How much must be left between two holes?',
    slip: usual('.02', '3'),
  },
  leastEdge: {
    enter: 'size',
    label: 'Least to the edge',
    ask: 'How much must be left to an edge?',
    slip: usual('.02', '3'),
  },
} as const satisfies Fields;

export type AdapterPlateFields = typeof adapterPlateFields;
