import { combine, type Estimate } from '../reading/estimate.ts';
import type { MeasuredPart } from '../fit/fit-check.ts';
import type { Range } from '../fit/fits.ts';
import { isNegative, largest, minus, plus, times, zero, type Length } from '../length/length.ts';
import { modulusGpa, type Spread } from '../material/material.ts';
import {
  axialForceN,
  closingIn,
  contactPressureMpa,
  innerStress,
  outerStress,
  type Elastic,
  type PressedPair,
  type RingStress,
} from './press-fit.ts';
import type { Material } from '../material/tables/materials.ts';
import { flattenedShare, pressFriction, roughness, type Finish } from './tables/press-practice.ts';

/** Interference on the diameter, least and greatest, and what of the least is left once the surfaces have bedded in. */
export type Interference = {
  readonly least: Length;
  readonly greatest: Length;
  readonly leastAfterFlattening: Length;
};

export type PressStress = {
  /** Grip is counted on at least, stress at greatest. */
  readonly pressureMpa: Spread;
  readonly part: RingStress;
  readonly bushing: RingStress;
  /** How much the bushing's bore closes. */
  readonly closes: Range;
  /** Only where the length is known. */
  readonly force?: { readonly pressN: number; readonly holdN: number };
};

type Pressed = {
  readonly at: Length;
  /** Across the part at its thinnest wall. */
  readonly outside: Length;
  /** Across it at its thickest; left out, it counts as solid all round. */
  readonly thickOutside?: Length;
  readonly inside: Length;
  readonly part: Material;
  readonly bushing: Material;
  readonly interference: Interference;
  readonly length?: Length;
};

/**
 * What of an interference is left when the peaks of both surfaces are flattened.
 *
 * Units:   interference − 0.8·(Rz bore + Rz outside), on the diameter; may fall below zero.
 * Source:  DIN 7190-1, from memory; roughness by how it is cut, common practice.
 */
export function afterFlattening(interference: Length, finish: Finish): Length {
  return minus(interference, flattened(finish));
}

/** The part of the interference that is lost to the surfaces. */
export function flattened(finish: Finish): Length {
  const { bore, outside } = roughness[finish];
  return times(plus(bore, outside), flattenedShare);
}

type Known = { readonly value: Length; readonly halfWidth: Length; readonly doubt?: boolean | undefined };

/** Bushing less bore where it grips least and where it grips most, each with its band. Below zero it is loose. */
export type Grip = { readonly loose: Known; readonly tight: Known };

/**
 * The interference of two measured parts.
 *
 * Units:   loosest places: smallest bushing less largest bore; tightest: largest bushing less smallest bore.
 * Source:  JCGM 100:2008 for the band of a difference.
 */
export function gripOf({
  bore,
  outside,
}: {
  readonly bore: MeasuredPart;
  readonly outside: MeasuredPart;
}): Grip {
  return {
    loose: difference(outside.loosest, bore.loosest),
    tight: difference(outside.tightest, bore.tightest),
  };
}

/** Least and greatest interference at the far ends of the bands: what must be counted with. */
export function worstInterference({ loose, tight }: Grip, finish: Finish): Interference {
  return bedded(minus(loose.value, loose.halfWidth), plus(tight.value, tight.halfWidth), finish);
}

/** Least and greatest interference by the values themselves. */
export function likelyInterference({ loose, tight }: Grip, finish: Finish): Interference {
  return bedded(loose.value, tight.value, finish);
}

function bedded(least: Length, greatest: Length, finish: Finish): Interference {
  return { least, greatest, leastAfterFlattening: afterFlattening(least, finish) };
}

function difference(outside: Estimate, bore: Estimate): Known {
  const { value, band } = combine([
    { estimate: outside, coefficient: 1 },
    { estimate: bore, coefficient: -1 },
  ]);
  return { value, ...band };
}

/**
 * Pressure, stress, closing-in and forces of a bushing pressed into its part.
 *
 * Units:   MPa and N, floating point; closing-in a Length. The thinnest wall gives the hold and the part's pull, the
 *          thickest the press force, the bushing's squeeze and the most that it closes; the part's equivalent stress is the
 *          worse of both. The greatest with the stiffest figures the books give at the greatest interference, the least
 *          with the softest at what is left of the least.
 * Range:   inside < at < outside.
 * Source:  press-fit.ts; tables/materials.ts; friction is common practice.
 */
export function pressStress(pressed: Pressed): PressStress {
  const { interference, length, at, outside, thickOutside } = pressed;
  const soft = pairOf(pressed, 'low', outside);
  const thin = pairOf(pressed, 'high', outside);
  const thick = pairOf(pressed, 'high', thickOutside && largest(outside, thickOutside));
  const most = positive(interference.greatest);
  const least = contactPressureMpa(soft, positive(interference.leastAfterFlattening));
  const greatest = contactPressureMpa(thick, most);
  return {
    pressureMpa: { low: least, high: greatest },
    part: worseStress(outerStress(thin, contactPressureMpa(thin, most)), outerStress(thick, greatest)),
    bushing: innerStress(thick, greatest),
    closes: { lower: closingIn(soft, least), upper: closingIn(thick, greatest) },
    ...(length && {
      force: {
        pressN: axialForceN({ pressureMpa: greatest, friction: pressFriction.high, at, length }),
        holdN: axialForceN({ pressureMpa: least, friction: pressFriction.low, at, length }),
      },
    }),
  };
}

// A thin wall is pulled harder; a thick one is squeezed harder, and beside a stiff bushing that can weigh more.
function worseStress(thin: RingStress, thick: RingStress): RingStress {
  return {
    hoopMpa: Math.max(thin.hoopMpa, thick.hoopMpa),
    equivalentMpa: Math.max(thin.equivalentMpa, thick.equivalentMpa),
  };
}

function pairOf(
  { at, inside, part, bushing }: Pressed,
  end: keyof Spread,
  outside: Length | undefined,
): PressedPair {
  return {
    at,
    ...(outside && { outside }),
    inside,
    outer: elasticOf(part, end),
    inner: elasticOf(bushing, end),
  };
}

function elasticOf(material: Material, end: keyof Spread): Elastic {
  const { low, high } = material.poisson;
  return { modulusGpa: modulusGpa(material)[end], poisson: (low + high) / 2 };
}

function positive(length: Length): Length {
  return isNegative(length) ? zero : length;
}
