import { lengthOf } from '../../length/length.ts';
import type { ChoiceField, Fields, SizeField, SlipOfField } from '../fields.ts';
import type { Given } from '../given.ts';
import type { AxleLayoutName, AxleSide } from './axle-layout.ts';
import { CENTRE_READ } from './line-up-read.ts';
import { spacerName } from './say-line-up-names.ts';
import { axleLayouts } from './tables/axle-layouts.ts';

/** The name of the size that holds the part on hand for a spacer. */
export const onHandField = (spacer: string): string => `onHand-${spacer}`;

export function isAxleLayout(name: string | undefined): name is AxleLayoutName {
  return name !== undefined && Object.hasOwn(axleLayouts, name);
}

const inches = (least: string, most: string): SlipOfField => ({
  usual: { least: lengthOf(`${least} in`), most: lengthOf(`${most} in`) },
});

// Whatever lies between the legs is no longer than that.
const BETWEEN_LEGS: SlipOfField = { goesInto: 'width' };

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const SMALL = { ...inches('0', '.25'), ...BETWEEN_LEGS };
const OFFSET = { ...inches('0', '6'), ...BETWEEN_LEGS };
const WEAR = { ...inches('0', '1'), ...BETWEEN_LEGS };

const size = (label: string, ask: string, more: Partial<SizeField> = {}): SizeField => ({
  enter: 'size',
  label,
  ask,
  slip: BETWEEN_LEGS,
  ...more,
});

/** Read on the machine, in place of the sum it checks. */
const read = (label: string, ask: string): SizeField =>
  size(label, ask, { measures: 'gap', direct: true, slip: { ...inches('0', '2'), ...BETWEEN_LEGS } });

const hub = size('Hub', 'How wide is the hub over its bearing faces?', {
  measures: 'length',
  slip: { ...inches('.5', '14'), ...BETWEEN_LEGS },
});

