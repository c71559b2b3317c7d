import type { ChoiceField, Fields, SizeField } from '../fields.ts';
import { inUseFields, metalField } from '../in-use.ts';
import { lengthOf } from '../../length/length.ts';
import type { FeatureKind } from '../../reading/measuring-tool.ts';

// The sizes of ISO 492 that its seats are worked out for.
const RING = { least: lengthOf('2.5 mm'), most: lengthOf('250 mm') };

const bearing: ChoiceField = {
  enter: 'choice',
  label: 'Question',
  ask: 'What is asked about the bearings?',
  options: [
    { value: 'ball', words: 'Ball bearings: the sleeve between', more: 'its length against the distance' },
    { value: 'taper', words: 'Taper rollers: end play or preload', more: 'set by a nut or by a shim' },
    { value: 'seat', words: 'How it sits in its recess', more: 'what stands proud, and the shim for it' },
    {
      value: 'ring',
      words: 'Its shaft or housing',
      more: 'what to turn or bore, by what turns and its load',
    },
  ],
};

const mockUp: ChoiceField = {
  enter: 'choice',
  label: 'Mock-up bearing',
  ask: 'Is the bearing in it the real one?',
  options: [
    { value: 'no', words: 'The real one' },
    { value: 'yes', words: 'A mock-up', more: 'it has to come out before sign-off' },
  ],
};

const ring: ChoiceField = {
  enter: 'choice',
  label: 'Ring',
  ask: 'Which ring of the bearing?',
  options: [
    { value: 'inner', words: 'The inner ring', more: 'on its shaft or spindle' },
    { value: 'outer', words: 'The outer ring', more: 'in its hub or housing' },
  ],
};

const load: ChoiceField = {
  enter: 'choice',
  label: 'Load on it',
  ask: 'Does the load go round on this ring?',
  options: [
    { value: 'stands', words: 'It stands still', more: 'a wheel’s spindle; a driven shaft’s housing' },
    { value: 'light', words: 'It goes round, light', more: 'idlers, small pulleys' },
    { value: 'normal', words: 'It goes round, normal', more: 'a wheel’s hub; a driven shaft' },
    { value: 'heavy', words: 'It goes round, heavy', more: 'or with shock' },
  ],
};

const setBy: ChoiceField = {
  enter: 'choice',
  label: 'Set by',
  ask: 'What are the taper rollers set by?',
  options: [
    { value: 'nut', words: 'A nut', more: 'tightened till the play is right' },
    { value: 'shim-between', words: 'A shim between the cones', more: 'thinner takes play away' },
    {
      value: 'shim-behind',
      words: 'A shim behind a cup',
      more: 'thicker takes play away; a shim under a cover’s flange works the other way',
    },
  ],
};

const measured = (label: string, ask: string, measures: FeatureKind): SizeField => ({
  enter: 'size',
  label,
  ask,
  measures,
});

/** Read in place with a depth gauge, instead of a sum. */
const read = (label: string, ask: string): SizeField => ({
  enter: 'size',
  label,
  ask,
  measures: 'depth',
  direct: true,
  slip: { usual: { least: lengthOf('0 in'), most: lengthOf('2 in') } },
});

/** What it may come to; common practice, no source. */
const limit = (label: string, ask: string): SizeField => ({
  enter: 'size',
  label,
  ask,
  signed: true,
  slip: { usual: { least: lengthOf('0 in'), most: lengthOf('.25 in') } },
});

