import type { AxleLayout, AxleLayoutName, DiscInSlot, EndCondition, Giver } from '../axle-layout.ts';
import type { ChainPart, Condition, Datum, Place, Share } from '../chain.ts';

/**
 * The arrangements on an axle, with the disc, the drum or the outer face on the right.
 *
 * Sizes:   width: inside width between the legs as clamped · hub: over its bearing faces · centre: wheel centre from the
 *          hub's left face · offset: wanted wheel centre from the middle between the legs, + right · disc: mid-plane
 *          from the hub's face on its side, + outward · bracket: its thickness · slot: its mid-plane from the bracket's
 *          inner face, + outward · float: wanted side play of the bracket · plate: how far a brake plate's outer face
 *          stands out from the hub's bearing face · sprocket: mid-plane from the hub's face on its side, + outward ·
 *          chainLine: wanted from the middle between the legs, + toward the sprocket's side · seat: from the spindle's
 *          shoulder to the nut's inner face · mount: the hub's wheel-mounting face from its inner bearing face, + outward ·
 *          wheelPlace: where that face has to come, from the shoulder, + outward.
 * Source:  geometry of the parts; which size may give is common practice, no source.
 */

const whole = (of: string): Share => ({ of, top: 1, bottom: 1 });
const half = (of: string): Share => ({ of, top: 1, bottom: 2 });
const less = (of: string): Share => ({ of, top: -1, bottom: 1 });
const lessHalf = (of: string): Share => ({ of, top: -1, bottom: 2 });

const part = (name: string, length: Share = whole(name)): ChainPart => ({ name, length: [length] });
const left = (name: string): Place => ({ part: name, face: 'left' });
const right = (name: string): Place => ({ part: name, face: 'right' });
const at = (datum: string): Place => ({ datum });

const wheelCentre: Datum = { name: 'wheel centre', from: left('hub'), at: [whole('centre')] };

const fills = (first: string, last: string, is: string): Condition => ({
  name: 'fills',
  from: left(first),
  to: right(last),
  is: [whole(is)],
});

const centred = (first: string): Condition => ({
  name: 'wheel centre',
  from: left(first),
  to: at('wheel centre'),
  is: [half('width'), whole('offset')],
});

/** The disc in the middle of its slot, the bracket in the middle of its float. */
const discMiddle: readonly Datum[] = [
  { name: 'disc', from: right('hub'), at: [whole('disc')] },
  { name: 'slot', from: left('bracket'), at: [whole('slot')] },
];
const discInSlot: Condition = { name: 'disc in slot', from: at('slot'), to: at('disc'), is: [] };
const sleeve: Condition = { name: 'sleeve', from: right('hub'), to: right('outer'), is: [whole('sleeve')] };

/** Hub to bracket, bracket in mid-float, bracket to leg. */
const bracketOnSleeve: readonly ChainPart[] = [
  part('inner'),
  part('float inside', half('float')),
  part('bracket'),
  part('float outside', half('float')),
  part('outer'),
];

const centreMirror = { centre: [whole('hub'), less('centre')], offset: [less('offset')] };

const bracketGivers: readonly Giver[] = [
  { of: 'disc', may: 'both' },
  { of: 'slot', may: 'both' },
  { of: 'bracket', may: 'shrink' },
  { of: 'float', may: 'shrink' },
  { of: 'offset', may: 'both' },
  { of: 'hub', may: 'shrink' },
];

const oneDisc: DiscInSlot = {
  name: 'disc in slot',
  float: 'float',
  slotWidth: 'slotWidth',
  discThickness: 'discThickness',
  discRunout: 'discRunout',
};

/** What the parts leave of the room they fill. */
const opening = (room: string, ...filling: readonly string[]): EndCondition => ({
  kind: 'opening',
  name: 'fills',
  is: [whole(room), ...filling.map(less)],
});

const centreOf = (leftSpacer: string): EndCondition => ({
  kind: 'wheel-place',
  name: 'wheel centre',
  is: [whole(leftSpacer), whole('centre'), lessHalf('width'), less('offset')],
});

type OnSleeve = Readonly<
  Record<'name' | 'sleeve' | 'inner' | 'outer' | 'bracket' | 'disc' | 'slot', string>
> &
  Omit<DiscInSlot, 'float'>;

