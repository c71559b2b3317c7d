import { materials } from '../../engine/material/tables/materials.ts';
import {
  ansiClassField,
  ansiPressField,
  isoClassField,
  isoPressField,
  OWN_ZONES,
  systemField,
} from './fit-fields.ts';
import { axisField, joint } from './hole-and-pin-plan.ts';
import type { FieldPlan, WorksheetPlan } from './worksheet-plan.ts';

const metals = materials.map(({ id, name }) => ({ value: id, words: name }));

const COLD_CAUTION = 'Insulated gloves, eyes covered, open door: it burns, and drives out the air.';

/** Inside the bushing something runs: a class from the list, never a pair put together. */
const insideClass = (field: FieldPlan): FieldPlan =>
  field.enter === 'choice'
    ? {
        ...field,
        label: 'Class inside',
        ask: 'Which class runs inside the bushing?',
        options: field.options.filter(({ value }) => value !== OWN_ZONES),
      }
    : field;

const sizes: readonly FieldPlan[] = [
  { name: 'bore', label: 'Worn bore', ask: 'How wide is the worn bore?', enter: 'size', measures: 'bore' },
  { name: 'pin', label: 'Pin', ask: 'How thick is the pin that runs in it?', enter: 'size', measures: 'pin' },
  {
    name: 'wall',
    label: 'Wall now',
    ask: 'How thick is the wall at its thinnest, from the hole’s edge to the part’s edge?',
    enter: 'size',
  },
  {
    name: 'thickWall',
    label: 'Thickest wall',
    ask: 'How thick is the wall at its thickest, from the hole’s edge to the part’s edge?',
    enter: 'size',
  },
  {
    name: 'nominal',
    label: 'Nominal of the pin',
    ask: 'What is the nominal size of the pin?',
    enter: 'size',
  },
  { name: 'length', label: 'Length', ask: 'How long is the bushing?', enter: 'size' },
  { name: 'reamTo', label: 'Ream to', ask: 'Which size do you ream or bore to?', enter: 'size' },
  {
    name: 'reamed',
    label: 'Bore when reamed',
    ask: 'How wide is the bore now that it is reamed?',
    enter: 'size',
    measures: 'bore',
  },
  {
    name: 'outside',
    label: 'Bushing when turned',
    ask: 'What does the bushing’s outside measure now?',
    enter: 'size',
    measures: 'pin',
  },
  {
    name: 'plating',
    label: 'Plating on it',
    ask: 'How thick is the plating that the bushing’s outside still gets?',
    enter: 'size',
  },
  {
    name: 'leastWall',
    label: 'Least wall allowed',
    ask: 'How thin may the wall round the finished hole be?',
    enter: 'size',
  },
  {
    name: 'leastBushingWall',
    label: 'Least bushing wall',
    ask: 'How thin may the bushing’s wall be?',
    enter: 'size',
  },
];

const how: readonly FieldPlan[] = [
  joint,
  axisField,
  systemField,
  insideClass(isoClassField),
  insideClass(ansiClassField),
  isoPressField,
  ansiPressField,
  { name: 'partMetal', label: 'Part', ask: 'What is the part made of?', enter: 'choice', options: metals },
  {
    name: 'bushingMetal',
    label: 'Bushing',
    ask: 'What is the bushing made of?',
    enter: 'choice',
    options: metals,
  },
  {
    name: 'pinMetal',
    label: 'Pin’s metal',
    ask: 'What is the pin made of?',
    enter: 'choice',
    options: metals,
  },
  {
    name: 'finish',
    label: 'Finish',
    ask: 'How are bore and bushing finished?',
    enter: 'choice',
    options: [
      { value: 'fine', words: 'Honed and ground', more: 'the surfaces bed in least' },
      { value: 'usual', words: 'Reamed and finely turned', more: 'as most are' },
      { value: 'coarse', words: 'Bored and turned', more: 'the surfaces bed in most' },
    ],
  },
  {
    name: 'condition',
    label: 'State of the part',
    ask: 'Is the part hardened or plated?',
    enter: 'choice',
    options: [
      { value: 'plain', words: 'Neither' },
      { value: 'hardened', words: 'Hardened', more: 'too much heat draws it soft' },
      { value: 'plated', words: 'Plated', more: 'zinc, cadmium, chrome: fumes' },
    ],
  },
  {
    name: 'cold',
    label: 'To cool with',
    ask: 'What can you cool the bushing with?',
    enter: 'choice',
    options: [
      { value: 'freezer', words: 'A freezer', more: '−18 °C, 0 °F' },
      { value: 'dry-ice', words: 'Dry ice', more: `−78 °C, −108 °F. ${COLD_CAUTION}` },
      { value: 'nitrogen', words: 'Liquid nitrogen', more: `−196 °C, −321 °F. ${COLD_CAUTION}` },
    ],
  },
  {
    name: 'shopTemperature',
    label: 'Shop temperature',
    ask: 'How warm is the shop?',
    enter: 'number',
    unit: '°C',
    least: -20,
    most: 50,
  },
  {
    name: 'hotTemperature',
    label: 'Hottest in use',
    ask: 'How hot does the joint get when it runs?',
    enter: 'number',
    unit: '°C',
    least: 0,
    most: 500,
  },
  {
    name: 'coldTemperature',
    label: 'Coldest in use',
    ask: 'How cold does the joint get, outside in winter say?',
    enter: 'number',
    unit: '°C',
    least: -60,
    most: 50,
  },
  {
    name: 'partYield',
    label: 'Part’s yield strength',
    ask: 'What is the yield strength of the part, by its certificate?',
    enter: 'number',
    unit: 'MPa',
    least: 1,
    most: 3000,
  },
  {
    name: 'bushingYield',
    label: 'Bushing’s yield strength',
    ask: 'What is the yield strength of the bushing, by its certificate?',
    enter: 'number',
    unit: 'MPa',
    least: 1,
    most: 3000,
  },
];

export const bushingPlan: WorksheetPlan = {
  kind: 'bushing',
  name: 'Bushing',
  asks: 'What do I ream, turn and bore, how hard does it press, and does it hold?',
  needs: ['bore', 'pin', 'joint', 'wall', 'partMetal', 'bushingMetal'],
  fields: [...sizes, ...how],
  // Neither how it runs nor a metal of what carries load is taken for granted: fit, heat, stress and hold hang on them.
  choices: {},
  parts: [],
};
