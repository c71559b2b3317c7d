import type { WorksheetPlan } from './worksheet-plan.ts';

export const spacerStackPlan: WorksheetPlan = {
  kind: 'spacer-stack',
  name: 'Spacer stack',
  asks: 'Does it float, have end play or clamp, and what has to be trimmed or shimmed?',
  needs: ['fixed'],
  fields: [
    {
      name: 'fixed',
      label: 'Sleeve or opening',
      ask: 'How long is the sleeve, or how wide the opening?',
      enter: 'size',
      measures: 'length',
    },
    {
      name: 'direct',
      label: 'Gap read directly',
      ask: 'What does the feeler or indicator read in the assembled stack?',
      enter: 'size',
      measures: 'gap',
      direct: true,
    },
    {
      name: 'directProud',
      label: 'Proud, read directly',
      ask: 'How far do the parts stand proud of the face, by depth gauge?',
      enter: 'size',
      measures: 'depth',
      direct: true,
    },
    { name: 'lower', label: 'Least wanted', ask: 'What is the least it may be?', enter: 'size' },
    { name: 'upper', label: 'Most wanted', ask: 'What is the most it may be?', enter: 'size' },
    { name: 'aim', label: 'Aim', ask: 'What would be best?', enter: 'size' },
    {
      name: 'want',
      label: 'Wanted',
      ask: 'What should this stack do?',
      enter: 'choice',
      options: [
        { value: 'float', words: 'Float', more: 'a bracket that slides free on its sleeve' },
        { value: 'end-play', words: 'End play', more: 'something that turns between its faces' },
        { value: 'clamp', words: 'Clamp', more: 'the parts stand proud, so that the nut holds them' },
      ],
    },
  ],
  // Nothing is chosen for the fitter: what he did not say is assumed, and said to be.
  choices: {},
  parts: [],
};