/** What has to hold of one bracket on its sleeve, whichever side it is on: outward is away from the hub. */
function bracketEnds(q: OnSleeve): readonly EndCondition[] {
  const { name } = q;
  const play = [whole(q.sleeve), less(q.inner), less(q.bracket), less(q.outer)];
  const spare = [half(q.slotWidth), lessHalf(q.discThickness), less(q.discRunout)];
  return [
    { kind: 'float', name, is: play },
    {
      kind: 'slot-middle',
      name,
      is: [
        half(q.inner),
        half(q.sleeve),
        lessHalf(q.bracket),
        lessHalf(q.outer),
        whole(q.slot),
        less(q.disc),
      ],
    },
    // Pushed out, the bracket lies against the outer spacer; pushed in, against the inner one.
    {
      kind: 'disc-inside',
      name,
      is: [whole(q.disc), less(q.slot), less(q.sleeve), whole(q.bracket), whole(q.outer), ...spare],
    },
    { kind: 'disc-outside', name, is: [whole(q.inner), whole(q.slot), less(q.disc), ...spare] },
    { kind: 'pad-wear', name, is: [...play, less('padWear')] },
  ];
}

const oneDiscEnds: readonly EndCondition[] = [
  opening('width', 'far', 'hub', 'sleeve'),
  centreOf('far'),
  ...bracketEnds({
    ...oneDisc,
    sleeve: 'sleeve',
    inner: 'inner',
    outer: 'outer',
    bracket: 'bracket',
    disc: 'disc',
    slot: 'slot',
  }),
];

const frontOneDisc: AxleLayout = {
  name: 'front-one-disc',
  hasSide: true,
  needs: ['width', 'hub', 'centre', 'disc', 'slot', 'bracket', 'float'],
  usual: { offset: 'nothing' },
  parts: [part('far'), part('hub'), ...bracketOnSleeve],
  datums: [wheelCentre, ...discMiddle],
  conditions: [fills('far', 'outer', 'width'), centred('far'), discInSlot, sleeve],
  spacers: ['far', 'inner', 'outer', 'sleeve'],
  workOrder: ['far', 'sleeve', 'inner', 'outer'],
  last: ['outer'],
  ends: oneDiscEnds,
  givers: bracketGivers,
  mirror: centreMirror,
  discs: [oneDisc],
};

const discOn = (side: 'left' | 'right'): DiscInSlot => ({
  name: `${side} disc in slot`,
  float: `${side}Float`,
  slotWidth: `${side}SlotWidth`,
  discThickness: `${side}DiscThickness`,
  discRunout: `${side}DiscRunout`,
});

const bracketEndsOn = (side: 'left' | 'right'): readonly EndCondition[] =>
  bracketEnds({
    ...discOn(side),
    sleeve: `${side}Sleeve`,
    inner: `${side}Inner`,
    outer: `${side}Outer`,
    bracket: `${side}Bracket`,
    disc: `${side}Disc`,
    slot: `${side}Slot`,
  });

/** Seen from the middle, each side is alike: on the left, outward is to the left. */
const frontTwoDiscs: AxleLayout = {
  name: 'front-two-discs',
  hasSide: false,
  needs: ['width', 'hub', 'centre', 'leftDisc', 'rightDisc', 'leftSlot', 'leftBracket', 'leftFloat'],
  usual: {
    offset: 'nothing',
    rightSlot: { as: 'leftSlot' },
    rightBracket: { as: 'leftBracket' },
    rightFloat: { as: 'leftFloat' },
  },
  parts: [
    part('leftOuter'),
    part('left float outside', half('leftFloat')),
    part('leftBracket'),
    part('left float inside', half('leftFloat')),
    part('leftInner'),
    part('hub'),
    part('rightInner'),
    part('right float inside', half('rightFloat')),
    part('rightBracket'),
    part('right float outside', half('rightFloat')),
    part('rightOuter'),
  ],
  datums: [
    wheelCentre,
    { name: 'left disc', from: left('hub'), at: [less('leftDisc')] },
    { name: 'left slot', from: right('leftBracket'), at: [less('leftSlot')] },
    { name: 'right disc', from: right('hub'), at: [whole('rightDisc')] },
    { name: 'right slot', from: left('rightBracket'), at: [whole('rightSlot')] },
  ],
  conditions: [
    fills('leftOuter', 'rightOuter', 'width'),
    centred('leftOuter'),
    { name: 'left disc in slot', from: at('left slot'), to: at('left disc'), is: [] },
    { name: 'right disc in slot', from: at('right slot'), to: at('right disc'), is: [] },
    { name: 'left sleeve', from: left('leftOuter'), to: left('hub'), is: [whole('leftSleeve')] },
    { name: 'right sleeve', from: right('hub'), to: right('rightOuter'), is: [whole('rightSleeve')] },
  ],
  spacers: ['leftOuter', 'leftInner', 'leftSleeve', 'rightInner', 'rightOuter', 'rightSleeve'],
  workOrder: ['leftSleeve', 'rightSleeve', 'leftInner', 'rightInner', 'leftOuter', 'rightOuter'],
  last: ['leftOuter', 'rightOuter'],
  ends: [
    opening('width', 'leftSleeve', 'hub', 'rightSleeve'),
    centreOf('leftSleeve'),
    ...bracketEndsOn('left'),
    ...bracketEndsOn('right'),
  ],
  givers: [
    { of: 'leftDisc', may: 'both' },
    { of: 'rightDisc', may: 'both' },
    { of: 'leftSlot', may: 'both' },
    { of: 'rightSlot', may: 'both' },
    { of: 'leftBracket', may: 'shrink' },
    { of: 'rightBracket', may: 'shrink' },
    { of: 'leftFloat', may: 'shrink' },
    { of: 'rightFloat', may: 'shrink' },
    { of: 'offset', may: 'both' },
    { of: 'hub', may: 'shrink' },
  ],
  mirror: {},
  discs: [discOn('left'), discOn('right')],
};

