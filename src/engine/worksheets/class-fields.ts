import { ansiClasses } from '../fit/fits-ansi.ts';
import { holeLetters, isoGrades, shaftLetters } from '../fit/fits-iso.ts';
import type { FitSystem } from '../fit/fits.ts';
import { sayFitClass } from '../fit/say-fit.ts';
import type { ShownUnit } from '../length/show.ts';
import { usualIsoFits } from '../fit/tables/joint-classes.ts';
import type { ChoiceField } from './fields.ts';

/** How a joint runs, and the classes of fits: asked by every worksheet that has a hole and a pin. */
export const jointField = {
  enter: 'choice',
  label: 'How it runs',
  ask: 'How should this joint run?',
  options: [
    { value: 'located', words: 'Located, fixed by its nut', more: 'a bolt that does not turn in the hole' },
    { value: 'turns', words: 'Turns', more: 'a pivot that moves now and then' },
    { value: 'turns-under-load', words: 'Turns under load', more: 'a pivot that works while it carries' },
    { value: 'slides', words: 'Slides by hand', more: 'a pin pushed in and out' },
    { value: 'pressed', words: 'Pressed', more: 'goes in with force and stays' },
  ],
} as const satisfies ChoiceField;

export const systemField = {
  enter: 'choice',
  label: 'System',
  ask: 'Which system of fits?',
  options: [
    { value: 'ansi', words: 'Inch: ANSI B4.1', more: 'RC, LC, LT, LN, FN, in thousandths' },
    { value: 'iso', words: 'Metric: ISO 286', more: 'H7/g6 and its kin' },
  ],
} as const satisfies ChoiceField;

/** The choice that means: hole and pin zone picked one by one. */
export const OWN_ZONES = 'own';

const RUNS = 'Runs';
const LOCATES = 'Locates';
const PRESSES = 'Presses';

const ANSI_GROUPS: Readonly<Record<string, string>> = {
  RC: RUNS,
  LC: LOCATES,
  LT: LOCATES,
  LN: PRESSES,
  FN: PRESSES,
};

/** By the letter that speaks: the pin's on a basic hole, the hole's on a basic pin. */
function isoGroup(fitClass: string): string {
  const [hole = '', pin = ''] = fitClass.split('/').map((zone) => zone.replace(/\d+$/, '').toLowerCase());
  const letter = hole === 'h' ? pin : hole;
  if (letter <= 'g') return RUNS;
  return letter === 'h' || letter === 'js' || letter === 'k' || letter === 'm' ? LOCATES : PRESSES;
}

const isoOption = (fitClass: string) => ({
  value: fitClass,
  words: fitClass,
  group: isoGroup(fitClass),
  more: sayFitClass({ fitClass, system: 'iso', kind: 'clearance' }),
});

const ansiOption = (fitClass: string) => ({
  value: fitClass,
  words: fitClass,
  group: ANSI_GROUPS[fitClass.slice(0, 2)] ?? '',
  more: sayFitClass({ fitClass, system: 'ansi', kind: 'clearance' }),
});

export const isoClassField = {
  enter: 'choice',
  label: 'Class',
  ask: 'Which class of ISO 286?',
  options: [
    ...usualIsoFits.map(isoOption),
    {
      value: OWN_ZONES,
      words: 'Another pair',
      more: 'any hole C to S with any pin c to u',
      group: 'Another',
    },
  ],
} as const satisfies ChoiceField;

export const ansiClassField = {
  enter: 'choice',
  label: 'Class',
  ask: 'Which class of ANSI B4.1?',
  options: ansiClasses.map(ansiOption),
} as const satisfies ChoiceField;

// The classes that always or nearly always grip: what a bushing can be pressed in with.
const PRESSED_ISO = ['H7/n6', 'H7/p6', 'H7/r6', 'H7/s6', 'H7/t6', 'H7/u6'];
const PRESSED_ANSI = ansiClasses.filter((one) => one.startsWith('LN') || one.startsWith('FN'));

export const isoPressField = {
  enter: 'choice',
  label: 'Press class',
  ask: 'Which class is it pressed in with?',
  options: PRESSED_ISO.map(isoOption),
} as const satisfies ChoiceField;

export const ansiPressField = {
  enter: 'choice',
  label: 'Press class',
  ask: 'Which class is it pressed in with?',
  options: PRESSED_ANSI.map(ansiOption),
} as const satisfies ChoiceField;

const few = (values: readonly (string | number)[]) =>
  values.map((value) => ({ value: String(value), words: String(value) }));

const zone = (label: string, ask: string, values: readonly (string | number)[]) =>
  ({ enter: 'choice', label, ask, options: few(values) }) as const satisfies ChoiceField;

/** Hole and pin zone, letter and grade each, for a pair that isn't among the usual ones. */
export const zoneFields = {
  holeLetter: zone('Hole letter', 'What letter is the hole?', holeLetters),
  holeGrade: zone('Hole grade', 'What grade is the hole?', isoGrades),
  pinLetter: zone('Pin letter', 'What letter is the pin?', shaftLetters),
  pinGrade: zone('Pin grade', 'What grade is the pin?', isoGrades),
} as const;

/** The system chosen, else that of the unit the size was typed or read in: it doesn't change with the shown unit. */
export function systemOfSize<Name extends string>(
  given: {
    readonly choice: (name: 'system') => string | undefined;
    readonly enteredIn: (name: Name) => ShownUnit | undefined;
  },
  sizeName: Name,
): FitSystem {
  const chosen = given.choice('system');
  if (chosen === 'iso' || chosen === 'ansi') return chosen;
  return given.enteredIn(sizeName) === 'mm' ? 'iso' : 'ansi';
}
