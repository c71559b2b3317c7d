import {
  floatMm,
  hypotenuse,
  lengthFromFloat,
  lengthOf,
  minus,
  negate,
  plus,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';

/** A hole's middle: across to the right, up the drawing. */
export type Spot = { readonly x: Length; readonly y: Length };

/** A circle through holes: where its middle stands, and how far the holes are from it. */
export type Circle = { readonly middle: Spot; readonly radius: Length };

/** What trigonometry is rounded to on its way back from floating point: far below what any mill sets. */
export const COORDINATE_STEP: Length = lengthOf('0.0000001 mm');

export type CircleRefusal = { readonly code: 'in-line' };

type FloatSpot = { readonly x: number; readonly y: number };

/** A spot worked out in floating point millimetres. */
export function spotOf({ x, y }: FloatSpot): Spot {
  return { x: lengthFromFloat(x, COORDINATE_STEP), y: lengthFromFloat(y, COORDINATE_STEP) };
}

export function floatSpot({ x, y }: Spot): FloatSpot {
  return { x: floatMm(x), y: floatMm(y) };
}

/**
 * A spot on a circle round nothing.
 *
 * Units:   degrees from 3 o'clock over 12. Trigonometry: floating point, back in COORDINATE_STEP.
 */
export function onCircle(radius: Length, degrees: number): Spot {
  const turned = (degrees * Math.PI) / 180;
  const long = floatMm(radius);
  return spotOf({ x: long * Math.cos(turned), y: long * Math.sin(turned) });
}

/**
 * A spot turned round nothing, counterclockwise.
 *
 * Units:   whole quarters are exact; anything between is floating point, back in COORDINATE_STEP.
 */
export function turned(spot: Spot, degrees: number): Spot {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const { x, y } = spot;
    const quarter = ((quarters % 4) + 4) % 4;
    if (quarter === 0) return spot;
    if (quarter === 1) return { x: negate(y), y: x };
    return quarter === 2 ? { x: negate(x), y: negate(y) } : { x: y, y: negate(x) };
  }
  const by = (degrees * Math.PI) / 180;
  const { x, y } = floatSpot(spot);
  return spotOf({ x: x * Math.cos(by) - y * Math.sin(by), y: x * Math.sin(by) + y * Math.cos(by) });
}

export function moved({ x, y }: Spot, by: Spot): Spot {
  return { x: plus(x, by.x), y: plus(y, by.y) };
}

export function from({ x, y }: Spot, zero: Spot): Spot {
  return { x: minus(x, zero.x), y: minus(y, zero.y) };
}

/** Middle to middle, exact to 40 places. */
export function apart(one: Spot, other: Spot): Length {
  return hypotenuse(minus(one.x, other.x), minus(one.y, other.y));
}

// Chosen, not published: three holes whose circle is so many times wider than they lie apart are taken to be in a line.
const WIDEST = 1000;

/**
 * The circle through three holes.
 *
 * Units:   middle = where the perpendiculars of two chords meet. Floating point, back in COORDINATE_STEP.
 * Refuses: in-line where they lie in a line, or so nearly that their readings can't tell.
 * Source:  geometry: circumcircle of a triangle.
 */
export function circleThrough([first, second, third]: readonly [Spot, Spot, Spot]): Result<
  Circle,
  CircleRefusal
> {
  const a = floatSpot(first);
  const [b, c] = [second, third].map((spot) => floatSpot(from(spot, first)));
  if (!b || !c) return refuse({ code: 'in-line' });
  const twiceArea = 2 * (b.x * c.y - b.y * c.x);
  const [bb, cc] = [b.x ** 2 + b.y ** 2, c.x ** 2 + c.y ** 2];
  const x = (c.y * bb - b.y * cc) / twiceArea;
  const y = (b.x * cc - c.x * bb) / twiceArea;
  const radius = Math.hypot(x, y);
  if (!Number.isFinite(radius) || radius > WIDEST * Math.sqrt(Math.max(bb, cc)))
    return refuse({ code: 'in-line' });
  return worked({
    middle: spotOf({ x: a.x + x, y: a.y + y }),
    radius: lengthFromFloat(radius, COORDINATE_STEP),
  });
}

/** Degrees from 3 o'clock over 12 at which a spot stands, seen from another. Floating point. */
export function directionOf(spot: Spot, seenFrom: Spot): number {
  const { x, y } = floatSpot(from(spot, seenFrom));
  return (Math.atan2(y, x) * 180) / Math.PI;
}
