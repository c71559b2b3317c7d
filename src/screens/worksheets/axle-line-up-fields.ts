import type { AxleLayoutName, AxleSide } from '../../engine/worksheets/axle-line-up/axle-layout.ts';
import { CENTRE_READ } from '../../engine/worksheets/axle-line-up/line-up-read.ts';
import { spacerName } from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { axleLayouts } from '../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import type { FieldPlan } from './worksheet-plan.ts';

/** The name of the size that holds the part on hand for a spacer. */
export const onHandField = (spacer: string): string => `onHand-${spacer}`;

export const layoutField: FieldPlan = {
  name: 'layout',
  label: 'What it is',
  ask: 'What sits on this axle?',
  enter: 'choice',
  options: [
    { value: 'front-one-disc', words: 'Front wheel, one disc', more: 'a bracket floats on its sleeve' },
    { value: 'front-two-discs', words: 'Front wheel, two discs', more: 'a floating bracket on each side' },
    { value: 'drum', words: 'Drum brake wheel', more: 'a brake plate between hub and leg' },
    {
      value: 'rear-sprocket',
      words: 'Rear wheel with sprocket',
      more: 'sprocket on one side, disc and bracket on the other',
    },
    { value: 'trailer-hub', words: 'Trailer hub', more: 'on a stub axle, from shoulder to nut' },
  ],
};

const SIDE_ASKS: Readonly<Record<AxleLayoutName, string>> = {
  'front-one-disc': 'Which side is the disc on, as you sit on it?',
  'front-two-discs': '',
  drum: 'Which side is the brake on, as you sit on it?',
  'rear-sprocket': 'Which side is the disc on, as you sit on it?',
  'trailer-hub': 'Which side of the trailer, seen from behind?',
};

export function sideField(layout: AxleLayoutName): FieldPlan {
  return {
    name: 'side',
    label: layout === 'trailer-hub' ? 'Side' : layout === 'drum' ? 'Brake side' : 'Disc side',
    ask: SIDE_ASKS[layout],
    enter: 'choice',
    options: [
      { value: 'right', words: 'Right' },
      { value: 'left', words: 'Left', more: 'worked out in a mirror; the drawing shows it as it is' },
    ],
  };
}

const size = (
  name: string,
  label: string,
  ask: string,
  more: Partial<Extract<FieldPlan, { enter: 'size' }>> = {},
): FieldPlan => ({ name, label, ask, enter: 'size', ...more });

/** Read on the machine, in place of the sum it checks. */
const read = (name: string, label: string, ask: string): FieldPlan =>
  size(name, label, ask, { measures: 'gap', direct: true });

const WHEEL: readonly FieldPlan[] = [
  size('width', 'Between the legs', 'How wide is it between the clamped legs?', {
    measures: 'gap',
  }),
  size('hub', 'Hub', 'How wide is the hub over its bearing faces?', { measures: 'length' }),
  size('centre', 'Wheel centre', 'Hub’s left face to the wheel’s centre?', {
    measures: 'depth',
  }),
  size('offset', 'Wanted offset', 'How far to the right? Left is below zero.', {
    signed: true,
  }),
  read(
    CENTRE_READ.either,
    'Two sides differ, read',
    'How much do the wheel’s two sides differ on the machine?',
  ),
  read(CENTRE_READ.left, 'Left side wider, read', 'By how much is the left side the wider one?'),
  read(CENTRE_READ.right, 'Right side wider, read', 'By how much is the right side the wider one?'),
];

/** Disc, slot, bracket and float; `side` and `Side` are empty where there is only one disc. */
function discFields(side: '' | AxleSide): readonly FieldPlan[] {
  const named = (name: string) => (side === '' ? name : side + name.charAt(0).toUpperCase() + name.slice(1));
  const label = (text: string) =>
    side === ''
      ? text
      : `${side === 'left' ? 'Left' : 'Right'} ${text.charAt(0).toLowerCase()}${text.slice(1)}`;
  const the = side === '' ? 'the' : `the ${side}`;
  return [
    size(named('disc'), label('Disc'), `Hub’s face to ${the} disc’s middle, outward?`, {
      measures: 'depth',
      signed: true,
    }),
    size(named('slot'), label('Slot in bracket'), `Inner face of ${the} bracket to its slot?`, {
      measures: 'depth',
      signed: true,
    }),
    size(named('bracket'), label('Bracket'), `How thick is ${the} bracket on its sleeve?`, {
      measures: 'length',
    }),
    size(named('float'), label('Float wanted'), `How much should ${the} bracket float?`),
    size(named('slotWidth'), label('Slot’s width'), `How wide is ${the} disc’s slot?`, {
      measures: 'gap',
    }),
    size(named('discThickness'), label('Disc’s thickness'), `How thick is ${the} disc?`, {
      measures: 'length',
    }),
    size(named('discRunout'), label('Disc’s runout'), `How far does ${the} disc swing from side to side?`, {
      measures: 'runout',
    }),
    read(named('floatRead'), label('Side play, read'), `How far does ${the} bracket move on the machine?`),
    read(
      named('discInsideRead'),
      label('Disc’s inner face, read'),
      `Bracket pushed out: gap at ${the} disc’s inner face?`,
    ),
    read(
      named('discOutsideRead'),
      label('Disc’s outer face, read'),
      `Bracket pushed in: gap at ${the} disc’s outer face?`,
    ),
  ];
}

