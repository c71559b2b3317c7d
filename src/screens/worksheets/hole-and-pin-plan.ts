import { materials } from '../../engine/material/tables/materials.ts';
import type { FieldPlan, WorksheetPlan } from './worksheet-plan.ts';

export const joint: FieldPlan = {
  name: 'joint',
  label: 'How it runs',
  ask: 'How should this joint run?',
  enter: 'choice',
  options: [
    { value: 'located', words: 'Located, fixed by its nut', more: 'a bolt that does not turn in the hole' },
    { value: 'turns', words: 'Turns', more: 'a pivot that moves now and then' },
    { value: 'turns-under-load', words: 'Turns under load', more: 'a pivot that works while it carries' },
    { value: 'slides', words: 'Slides by hand', more: 'a pin pushed in and out' },
    { value: 'pressed', words: 'Pressed', more: 'goes in with force and stays' },
  ],
};

const fitSystem: FieldPlan = {
  name: 'fitSystem',
  label: 'Limits from',
  ask: 'Where do the limits come from?',
  enter: 'choice',
  options: [
    { value: 'usual', words: 'Common practice', more: 'what a one-person shop calls right' },
    { value: 'ISO 286', words: 'Metric class: ISO 286', more: 'the class such a joint usually gets' },
    { value: 'ANSI B4.1', words: 'Inch class: ANSI B4.1', more: 'the class such a joint usually gets' },
  ],
};

const place: readonly FieldPlan[] = [
  {
    name: 'holeOff',
    label: 'Place of the hole',
    ask: 'Is the hole in the right place?',
    enter: 'choice',
    options: [
      { value: 'no', words: 'Yes, it is where it belongs', more: 'only its size is worn' },
      { value: 'yes', words: 'It is off', more: 'its middle has to be moved' },
    ],
  },
  {
    name: 'offBy',
    label: 'Off by',
    ask: 'How far is the middle of the hole from where it should be?',
    enter: 'size',
  },
];

export const axisField: FieldPlan = {
  name: 'axis',
  label: 'Place of the finished hole',
  ask: 'Where does the middle of the finished hole go?',
  enter: 'choice',
  options: [
    { value: 'follows', words: 'Where the wear is', more: 'a reamer follows the hole that is there' },
    { value: 'old', words: 'On its old axis', more: 'bored from a located centre; takes more' },
  ],
};

const metals = materials.map(({ id, name }) => ({ value: id, words: name }));

const metalFields: readonly FieldPlan[] = [
  { name: 'partMetal', label: 'Part', ask: 'What is the part made of?', enter: 'choice', options: metals },
  {
    name: 'bushingMetal',
    label: 'Bushing',
    ask: 'What would a bushing be made of?',
    enter: 'choice',
    options: metals,
  },
];

export const holeAndPinPlan: WorksheetPlan = {
  kind: 'hole-and-pin',
  name: 'Hole and pin',
  asks: 'How much slop, what does it mean at the end of the arm, and what cures it?',
  needs: ['bore', 'pin', 'joint'],
  fields: [
    { name: 'bore', label: 'Bore', ask: 'How wide is the bore?', enter: 'size', measures: 'bore' },
    { name: 'pin', label: 'Pin', ask: 'How thick is the pin or bolt?', enter: 'size', measures: 'pin' },
    joint,
    fitSystem,
    {
      name: 'nominal',
      label: 'Nominal size',
      ask: 'What is the nominal size of hole and pin?',
      enter: 'size',
    },
    { name: 'thread', label: 'Bolt', ask: 'What thread is on the bolt?', enter: 'thread' },
    {
      name: 'lower',
      label: 'Least clearance',
      ask: 'What is the least clearance it may have? Below zero is a press.',
      enter: 'size',
      signed: true,
    },
    {
      name: 'upper',
      label: 'Most clearance',
      ask: 'What is the most clearance it may have?',
      enter: 'size',
      signed: true,
    },
    {
      name: 'boreLength',
      label: 'Bore length',
      ask: 'How long is the bore? Two bushings: from outer end to outer end.',
      enter: 'size',
    },
    {
      name: 'reach',
      label: 'End of the arm',
      ask: 'How far is the end of the arm from the middle of the bore?',
      enter: 'size',
    },
    {
      name: 'bellMouth',
      label: 'Bell-mouth',
      ask: 'How much of the bore’s length is bell-mouthed, both ends together?',
      enter: 'size',
    },
    {
      name: 'slop',
      label: 'Slop, read',
      ask: 'What does the indicator read at the bore, pushed and pulled?',
      enter: 'size',
      measures: 'gap',
      direct: true,
    },
    {
      name: 'rockInAll',
      label: 'Rock, read',
      ask: 'How far does the end of the arm move, both ways together?',
      enter: 'size',
      measures: 'gap',
      direct: true,
    },
    {
      name: 'wall',
      label: 'Wall now',
      ask: 'How thick is the wall at its thinnest, from the hole’s edge to the part’s edge?',
      enter: 'size',
    },
    {
      name: 'leastWall',
      label: 'Least wall allowed',
      ask: 'How thin may the wall round the finished hole be?',
      enter: 'size',
    },
    { name: 'thickness', label: 'Metal', ask: 'How much metal does the hole go through?', enter: 'size' },
    {
      name: 'facesCarry',
      label: 'What carries',
      ask: 'Which faces does the nut clamp?',
      enter: 'choice',
      options: [
        {
          value: 'yes',
          words: 'The faces that carry the joint',
          more: 'the nut holds the load, the insert only takes up room',
        },
        { value: 'no', words: 'Other faces', more: 'the thread would carry the load' },
      ],
    },
    {
      name: 'shankPasses',
      label: 'Plain shank',
      ask: 'Must the bolt’s plain shank pass through this hole?',
      enter: 'choice',
      options: [
        { value: 'no', words: 'No', more: 'only the thread is in this part' },
        { value: 'yes', words: 'Yes', more: 'the shank has to go in here' },
      ],
    },
    {
      name: 'pinSkin',
      label: 'Skin of the pin',
      ask: 'Is the pin case-hardened or chromed? Try a file on it.',
      enter: 'choice',
      options: [
        { value: 'soft', words: 'No', more: 'a file bites' },
        { value: 'hard', words: 'Yes', more: 'a file skids: turned down it would be soft' },
      ],
    },
    axisField,
    ...place,
    ...metalFields,
  ],
  choices: {},
  parts: [],
};
