import { lengthOf } from '../../length/length.ts';
import type { Fields, SizeField } from '../fields.ts';

const inches = (least: string, most: string) => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});
// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const METAL = inches('.03', '8');
const LEAST_WALL = inches('.005', '2');

const ALL_LEGS = { choice: 'legs', value: 'all' } as const;

const leg = (label: string, ask: string, key: string) =>
  ({
    enter: 'size',
    label,
    ask,
    measures: 'length',
    slip: METAL,
    instead: { key, ...ALL_LEGS },
  }) as const satisfies SizeField;

export const insertFields = {
  thread: { enter: 'thread', label: 'Thread', ask: 'Which thread is it for?' },
  hole: {
    enter: 'size',
    label: 'Hole now',
    ask: 'How wide is the hole now? In several legs read each.',
    measures: 'bore',
    instead: { key: 'No hole yet', choice: 'noHole', value: 'yes' },
  },
  thickness: leg('Metal, leg 1', 'How thick is the metal? Of several legs the first.', 'Not now'),
  thickness2: leg('Metal, leg 2', 'How thick is the second leg?', 'That’s all'),
  thickness3: leg('Metal, leg 3', 'How thick is the third leg?', 'That’s all'),
  thickness4: leg('Metal, leg 4', 'How thick is the fourth leg?', 'That’s all'),
  wall: {
    enter: 'size',
    label: 'Wall now',
    ask: 'Thinnest wall, from the hole’s edge to the part’s edge?',
    slip: inches('.03', '4'),
    instead: { key: 'Far from any edge', choice: 'wallIs', value: 'far' },
  },
  centreToEdge: {
    enter: 'size',
    label: 'Centre to edge',
    ask: 'How far is the hole’s centre from the part’s edge?',
    slip: inches('.06', '8'),
    instead: { key: 'Far from any edge', choice: 'wallIs', value: 'far' },
  },
  leastWall: {
    enter: 'size',
    label: 'Least wall allowed',
    ask: 'How thin may the wall beside the tapped hole be?',
    slip: LEAST_WALL,
  },
  metal: {
    enter: 'choice',
    label: 'Metal',
    ask: 'What is the part made of?',
    options: [
      { value: 'aluminium', words: 'Aluminium', more: 'or another soft metal' },
      { value: 'steel', words: 'Steel', more: 'or cast iron' },
    ],
  },
  bottom: {
    enter: 'choice',
    label: 'Through or blind',
    ask: 'Does the hole go through?',
    options: [
      { value: 'through', words: 'Through' },
      { value: 'blind', words: 'Blind', more: 'it has a bottom, in every leg' },
      { value: 'last-blind', words: 'Only the last leg is blind' },
    ],
  },
  tap: {
    enter: 'choice',
    label: 'STI tap',
    ask: 'Which STI tap for the blind hole?',
    options: [
      { value: 'bottoming', words: 'Bottoming tap', more: 'threads almost to the bottom' },
      { value: 'plug', words: 'Second (US: plug) tap', more: 'longer lead, needs a deeper hole' },
    ],
  },
  leastFloor: {
    enter: 'size',
    label: 'Least floor allowed',
    ask: 'How thin may the metal under the blind hole be?',
    slip: inches('0', '2'),
  },
  // Given by the keys beside the sizes that they stand in for; never asked by themselves.
  noHole: {
    enter: 'choice',
    label: 'Hole now',
    ask: 'Is there a hole already?',
    options: [{ value: 'yes', words: 'No hole yet' }],
  },
  legs: {
    enter: 'choice',
    label: 'Legs',
    ask: 'Are those all the legs?',
    options: [{ value: 'all', words: 'That’s all' }],
  },
  wallIs: {
    enter: 'choice',
    label: 'Wall now',
    ask: 'Is there an edge near the hole?',
    options: [{ value: 'far', words: 'Far from any edge' }],
  },
} as const satisfies Fields;

export type InsertFields = typeof insertFields;

/** The legs from the head of the bolt on. */
export const legFields = ['thickness', 'thickness2', 'thickness3', 'thickness4'] as const;
