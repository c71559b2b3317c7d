import type { Fields, SizeField } from '../fields.ts';

const size = (label: string, ask: string): SizeField => ({ enter: 'size', label, ask });

export const ringFields = {
  recess: { enter: 'size', label: 'Recess bore', ask: 'Recess bore', measures: 'bore' },
  stem: { enter: 'size', label: 'Stem', ask: 'Stem or sleeve through it', measures: 'pin' },
  depth: { enter: 'size', label: 'Recess depth', ask: 'Depth of the recess', measures: 'depth' },
  stayFree: {
    enter: 'size',
    label: 'Must stay free',
    ask: 'How much of the depth must stay free above the ring? Below zero it may stand proud.',
    signed: true,
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
  outLeast: size('Outside, least clearance', 'How much smaller than the recess must it be at least?'),
  outMost: size('Outside, most clearance', 'How much smaller than the recess may it be at most?'),
  inLeast: size('Inside, least clearance', 'How much larger than the stem must its hole be at least?'),
  inMost: size('Inside, most clearance', 'How much larger than the stem may its hole be at most?'),
  leastThickness: size('Least thickness', 'How thin may the ring be?'),
  blankOutside: size('Washer in hand, outside', 'How big is the washer outside?'),
  blankInside: size('Washer in hand, inside', 'How wide is the washer’s hole?'),
  blankThickness: size('Washer in hand, thickness', 'How thick is the washer?'),
} as const satisfies Fields;

export type RingFields = typeof ringFields;
