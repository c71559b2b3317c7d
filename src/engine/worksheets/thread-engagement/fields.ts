import { marked } from '../../length/decimal-text.ts';
import { PSI_PER_MPA } from '../../material/material.ts';
import { lengthOf } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import { nutFactors } from '../../thread/bolt-torque.ts';
import { boltGrades } from '../../thread/tables/bolt-grades.ts';
import { parentMetals } from '../../thread/tables/parent-metals.ts';
import { torqueUnitName } from '../../thread/torque.ts';
import type { ChoiceField, Fields, SizeField } from '../fields.ts';

const inches = (least: string, most: string) => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});
// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const WASHER = inches('.01', '1');

const ALL_LEGS = { choice: 'legs', value: 'all' } as const;

const leg = (label: string, ask: string, key: string) =>
  ({
    enter: 'size',
    label,
    ask,
    measures: 'length',
    instead: { key, ...ALL_LEGS },
  }) as const satisfies SizeField;

const boltLegs = {
  leg1: leg('Leg 1', 'How thick is the first part under the head?', 'No legs'),
  leg2: leg('Leg 2', 'How thick is clamped part 2, counted from the head?', 'That’s all'),
  leg3: leg('Leg 3', 'How thick is clamped part 3, counted from the head?', 'That’s all'),
  leg4: leg('Leg 4', 'How thick is clamped part 4, counted from the head?', 'That’s all'),
};

const shankFrom = (from: string) => ({
  shank: {
    enter: 'size',
    label: 'Plain shank',
    ask: `How long is the plain shank, from ${from} to the first trace of thread?`,
    measures: 'length',
  } as const,
  nutRunsTo: {
    enter: 'size',
    label: 'A nut runs up to',
    ask: `Run a nut up by hand: how far from ${from} does it stop?`,
    measures: 'length',
  } as const,
});

export const engagementFields = {
  thread: { enter: 'thread', label: 'Thread', ask: 'Which thread is it?' },
  grade: {
    enter: 'choice',
    label: 'Bolt grade',
    ask: 'Which grade is the bolt?',
    options: boltGrades.map(({ id, name, marks }) => ({ value: id, words: name, more: marks })),
  },
  parent: {
    enter: 'choice',
    label: 'Part’s metal',
    ask: 'What is the thread in?',
    options: metalsIn('mm'),
  },
  parentTensile: {
    enter: 'number',
    label: 'Part’s strength',
    ask: 'What is the part’s tensile strength at least?',
    unit: 'MPa',
    least: 10,
    most: 2500,
  },
  insert: {
    enter: 'choice',
    label: 'Thread insert',
    ask: 'Is there a wire thread insert in the part?',
    options: [
      { value: 'no', words: 'No', more: 'the thread is cut in the part itself' },
      { value: 'yes', words: 'Yes', more: 'the part holds at the insert’s larger thread' },
    ],
  },
  held: {
    enter: 'choice',
    label: 'How it holds',
    ask: 'How does it hold?',
    options: [
      { value: 'tapped', words: 'Bolt into the part', more: 'the last part is tapped' },
      { value: 'nut', words: 'Bolt through, with a nut' },
      { value: 'stud', words: 'Stud in the part, with a nut' },
    ],
  },
  ...boltLegs,
  engaged: {
    enter: 'size',
    label: 'Engaged length',
    ask: 'How much full thread is engaged? With an insert: its nominal length.',
    measures: 'depth',
  },
  boltLength: {
    enter: 'size',
    label: 'Length of the bolt',
    ask: 'How long is the bolt from under its head, or the stud over all?',
    measures: 'length',
    slip: inches('.1', '14'),
  },
  ...shankFrom('under the head'),
  hole: {
    enter: 'choice',
    label: 'The tapped hole',
    ask: 'Does the tapped hole go through?',
    options: [
      { value: 'through', words: 'Through', more: 'a longer bolt stands out behind' },
      { value: 'blind', words: 'Blind', more: 'a longer bolt meets its end' },
    ],
  },
  holeDepth: {
    enter: 'size',
    label: 'Thread’s depth',
    ask: 'How deep is full thread in the hole, from the part’s face?',
    measures: 'depth',
  },
  headWasher: {
    enter: 'size',
    label: 'Washer under the head',
    ask: 'How thick is the washer under the head?',
    slip: WASHER,
  },
  nutWasher: {
    enter: 'size',
    label: 'Washer under the nut',
    ask: 'How thick is the washer under the nut?',
    slip: WASHER,
  },
  nutHeight: {
    enter: 'size',
    label: 'Nut’s height',
    ask: 'How high is the nut?',
    slip: inches('.04', '2'),
  },
  torquePoundFeet: {
    enter: 'number',
    label: `Manual’s torque, ${torqueUnitName('lbf-ft')}`,
    ask: 'Which torque does the service manual give?',
    unit: torqueUnitName('lbf-ft'),
    least: 0.1,
    most: 2000,
  },
  torqueNewtonMetres: {
    enter: 'number',
    label: `Manual’s torque, ${torqueUnitName('Nm')}`,
    ask: 'Which torque does the service manual give?',
    unit: torqueUnitName('Nm'),
    least: 0.1,
    most: 3000,
  },
  nutFactor: {
    enter: 'choice',
    label: 'How the thread is',
    ask: 'How does the thread go in?',
    options: nutFactors.map(({ id, words, factor }) => ({
      value: id,
      words,
      get more() {
        return `K = ${marked(factor.toFixed(2))}`;
      },
    })),
  },
  // Given by the keys beside the legs; never asked by itself.
  legs: {
    enter: 'choice',
    label: 'Legs',
    ask: 'Are those all the legs?',
    options: [{ value: 'all', words: 'That’s all' }],
  },
} as const satisfies Fields;

export type EngagementFields = typeof engagementFields;

export const legFields = ['leg1', 'leg2', 'leg3', 'leg4'] as const;

/** A stud has no head: its legs and its plain shank are counted from the part that it stands in. */
export const studFields = {
  leg1: leg('Leg 1', 'How thick is the part that lies on the tapped part’s face?', 'No legs'),
  leg2: leg('Leg 2', 'How thick is clamped part 2, counted from the tapped part’s face?', 'That’s all'),
  leg3: leg('Leg 3', 'How thick is clamped part 3, counted from the tapped part’s face?', 'That’s all'),
  leg4: leg('Leg 4', 'How thick is clamped part 4, counted from the tapped part’s face?', 'That’s all'),
  ...shankFrom('the part’s face, with the stud wound in,'),
} satisfies Fields;

/** What a thread may be cut in, the strength in the shop's own unit. */
export function metalsIn(unit: ShownUnit): ChoiceField['options'] {
  return parentMetals.map(({ id, name, tensileLeastMpa, ofMetricShop }) => ({
    value: id,
    words: name,
    ...(ofMetricShop && { ofMetricShop }),
    more:
      unit === 'in'
        ? `at least ${((tensileLeastMpa * PSI_PER_MPA) / 1000).toFixed(0)} ksi`
        : `at least ${tensileLeastMpa} MPa`,
  }));
}
