import { finest } from '../../length/finest.ts';
import { isZero, zero, type Length } from '../../length/length.ts';
import { typedEstimate, type Estimate } from '../../reading/estimate.ts';
import type { Fields } from '../fields.ts';
import type { Given } from '../given.ts';
import { adapterPlateFields, MOST_POINTS, POINTS, type AdapterPlateFields } from './fields.ts';
import type { HolesKnown } from './pattern.ts';
import type { Head, Outline, PatternAsked, PlateQuestion, Zero } from './plate-question.ts';
import { usualWithin } from './tables/least-webs.ts';

export type PlateGiven = Given<AdapterPlateFields>;
type Name = keyof AdapterPlateFields;
export type Prefix = 'a' | 'b';
type By = HolesKnown['by'] | 'none';

const WAYS: readonly By[] = ['circle', 'pair', 'three', 'points', 'none'];

/** How a pattern is known: by its circle until it is said otherwise, so that its fields are there. */
export function knownBy(given: PlateGiven, prefix: Prefix): By {
  const chosen = given.choice(`${prefix}By`);
  return WAYS.find((way) => way === chosen) ?? 'circle';
}

export function countOf(given: PlateGiven, prefix: Prefix): number {
  return given.number(`${prefix}Count`) ?? 0;
}

/** What it takes to know where a pattern's holes are, and how wide they are. */
function needsOf(given: PlateGiven, prefix: Prefix): readonly Name[] {
  const plug: readonly Name[] = given.choice(`${prefix}Pinned`) === 'no' ? [] : [`${prefix}Plug`];
  const hole: Name = `${prefix}Hole`;
  switch (knownBy(given, prefix)) {
    case 'none':
      return [];
    case 'circle':
      return [`${prefix}Count`, `${prefix}Circle`, hole];
    case 'pair':
      return [`${prefix}Count`, ...plug, `${prefix}Over`, hole];
    case 'three':
      return [`${prefix}Count`, ...plug, `${prefix}12`, `${prefix}23`, `${prefix}13`, hole];
    case 'points':
      return [`${prefix}Count`, ...pointNames(given, prefix), hole];
    default:
      return [];
  }
}

function pointNames(given: PlateGiven, prefix: Prefix): readonly Name[] {
  return POINTS.slice(0, Math.min(MOST_POINTS, countOf(given, prefix))).flatMap((hole): Name[] => [
    `${prefix}${hole}x`,
    `${prefix}${hole}y`,
  ]);
}

/** Asked one after the other: one pattern, the other, then the plate they go in. */
export function adapterPlateNeeds(given: PlateGiven): readonly Name[] {
  const edges = { round: ['round'], rectangle: ['wide', 'high'], none: [] } as const;
  return ['aBy', ...needsOf(given, 'a'), 'bBy', ...needsOf(given, 'b'), ...edges[outlineChosen(given)]];
}

const BESIDE_THREE = ['14', '34'] as const;
const BESIDE_OUTLINE: Readonly<Record<Outline['is'], readonly Name[]>> = {
  none: [],
  round: ['round'],
  rectangle: ['wide', 'high', 'fromLeft', 'fromBelow'],
};

/** What is listed: what goes with how each pattern is known, and with the plate's shape. */
export function adapterPlateFieldsFor(given: PlateGiven): Fields {
  const here = new Set<string>([
    ...listedOf(given, 'a'),
    ...listedOf(given, 'b'),
    ...(knownBy(given, 'b') === 'none' ? [] : ['turn', 'shiftX', 'shiftY']),
    'outline',
    ...BESIDE_OUTLINE[outlineChosen(given)],
    'bore',
    'thick',
    'zero',
    'within',
    'leastWeb',
    'leastEdge',
  ]);
  return Object.fromEntries(Object.entries(adapterPlateFields).filter(([name]) => here.has(name)));
}

function listedOf(given: PlateGiven, prefix: Prefix): readonly Name[] {
  const by = knownBy(given, prefix);
  const way: Name = `${prefix}By`;
  if (by === 'none') return [way];
  const isOnCircle = by !== 'points';
  const isRead = by === 'pair' || by === 'three';
  return [
    way,
    ...needsOf(given, prefix),
    ...(by === 'three' ? BESIDE_THREE.map((two): Name => `${prefix}${two}`) : []),
    ...(isRead ? ([`${prefix}Plug`, `${prefix}Pinned`] as const) : []),
    ...(isOnCircle ? ([`${prefix}Start`] as const) : []),
    `${prefix}Head`,
    `${prefix}Deep`,
  ];
}

export function outlineChosen(given: PlateGiven): Outline['is'] {
  const chosen = given.choice('outline');
  return chosen === 'rectangle' || chosen === 'none' ? chosen : 'round';
}

