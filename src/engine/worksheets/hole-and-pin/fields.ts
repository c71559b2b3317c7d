import { lengthOf } from '../../length/length.ts';
import { jointField } from '../class-fields.ts';
import type { Fields, SlipOfField } from '../fields.ts';
import { axisField, metalOptions } from '../worn-hole-fields.ts';

/** A range met in the trade: common practice, no source. */
const usual = (least: string, most: string): SlipOfField => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});

const roundSizes = {
  bore: {
    enter: 'size',
    label: 'Bore',
    ask: 'How wide is the bore?',
    measures: 'bore',
    slip: { near: ['pin'] },
  },
  pin: {
    enter: 'size',
    label: 'Pin',
    ask: 'How thick is the pin or bolt?',
    measures: 'pin',
    slip: { near: ['bore'] },
    givenBy: { field: 'thread', key: 'It’s a bolt' },
  },
  wall: {
    enter: 'size',
    label: 'Wall now',
    ask: 'Thinnest wall, from the hole’s edge to the part’s edge?',
    slip: usual('.03', '4'),
  },
  joint: jointField,
  thread: { enter: 'thread', label: 'Bolt', ask: 'What thread is on the bolt?' },
} as const satisfies Fields;

const limits = {
  fitSystem: {
    enter: 'choice',
    label: 'Limits from',
    ask: 'Where do the limits come from?',
    options: [
      { value: 'usual', words: 'Common practice', more: 'what a one-person shop calls right' },
      { value: 'ISO 286', words: 'Metric class: ISO 286', more: 'the class such a joint usually gets' },
      { value: 'ANSI B4.1', words: 'Inch class: ANSI B4.1', more: 'the class such a joint usually gets' },
    ],
  },
  nominal: {
    enter: 'size',
    label: 'Nominal size',
    ask: 'What is the nominal size of hole and pin?',
    slip: { ...usual('.03', '8'), near: ['pin', 'bore'] },
  },
  lower: {
    enter: 'size',
    label: 'Least clearance',
    ask: 'What is the least clearance it may have? Below zero is a press.',
    signed: true,
    slip: usual('0', '.25'),
  },
  upper: {
    enter: 'size',
    label: 'Most clearance',
    ask: 'What is the most clearance it may have?',
    signed: true,
    slip: usual('0', '.25'),
  },
} as const satisfies Fields;

/** What the slop means at the end of the arm, and what was read of the joint put together. */
const arm = {
  boreLength: {
    enter: 'size',
    label: 'Bore length',
    ask: 'How long is the bore? Two bushings: from outer end to outer end.',
    slip: usual('.06', '20'),
  },
  reach: {
    enter: 'size',
    label: 'End of the arm',
    ask: 'How far is the end of the arm from the middle of the bore?',
    slip: usual('.5', '100'),
  },
  bellMouth: {
    enter: 'size',
    label: 'Bell-mouth',
    ask: 'How much of the bore’s length is bell-mouthed, both ends together?',
    slip: usual('0', '.5'),
  },
  slop: {
    enter: 'size',
    label: 'Slop, read',
    ask: 'What does the indicator read at the bore, pushed and pulled?',
    measures: 'gap',
    direct: true,
  },
  rockInAll: {
    enter: 'size',
    label: 'Rock, read',
    ask: 'How far does the end of the arm move, both ways together?',
    measures: 'gap',
    direct: true,
  },
} as const satisfies Fields;

/** The part round the hole, the bolt and its pin: what rules ways in and out. */
const cure = {
  leastWall: {
    enter: 'size',
    label: 'Least wall allowed',
    ask: 'How thin may the wall round the finished hole be?',
    slip: usual('.005', '2'),
  },
  thickness: {
    enter: 'size',
    label: 'Metal',
    ask: 'How much metal does the hole go through?',
    slip: usual('.03', '8'),
  },
  facesCarry: {
    enter: 'choice',
    label: 'What carries',
    ask: 'Which faces does the nut clamp?',
    options: [
      {
        value: 'yes',
        words: 'The faces that carry the joint',
        more: 'the nut holds the load, the insert only takes up room',
      },
      { value: 'no', words: 'Other faces', more: 'the thread would carry the load' },
    ],
  },
  shankPasses: {
    enter: 'choice',
    label: 'Plain shank',
    ask: 'Must the bolt’s plain shank pass through this hole?',
    options: [
      { value: 'no', words: 'No', more: 'only the thread is in this part' },
      { value: 'yes', words: 'Yes', more: 'the shank has to go in here' },
    ],
  },
  pinSkin: {
    enter: 'choice',
    label: 'Skin of the pin',
    ask: 'Is the pin case-hardened or chromed? Try a file on it.',
    options: [
      { value: 'soft', words: 'No', more: 'a file bites' },
      { value: 'hard', words: 'Yes', more: 'a file skids: turned down it would be soft' },
    ],
  },
  axis: axisField,
  holeOff: {
    enter: 'choice',
    label: 'Place of the hole',
    ask: 'Is the hole in the right place?',
    options: [
      { value: 'no', words: 'Yes, it is where it belongs', more: 'only its size is worn' },
      { value: 'yes', words: 'It is off', more: 'its middle has to be moved' },
    ],
  },
  offBy: {
    enter: 'size',
    label: 'Off by',
    ask: 'How far is the middle of the hole from where it should be?',
    slip: usual('0', '1'),
  },
  partMetal: { enter: 'choice', label: 'Part', ask: 'What is the part made of?', options: metalOptions },
  bushingMetal: {
    enter: 'choice',
    label: 'Bushing',
    ask: 'What would a bushing be made of?',
    options: metalOptions,
  },
} as const satisfies Fields;

export const holeAndPinFields = { ...roundSizes, ...limits, ...arm, ...cure } as const satisfies Fields;

export type HoleAndPinFields = typeof holeAndPinFields;