const drum: AxleLayout = {
  name: 'drum',
  hasSide: true,
  needs: ['width', 'hub', 'centre', 'plate'],
  usual: { offset: 'nothing' },
  parts: [part('far'), part('hub'), part('plate'), part('outer')],
  datums: [wheelCentre],
  conditions: [fills('far', 'outer', 'width'), centred('far')],
  spacers: ['far', 'outer'],
  workOrder: ['far', 'outer'],
  last: ['outer'],
  ends: [opening('width', 'far', 'hub', 'plate', 'outer'), centreOf('far')],
  givers: [
    { of: 'offset', may: 'both' },
    { of: 'plate', may: 'shrink' },
    { of: 'hub', may: 'shrink' },
  ],
  mirror: centreMirror,
  discs: [],
};

/** The sprocket is on the side away from the disc. Wheel centre and sprocket line are both wanted: rivals. */
const rearSprocket: AxleLayout = {
  ...frontOneDisc,
  name: 'rear-sprocket',
  needs: [...frontOneDisc.needs, 'sprocket', 'chainLine'],
  datums: [...frontOneDisc.datums, { name: 'sprocket', from: left('hub'), at: [less('sprocket')] }],
  conditions: [
    fills('far', 'outer', 'width'),
    centred('far'),
    {
      name: 'sprocket line',
      from: left('far'),
      to: at('sprocket'),
      is: [half('width'), less('chainLine')],
    },
    discInSlot,
    sleeve,
  ],
  ends: [
    ...oneDiscEnds,
    {
      kind: 'wheel-place',
      name: 'sprocket line',
      is: [whole('far'), less('sprocket'), lessHalf('width'), whole('chainLine')],
    },
  ],
  givers: [{ of: 'sprocket', may: 'both' }, { of: 'chainLine', may: 'both' }, ...bracketGivers],
  rivals: {
    conditions: ['wheel centre', 'sprocket line'],
    givers: [
      { of: 'sprocket', may: 'both' },
      { of: 'chainLine', may: 'both' },
      { of: 'offset', may: 'both' },
    ],
  },
};

/** On a stub axle: from the shoulder on the left to the nut on the right. */
const trailerHub: AxleLayout = {
  name: 'trailer-hub',
  hasSide: true,
  needs: ['seat', 'hub', 'mount', 'wheelPlace'],
  usual: {},
  parts: [part('far'), part('hub'), part('outer')],
  datums: [{ name: 'wheel face', from: left('hub'), at: [whole('mount')] }],
  conditions: [
    fills('far', 'outer', 'seat'),
    { name: 'wheel face', from: left('far'), to: at('wheel face'), is: [whole('wheelPlace')] },
  ],
  spacers: ['far', 'outer'],
  workOrder: ['far', 'outer'],
  last: ['outer'],
  ends: [
    opening('seat', 'far', 'hub', 'outer'),
    { kind: 'wheel-place', name: 'wheel face', is: [whole('far'), whole('mount'), less('wheelPlace')] },
  ],
  givers: [
    { of: 'wheelPlace', may: 'both' },
    { of: 'hub', may: 'shrink' },
    { of: 'seat', may: 'grow' },
  ],
  // Every size is measured from the shoulder outward, so that the other side is the same seen in a mirror.
  mirror: {},
  discs: [],
};

export const axleLayouts: Readonly<Record<AxleLayoutName, AxleLayout>> = {
  'front-one-disc': frontOneDisc,
  'front-two-discs': frontTwoDiscs,
  drum,
  'rear-sprocket': rearSprocket,
  'trailer-hub': trailerHub,
};
