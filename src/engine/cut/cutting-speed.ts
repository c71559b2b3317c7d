import { floatMm, type Length } from '../length/length.ts';

const MM_PER_FOOT = 304.8; // exact: 12 · 25.4

/**
 * Spindle speed for a surface speed at a diameter; take the largest diameter in the cut.
 *
 * Units:   surface feet a minute in, revolutions a minute out (floating point: a lathe's own speeds are far coarser).
 * Range:   a diameter of nothing has no speed: Infinity, which no lathe has.
 * Source:  n = v / (π D), handbook formula (12 V / π D in inches).
 */
export function spindleRpm({
  surfaceFeetPerMinute,
  diameter,
}: {
  surfaceFeetPerMinute: number;
  diameter: Length;
}): number {
  return (surfaceFeetPerMinute * MM_PER_FOOT) / (Math.PI * floatMm(diameter));
}

/** Surface feet a minute of a diameter that turns at so many revolutions a minute: π D n; floating point. */
export function surfaceFeetPerMinute({ rpm, diameter }: { rpm: number; diameter: Length }): number {
  return (rpm * Math.PI * floatMm(diameter)) / MM_PER_FOOT;
}

/** Metres a minute of a surface speed in feet a minute; floating point. */
export function metresPerMinute(feetPerMinute: number): number {
  return (feetPerMinute * MM_PER_FOOT) / 1000;
}
