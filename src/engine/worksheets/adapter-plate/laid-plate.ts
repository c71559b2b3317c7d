import {
  dividedBy,
  floatMm,
  isLess,
  minus,
  negate,
  plus,
  roundForShow,
  zero,
  type Length,
} from '../../length/length.ts';
import { worked, type Result } from '../../length/refusal.ts';
import {
  laidPattern,
  type LaidPattern,
  type PatternName,
  type PatternRefusal,
  type SizeAt,
} from './pattern.ts';
import type { Head, Outline, PatternAsked, PlateQuestion } from './plate-question.ts';
import { apart, floatSpot, from, moved, turned, type Spot } from './spots.ts';

/** A hole of the plate: `A1`, round the middle of pattern A. */
export type LaidHole = {
  readonly name: string;
  readonly pattern: PatternName;
  readonly spot: Spot;
  readonly hole: Length;
  readonly head?: Head | undefined;
};

/** The same with what the slides are set to, from the chosen zero, rounded to the finest figure. */
export type PlateHole = LaidHole & { readonly set: Spot };

export type LaidPlate = {
  readonly holes: readonly LaidHole[];
  readonly a: LaidPattern;
  readonly b?: (LaidPattern & { readonly turnDegrees: number }) | undefined;
  /** Where the zero stands, from the middle of pattern A. */
  readonly zero: Spot;
};

/** Every hole in its place, with each size as `at` takes it; pattern B stands as it is turned, or not at all. */
export function laidPlate(q: PlateQuestion, at: SizeAt): Result<LaidPlate, PatternRefusal> {
  const a = laidPattern('A', q.a.known, at);
  if (!a.ok) return a;
  const b = q.b && laidPattern('B', q.b.known, at);
  if (b && !b.ok) return b;
  const turn = q.b && b ? (q.b.turnDegrees ?? 0) : 0;
  const { x, y } = q.b?.shift ?? { x: zero, y: zero };
  const ofB = b?.value.spots.map((spot) => moved(turned(spot, turn), { x, y })) ?? [];
  const spots = [
    ...a.value.spots.map((spot, index) => ({ spot, name: `A${index + 1}`, pattern: 'A' as const, of: q.a })),
    ...(q.b ? named(ofB, q.b) : []),
  ];
  const zeroAt = zeroOf(q, a.value.spots[0], at);
  return worked({
    a: a.value,
    ...(b && { b: { ...b.value, turnDegrees: turn } }),
    zero: zeroAt,
    holes: spots.map(({ spot, name, pattern, of: { hole, head } }) => ({
      name,
      pattern,
      spot,
      hole,
      head,
    })),
  });
}

function named(spots: readonly Spot[], of: PatternAsked) {
  return spots.map((spot, index) => ({ spot, name: `B${index + 1}`, pattern: 'B' as const, of }));
}

/** What the slides are set to. */
export function setTo(spot: Spot, { zero: zeroAt }: LaidPlate, finest: Length): Spot {
  const { x, y } = from(spot, zeroAt);
  return { x: roundForShow(x, finest), y: roundForShow(y, finest) };
}

function zeroOf({ zero: at, outline }: PlateQuestion, first: Spot = MIDDLE, size: SizeAt): Spot {
  if (at === 'first-hole') return first;
  if (at === 'middle' || outline.is === 'none') return MIDDLE;
  const { left, below } = edgesOf(outline, size);
  return { x: negate(left), y: negate(below) };
}

const MIDDLE: Spot = { x: zero, y: zero };

/** How far each edge lies from the middle of pattern A; of a round plate the tangents. */
export function edgesOf(outline: Exclude<Outline, { is: 'none' }>, at: SizeAt) {
  if (outline.is === 'round') {
    const radius = dividedBy(at(outline.across), 2);
    return { left: radius, right: radius, below: radius, above: radius };
  }
  const [wide, high] = [at(outline.wide), at(outline.high)];
  const left = outline.fromLeft ? at(outline.fromLeft) : dividedBy(wide, 2);
  const below = outline.fromBelow ? at(outline.fromBelow) : dividedBy(high, 2);
  return { left, right: minus(wide, left), below, above: minus(high, below) };
}

/** From a hole's middle to the nearest edge of the plate. */
export function toEdge(outline: Exclude<Outline, { is: 'none' }>, { x, y }: Spot, at: SizeAt): Length {
  const { left, right, below, above } = edgesOf(outline, at);
  if (outline.is === 'round') return minus(left, apart({ x, y }, MIDDLE));
  return [minus(right, x), plus(below, y), minus(above, y)].reduce(
    (least, one) => (isLess(one, least) ? one : least),
    plus(left, x),
  );
}

/** The same in floating point millimetres: to find the tightest places. */
export function roughlyToEdge(outline: Exclude<Outline, { is: 'none' }>, spot: Spot, at: SizeAt): number {
  const { left, right, below, above } = edgesOf(outline, at);
  const { x, y } = floatSpot(spot);
  if (outline.is === 'round') return floatMm(left) - Math.hypot(x, y);
  return Math.min(floatMm(left) + x, floatMm(right) - x, floatMm(below) + y, floatMm(above) - y);
}