/** Every field of the three questions; `bearingFieldsFor` has those of one, under its own names. */
export const bearingFields = {
  bearing,
  between: measured(
    'Distance between',
    'How far apart are the bearing faces that the sleeve stands between?',
    'length',
  ),
  sleeve: measured('Sleeve there is', 'How long is the sleeve there is?', 'length'),
  direct: read('Longer by, read', 'How far does the sleeve stand proud of the shoulder, in the hub?'),
  setBy,
  endPlay: {
    ...measured(
      'End play now',
      'What does the indicator read, pushed and pulled? Preload is below zero.',
      'gap',
    ),
    signed: true,
  },
  depth: measured('Recess depth', 'How deep is the recess?', 'depth'),
  width: measured('Bearing width', 'How wide is the bearing?', 'length'),
  alsoIn: measured(
    'What else goes in',
    'How thick is what else goes in with it: shims, a seal, a ring?',
    'length',
  ),
  lower: limit('At least', 'What may it be at least?'),
  upper: limit('At most', 'What may it be at most?'),
  aim: limit('Aim', 'What would be best?'),
  thread: { enter: 'thread', label: 'Thread of the nut', ask: 'What thread is in the nut?' },
  shim: measured('Shim in it now', 'How thick is the shim in it now?', 'length'),
  directProud: read('Stands proud, read', 'How far does it stand proud of the face, home in its recess?'),
  directBelow: read('Lies below, read', 'How far does it lie below the face, home in its recess?'),
  ring,
  load,
  ringNominal: {
    enter: 'size',
    label: 'Bearing’s diameter there',
    ask: 'Diameter of the bearing there, as its data says',
    slip: { usual: RING, near: ['shaft', 'housing'] },
  },
  shaft: {
    ...measured('Shaft there is', 'How thick is the shaft where the ring goes?', 'pin'),
    slip: { usual: RING, near: ['ringNominal'] },
  },
  housing: {
    ...measured('Housing there is', 'How wide is the bore where the ring goes?', 'bore'),
    slip: { usual: RING, near: ['ringNominal'] },
  },
  ringBore: {
    ...measured('Ring’s own bore', 'What does the ring’s bore measure?', 'bore'),
    slip: { usual: RING, near: ['ringNominal'] },
  },
  ringOutside: {
    ...measured('Ring’s own outside', 'What does the ring’s outside measure?', 'pin'),
    slip: { usual: RING, near: ['ringNominal'] },
  },
  shaftMetal: metalField('Metal of the shaft', 'What is the shaft made of?'),
  hubMetal: metalField('Metal of the hub', 'What is the hub, or the part with the recess, made of?'),
  sleeveMetal: metalField('Metal of the sleeve', 'What is the sleeve between the bearings made of?'),
  ...inUseFields,
  mockUp,
} as const satisfies Fields;

export type BearingFields = typeof bearingFields;

type Name = keyof BearingFields;

/** The fields of the question that was chosen, its limits by what they limit; before that the question alone. */
export function bearingFieldsFor(given: {
  readonly choice: (name: 'bearing' | 'setBy' | 'ring') => string | undefined;
}): Fields {
  switch (given.choice('bearing')) {
    case 'ball':
      return {
        ...these('bearing', 'between', 'sleeve', 'direct'),
        ...limitsNamed('Longer by at least', 'Longer by at most'),
        ...these('hubMetal', 'sleeveMetal', 'hotTemperature', 'coldTemperature', 'mockUp'),
      };
    case 'taper':
      return {
        ...these('bearing', 'setBy', 'endPlay'),
        ...limitsNamed('Least end play by the maker', 'Most end play by the maker'),
        ...these(given.choice('setBy') === 'nut' ? 'thread' : 'shim', 'mockUp'),
      };
    case 'seat':
      return {
        ...these('bearing', 'depth', 'width', 'alsoIn'),
        ...limitsNamed('Least it may stand proud', 'Most it may stand proud'),
        ...these('directProud', 'directBelow', 'hubMetal', 'hotTemperature', 'coldTemperature', 'mockUp'),
      };
    case 'ring':
      return given.choice('ring') === 'outer'
        ? these('bearing', 'ring', 'load', 'ringNominal', 'housing', 'ringOutside', 'hubMetal', ...IN_USE)
        : these('bearing', 'ring', 'load', 'ringNominal', 'shaft', 'ringBore', 'shaftMetal', ...IN_USE);
    default:
      return these('bearing');
  }
}

const IN_USE = ['hotTemperature', 'coldTemperature'] as const;

/** What can't be done without, question by question. */
export function bearingNeeds(given: {
  readonly choice: (name: 'bearing') => string | undefined;
}): readonly Name[] {
  switch (given.choice('bearing')) {
    case 'ball':
      return ['bearing', 'between'];
    case 'taper':
      return ['bearing', 'setBy', 'endPlay', 'lower', 'upper'];
    case 'seat':
      return ['bearing', 'depth', 'width'];
    case 'ring':
      return ['bearing', 'ring', 'load', 'ringNominal'];
    default:
      return ['bearing'];
  }
}

function these(...names: readonly Name[]): Fields {
  return Object.fromEntries(names.map((name) => [name, bearingFields[name]]));
}

function limitsNamed(least: string, most: string): Fields {
  return {
    lower: limit(least, `${least}: what may it be?`),
    upper: limit(most, `${most}: what may it be?`),
    aim: bearingFields.aim,
  };
}