/** The question of a plate, once both patterns and its outline are known. */
export function adapterPlateQuestion(given: PlateGiven): PlateQuestion | undefined {
  const a = patternAsked(given, 'a');
  const outline = outlineAsked(given);
  if (!a || !outline || given.choice('bBy') === undefined) return undefined;
  const hasB = knownBy(given, 'b') !== 'none';
  const b = hasB ? patternAsked(given, 'b') : undefined;
  if (hasB && !b) return undefined;
  return {
    a,
    ...(b && {
      b: {
        ...b,
        shift: { x: given.exact('shiftX') ?? zero, y: given.exact('shiftY') ?? zero },
        turnDegrees: given.number('turn'),
      },
    }),
    outline,
    bore: moreThanNothing(given.exact('bore')),
    thick: given.size('thick')?.least,
    zero: zeroChosen(given),
    within: given.exact('within') ?? usualWithin[given.unit],
    ownWeb: moreThanNothing(given.exact('leastWeb')),
    ownEdge: moreThanNothing(given.exact('leastEdge')),
    shop: given.unit,
    finest: finest[given.unit],
  };
}

function moreThanNothing(size: Length | undefined): Length | undefined {
  return size && !isZero(size) ? size : undefined;
}

export function zeroChosen(given: PlateGiven): Zero {
  const chosen = given.choice('zero');
  return chosen === 'edges' || chosen === 'first-hole' ? chosen : 'middle';
}

/** The plate as soon as its sizes are known. */
export function outlineAsked(given: PlateGiven): Outline | undefined {
  const is = outlineChosen(given);
  if (is === 'none') return { is };
  if (is === 'round') {
    const across = given.size('round')?.least;
    return across && { is, across };
  }
  const [wide, high] = [given.size('wide')?.least, given.size('high')?.least];
  const [fromLeft, fromBelow] = [given.size('fromLeft')?.least, given.size('fromBelow')?.least];
  return wide && high && { is, wide, high, fromLeft, fromBelow };
}

/** A pattern with its holes; nothing while a size of it is missing. */
export function patternAsked(given: PlateGiven, prefix: Prefix): PatternAsked | undefined {
  const known = holesKnown(given, prefix);
  const hole = moreThanNothing(given.exact(`${prefix}Hole`));
  return known && hole && { known, hole, head: headAsked(given, prefix) };
}

function headAsked(given: PlateGiven, prefix: Prefix): Head | undefined {
  const across = moreThanNothing(given.exact(`${prefix}Head`));
  return across && { across, deep: moreThanNothing(given.exact(`${prefix}Deep`)) };
}

/** How a pattern's holes are known, as soon as it is: the drawing shows them before their width is. */
export function holesKnown(given: PlateGiven, prefix: Prefix): HolesKnown | undefined {
  const count = countOf(given, prefix);
  const startDegrees = given.number(`${prefix}Start`) ?? 0;
  switch (knownBy(given, prefix)) {
    case 'none':
      return undefined;
    case 'circle': {
      const across = given.size(`${prefix}Circle`)?.tightest;
      return across && count > 0 ? { by: 'circle', count, across, startDegrees } : undefined;
    }
    case 'pair': {
      const over = given.size(`${prefix}Over`)?.tightest;
      const plug = plugOf(given, prefix);
      return over && plug && count > 0 ? { by: 'pair', count, over, ...plug, startDegrees } : undefined;
    }
    case 'three':
      return threeKnown(given, prefix, { count, startDegrees });
    case 'points':
      return pointsKnown(given, prefix);
    default:
      return undefined;
  }
}

function plugOf(given: PlateGiven, prefix: Prefix): { readonly plug?: Estimate } | undefined {
  if (given.choice(`${prefix}Pinned`) === 'no') return {};
  const plug = given.size(`${prefix}Plug`)?.tightest;
  return plug && { plug };
}

type OnCircle = { readonly count: number; readonly startDegrees: number };

function threeKnown(given: PlateGiven, prefix: Prefix, on: OnCircle): HolesKnown | undefined {
  const read = (two: '12' | '23' | '13' | '14' | '34') => given.size(`${prefix}${two}`)?.tightest;
  const [first, second, across] = [read('12'), read('23'), read('13')];
  const [fromFirst, fromThird] = [read('14'), read('34')];
  const plug = plugOf(given, prefix);
  if (!first || !second || !across || !plug || on.count === 0) return undefined;
  const fourth = fromFirst && fromThird && { fromFirst, fromThird };
  return { by: 'three', ...on, over: { first, second, across, fourth }, ...plug };
}

/** Every point that has its x and its y; without the others while the answer isn't asked for yet. */
function pointsKnown(given: PlateGiven, prefix: Prefix): HolesKnown | undefined {
  const names = POINTS.slice(0, Math.min(MOST_POINTS, countOf(given, prefix)));
  const points = names.flatMap((hole) => {
    const [x, y] = [given.exact(`${prefix}${hole}x`), given.exact(`${prefix}${hole}y`)];
    return x && y ? [{ x: typedEstimate(x), y: typedEstimate(y) }] : [];
  });
  if (points.length === 0 || points.length < names.length) return undefined;
  return { by: 'points', count: countOf(given, prefix), points };
}
