import { lengthOf, type Length } from '../../length/length.ts';
import type { Fields } from '../fields.ts';
import { inUseFields, metalField } from '../in-use.ts';

type Range = { readonly least: Length; readonly most: Length };

const inches = (least: string, most: string): Range => ({
  least: lengthOf(`${least} in`),
  most: lengthOf(`${most} in`),
});

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const SLEEVE = inches('.1', '6');
const PART = inches('0', '14');
const LIMIT = inches('0', '.25');
const READ_IN_PLACE = inches('0', '2');

export const spacerStackFields = {
  fixed: {
    enter: 'size',
    label: 'Sleeve or opening',
    ask: 'Sleeve, or opening between the faces',
    measures: 'length',
    slip: { usual: SLEEVE, holdsParts: true },
  },
  parts: {
    enter: 'parts',
    label: 'Parts',
    ask: 'Next part',
    measures: 'length',
    names: ['spacer', 'washer', 'shim', 'bracket', 'bearing'],
    slip: { usual: PART, goesInto: 'fixed' },
  },
  mayCut: {
    enter: 'choice',
    label: 'May be cut',
    ask: 'Which part may be cut?',
    options: [{ value: 'none', words: 'None of them', more: 'shims, or a part made new' }],
  },
  want: {
    enter: 'choice',
    label: 'Wanted',
    ask: 'What should this stack do?',
    options: [
      { value: 'float', words: 'Float', more: 'a bracket that slides free on its sleeve' },
      { value: 'end-play', words: 'End play', more: 'something that turns between its faces' },
      { value: 'clamp', words: 'Clamp', more: 'the parts stand proud, so that the nut holds them' },
    ],
  },
  direct: {
    enter: 'size',
    label: 'Gap read directly',
    ask: 'Feeler or indicator in the assembled stack',
    measures: 'gap',
    direct: true,
    slip: { usual: READ_IN_PLACE },
  },
  directProud: {
    enter: 'size',
    label: 'Proud, read directly',
    ask: 'How far do the parts stand proud of the face, by depth gauge?',
    measures: 'depth',
    direct: true,
    slip: { usual: READ_IN_PLACE },
  },
  lower: {
    enter: 'size',
    label: 'Least wanted',
    ask: 'What is the least it may be?',
    slip: { usual: LIMIT },
  },
  upper: { enter: 'size', label: 'Most wanted', ask: 'What is the most it may be?', slip: { usual: LIMIT } },
  aim: { enter: 'size', label: 'Aim', ask: 'What would be best?', slip: { usual: LIMIT } },
  fixedName: {
    enter: 'choice',
    label: 'They go into',
    ask: 'What do the parts go into?',
    options: [
      { value: 'sleeve', words: 'A sleeve', more: 'its length between the faces it holds apart' },
      { value: 'opening', words: 'An opening', more: 'between two faces' },
    ],
  },
  fixedMetal: metalField('Metal they go into', 'What is the sleeve, or what makes the opening, made of?'),
  partsMetal: metalField('Metal of the parts', 'What are the parts made of?'),
  ...inUseFields,
} as const satisfies Fields;

export type SpacerStackFields = typeof spacerStackFields;
