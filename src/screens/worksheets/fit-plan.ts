import { ansiClassField, isoClassField, systemField, zoneFields } from './fit-fields.ts';
import { joint } from './hole-and-pin-plan.ts';
import type { WorksheetPlan } from './worksheet-plan.ts';

export const fitPlan: WorksheetPlan = {
  kind: 'fit',
  name: 'Fit',
  asks: 'What are the limits of a class at this size, do these two parts keep it, and what fits the one I have?',
  needs: ['nominal', 'joint'],
  fields: [
    {
      name: 'nominal',
      label: 'Nominal size',
      ask: 'What is the nominal size of hole and pin?',
      enter: 'size',
    },
    joint,
    systemField,
    isoClassField,
    ansiClassField,
    ...zoneFields,
    { name: 'bore', label: 'Bore', ask: 'How wide is the bore?', enter: 'size', measures: 'bore' },
    { name: 'pin', label: 'Pin', ask: 'How thick is the pin?', enter: 'size', measures: 'pin' },
    {
      name: 'slop',
      label: 'Clearance, read',
      ask: 'What does the indicator read at the bore, pushed and pulled?',
      enter: 'size',
      measures: 'gap',
      direct: true,
    },
  ],
  choices: {},
  parts: [],
};
