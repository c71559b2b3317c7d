import type { FieldPlan, WorksheetPlan } from './worksheet-plan.ts';

const size = (name: string, label: string, ask: string): FieldPlan => ({ name, label, ask, enter: 'size' });

export const ringPlan: WorksheetPlan = {
  kind: 'ring',
  name: 'Ring',
  asks: 'How big outside, inside and how thick is the ring or shield, and which washer is it cut from?',
  needs: ['recess', 'stem'],
  fields: [
    {
      name: 'recess',
      label: 'Recess bore',
      ask: 'How wide is the recess it sits in?',
      enter: 'size',
      measures: 'bore',
    },
    {
      name: 'stem',
      label: 'Stem',
      ask: 'How thick is the stem or sleeve that goes through it?',
      enter: 'size',
      measures: 'pin',
    },
    {
      name: 'depth',
      label: 'Recess depth',
      ask: 'How deep is the recess?',
      enter: 'size',
      measures: 'depth',
    },
    {
      name: 'stayFree',
      label: 'Must stay free',
      ask: 'How much of the depth must stay free above the ring? Below zero it may stand proud.',
      enter: 'size',
      signed: true,
    },
    {
      name: 'locates',
      label: 'What locates it',
      ask: 'What holds the ring on centre?',
      enter: 'choice',
      options: [
        { value: 'recess', words: 'The recess', more: 'its outside is close, its inside free' },
        { value: 'stem', words: 'The stem', more: 'its inside is close, its outside free' },
      ],
    },
    size('outLeast', 'Outside, least clearance', 'How much smaller than the recess must it be at least?'),
    size('outMost', 'Outside, most clearance', 'How much smaller than the recess may it be at most?'),
    size('inLeast', 'Inside, least clearance', 'How much larger than the stem must its hole be at least?'),
    size('inMost', 'Inside, most clearance', 'How much larger than the stem may its hole be at most?'),
    size('leastThickness', 'Least thickness', 'How thin may the ring be?'),
    size('blankOutside', 'Washer in hand, outside', 'How big is the washer outside?'),
    size('blankInside', 'Washer in hand, inside', 'How wide is the washer’s hole?'),
    size('blankThickness', 'Washer in hand, thickness', 'How thick is the washer?'),
  ],
  choices: { locates: 'recess' },
  parts: [],
};
