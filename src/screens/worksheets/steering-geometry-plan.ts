import type { FieldPlan, WorksheetPlan } from './worksheet-plan.ts';

const now: readonly FieldPlan[] = [
  {
    name: 'rake',
    label: 'Rake now',
    ask: 'How far does the steering axis lean from the vertical?',
    enter: 'number',
    unit: 'degrees',
    least: 0,
    most: 59,
  },
  {
    name: 'frontRadius',
    label: 'Front axle’s height',
    ask: 'How high is the front axle above the ground, loaded as it is ridden?',
    enter: 'size',
    measures: 'length',
  },
  {
    name: 'clampOffset',
    label: 'Clamp offset',
    ask: 'How far is the fork’s centre ahead of the steering axis, square to it?',
    enter: 'size',
    measures: 'length',
  },
  {
    name: 'rearRadius',
    label: 'Rear axle’s height',
    ask: 'How high is the rear axle above the ground, loaded as it is ridden?',
    enter: 'size',
    measures: 'length',
  },
  {
    name: 'wheelbase',
    label: 'Wheelbase',
    ask: 'How far apart are the two axles, along the ground?',
    enter: 'size',
    measures: 'length',
  },
  {
    name: 'axleLead',
    label: 'Axle lead',
    ask: 'How far is the axle ahead of the fork’s leg? Below zero: behind it.',
    enter: 'size',
    signed: true,
  },
  {
    name: 'extraAngle',
    label: 'Clamps’ extra angle',
    ask: 'How much further than the steering axis does the fork lean?',
    enter: 'number',
    unit: 'degrees',
    least: -10,
    most: 15,
  },
  {
    name: 'forkLength',
    label: 'Fork length',
    ask: 'How long is the fork from the clamps to the axle?',
    enter: 'size',
    measures: 'length',
  },
  {
    name: 'rakeWithin',
    label: 'Rake is known to',
    ask: 'To plus or minus how much is the rake known?',
    enter: 'number',
    unit: 'degrees',
    least: 0,
    most: 5,
  },
];

const changes: readonly FieldPlan[] = [
  {
    name: 'forkLonger',
    label: 'Fork longer by',
    ask: 'How much longer is the fork than before? Below zero: shorter.',
    enter: 'size',
    signed: true,
  },
  {
    name: 'newFrontRadius',
    label: 'New front axle height',
    ask: 'How high does the new front tyre hold the axle?',
    enter: 'size',
  },
  {
    name: 'newRearRadius',
    label: 'New rear axle height',
    ask: 'How high does the new rear tyre hold the axle?',
    enter: 'size',
  },
  {
    name: 'rearHigher',
    label: 'Frame raised at the rear',
    ask: 'How much higher does the frame sit over the rear axle? Below zero: lower.',
    enter: 'size',
    signed: true,
  },
  {
    name: 'newClampOffset',
    label: 'New clamp offset',
    ask: 'How far ahead of the steering axis do the new clamps hold the fork?',
    enter: 'size',
  },
  {
    name: 'newExtraAngle',
    label: 'New extra angle',
    ask: 'How much further than the steering axis does the fork lean in the new clamps?',
    enter: 'number',
    unit: 'degrees',
    least: -10,
    most: 15,
  },
  {
    name: 'newAxleLead',
    label: 'New axle lead',
    ask: 'How far is the axle ahead of the new fork’s leg? Below zero: behind it.',
    enter: 'size',
    signed: true,
  },
];

export const NOW_NAMES = now.map(({ name }) => name);
export const CHANGE_FIELD_NAMES = changes.map(({ name }) => name);

export const steeringGeometryPlan: WorksheetPlan = {
  kind: 'steering-geometry',
  name: 'Steering geometry',
  asks: 'What do rake, trail and ride height become with another fork, wheel or tyre?',
  needs: ['rake', 'frontRadius', 'clampOffset', 'rearRadius', 'wheelbase'],
  fields: [
    ...now,
    ...changes,
    {
      name: 'lower',
      label: 'Least trail wanted',
      ask: 'How little trail may it have?',
      enter: 'size',
    },
    { name: 'upper', label: 'Most trail wanted', ask: 'How much trail may it have?', enter: 'size' },
  ],
  choices: {},
  parts: [],
};
