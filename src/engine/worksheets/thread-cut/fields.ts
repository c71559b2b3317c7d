import { marked } from '../../length/decimal-text.ts';
import { lengthOf } from '../../length/length.ts';
import type { Fields, SizeField } from '../fields.ts';
import { metalField } from '../in-use.ts';

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const inches = (least: string, most: string) => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});

const size = (label: string, ask: string, slip: SizeField['slip']) =>
  ({ enter: 'size', label, ask, ...(slip && { slip }) }) as const satisfies SizeField;

export const threadCutFields = {
  makes: {
    enter: 'choice',
    label: 'What it is',
    ask: 'What gets the thread?',
    options: [
      { value: 'part', words: 'A part', more: 'one thread, on its outside' },
      { value: 'stud', words: 'A stud from bar', more: 'a thread at both ends' },
    ],
  },
  thread: { enter: 'thread', label: 'Thread', ask: 'Which thread is cut?' },
  outside: {
    enter: 'size',
    label: 'Outside now',
    ask: 'How thick is the part or bar now?',
    measures: 'pin',
  },
  ends: {
    enter: 'choice',
    label: 'Its ends',
    ask: 'What holds the stud’s ends?',
    options: [
      { value: 'nuts', words: 'A nut at each end' },
      { value: 'part', words: 'A tapped part, and a nut' },
    ],
  },
  grip: {
    enter: 'size',
    label: 'Grip',
    ask: 'How thick is all that the stud clamps, from face to face?',
    measures: 'length',
  },
  inPart: size('In the part', 'How deep does the stud go into the tapped part?', inches('.1', '4')),
  washer: size('Washer', 'How thick is the washer under each nut?', inches('.01', '1')),
  nutHeight: size('Nut’s height', 'How high is the nut?', inches('.04', '2')),
  wire: {
    enter: 'size',
    label: 'Wire',
    ask: 'How thick are the three wires on hand?',
    measures: 'pin',
    slip: inches('.005', '.2'),
  },
  infeed: {
    enter: 'choice',
    label: 'Infeed',
    ask: 'How is the tool fed in?',
    options: [
      {
        value: 'flank',
        words: 'Along the flank',
        get more() {
          return `by the compound, set ${marked('29.5')}° off square`;
        },
      },
      { value: 'straight', words: 'Straight in', more: 'by the cross slide' },
    ],
  },
  hand: {
    enter: 'choice',
    label: 'Hand',
    ask: 'Which hand is the thread?',
    options: [
      { value: 'right', words: 'Right hand', more: 'the tool travels toward the chuck' },
      { value: 'left', words: 'Left hand', more: 'the tool travels away from the chuck' },
    ],
  },
  metal: metalField('Metal', 'What is it made of?'),
} as const satisfies Fields;

export type ThreadCutFields = typeof threadCutFields;
