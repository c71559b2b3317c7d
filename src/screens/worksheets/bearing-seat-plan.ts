import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { Worksheet } from '../../store/records.ts';
import type { FieldPlan, WorksheetPlan } from './worksheet-plan.ts';

const asked: FieldPlan = {
  name: 'bearing',
  label: 'Question',
  ask: 'What is asked about the bearings?',
  enter: 'choice',
  options: [
    { value: 'ball', words: 'Ball bearings: the sleeve between', more: 'its length against the distance' },
    { value: 'taper', words: 'Taper rollers: end play or preload', more: 'set by a nut or by a shim' },
    { value: 'seat', words: 'How it sits in its recess', more: 'what stands proud, and the shim for it' },
  ],
};

const mockUp: FieldPlan = {
  name: 'mockUp',
  label: 'Mock-up bearing',
  ask: 'Is the bearing in it the real one?',
  enter: 'choice',
  options: [
    { value: 'no', words: 'The real one' },
    { value: 'yes', words: 'A mock-up', more: 'it has to come out before sign-off' },
  ],
};

const setBy: FieldPlan = {
  name: 'setBy',
  label: 'Set by',
  ask: 'What are the taper rollers set by?',
  enter: 'choice',
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

function measured(name: string, label: string, ask: string, measures: FeatureKind): FieldPlan {
  return { name, label, ask, enter: 'size', measures };
}

/** Read in place with a depth gauge, instead of a sum. */
function read(name: string, label: string, ask: string): FieldPlan {
  return { name, label, ask, enter: 'size', measures: 'depth', direct: true };
}

function limits(least: string, most: string): readonly FieldPlan[] {
  return [
    { name: 'lower', label: least, ask: `${least}: what may it be?`, enter: 'size', signed: true },
    { name: 'upper', label: most, ask: `${most}: what may it be?`, enter: 'size', signed: true },
    { name: 'aim', label: 'Aim', ask: 'What would be best?', enter: 'size', signed: true },
  ];
}

const ballFields: readonly FieldPlan[] = [
  measured(
    'between',
    'Distance between',
    'How far apart are the bearing faces that the sleeve stands between?',
    'length',
  ),
  measured('sleeve', 'Sleeve there is', 'How long is the sleeve there is?', 'length'),
  read('direct', 'Longer by, read', 'How far does the sleeve stand proud of the shoulder, in the hub?'),
  ...limits('Longer by at least', 'Longer by at most'),
];

function taperFields(choices: Worksheet['choices']): readonly FieldPlan[] {
  return [
    setBy,
    {
      name: 'endPlay',
      label: 'End play now',
      ask: 'What does the indicator read, pushed and pulled? Preload is below zero.',
      enter: 'size',
      measures: 'gap',
      signed: true,
    },
    ...limits('Least end play by the maker', 'Most end play by the maker'),
    choices['setBy'] === 'nut'
      ? { name: 'thread', label: 'Thread of the nut', ask: 'What thread is in the nut?', enter: 'thread' }
      : measured('shim', 'Shim in it now', 'How thick is the shim in it now?', 'length'),
  ];
}

const seatFields: readonly FieldPlan[] = [
  measured('depth', 'Recess depth', 'How deep is the recess?', 'depth'),
  measured('width', 'Bearing width', 'How wide is the bearing?', 'length'),
  measured(
    'alsoIn',
    'What else goes in',
    'How thick is what else goes in with it: shims, a seal, a ring?',
    'length',
  ),
  ...limits('Least it may stand proud', 'Most it may stand proud'),
  read('directProud', 'Stands proud, read', 'How far does it stand proud of the face, home in its recess?'),
  read('directBelow', 'Lies below, read', 'How far does it lie below the face, home in its recess?'),
];

function forChoices(choices: Worksheet['choices']): Pick<WorksheetPlan, 'needs' | 'fields'> {
  switch (choices['bearing']) {
    case 'ball':
      return { needs: ['bearing', 'between'], fields: [asked, ...ballFields, mockUp] };
    case 'taper':
      return {
        needs: ['bearing', 'setBy', 'endPlay', 'lower', 'upper'],
        fields: [asked, ...taperFields(choices), mockUp],
      };
    case 'seat':
      return { needs: ['bearing', 'depth', 'width'], fields: [asked, ...seatFields, mockUp] };
    default:
      return { needs: ['bearing'], fields: [asked] };
  }
}

export const bearingSeatPlan: WorksheetPlan = {
  kind: 'bearing-seat',
  name: 'Bearing seat',
  asks: 'How long is the sleeve between the bearings, how are they set, and what stands proud?',
  ...forChoices({}),
  forChoices,
  choices: {},
  parts: [],
};
