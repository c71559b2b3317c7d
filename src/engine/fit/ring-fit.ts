import { dividedBy, isMore, lengthOf, minus, negate, plus, zero, type Length } from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { isoHole, isoPin, type IsoRefusal } from './fits-iso.ts';
import type { FitKind, Range } from './fits.ts';
import {
  ringBoreMicrons,
  ringOutsideMicrons,
  ringSeatClasses,
  type Ring,
  type RingLoad,
} from './tables/iso492-rings.ts';

export type RingFit = {
  /** 'k6', 'N7'. */
  readonly seatClass: string;
  readonly seat: Range;
  /** What a bearing of the normal class may have there. */
  readonly ring: Range;
  /** Room between them at its least and its most; below zero it grips. */
  readonly clearance: Range;
  readonly kind: FitKind;
  readonly source: string;
};

const MICRONS_IN_MM = 1000;
const STANDARD = 'ISO 492, normal class';

/**
 * The limits of the seat of a bearing's ring, by what turns and how it is loaded, and what a bearing of the normal class
 * has on it.
 *
 * Units:   seat = nominal + the deviations of its ISO class; ring: nominal down to nominal less what ISO 492 allows;
 *          clearance: outer part less inner part.
 * Range:   bearings over 2.5 to 250 mm.
 * Refuses: size-outside-fit-table.
 * Source:  ISO 286-1; ISO 492 normal class; class of the seat: common practice (tables/iso492-rings.ts).
 */
export function ringFit({
  ring,
  load,
  nominal,
}: {
  readonly ring: Ring;
  readonly load: RingLoad;
  readonly nominal: Length;
}): Result<RingFit, IsoRefusal> {
  const seatClass = ringSeatClasses[ring][load];
  const under = ringUnder(ring, nominal);
  if (!under) {
    const upTo = lengthOf('250 mm');
    return refuse({ code: 'size-outside-fit-table', nominal, upTo, standard: STANDARD });
  }
  const seat = ring === 'inner' ? isoPin(nominal, seatClass) : isoHole(nominal, seatClass);
  if (!seat.ok) return seat;
  const about = { lower: plus(nominal, seat.value.lower), upper: plus(nominal, seat.value.upper) };
  const made = { lower: minus(nominal, under), upper: nominal };
  const [hole, pin] = ring === 'inner' ? [made, about] : [about, made];
  const clearance = { lower: minus(hole.lower, pin.upper), upper: minus(hole.upper, pin.lower) };
  return worked({
    seatClass,
    seat: about,
    ring: made,
    clearance,
    kind: kindOf(clearance),
    source: `ISO 286-1, ${seatClass}`,
  });
}

function ringUnder(ring: Ring, nominal: Length): Length | undefined {
  if (!isMore(nominal, lengthOf('2.5 mm'))) return undefined;
  const steps = ring === 'inner' ? ringBoreMicrons : ringOutsideMicrons;
  const step = steps.find(([upTo]) => !isMore(nominal, lengthOf(`${upTo} mm`)));
  return step && dividedBy(lengthOf(`${step[1]} mm`), MICRONS_IN_MM);
}

function kindOf({ lower, upper }: Range): FitKind {
  if (!isMore(zero, lower)) return 'clearance';
  return isMore(upper, zero) ? 'transition' : 'interference';
}

/** The same turned round: how much it grips. */
export function gripOf({ lower, upper }: Range): Range {
  return { lower: negate(upper), upper: negate(lower) };
}
