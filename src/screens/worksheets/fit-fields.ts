import { ansiClasses } from '../../engine/fit/fits-ansi.ts';
import { holeLetters, isoGrades, shaftLetters } from '../../engine/fit/fits-iso.ts';
import { jointClass, type FitSystem } from '../../engine/fit/fits.ts';
import type { Joint } from '../../engine/fit/joint-limits.ts';
import { sayFitClass } from '../../engine/fit/say-fit.ts';
import { usualIsoFits } from '../../engine/fit/tables/joint-classes.ts';
import type { WorksheetData } from './worksheet-data.ts';
import type { FieldPlan } from './worksheet-plan.ts';

/** The choice that means: hole and pin zone picked one by one. */
export const OWN_ZONES = 'own';

const JOINTS: ReadonlySet<string> = new Set([
  'turns-under-load',
  'turns',
  'slides',
  'located',
  'pressed',
] satisfies Joint[]);

export function isJoint(value: string | undefined): value is Joint {
  return value !== undefined && JOINTS.has(value);
}

export const systemField: FieldPlan = {
  name: 'system',
  label: 'System',
  ask: 'Which system of fits?',
  enter: 'choice',
  options: [
    { value: 'ansi', words: 'Inch: ANSI B4.1', more: 'RC, LC, LT, LN, FN, in thousandths' },
    { value: 'iso', words: 'Metric: ISO 286', more: 'H7/g6 and its kin' },
  ],
};

const isoOption = (fitClass: string) => ({
  value: fitClass,
  words: fitClass,
  more: sayFitClass({ fitClass, system: 'iso', kind: 'clearance' }),
});

const ansiOption = (fitClass: string) => ({
  value: fitClass,
  words: fitClass,
  more: sayFitClass({ fitClass, system: 'ansi', kind: 'clearance' }),
});

export const isoClassField: FieldPlan = {
  name: 'isoClass',
  label: 'Class',
  ask: 'Which class of ISO 286?',
  enter: 'choice',
  options: [
    ...usualIsoFits.map(isoOption),
    { value: OWN_ZONES, words: 'Another pair', more: 'any hole C to S with any pin c to u' },
  ],
};

export const ansiClassField: FieldPlan = {
  name: 'ansiClass',
  label: 'Class',
  ask: 'Which class of ANSI B4.1?',
  enter: 'choice',
  options: ansiClasses.map(ansiOption),
};

// The classes that always or nearly always grip: what a bushing can be pressed in with.
const PRESSED_ISO = ['H7/n6', 'H7/p6', 'H7/r6', 'H7/s6', 'H7/t6', 'H7/u6'];
const PRESSED_ANSI = ansiClasses.filter((one) => one.startsWith('LN') || one.startsWith('FN'));

export const isoPressField: FieldPlan = {
  name: 'isoPress',
  label: 'Press class',
  ask: 'Which class is it pressed in with?',
  enter: 'choice',
  options: PRESSED_ISO.map(isoOption),
};

export const ansiPressField: FieldPlan = {
  name: 'ansiPress',
  label: 'Press class',
  ask: 'Which class is it pressed in with?',
  enter: 'choice',
  options: PRESSED_ANSI.map(ansiOption),
};

const few = (values: readonly (string | number)[]) =>
  values.map((value) => ({ value: String(value), words: String(value) }));

/** Hole and pin zone, letter and grade each, for a pair that isn't among the usual ones. */
export const zoneFields: readonly FieldPlan[] = [
  {
    name: 'holeLetter',
    label: 'Hole letter',
    ask: 'What letter is the hole?',
    enter: 'choice',
    options: few(holeLetters),
  },
  {
    name: 'holeGrade',
    label: 'Hole grade',
    ask: 'What grade is the hole?',
    enter: 'choice',
    options: few(isoGrades),
  },
  {
    name: 'pinLetter',
    label: 'Pin letter',
    ask: 'What letter is the pin?',
    enter: 'choice',
    options: few(shaftLetters),
  },
  {
    name: 'pinGrade',
    label: 'Pin grade',
    ask: 'What grade is the pin?',
    enter: 'choice',
    options: few(isoGrades),
  },
];

/** The system chosen, else that of the unit the size was typed or read in: it doesn't change with the shown unit. */
export function systemFor(data: WorksheetData, sizeName: string): FitSystem {
  const { choices, sizes } = data.worksheet;
  if (choices['system'] === 'iso' || choices['system'] === 'ansi') return choices['system'];
  const input = sizes[sizeName];
  if (input?.from === 'typed') return input.unit === 'mm' ? 'iso' : 'ansi';
  const reading = data.readings.find((one) => one.featureId === input?.featureId);
  return reading?.unit === 'mm' ? 'iso' : 'ansi';
}

/** The class picked, the pair put together, or the usual one for how the joint runs. */
export function fitClassFor(
  choices: WorksheetData['worksheet']['choices'],
  joint: Joint,
  system: FitSystem,
): string {
  const usual = jointClass(joint, system);
  if (system === 'ansi') return choices['ansiClass'] ?? usual;
  if (choices['isoClass'] !== OWN_ZONES) return choices['isoClass'] ?? usual;
  const [hole = '', pin = ''] = usual.split('/');
  const zone = (letter: string | undefined, grade: string | undefined, stands: string) =>
    `${letter ?? stands.replace(/\d+$/, '')}${grade ?? stands.replace(/^\D+/, '')}`;
  return `${zone(choices['holeLetter'], choices['holeGrade'], hole)}/${zone(choices['pinLetter'], choices['pinGrade'], pin)}`;
}
