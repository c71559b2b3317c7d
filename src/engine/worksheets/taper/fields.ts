import { marked } from '../../length/decimal-text.ts';
import { lengthOf } from '../../length/length.ts';
import type { ChoiceField, Fields, NumberField, SizeField, SlipOfField } from '../fields.ts';
import { standardTapers } from './tables/standard-tapers.ts';

// Common practice, no source: what is met on motorcycles, trailers and machine tools, with room to spare.
const inches = (least: string, most: string): SlipOfField => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});
const DIAMETER = inches('.05', '8');
const LENGTH = inches('.05', '24');
const BALL = inches('.03', '3');

const size = (
  label: string,
  ask: string,
  slip: SlipOfField,
  more: Pick<SizeField, 'measures' | 'signed'> = {},
) => ({ enter: 'size', label, ask, slip, ...more }) as const satisfies SizeField;

const named = standardTapers.map(({ id, name, group }) => ({ value: id, words: name, group }));

const standard = (label: string, ask: string) =>
  ({ enter: 'choice', label, ask, options: named }) as const satisfies ChoiceField;

export const taperFields = {
  by: {
    enter: 'choice',
    label: 'Known by',
    ask: 'What do you know of the taper?',
    options: [
      { value: 'diameters', words: 'Two diameters' },
      { value: 'named', words: 'Its name', more: 'Morse, 7/24 …' },
      { value: 'per-foot', words: 'Per foot' },
      { value: 'one-in', words: '1 in so many' },
      { value: 'angle', words: 'Its angle' },
      { value: 'rollers', words: 'Two rollers', more: 'read over them' },
      { value: 'balls', words: 'Two balls', more: 'in its bore' },
    ],
  },
  named: standard('Taper', 'Which taper is it?'),
  perFoot: size('Taper per foot', 'How much does the diameter grow in a foot?', inches('.01', '24')),
  oneIn: {
    enter: 'number',
    label: 'One in',
    ask: 'The diameter grows by 1 over how much length?',
    unit: 'to 1',
    least: 0.1,
    most: 1000,
  },
  angle: {
    enter: 'number',
    label: 'Included angle',
    ask: 'Included angle, side to side, in degrees?',
    unit: '°',
    least: 0.01,
    most: 170,
  },
  large: size('Big end', 'Diameter of the big end?', DIAMETER, { measures: 'pin' }),
  small: size(
    'Small end',
    'Diameter of the small end?',
    { ...DIAMETER, goesInto: 'large' },
    {
      measures: 'pin',
    },
  ),
  roller: size('Rollers', 'Diameter of the rollers?', BALL, { measures: 'pin' }),
  block: size('Blocks', 'How high are the blocks under the rollers?', inches('.05', '12'), {
    measures: 'length',
  }),
  overLow: size('Over them, low', 'Over both rollers, on the plate, small end down?', DIAMETER, {
    measures: 'length',
  }),
  overHigh: size('Over them, raised', 'Over both rollers, up on the blocks?', DIAMETER, {
    measures: 'length',
  }),
  ballLarge: size('Large ball', 'Diameter of the large ball?', BALL, { measures: 'pin' }),
  ballSmall: size(
    'Small ball',
    'Diameter of the small ball?',
    { ...BALL, goesInto: 'ballLarge' },
    {
      measures: 'pin',
    },
  ),
  toLarge: size(
    'To the large ball',
    'From the mouth down to the large ball’s top? Below zero: it stands proud.',
    inches('0', '12'),
    { measures: 'depth', signed: true },
  ),
  toSmall: size('To the small ball', 'From the mouth down to the small ball’s top?', inches('0', '24'), {
    measures: 'depth',
  }),
  length: size('Length', 'How long is the taper, along its axis?', LENGTH, { measures: 'length' }),
  side: {
    enter: 'choice',
    label: 'Outside or bore',
    ask: 'Is it an outside taper, or a bore?',
    options: [
      { value: 'outside', words: 'Outside', more: 'turned' },
      { value: 'bore', words: 'A bore', more: 'bored' },
    ],
  },
  at: size('Size at a place', 'How far from the big end is the size wanted?', inches('0', '24')),
  blank: size('Stock', 'Diameter of the stock?', DIAMETER, { measures: 'pin' }),
  within: size('Sizes within', 'How far may its sizes be off, to each side?', inches('.0001', '.1')),
  mate: standard('Held against', 'Which taper does it have to fit?'),
  mateWithin: size(
    'May differ by',
    'How far may it differ from that over its whole length?',
    inches('.0001', '.05'),
  ),
  between: size('Between centres', 'Length of the whole work between centres?', inches('.5', '80')),
  sineBar: size('Sine bar', 'Sine bar, roll to roll?', inches('2', '20')),
  blocks: {
    enter: 'choice',
    label: 'Gauge blocks',
    ask: 'Which gauge blocks are there?',
    options: [
      {
        value: 'inch-81',
        words: '81 in inches',
        get more() {
          return marked('.0001 steps');
        },
      },
      {
        value: 'metric-88',
        words: '88 metric',
        get more() {
          return marked('0.0005 mm steps');
        },
      },
      {
        value: 'metric-47',
        words: '47 metric',
        get more() {
          return marked('0.005 mm steps');
        },
      },
      { value: 'drawer', words: 'Those in the drawer', more: 'put in there one by one' },
    ],
  },
  lacksOne: size('A block it lacks', 'A block that the set lacks?', inches('.01', '8')),
  lacksTwo: size('Another it lacks', 'Another block that the set lacks?', inches('.01', '8')),
  lacksThree: size('A third it lacks', 'A third block that the set lacks?', inches('.01', '8')),
} as const satisfies Fields & { readonly oneIn: NumberField };

export type TaperFields = typeof taperFields;