const WEAR: readonly FieldPlan[] = [
  size('discClearance', 'Room beside the disc', 'How much must be left between disc and slot?'),
  {
    name: 'slides',
    label: 'What follows the pads',
    ask: 'What slides as the pads wear?',
    enter: 'choice',
    options: [
      { value: 'bracket', words: 'The bracket', more: 'its float has to be more than the pads can wear' },
      { value: 'caliper', words: 'The caliper or its pistons', more: 'the float is only freedom to turn' },
    ],
  },
  size('padWear', 'Pads’ whole wear', 'How much can the pads wear in all?'),
  size('wearMargin', 'Float beyond the wear', 'How much float beyond the pads’ wear?'),
  {
    name: 'anchor',
    label: 'What holds the bracket',
    ask: 'What keeps the bracket from turning when the brake is on?',
    enter: 'choice',
    options: [
      { value: 'arm', words: 'A torque arm to the frame or fork' },
      { value: 'lug', words: 'A lug or peg on the leg' },
      { value: 'none', words: 'Nothing yet', more: 'it must not go on the road like this' },
    ],
  },
];

const SPROCKET: readonly FieldPlan[] = [
  size('sprocket', 'Sprocket', 'Hub’s face to the sprocket’s middle, outward?', {
    measures: 'depth',
    signed: true,
  }),
  size('chainLine', 'Chain line', 'How far off the middle does the chain run?', {
    measures: 'length',
    signed: true,
  }),
  {
    name: 'first',
    label: 'Comes first',
    ask: 'If centre and sprocket line can’t both hold, which comes first?',
    enter: 'choice',
    options: [
      { value: 'wheel centre', words: 'The wheel on its centre' },
      { value: 'sprocket line', words: 'The sprocket in line with the chain' },
    ],
  },
  size('lineLimit', 'The other may be off', 'How far off may the other one be?'),
];

const PLATE = size('plate', 'Brake plate', 'Hub’s face to the brake plate’s outer face?', {
  measures: 'depth',
});

const TRAILER: readonly FieldPlan[] = [
  size('seat', 'Shoulder to nut', 'Shoulder to the nut’s face, cotter pin in?', {
    measures: 'depth',
  }),
  size('hub', 'Hub', 'How wide is the hub over its bearing faces?', { measures: 'length' }),
  size('mount', 'Wheel face on the hub', 'Hub’s inner end to the wheel’s face?', {
    measures: 'depth',
  }),
  size('wheelPlace', 'Wheel face wanted', 'Shoulder to the wheel’s face, as wanted?', {
    measures: 'length',
  }),
];

const SIZES: Readonly<Record<AxleLayoutName, readonly FieldPlan[]>> = {
  'front-one-disc': [...WHEEL, ...discFields(''), ...WEAR],
  'front-two-discs': [...WHEEL, ...discFields('left'), ...discFields('right'), ...WEAR],
  drum: [...WHEEL, PLATE],
  'rear-sprocket': [...WHEEL, ...discFields(''), ...SPROCKET, ...WEAR],
  'trailer-hub': TRAILER,
};

/** What a layout asks for: its sizes, what is on hand for each spacer, and how far a spacer may be off. */
export function axleFields(layout: AxleLayoutName, side: AxleSide): readonly FieldPlan[] {
  const plan = axleLayouts[layout];
  return [
    layoutField,
    ...(plan.hasSide ? [sideField(layout)] : []),
    ...SIZES[layout],
    ...plan.spacers.map((name) => {
      const spacer = spacerName(name, { layout: plan, side });
      return size(onHandField(name), spacer, `${spacer}: how long is the one you have?`, {
        measures: 'length',
      });
    }),
    size('spacerLimit', 'Float may be off', 'How far off may the float be?'),
    size(
      'openingLimit',
      'Filled room may be off',
      'How far may the parts be longer or shorter than their room?',
    ),
  ];
}