const layout: ChoiceField = {
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

function sideField(of: AxleLayoutName): ChoiceField {
  return {
    label: of === 'trailer-hub' ? 'Side' : of === 'drum' ? 'Brake side' : 'Disc side',
    ask: SIDE_ASKS[of],
    enter: 'choice',
    options: [
      { value: 'right', words: 'Right' },
      { value: 'left', words: 'Left', more: 'worked out in a mirror; the drawing shows it as it is' },
    ],
  };
}

const wheel = {
  width: size('Between the legs', 'How wide is it between the clamped legs?', {
    measures: 'gap',
    slip: inches('1', '20'),
  }),
  hub,
  centre: size('Wheel centre', 'Hub’s left face to the wheel’s centre?', { measures: 'depth' }),
  offset: size('Wanted offset', 'How far to the right? Left is below zero.', {
    signed: true,
    slip: OFFSET,
  }),
  [CENTRE_READ.either]: read(
    'Two sides differ, read',
    'How much do the wheel’s two sides differ on the machine?',
  ),
  [CENTRE_READ.left]: read('Left side wider, read', 'By how much is the left side the wider one?'),
  [CENTRE_READ.right]: read('Right side wider, read', 'By how much is the right side the wider one?'),
};

/** Disc, slot, bracket and float of one side; `side` is empty where there is only one disc. */
function discFields(side: '' | AxleSide) {
  const label = (text: string) =>
    side === ''
      ? text
      : `${side === 'left' ? 'Left' : 'Right'} ${text.charAt(0).toLowerCase()}${text.slice(1)}`;
  const the = side === '' ? 'the' : `the ${side}`;
  const signed = { measures: 'depth', signed: true } as const;
  return {
    disc: size(label('Disc'), `Hub’s face to ${the} disc’s middle, outward?`, signed),
    slot: size(label('Slot in bracket'), `Inner face of ${the} bracket to its slot?`, signed),
    bracket: size(label('Bracket'), `How thick is ${the} bracket on its sleeve?`, { measures: 'length' }),
    float: size(label('Float wanted'), `How much should ${the} bracket float?`, { slip: SMALL }),
    slotWidth: size(label('Slot’s width'), `How wide is ${the} disc’s slot?`, { measures: 'gap' }),
    discThickness: size(label('Disc’s thickness'), `How thick is ${the} disc?`, { measures: 'length' }),
    discRunout: size(label('Disc’s runout'), `How far does ${the} disc swing from side to side?`, {
      measures: 'runout',
    }),
    floatRead: read(label('Side play, read'), `How far does ${the} bracket move on the machine?`),
    discInsideRead: read(
      label('Disc’s inner face, read'),
      `Bracket pushed out: gap at ${the} disc’s inner face?`,
    ),
    discOutsideRead: read(
      label('Disc’s outer face, read'),
      `Bracket pushed in: gap at ${the} disc’s outer face?`,
    ),
  };
}

const disc = discFields('');
const leftDisc = discFields('left');
const rightDisc = discFields('right');

const left = {
  leftDisc: leftDisc.disc,
  leftSlot: leftDisc.slot,
  leftBracket: leftDisc.bracket,
  leftFloat: leftDisc.float,
  leftSlotWidth: leftDisc.slotWidth,
  leftDiscThickness: leftDisc.discThickness,
  leftDiscRunout: leftDisc.discRunout,
  leftFloatRead: leftDisc.floatRead,
  leftDiscInsideRead: leftDisc.discInsideRead,
  leftDiscOutsideRead: leftDisc.discOutsideRead,
};

const right = {
  rightDisc: rightDisc.disc,
  rightSlot: rightDisc.slot,
  rightBracket: rightDisc.bracket,
  rightFloat: rightDisc.float,
  rightSlotWidth: rightDisc.slotWidth,
  rightDiscThickness: rightDisc.discThickness,
  rightDiscRunout: rightDisc.discRunout,
  rightFloatRead: rightDisc.floatRead,
  rightDiscInsideRead: rightDisc.discInsideRead,
  rightDiscOutsideRead: rightDisc.discOutsideRead,
};

const slides: ChoiceField = {
  label: 'What follows the pads',
  ask: 'What slides as the pads wear?',
  enter: 'choice',
  options: [
    { value: 'bracket', words: 'The bracket', more: 'its float has to be more than the pads can wear' },
    { value: 'caliper', words: 'The caliper or its pistons', more: 'the float is only freedom to turn' },
  ],
};

const anchor: ChoiceField = {
  label: 'What holds the bracket',
  ask: 'What keeps the bracket from turning when the brake is on?',
  enter: 'choice',
  options: [
    { value: 'arm', words: 'A torque arm to the frame or fork' },
    { value: 'lug', words: 'A lug or peg on the leg' },
    { value: 'none', words: 'Nothing yet', more: 'it must not go on the road like this' },
  ],
};

const wear = {
  discClearance: size('Room beside the disc', 'How much must be left between disc and slot?', {
    slip: SMALL,
  }),
  slides,
  padWear: size('Pads’ whole wear', 'How much can the pads wear in all?', { slip: WEAR }),
  wearMargin: size('Float beyond the wear', 'How much float beyond the pads’ wear?', { slip: SMALL }),
  anchor,
};

const first: ChoiceField = {
  label: 'Comes first',
  ask: 'If centre and sprocket line can’t both hold, which comes first?',
  enter: 'choice',
  options: [
    { value: 'wheel centre', words: 'The wheel on its centre' },
    { value: 'sprocket line', words: 'The sprocket in line with the chain' },
  ],
};

const sprocket = {
  sprocket: size('Sprocket', 'Hub’s face to the sprocket’s middle, outward?', {
    measures: 'depth',
    signed: true,
  }),
  chainLine: size('Chain line', 'How far off the middle does the chain run?', {
    measures: 'length',
    signed: true,
  }),
  first,
  lineLimit: size('The other may be off', 'How far off may the other one be?', { slip: SMALL }),
};

const plate = {
  plate: size('Brake plate', 'Hub’s face to the brake plate’s outer face?', { measures: 'depth' }),
};

const trailer = {
  seat: size('Shoulder to nut', 'Shoulder to the nut’s face, cotter pin in?', { measures: 'depth' }),
  hub,
  mount: size('Wheel face on the hub', 'Hub’s inner end to the wheel’s face?', { measures: 'depth' }),
  wheelPlace: size('Wheel face wanted', 'Shoulder to the wheel’s face, as wanted?', { measures: 'length' }),
};

/** Named by where it sits once layout and side are known. */
const onHand = (label: string): SizeField =>
  size(label, `${label}: how long is the one you have?`, { measures: 'length' });

const limits = {
  spacerLimit: size('Float may be off', 'How far off may the float be?', { slip: SMALL }),
  openingLimit: size(
    'Filled room may be off',
    'How far may the parts be longer or shorter than their room?',
    { slip: SMALL },
  ),
};

export const axleFields = {
  layout,
  side: sideField('front-one-disc'),
  ...wheel,
  ...disc,
  ...left,
  ...right,
  ...wear,
  ...sprocket,
  ...plate,
  ...trailer,
  'onHand-far': onHand('Spacer away from the disc'),
  'onHand-inner': onHand('Hub to bracket'),
  'onHand-outer': onHand('Bracket to leg'),
  'onHand-sleeve': onHand('Sleeve'),
  'onHand-leftOuter': onHand('Left outer spacer'),
  'onHand-leftInner': onHand('Left inner spacer'),
  'onHand-rightInner': onHand('Right inner spacer'),
  'onHand-rightOuter': onHand('Right outer spacer'),
  'onHand-leftSleeve': onHand('Left sleeve'),
  'onHand-rightSleeve': onHand('Right sleeve'),
  ...limits,
} as const satisfies Fields;

export type AxleFields = typeof axleFields;
export type AxleGiven = Given<AxleFields>;

const SIZES: Readonly<Record<AxleLayoutName, Fields>> = {
  'front-one-disc': { ...wheel, ...disc, ...wear },
  'front-two-discs': { ...wheel, ...left, ...right, ...wear },
  drum: { ...wheel, ...plate },
  'rear-sprocket': { ...wheel, ...disc, ...sprocket, ...wear },
  'trailer-hub': trailer,
};

/** What a layout asks for: its sizes, what is on hand for each spacer, and how far a spacer may be off. */
export function axleFieldsOf(name: AxleLayoutName, side: AxleSide): Fields {
  const plan = axleLayouts[name];
  const spacers = plan.spacers.map(
    (spacer) => [onHandField(spacer), onHand(spacerName(spacer, { layout: plan, side }))] as const,
  );
  return {
    layout,
    ...(plan.hasSide && { side: sideField(name) }),
    ...SIZES[name],
    ...Object.fromEntries(spacers),
    ...limits,
  };
}

type Chosen = Pick<AxleGiven, 'choice'>;

export function axleSideOf(given: Chosen): AxleSide {
  return given.choice('side') === 'left' ? 'left' : 'right';
}

/** What this axle is asked, once it is known what sits on it. */
export function axleFieldsFor(given: Chosen): Fields {
  const name = given.choice('layout');
  return isAxleLayout(name) ? axleFieldsOf(name, axleSideOf(given)) : { layout };
}

/** What it can't do without, once it is known what sits on it. */
export function axleNeeds(given: Chosen): readonly AxleFieldName[] {
  const name = given.choice('layout');
  if (!isAxleLayout(name)) return ['layout'];
  const { hasSide, needs } = axleLayouts[name];
  return ['layout', ...(hasSide ? (['side'] as const) : []), ...needs.filter(isAxleField)];
}

type AxleFieldName = keyof AxleFields;
export type AxleSizeName = Extract<Parameters<AxleGiven['size']>[0], string>;

function isAxleField(name: string): name is AxleFieldName {
  return Object.hasOwn(axleFields, name);
}

/** The layouts name their sizes as text: those that are fields of this worksheet. */
export function isAxleSize(name: string): name is AxleSizeName {
  return isAxleField(name) && axleFields[name].enter === 'size';
}

/** Every size by its name. */
export const axleSizeNames: readonly AxleSizeName[] = Object.keys(axleFields).filter(isAxleSize);
