import { isMore, lengthOf, type Length } from '../../engine/length/length.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { SlipAround } from '../../engine/reading/size-slip.ts';
import type { SizeInput } from '../../store/records.ts';
import { exactSize, type WorksheetData } from './worksheet-data.ts';

type Usual = NonNullable<SlipAround['usual']>;

const inches = (least: string, most: string): Usual => ({
  least: lengthOf(`${least} in`),
  most: lengthOf(`${most} in`),
});

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const USUAL: Readonly<Record<FeatureKind, Usual>> = {
  bore: inches('.03', '8'),
  pin: inches('.03', '8'),
  length: inches('0', '14'),
  depth: inches('0', '8'),
  gap: inches('0', '20'),
  runout: inches('0', '.25'),
};
const LIMIT = inches('0', '.25');
const READ_IN_PLACE = inches('0', '2');
const LIMIT_NAMES: ReadonlySet<string> = new Set(['lower', 'upper', 'aim']);
const WALL = inches('.03', '4');
const LEAST_WALL = inches('.005', '2');
const TYRE = inches('4', '20');
const USUAL_OF: Readonly<Record<string, Usual>> = {
  'spacer-stack/fixed': inches('.1', '6'),
  'axle-line-up/width': inches('1', '20'),
  'axle-line-up/hub': inches('.5', '14'),
  'hole-and-pin/nominal': USUAL.pin,
  'hole-and-pin/boreLength': inches('.06', '20'),
  'hole-and-pin/reach': inches('.5', '100'),
  'hole-and-pin/bellMouth': inches('0', '.5'),
  'hole-and-pin/wall': WALL,
  'hole-and-pin/leastWall': LEAST_WALL,
  'hole-and-pin/thickness': inches('.03', '8'),
  'hole-and-pin/offBy': inches('0', '1'),
  'fit/nominal': USUAL.pin,
  'bushing/nominal': USUAL.pin,
  'bushing/wall': WALL,
  'bushing/thickWall': WALL,
  'bushing/length': inches('.06', '8'),
  'bushing/reamTo': USUAL.bore,
  'bushing/plating': inches('0', '.02'),
  'bushing/leastWall': LEAST_WALL,
  'bushing/leastBushingWall': LEAST_WALL,
  'thread-insert/wall': WALL,
  'thread-insert/centreToEdge': inches('.06', '8'),
  'thread-insert/leastWall': LEAST_WALL,
  'thread-insert/thickness': inches('.03', '8'),
  'thread-insert/leastFloor': inches('0', '2'),
  'ring/outLeast': LIMIT,
  'ring/outMost': LIMIT,
  'ring/inLeast': LIMIT,
  'ring/inMost': LIMIT,
  'ring/leastThickness': inches('.002', '1'),
  'ring/stayFree': inches('0', '2'),
  'ring/blankOutside': inches('.1', '14'),
  'ring/blankInside': inches('0', '8'),
  'ring/blankThickness': inches('.002', '2'),
  'thread-engagement/headWasher': inches('.01', '1'),
  'thread-engagement/nutWasher': inches('.01', '1'),
  'thread-engagement/nutHeight': inches('.04', '2'),
  'thread-engagement/boltLength': inches('.1', '14'),
  'steering-geometry/frontRadius': TYRE,
  'steering-geometry/rearRadius': TYRE,
  'steering-geometry/newFrontRadius': TYRE,
  'steering-geometry/newRearRadius': TYRE,
  'steering-geometry/wheelbase': inches('30', '120'),
  'steering-geometry/forkLength': inches('8', '60'),
  'steering-geometry/clampOffset': inches('0', '10'),
  'steering-geometry/newClampOffset': inches('0', '10'),
  'steering-geometry/axleLead': inches('0', '10'),
  'steering-geometry/newAxleLead': inches('0', '10'),
  'steering-geometry/forkLonger': inches('0', '20'),
  'steering-geometry/rearHigher': inches('0', '20'),
  'steering-geometry/lower': inches('0', '15'),
  'steering-geometry/upper': inches('0', '15'),
};
// Sizes of one round thing, where one of them stands beside the others.
const LIKE: Readonly<Record<string, readonly string[]>> = {
  bore: ['pin'],
  pin: ['bore'],
  nominal: ['pin', 'bore'],
  reamTo: ['bore'],
  reamed: ['reamTo', 'bore'],
  outside: ['reamed', 'reamTo', 'bore'],
};

/** What a size that is typed under this name can be held against. */
export function slipAround(data: WorksheetData, name: string, kind: FeatureKind | undefined): SlipAround {
  const { worksheet } = data;
  const near = (LIKE[name] ?? []).flatMap((like) => exactSize(data, worksheet.sizes[like]) ?? []);
  const isWhole = worksheet.kind === 'spacer-stack' && name === 'fixed';
  const isBetweenLegs = worksheet.kind === 'axle-line-up' && name !== 'width';
  return {
    near,
    ...(isWhole && { holds: largestPart(data) }),
    ...(isBetweenLegs && { goesInto: exactSize(data, worksheet.sizes['width']) }),
    usual: usualOf(worksheet.kind, name, kind),
  };
}

/** The same of a part of a stack: it goes into the sleeve. */
export function slipAroundPart(data: WorksheetData): SlipAround {
  return { goesInto: exactSize(data, data.worksheet.sizes['fixed']), usual: USUAL.length };
}

function usualOf(worksheet: string, name: string, kind: FeatureKind | undefined): Usual | undefined {
  const own = USUAL_OF[`${worksheet}/${name}`];
  if (own) return own;
  if (LIMIT_NAMES.has(name)) return LIMIT;
  if (/^direct|Read$/.test(name)) return READ_IN_PLACE;
  return kind && USUAL[kind];
}

function largestPart(data: WorksheetData): Length | undefined {
  const given = (size: SizeInput | undefined) => exactSize(data, size);
  return Object.values(data.worksheet.parts)
    .flatMap(({ size }) => given(size) ?? [])
    .reduce<Length | undefined>((most, size) => (most && !isMore(size, most) ? most : size), undefined);
}
