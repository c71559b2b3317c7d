import { lengthOf } from '../../length/length.ts';
import type { Fields, SizeField, SlipOfField } from '../fields.ts';

const inches = (least: string, most: string): SlipOfField => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});

const size = (label: string, ask: string, slip: SlipOfField): SizeField => ({
  enter: 'size',
  label,
  ask,
  slip,
});

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const CLEARANCE = inches('0', '.25');

export const ringFields = {
  recess: { enter: 'size', label: 'Recess bore', ask: 'Recess bore', measures: 'bore' },
  stem: { enter: 'size', label: 'Stem', ask: 'Stem or sleeve through it', measures: 'pin' },
  depth: { enter: 'size', label: 'Recess depth', ask: 'Depth of the recess', measures: 'depth' },
  stayFree: {
    enter: 'size',
    label: 'Must stay free',
    ask: 'How much of the depth must stay free above the ring? Below zero it may stand proud.',
    signed: true,
    slip: inches('0', '2'),
  },
  locates: {
    enter: 'choice',
    label: 'What locates it',
    ask: 'What holds the ring on centre?',
    options: [
      { value: 'recess', words: 'The recess', more: 'its outside is close, its inside free' },
      { value: 'stem', words: 'The stem', more: 'its inside is close, its outside free' },
    ],
  },
  outLeast: size(
    'Outside, least clearance',
    'How much smaller than the recess must it be at least?',
    CLEARANCE,
  ),
  outMost: size('Outside, most clearance', 'How much smaller than the recess may it be at most?', CLEARANCE),
  inLeast: size(
    'Inside, least clearance',
    'How much larger than the stem must its hole be at least?',
    CLEARANCE,
  ),
  inMost: size('Inside, most clearance', 'How much larger than the stem may its hole be at most?', CLEARANCE),
  leastThickness: size('Least thickness', 'How thin may the ring be?', inches('.002', '1')),
  blankOutside: size('Washer in hand, outside', 'How big is the washer outside?', inches('.1', '14')),
  blankInside: size('Washer in hand, inside', 'How wide is the washer’s hole?', inches('0', '8')),
  blankThickness: size('Washer in hand, thickness', 'How thick is the washer?', inches('.002', '2')),
} as const satisfies Fields;

export type RingFields = typeof ringFields;
