import type { Held } from '../../engine/thread/bolt-grip.ts';
import { nutFactors } from '../../engine/thread/bolt-torque.ts';
import { boltGrades } from '../../engine/thread/tables/bolt-grades.ts';
import { parentMetals } from '../../engine/thread/tables/parent-metals.ts';
import { torqueUnitName } from '../../engine/thread/torque.ts';
import type { FieldPlan, WorksheetPlan } from './worksheet-plan.ts';

const legs = ([1, 2, 3, 4] as const).map((number): FieldPlan => ({
  name: `leg${number}`,
  label: `Leg ${number}`,
  ask:
    number === 1
      ? 'How thick is the first part under the head?'
      : `How thick is clamped part ${number}, counted from the head?`,
  enter: 'size',
  measures: 'length',
}));

export const LEG_NAMES = legs.map(({ name }) => name);

// A stud has no head: its legs and its plain shank are counted from the part that it stands in.
const studLegs = legs.map((leg, index): FieldPlan => ({
  ...leg,
  ask:
    index === 0
      ? 'How thick is the part that lies on the tapped part’s face?'
      : `How thick is clamped part ${index + 1}, counted from the tapped part’s face?`,
}));

/** What is asked of legs and bolt, by how it holds. */
export function boltFields(held: Held, hole: string | undefined): readonly string[] {
  return [
    ...LEG_NAMES,
    ...(held === 'stud' ? [] : ['headWasher']),
    ...(held === 'nut' ? [] : ['hole', ...(hole === 'blind' ? ['holeDepth'] : [])]),
    ...(held === 'tapped' ? [] : ['nutWasher', 'nutHeight']),
    'shank',
    'nutRunsTo',
    'boltLength',
  ];
}

const strengths: readonly FieldPlan[] = [
  {
    name: 'grade',
    label: 'Bolt grade',
    ask: 'Which grade is the bolt?',
    enter: 'choice',
    options: boltGrades.map(({ id, name, marks }) => ({ value: id, words: name, more: marks })),
  },
  {
    name: 'parent',
    label: 'Part’s metal',
    ask: 'What is the thread in?',
    enter: 'choice',
    options: parentMetals.map(({ id, name, tensileLeastMpa }) => ({
      value: id,
      words: name,
      more: `at least ${tensileLeastMpa} MPa`,
    })),
  },
  {
    name: 'parentTensile',
    label: 'Part’s strength',
    ask: 'What is the part’s tensile strength at least?',
    enter: 'number',
    unit: 'MPa',
    least: 10,
    most: 2500,
  },
];

function shankFieldsFrom(from: string): readonly FieldPlan[] {
  return [
    {
      name: 'shank',
      label: 'Plain shank',
      ask: `How long is the plain shank, from ${from} to the first trace of thread?`,
      enter: 'size',
      measures: 'length',
    },
    {
      name: 'nutRunsTo',
      label: 'A nut runs up to',
      ask: `Run a nut up by hand: how far from ${from} does it stop?`,
      enter: 'size',
      measures: 'length',
    },
    {
      name: 'boltLength',
      label: 'Length of the bolt',
      ask: 'How long is the bolt or stud? A bolt is measured from under its head, a stud over all.',
      enter: 'size',
      measures: 'length',
    },
  ];
}

const shankFields = {
  head: shankFieldsFrom('under the head'),
  part: shankFieldsFrom('the part’s face, with the stud wound in,'),
};

const torque: readonly FieldPlan[] = [
  {
    name: 'torquePoundFeet',
    label: `Manual’s torque, ${torqueUnitName('lbf-ft')}`,
    ask: 'Which torque does the service manual give?',
    enter: 'number',
    unit: torqueUnitName('lbf-ft'),
    least: 0.1,
    most: 2000,
  },
  {
    name: 'torqueNewtonMetres',
    label: `Manual’s torque, ${torqueUnitName('Nm')}`,
    ask: 'Which torque does the service manual give?',
    enter: 'number',
    unit: torqueUnitName('Nm'),
    least: 0.1,
    most: 3000,
  },
  {
    name: 'nutFactor',
    label: 'How the thread is',
    ask: 'How does the thread go in?',
    enter: 'choice',
    options: nutFactors.map(({ id, words, factor }) => ({
      value: id,
      words,
      more: `K = ${factor.toFixed(2)}`,
    })),
  },
];

const NEEDS = ['thread', 'grade', 'parent', 'engaged'];

const fields: readonly FieldPlan[] = [
  { name: 'thread', label: 'Thread', ask: 'Which thread is it?', enter: 'thread' },
  ...strengths,
  {
    name: 'engaged',
    label: 'Engaged length',
    ask: 'How much full thread is engaged? With an insert: its nominal length.',
    enter: 'size',
    measures: 'depth',
  },
  {
    name: 'insert',
    label: 'Thread insert',
    ask: 'Is there a wire thread insert in the part?',
    enter: 'choice',
    options: [
      { value: 'no', words: 'No', more: 'the thread is cut in the part itself' },
      { value: 'yes', words: 'Yes', more: 'the part holds at the insert’s larger thread' },
    ],
  },
  {
    name: 'held',
    label: 'How it holds',
    ask: 'How does it hold?',
    enter: 'choice',
    options: [
      { value: 'tapped', words: 'Bolt into the part', more: 'the last part is tapped' },
      { value: 'nut', words: 'Bolt through, with a nut' },
      { value: 'stud', words: 'Stud in the part, with a nut' },
    ],
  },
  ...legs,
  {
    name: 'headWasher',
    label: 'Washer under the head',
    ask: 'How thick is the washer under the head?',
    enter: 'size',
  },
  {
    name: 'nutWasher',
    label: 'Washer under the nut',
    ask: 'How thick is the washer under the nut?',
    enter: 'size',
  },
  { name: 'nutHeight', label: 'Nut’s height', ask: 'How high is the nut?', enter: 'size' },
  {
    name: 'hole',
    label: 'The tapped hole',
    ask: 'Does the tapped hole go through?',
    enter: 'choice',
    options: [
      { value: 'through', words: 'Through', more: 'a longer bolt stands out behind' },
      { value: 'blind', words: 'Blind', more: 'a longer bolt meets its end' },
    ],
  },
  {
    name: 'holeDepth',
    label: 'Thread’s depth',
    ask: 'How deep is full thread in the hole, from the part’s face?',
    enter: 'size',
    measures: 'depth',
  },
  ...shankFields.head,
  ...torque,
];

const studFields = fields.map(
  (field) => [...studLegs, ...shankFields.part].find(({ name }) => name === field.name) ?? field,
);

export const threadEngagementPlan: WorksheetPlan = {
  kind: 'thread-engagement',
  name: 'Thread engagement',
  asks: 'Does the bolt break before its thread strips, and how long must it be?',
  needs: NEEDS,
  fields,
  choices: {},
  parts: [],
  forChoices: (choices) => ({ needs: NEEDS, fields: choices['held'] === 'stud' ? studFields : fields }),
};
