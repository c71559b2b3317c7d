import { lengthOf } from '../../length/length.ts';
import { bushingFields } from '../bushing/fields.ts';
import type { ChoiceField, Fields, SizeField } from '../fields.ts';

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const usual = (least: string, most: string) => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});
const APART = usual('.2', '40');

const place = (label: string, ask: string): SizeField => ({
  enter: 'size',
  label,
  ask,
  measures: 'length',
  slip: usual('.03', '40'),
});

// Where the hole goes is another question here.
const { bore, pin, joint, wall, partMetal, bushingMetal, axis: _worn, ...ofTheBushing } = bushingFields;

const axis = {
  enter: 'choice',
  label: 'Where it is opened',
  ask: 'Where is the hole opened up?',
  options: [
    { value: 'follows', words: 'Where it is now', more: 'reamed; the bushing is bored off its middle' },
    { value: 'right', words: 'In its right place', more: 'bored on a mill; a plain bushing' },
  ],
} as const satisfies ChoiceField;

export const misplacedHoleFields = {
  found: {
    enter: 'choice',
    label: 'Known by',
    ask: 'How do you know where the hole belongs?',
    options: [
      { value: 'offset', words: 'How far off, and which way', more: 'scribed, blued or clocked' },
      {
        value: 'apart',
        words: 'From another hole',
        more: 'middle to middle, now and wanted',
      },
      { value: 'edges', words: 'From two edges', more: 'across and up, now and wanted' },
    ],
  },
  offBy: {
    enter: 'size',
    label: 'Off by',
    ask: 'How far is the hole off its place?',
    measures: 'length',
    slip: usual('.001', '.75'),
  },
  toward: {
    enter: 'number',
    label: 'Which way it has to go',
    ask: 'Which way has it to go? 0 is 3 o’clock, 90 is 12.',
    unit: '°',
    least: 0,
    most: 360,
  },
  apart: {
    enter: 'size',
    label: 'To the other hole now',
    ask: 'How far to the other hole now, middle to middle? It lies at 3 o’clock.',
    measures: 'length',
    slip: APART,
  },
  apartWanted: {
    enter: 'size',
    label: 'To the other hole, wanted',
    ask: 'How far has it to be, middle to middle?',
    measures: 'length',
    slip: { near: ['apart'], ...APART },
  },
  nowX: place('Across, now', 'How far is its middle from the left edge now?'),
  wantX: place('Across, wanted', 'How far from the left edge does its middle belong?'),
  nowY: place('Up, now', 'How far is its middle from the lower edge now?'),
  wantY: place('Up, wanted', 'How far from the lower edge does its middle belong?'),
  bore: { ...bore, label: 'Hole now', ask: 'How wide is the hole now?' },
  pin: { ...pin, ask: 'How thick is the pin that goes in it?' },
  joint,
  wall: { ...wall, measures: 'length' },
  partMetal,
  bushingMetal,
  axis,
  within: {
    enter: 'size',
    label: 'How close to its place',
    ask: 'How close must the finished hole come to its place?',
    slip: usual('.0001', '.1'),
  },
  lock: {
    enter: 'choice',
    label: 'Locked by',
    ask: 'What keeps the bushing from turning?',
    options: [
      { value: 'dowel', words: 'A dowel in the joint', more: 'half in the part, half in the bushing' },
      { value: 'screw', words: 'A setscrew', more: 'through the part into the thick side' },
      { value: 'bond', words: 'Retaining compound', more: 'clean, dry, and left to cure' },
    ],
  },
  otherX: place('Other hole across', 'How far is the other hole’s middle from the left edge?'),
  otherY: place('Other hole up', 'How far is the other hole’s middle from the lower edge?'),
  otherWantX: place(
    'Other hole across, wanted',
    'Is it moved too? How far from the left edge does the other hole belong?',
  ),
  otherWantY: place(
    'Other hole up, wanted',
    'Is it moved too? How far from the lower edge does the other hole belong?',
  ),
  ...ofTheBushing,
} as const satisfies Fields;

export type MisplacedHoleFields = typeof misplacedHoleFields;
