import { nutFactors } from '../../engine/bolt-torque.ts';
import { boltGrades } from '../../engine/tables/bolt-grades.ts';
import { parentMetals } from '../../engine/tables/parent-metals.ts';
import { torqueUnitName } from '../../engine/torque.ts';
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

export const threadEngagementPlan: WorksheetPlan = {
  kind: 'thread-engagement',
  name: 'Thread engagement',
  asks: 'Does the bolt break before its thread strips, and how long must it be?',
  needs: ['thread', 'grade', 'parent', 'engaged'],
  fields: [
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
      name: 'shank',
      label: 'Plain shank',
      ask: 'How long is the plain shank, from under the head to the first thread?',
      enter: 'size',
      measures: 'length',
    },
    {
      name: 'boltLength',
      label: 'Length of the bolt',
      ask: 'How long is the bolt or stud? A bolt is measured from under its head.',
      enter: 'size',
      measures: 'length',
    },
    ...torque,
  ],
  choices: { insert: 'no', held: 'tapped', nutFactor: 'dry' },
  parts: [],
};
