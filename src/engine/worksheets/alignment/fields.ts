import { lengthOf } from '../../length/length.ts';
import type { ChoiceField, Fields, NumberField, SizeField, SlipOfField } from '../fields.ts';

// Common practice, no source: what is met on outfits and trailers, with room to spare.
const inches = (least: string, most: string): SlipOfField => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});
const ACROSS = inches('12', '120');
const ALONG = inches('12', '300');
const LIMIT = inches('0', '24');

const measured = (label: string, ask: string, slip: SlipOfField) =>
  ({ enter: 'size', label, ask, slip, measures: 'length' }) as const satisfies SizeField;
const limit = (label: string, ask: string, signed = false) =>
  ({ enter: 'size', label, ask, slip: LIMIT, ...(signed && { signed }) }) as const satisfies SizeField;
const angle = (label: string, ask: string, { least, most }: Pick<NumberField, 'least' | 'most'>) =>
  ({ enter: 'number', label, ask, unit: '°', least, most }) as const satisfies NumberField;

export const alignmentFields = {
  of: {
    enter: 'choice',
    label: 'Lined up',
    ask: 'What is lined up?',
    options: [
      { value: 'outfit', words: 'An outfit', more: 'sidecar on its machine' },
      { value: 'trailer', words: 'A trailer', more: 'axle square to its coupling' },
    ],
  },
  toeFront: measured('Between them, in front', 'Between the straight edges, in front?', ACROSS),
  toeRear: measured('Between them, behind', 'Between the straight edges, behind?', ACROSS),
  apart: measured('Between both places', 'From the front place to the rear one, along?', ALONG),
  fittings: measured('Lower fittings apart', 'Lower fittings: how far apart, front to rear?', ALONG),
  moves: {
    enter: 'choice',
    label: 'Moved at',
    ask: 'Which lower fitting is moved?',
    options: [
      { value: 'front', words: 'The front one' },
      { value: 'rear', words: 'The rear one' },
    ],
  },
  adjuster: {
    enter: 'choice',
    label: 'Moved by',
    ask: 'What moves it?',
    options: [
      { value: 'shim', words: 'Shims', more: 'or a slide in its clamp' },
      { value: 'screw', words: 'A screwed end', more: 'one thread' },
      { value: 'turnbuckle', words: 'A turnbuckle', more: 'right and left thread' },
    ],
  },
  thread: { enter: 'thread', label: 'Its thread', ask: 'Thread of the adjuster?' },
  toeLeast: limit('Least toe-in', 'How little toe-in? Below zero is toe-out.', true),
  toeMost: limit('Most toe-in', 'How much toe-in at most? Below zero is toe-out.', true),
  lead: measured('Wheel lead', 'Sidecar axle ahead of the rear axle?', inches('0', '30')),
  leadLeast: limit('Least lead', 'How little lead?'),
  leadMost: limit('Most lead', 'How much lead at most?'),
  lean: angle('Lean-out', 'Machine leans out by? Below zero: toward the sidecar.', { least: -15, most: 15 }),
  leanWithin: angle('Lean is known to', 'To plus or minus how much is the lean known?', {
    least: 0,
    most: 5,
  }),
  leanLeast: angle('Least lean-out', 'How little lean-out?', { least: -10, most: 10 }),
  leanMost: angle('Most lean-out', 'How much lean-out at most?', { least: -10, most: 10 }),
  strutUp: measured('Upper fitting up', 'Upper fitting above the lower ones?', inches('4', '40')),
  strutAcross: measured('Strut reaches', 'Upper strut: how far across does it reach?', inches('4', '60')),
  wheelTrack: measured('Track now', 'Rear wheel to sidecar wheel, across?', ACROSS),
  trackWanted: limit('Track wanted', 'Which track is wanted?'),
  left: measured('Left diagonal', 'Coupling to the left end of the axle?', ALONG),
  right: measured('Right diagonal', 'Coupling to the right end of the axle?', ALONG),
  track: measured('Axle, end to end', 'From end to end of the axle?', ACROSS),
  seats: measured('Spring seats apart', 'Spring seats: how far apart, across?', ACROSS),
  diagonalWithin: limit('Diagonals within', 'How far may the diagonals differ?'),
  sideLeft: measured('Frame to the left end', 'Frame to the left end of the axle?', inches('0', '60')),
  sideRight: measured('Frame to the right end', 'Frame to the right end of the axle?', inches('0', '60')),
  flange: measured('Flange bolts apart', 'Hub flange: bolts apart, front to rear?', inches('1', '20')),
  axlesLeft: measured('Axle to axle, left', 'Two axles: middle to middle, left?', ACROSS),
  axlesRight: measured('Axle to axle, right', 'Two axles: middle to middle, right?', ACROSS),
} as const satisfies Fields & { readonly moves: ChoiceField };

export type AlignmentFields = typeof alignmentFields;
