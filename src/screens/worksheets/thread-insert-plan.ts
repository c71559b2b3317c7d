import type { WorksheetPlan } from './worksheet-plan.ts';

export const threadInsertPlan: WorksheetPlan = {
  kind: 'thread-insert',
  name: 'Thread insert',
  asks: 'Which drill, or none, which tap, what length, and what wall is left?',
  needs: ['thread', 'hole'],
  fields: [
    { name: 'thread', label: 'Thread', ask: 'Which thread is it for?', enter: 'thread' },
    { name: 'hole', label: 'Hole now', ask: 'How wide is the hole now?', enter: 'size', measures: 'bore' },
    {
      name: 'metal',
      label: 'Metal',
      ask: 'What is the part made of?',
      enter: 'choice',
      options: [
        { value: 'aluminium', words: 'Aluminium', more: 'or another soft metal' },
        { value: 'steel', words: 'Steel', more: 'or cast iron' },
      ],
    },
    {
      name: 'wall',
      label: 'Wall now',
      ask: 'How thick is the wall at its thinnest, from the hole’s edge to the part’s edge?',
      enter: 'size',
    },
    {
      name: 'centreToEdge',
      label: 'Centre to edge',
      ask: 'How far is the hole’s centre from the part’s edge?',
      enter: 'size',
    },
    {
      name: 'leastWall',
      label: 'Least wall allowed',
      ask: 'How thin may the wall beside the tapped hole be?',
      enter: 'size',
    },
    {
      name: 'thickness',
      label: 'Metal thickness',
      ask: 'How thick is the metal here?',
      enter: 'size',
      measures: 'length',
    },
    {
      name: 'bottom',
      label: 'Through or blind',
      ask: 'Does the hole go through?',
      enter: 'choice',
      options: [
        { value: 'through', words: 'Through' },
        { value: 'blind', words: 'Blind', more: 'it has a bottom' },
      ],
    },
    {
      name: 'tap',
      label: 'STI tap',
      ask: 'Which STI tap for the blind hole?',
      enter: 'choice',
      options: [
        { value: 'bottoming', words: 'Bottoming tap', more: 'threads almost to the bottom' },
        { value: 'plug', words: 'Second (US: plug) tap', more: 'longer lead, needs a deeper hole' },
      ],
    },
    {
      name: 'leastFloor',
      label: 'Least floor allowed',
      ask: 'How thin may the metal under the blind hole be?',
      enter: 'size',
    },
  ],
  choices: {},
  parts: [],
};
