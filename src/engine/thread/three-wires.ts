import { minus, plus, times, type Length } from '../length/length.ts';
import type { Thread } from './threads.ts';

export type OverWires = { readonly wire: Length; readonly overWires: Length; readonly pitchDiameter: Length };

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
  const wire = times(pitch, '0.57735');
  return {
    wire,
    overWires: plus(minus(pitchDiameter, times(pitch, '0.86603')), times(wire, 3)),
    pitchDiameter,
  };
}
