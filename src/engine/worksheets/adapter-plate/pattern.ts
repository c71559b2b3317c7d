import {
  dividedBy,
  floatMm,
  isLess,
  isMore,
  lengthFromFloat,
  minus,
  sum,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import type { Estimate } from '../../reading/estimate.ts';
import {
  apart,
  circleThrough,
  COORDINATE_STEP,
  directionOf,
  from,
  onCircle,
  spotOf,
  turned,
  type Circle,
  type Spot,
} from './spots.ts';

export type PatternName = 'A' | 'B';

/** Three neighbours hole to hole, over plugs; and a fourth from the first and from the third. */
export type Chords = {
  readonly first: Estimate;
  readonly second: Estimate;
  readonly across: Estimate;
  readonly fourth?: { readonly fromFirst: Estimate; readonly fromThird: Estimate } | undefined;
};

/** How the holes of a pattern are known. Sizes over plugs are over the outsides of both; without a plug middle to middle. */
export type HolesKnown =
  | {
      readonly by: 'circle';
      readonly count: number;
      readonly across: Estimate;
      readonly startDegrees: number;
    }
  | {
      readonly by: 'pair';
      readonly count: number;
      readonly over: Estimate;
      readonly plug?: Estimate | undefined;
      readonly startDegrees: number;
    }
  | {
      readonly by: 'three';
      readonly count: number;
      readonly over: Chords;
      readonly plug?: Estimate | undefined;
      readonly startDegrees: number;
    }
  | {
      readonly by: 'points';
      readonly count: number;
      readonly points: readonly { readonly x: Estimate; readonly y: Estimate }[];
    };

export type PatternRefusal =
  | { readonly code: 'in-line'; readonly pattern: PatternName }
  | { readonly code: 'too-few'; readonly pattern: PatternName; readonly least: number }
  | { readonly code: 'too-many-points'; readonly pattern: PatternName; readonly most: number }
  | {
      readonly code: 'plug-too-thick';
      readonly pattern: PatternName;
      readonly over: Length;
      readonly plug: Length;
    }
  | {
      readonly code: 'does-not-close';
      readonly pattern: PatternName;
      readonly holes: readonly [number, number, number];
    };

/** The holes of a pattern round its own middle, and what is known of the circle they stand on. */
export type LaidPattern = {
  readonly spots: readonly Spot[];
  readonly circle?: Circle | undefined;
  /** How far each further hole that was measured stands off the circle of the first three; outwards is above zero. */
  readonly offCircle: readonly { readonly hole: number; readonly by: Length }[];
  /** How far the measured holes stand off even spacing, where the holes are drilled evenly. */
  readonly offEven?: Length | undefined;
};

/** A size, as it counts: its mean, or moved a little to see what hangs on it. */
export type SizeAt = (size: Estimate) => Length;

/**
 * Where the holes of a pattern stand, round the middle of its circle; points stand from their own zero.
 *
 * Units:   holes run counterclockwise from the start, degrees from 3 o'clock over 12. Even on a circle: 360° ÷ count apart.
 *          Over two plugs: middle to middle = over − plug. Two neighbours: circle = chord ÷ sin(180° ÷ count). Three holes:
 *          the circle through them. Where every hole was measured they stand as measured, otherwise evenly on that circle.
 *          Points are exact; everything else is trigonometry in floating point, back in COORDINATE_STEP.
 * Range:   two holes and more on a circle, three for one that is measured.
 * Refuses: too-few, too-many-points, plug-too-thick, does-not-close (three distances that make no triangle), in-line.
 * Source:  geometry: chord of a circle, law of cosines, circumcircle.
 */
export function laidPattern(
  name: PatternName,
  known: HolesKnown,
  at: SizeAt,
): Result<LaidPattern, PatternRefusal> {
  switch (known.by) {
    case 'circle':
      return even(name, known.count, { radius: dividedBy(at(known.across), 2), start: known.startDegrees });
    case 'pair':
      return byPair(name, known, at);
    case 'three':
      return byThree(name, known, at);
    case 'points':
      if (known.count > known.points.length)
        return refuse({ code: 'too-many-points', pattern: name, most: known.points.length });
      return byPoints(known.points.map(({ x, y }) => ({ x: at(x), y: at(y) })));
    default:
      return known satisfies never;
  }
}

type OnCircle = { readonly radius: Length; readonly start: number };

const MIDDLE: Spot = { x: zero, y: zero };

function even(
  name: PatternName,
  count: number,
  { radius, start }: OnCircle,
): Result<LaidPattern, PatternRefusal> {
  if (count < 2) return refuse({ code: 'too-few', pattern: name, least: 2 });
  const spots = Array.from({ length: count }, (_, hole) => onCircle(radius, start + (360 * hole) / count));
  return worked({ spots, circle: { middle: MIDDLE, radius }, offCircle: [] });
}

function byPair(
  name: PatternName,
  { count, over, plug, startDegrees }: Extract<HolesKnown, { by: 'pair' }>,
  at: SizeAt,
): Result<LaidPattern, PatternRefusal> {
  const chord = overPlugs(name, { over, plug }, at);
  if (!chord.ok) return chord;
  if (count < 2) return refuse({ code: 'too-few', pattern: name, least: 2 });
  const radius = lengthFromFloat(floatMm(chord.value) / (2 * Math.sin(Math.PI / count)), COORDINATE_STEP);
  return even(name, count, { radius, start: startDegrees });
}

type OverPlugs = { readonly over: Estimate; readonly plug?: Estimate | undefined };

/** Middle to middle, from what was read over both plugs. */
function overPlugs(name: PatternName, { over, plug }: OverPlugs, at: SizeAt): Result<Length, PatternRefusal> {
  const thick = plug ? at(plug) : zero;
  const long = minus(at(over), thick);
  return isMore(long, thick) && isMore(long, zero)
    ? worked(long)
    : refuse({ code: 'plug-too-thick', pattern: name, over: at(over), plug: thick });
}

function byThree(
  name: PatternName,
  { count, over, plug, startDegrees }: Extract<HolesKnown, { by: 'three' }>,
  at: SizeAt,
): Result<LaidPattern, PatternRefusal> {
  if (count < 3) return refuse({ code: 'too-few', pattern: name, least: 3 });
  const { fourth } = over;
  const sizes = [
    over.first,
    over.second,
    over.across,
    ...(fourth ? [fourth.fromFirst, fourth.fromThird] : []),
  ];
  const chords: Length[] = [];
  for (const size of sizes) {
    const chord = overPlugs(name, { over: size, plug }, at);
    if (!chord.ok) return chord;
    chords.push(chord.value);
  }
  const [first = zero, second = zero, across = zero, fromFirst, fromThird] = chords;
  const third = corner(first, across, second);
  if (!third) return refuse({ code: 'does-not-close', pattern: name, holes: [1, 2, 3] });
  const three = [MIDDLE, { x: first, y: zero }, third] as const;
  const circle = circleThrough(three);
  if (!circle.ok) return refuse({ code: 'in-line', pattern: name });
  const last = fromFirst && fromThird && beyond(three[0], third, { fromFirst, fromThird });
  if (fourth && !last) return refuse({ code: 'does-not-close', pattern: name, holes: [1, 3, 4] });
  return worked(measured([...three, ...(last ? [last] : [])], circle.value, { count, start: startDegrees }));
}

/** As measured where every hole was, otherwise evenly on the circle that was found; round its middle either way. */
function measured(
  read: readonly Spot[],
  { middle, radius }: Circle,
  { count, start }: { readonly count: number; readonly start: number },
): LaidPattern {
  const [first = MIDDLE] = read;
  const by = start - directionOf(first, middle);
  const asRead = read.map((spot) => turned(from(spot, middle), by));
  const offCircle = asRead
    .slice(3)
    .map((spot, index) => ({ hole: index + 4, by: minus(apart(spot, MIDDLE), radius) }));
  const circle = { middle: MIDDLE, radius };
  if (read.length >= count) return { spots: asRead.slice(0, count), circle, offCircle };
  const spots = Array.from({ length: count }, (_, hole) => onCircle(radius, start + (360 * hole) / count));
  const offs = asRead.map((spot, hole) => apart(spot, spots[hole] ?? MIDDLE));
  return {
    spots,
    circle,
    offCircle,
    offEven: offs.reduce((most, off) => (isMore(off, most) ? off : most), zero),
  };
}

/** The corner of a triangle over its base from nothing to the right: so far from its left end, so far from its right one. */
function corner(base: Length, fromLeft: Length, fromRight: Length): Spot | undefined {
  const sides = [base, fromLeft, fromRight];
  if (sides.some((side) => isLess(minus(sum(sides), side), side))) return undefined;
  const [long, left, right] = [floatMm(base), floatMm(fromLeft), floatMm(fromRight)];
  const x = (long ** 2 + left ** 2 - right ** 2) / (2 * long);
  return spotOf({ x, y: Math.sqrt(Math.max(0, left ** 2 - x ** 2)) });
}

/** The fourth hole, on the far side of the first and the third from the second. */
function beyond(
  first: Spot,
  third: Spot,
  { fromFirst, fromThird }: { readonly fromFirst: Length; readonly fromThird: Length },
): Spot | undefined {
  const over = corner(apart(first, third), fromFirst, fromThird);
  return over && turned(over, directionOf(third, first));
}

function byPoints(spots: readonly Spot[]): Result<LaidPattern, PatternRefusal> {
  const [first, second, third, ...others] = spots;
  const circle = first && second && third ? circleThrough([first, second, third]) : undefined;
  if (!circle?.ok) return worked({ spots, offCircle: [] });
  const { middle, radius } = circle.value;
  return worked({
    spots,
    circle: circle.value,
    offCircle: others.map((spot, index) => ({ hole: index + 4, by: minus(apart(spot, middle), radius) })),
  });
}
