import { lengthOf } from '../../length/length.ts';
import {
  ansiClassField,
  ansiPressField,
  isoClassField,
  isoPressField,
  jointField,
  OWN_ZONES,
  systemField,
} from '../class-fields.ts';
import type { ChoiceField, Fields, NumberField, SizeField } from '../fields.ts';
import { inUseFields, metalField } from '../in-use.ts';
import { axisField } from '../worn-hole-fields.ts';

const inches = (least: string, most: string) => ({
  least: lengthOf(`${least} in`),
  most: lengthOf(`${most} in`),
});
// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const ROUND = inches('.03', '8');
const WALL = inches('.03', '4');
const LEAST_WALL = inches('.005', '2');

const COLD_CAUTION = 'Insulated gloves, eyes covered, open door: it burns, and drives out the air.';

const wall = (label: string, ask: string) =>
  ({ enter: 'size', label, ask, slip: { usual: WALL } }) as const satisfies SizeField;
const least = (label: string, ask: string) =>
  ({ enter: 'size', label, ask, slip: { usual: LEAST_WALL } }) as const satisfies SizeField;
const number = (field: Omit<NumberField, 'enter'>) =>
  ({ enter: 'number', ...field }) as const satisfies NumberField;

/** Inside the bushing something runs: a class from the list, never a pair put together. */
const inside = (field: ChoiceField) =>
  ({
    enter: 'choice',
    label: 'Class inside',
    ask: 'Which class runs inside the bushing?',
    options: field.options.filter(({ value }) => value !== OWN_ZONES),
  }) as const satisfies ChoiceField;

export const bushingFields = {
  bore: {
    enter: 'size',
    label: 'Worn bore',
    ask: 'How wide is the worn bore?',
    measures: 'bore',
    slip: { near: ['pin'], usual: ROUND },
  },
  pin: {
    enter: 'size',
    label: 'Pin',
    ask: 'How thick is the pin that runs in it?',
    measures: 'pin',
    slip: { near: ['bore'], usual: ROUND },
  },
  joint: jointField,
  wall: wall('Wall now', 'Thinnest wall, from the hole’s edge to the part’s edge?'),
  partMetal: metalField('Part', 'What is the part made of?'),
  bushingMetal: metalField('Bushing', 'What is the bushing made of?'),
  thickWall: wall('Thickest wall', 'Thickest wall, from the hole’s edge to the part’s edge?'),
  nominal: {
    enter: 'size',
    label: 'Nominal of the pin',
    ask: 'What is the nominal size of the pin?',
    slip: { near: ['pin', 'bore'], usual: ROUND },
  },
  length: {
    enter: 'size',
    label: 'Length',
    ask: 'How long is the bushing?',
    slip: { usual: inches('.06', '8') },
  },
  axis: axisField,
  reamTo: {
    enter: 'size',
    label: 'Ream to',
    ask: 'Which size do you ream or bore to?',
    slip: { near: ['bore'], usual: ROUND },
  },
  reamed: {
    enter: 'size',
    label: 'Bore when reamed',
    ask: 'How wide is the bore now that it is reamed?',
    measures: 'bore',
    slip: { near: ['reamTo', 'bore'], usual: ROUND },
  },
  outside: {
    enter: 'size',
    label: 'Bushing when turned',
    ask: 'What does the bushing’s outside measure now?',
    measures: 'pin',
    slip: { near: ['reamed', 'reamTo', 'bore'], usual: ROUND },
  },
  system: systemField,
  isoClass: inside(isoClassField),
  ansiClass: inside(ansiClassField),
  isoPress: isoPressField,
  ansiPress: ansiPressField,
  plating: {
    enter: 'size',
    label: 'Plating on it',
    ask: 'How thick is the plating that the bushing’s outside still gets?',
    slip: { usual: inches('0', '.02') },
  },
  finish: {
    enter: 'choice',
    label: 'Finish',
    ask: 'How are bore and bushing finished?',
    options: [
      { value: 'fine', words: 'Honed and ground', more: 'the surfaces bed in least' },
      { value: 'usual', words: 'Reamed and finely turned', more: 'as most are' },
      { value: 'coarse', words: 'Bored and turned', more: 'the surfaces bed in most' },
    ],
  },
  condition: {
    enter: 'choice',
    label: 'State of the part',
    ask: 'Is the part hardened or plated?',
    options: [
      { value: 'plain', words: 'Neither' },
      { value: 'hardened', words: 'Hardened', more: 'too much heat draws it soft' },
      { value: 'plated', words: 'Plated', more: 'zinc, cadmium, chrome: fumes' },
    ],
  },
  cold: {
    enter: 'choice',
    label: 'To cool with',
    ask: 'What can you cool the bushing with?',
    options: [
      { value: 'freezer', words: 'A freezer', more: '−18 °C, 0 °F' },
      { value: 'dry-ice', words: 'Dry ice', more: `−78 °C, −108 °F. ${COLD_CAUTION}` },
      { value: 'nitrogen', words: 'Liquid nitrogen', more: `−196 °C, −321 °F. ${COLD_CAUTION}` },
    ],
  },
  shopTemperature: number({
    label: 'Shop temperature',
    ask: 'How warm is the shop?',
    unit: '°C',
    least: -20,
    most: 50,
  }),
  ...inUseFields,
  pinMetal: metalField('Pin’s metal', 'What is the pin made of?'),
  leastWall: least('Least wall allowed', 'How thin may the wall round the finished hole be?'),
  leastBushingWall: least('Least bushing wall', 'How thin may the bushing’s wall be?'),
  partYield: number({
    label: 'Part’s yield strength',
    ask: 'What is the yield strength of the part, by its certificate?',
    unit: 'MPa',
    least: 1,
    most: 3000,
  }),
  bushingYield: number({
    label: 'Bushing’s yield strength',
    ask: 'What is the yield strength of the bushing, by its certificate?',
    unit: 'MPa',
    least: 1,
    most: 3000,
  }),
} as const satisfies Fields;

export type BushingFields = typeof bushingFields;
