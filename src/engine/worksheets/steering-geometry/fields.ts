import { lengthOf } from '../../length/length.ts';
import type { Fields, NumberField, SizeField, SlipOfField } from '../fields.ts';

const inches = (least: string, most: string): SlipOfField => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const TYRE = inches('4', '20');
const OFFSET = inches('0', '10');
const CHANGE = inches('0', '20');
const WANTED = inches('0', '15');

type Sized = Pick<SizeField, 'measures' | 'signed'>;

const size = (label: string, ask: string, slip: SlipOfField, more: Sized = {}) =>
  ({ enter: 'size', label, ask, slip, ...more }) as const satisfies SizeField;

const measured = (label: string, ask: string, slip: SlipOfField) =>
  size(label, ask, slip, { measures: 'length' });

const angle = (label: string, ask: string, { least, most }: Pick<NumberField, 'least' | 'most'>) =>
  ({ enter: 'number', label, ask, unit: 'degrees', least, most }) as const satisfies NumberField;

const EXTRA = { least: -10, most: 15 };

export const steeringFields = {
  rake: angle('Rake now', 'Rake: steering axis from the vertical', { least: 0, most: 59 }),
  frontRadius: measured('Front axle’s height', 'Front axle above the ground, loaded', TYRE),
  clampOffset: measured('Clamp offset', 'Fork’s centre ahead of the steering axis, square to it', OFFSET),
  rearRadius: measured('Rear axle’s height', 'Rear axle above the ground, loaded', TYRE),
  wheelbase: measured('Wheelbase', 'Wheelbase, axle to axle along the ground', inches('30', '120')),
  axleLead: size('Axle lead', 'Axle ahead of the fork’s leg. Below zero: behind it.', OFFSET, {
    signed: true,
  }),
  extraAngle: angle(
    'Clamps’ extra angle',
    'How much further than the steering axis does the fork lean?',
    EXTRA,
  ),
  forkLength: measured('Fork length', 'Fork from the clamps to the axle', inches('8', '60')),
  rakeWithin: angle('Rake is known to', 'To plus or minus how much is the rake known?', {
    least: 0,
    most: 5,
  }),
  forkLonger: size('Fork longer by', 'Fork longer than before by. Below zero: shorter.', CHANGE, {
    signed: true,
  }),
  newFrontRadius: size('New front axle height', 'Front axle’s height with the new tyre', TYRE),
  newRearRadius: size('New rear axle height', 'Rear axle’s height with the new tyre', TYRE),
  rearHigher: size(
    'Frame raised at the rear',
    'Frame higher over the rear axle by. Below zero: lower.',
    CHANGE,
    { signed: true },
  ),
  newClampOffset: size('New clamp offset', 'New clamps: fork’s centre ahead of the steering axis', OFFSET),
  newExtraAngle: angle(
    'New extra angle',
    'How much further than the steering axis does the fork lean in the new clamps?',
    EXTRA,
  ),
  newAxleLead: size('New axle lead', 'Axle ahead of the new fork’s leg. Below zero: behind it.', OFFSET, {
    signed: true,
  }),
  lower: size('Least trail wanted', 'How little trail may it have?', WANTED),
  upper: size('Most trail wanted', 'How much trail may it have?', WANTED),
} as const satisfies Fields;

export type SteeringFields = typeof steeringFields;
