import {
  dividedBy,
  floatMm,
  isLess,
  isMore,
  lengthFromFloat,
  lengthOf,
  minus,
  plus,
  roundForShow,
  sum,
  times,
  type Length,
} from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import { drillsOf, type Drill } from './drill-series.ts';
import type { ExternalLimits } from './thread-limits.ts';
import type { Thread } from './threads.ts';

export type OverWires = { readonly wire: Length; readonly overWires: Length; readonly pitchDiameter: Length };

/** √3/2 times the pitch: how high the sharp triangle of a 60° thread is. */
const SHARP_HEIGHT = '0.866025404';
const MICRON_PART = lengthOf('0.000001 mm');

/**
 * A 60° thread measured over three wires of the best size.
 *
 * Units:   wire W = 0.57735 P; over the wires M = E − 0.86603 P + 3 W, E the pitch diameter: the basic one,
 *          D − 0.649519 P, where no other is given.
 * Source:  standard 60° formula (handbook); basic pitch diameter ASME B1.1, ISO 68-1.
 */
export function overThreeWires(
  { major, pitch }: Thread,
  pitchDiameter = minus(major, times(pitch, '0.649519')),
): OverWires {
  const wire = bestWire(pitch);
  return {
    wire,
    overWires: plus(minus(pitchDiameter, times(pitch, '0.86603')), times(wire, 3)),
    pitchDiameter,
  };
}

/** The wire that touches a 60° thread on its pitch line: 0.57735 P (handbook; half of P over cos 30°). */
export function bestWire(pitch: Length): Length {
  return times(pitch, '0.57735');
}

/** The same as it is asked for: to the tenth of a thou, or to the micrometre. */
export function bestWireIn(pitch: Length, unit: ShownUnit): Length {
  return roundForShow(bestWire(pitch), lengthOf(unit === 'in' ? '.0001 in' : '0.001 mm'));
}

export type OnWires = { readonly pitchDiameter: Length; readonly pitch: Length; readonly wire: Length };

/**
 * The size over three wires of any diameter, with what the thread's lead adds.
 *
 * Units:   M = E + 3 W − 0.866025 P + c; c = W/2 · cos 30° · cot 30° · tan² of the lead angle = 0.75 W (P / πE)², floating
 *          point, to a millionth of a millimetre: half a tenth and less on the usual threads.
 * Source:  standard 60° formula (handbook); c: metrology handbooks, from memory.
 */
export function sizeOverWires({ pitchDiameter, pitch, wire }: OnWires): Length {
  const plain = minus(plus(pitchDiameter, times(wire, 3)), times(pitch, SHARP_HEIGHT));
  return plus(plain, leadTerm({ pitchDiameter, pitch, wire }));
}

/** What the lead adds, see `sizeOverWires`. */
export function leadTerm({ pitchDiameter, pitch, wire }: OnWires): Length {
  const tangent = floatMm(pitch) / (Math.PI * floatMm(pitchDiameter));
  return lengthFromFloat(0.75 * floatMm(wire) * tangent * tangent, MICRON_PART);
}

export type WireRange = { readonly least: Length; readonly most: Length };

/**
 * The wires that can measure a thread: they stand proud of its largest crest, and touch the flanks below its smallest.
 *
 * Units:   at every size the class allows; on the basic profile 0.505 P to 1.010 P, the handbooks' figures. A wire touches the
 *          flanks at M − 1.5 W across.
 * Source:  geometry; handbook.
 */
export function wireRange({ pitch }: Pick<Thread, 'pitch'>, limits: Crested): WireRange {
  const height = times(pitch, SHARP_HEIGHT);
  return {
    least: dividedBy(plus(minus(limits.majorMost, limits.pitchLeast), height), 3),
    most: dividedBy(plus(minus(limits.majorLeast, limits.pitchMost), height), '1.5'),
  };
}

type Crested = Pick<ExternalLimits, 'majorLeast' | 'majorMost' | 'pitchLeast' | 'pitchMost'>;

/** A wire on offer: the best one, or a drill whose shank is about as thick. */
export type WireOffer = { readonly size: Length; readonly drill?: string };

/**
 * Three wires that would do, the best one first, then the drills next to it, smaller and larger, whose shanks do as wires.
 *
 * Units:   a drill by its name; its shank has to be measured. Number drills where the shop works in inches, else metric ones.
 * Range:   fewer where a thread is finer than the drills.
 * Source:  drill sizes as tables/drills.ts; shanks for wires: common practice, no source.
 */
export function wiresOffered(
  pitch: Length,
  { least, most }: WireRange,
  unit: ShownUnit,
): readonly WireOffer[] {
  const best = bestWire(pitch);
  const fitting = drillsOf(unit === 'in' ? 'number' : 'metric').filter(
    ({ size }) => !isLess(size, least) && !isMore(size, most),
  );
  const below = fitting.findLast(({ size }) => isLess(size, best));
  const above = fitting.find(({ size }) => isMore(size, best));
  const offer = ({ size, name }: Drill): WireOffer => ({ size, drill: name });
  return [
    { size: bestWireIn(pitch, unit) },
    ...(below ? [offer(below)] : []),
    ...(above ? [offer(above)] : []),
  ];
}

/** Turned to a diameter, what the wires would read where the tool's point just touches: D − 0.288675 P + 3 W. */
export function overWiresAtTouch({
  outside,
  pitch,
  wire,
}: {
  readonly outside: Length;
  readonly pitch: Length;
  readonly wire: Length;
}): Length {
  return sum([outside, times(wire, 3), times(pitch, '-0.288675')]);
}
