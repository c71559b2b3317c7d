import { bandOf, combine, mean, STATISTICS_STEP, type Estimate } from '../../reading/estimate.ts';
import { floatMm, hypotenuse, isLess, lengthFromFloat, minus, type Length } from '../../length/length.ts';
import { legOf, type Leg } from '../../reading/settle.ts';

/** A hole's middle, from the left edge and from the lower one. */
export type Spot = { readonly across: Estimate; readonly up: Estimate };

/** What is known of a hole that is in the wrong place. Another hole lies at 3 o'clock of it, save where both have their spots. */
export type WhereAsked =
  | {
      readonly by: 'offset';
      readonly offBy: Estimate;
      readonly towardDegrees?: number | undefined;
      readonly apart?: Estimate | undefined;
    }
  | { readonly by: 'apart'; readonly apart: Estimate; readonly wanted: Estimate }
  | {
      readonly by: 'edges';
      readonly now: Spot;
      readonly wanted: Spot;
      readonly other?: Spot | undefined;
      /** Where it goes, if it is moved too. */
      readonly otherWanted?: Spot | undefined;
    };

/** From this hole's middle to the other one's; degrees from 3 o'clock, 90 is 12 o'clock. */
export type Line = { readonly apart: Length; readonly degrees: number };

export type TwoHoles = { readonly before: Line; readonly after: Line; readonly halfWidth: Length };

export type Place = {
  readonly offBy: Length;
  /** How closely the right place is known, whichever way it is missed. */
  readonly halfWidth: Length;
  readonly doubt?: boolean | undefined;
  /** Which way the hole has to go; left out where nobody said. */
  readonly towardDegrees?: number | undefined;
  readonly legs: readonly Leg[];
  readonly twoHoles?: TwoHoles | undefined;
};

/**
 * How far a hole is off, which way it has to go, and what that makes of its distance to another one.
 *
 * Units:   offBy = √(Δacross² + Δup²), exact to 40 places; degrees from 3 o'clock over 12, floating point. Its band is that of
 *          both differences at right angles: never too narrow, whichever way the hole goes. The distance after has the other
 *          hole's band beside it in the same way.
 * Range:   any direction; one that nobody said leaves the other hole's distance out.
 * Source:  Pythagoras; JCGM 100:2008 for the band of a difference.
 */
export function placeOf(where: WhereAsked): Place {
  switch (where.by) {
    case 'offset':
      return byOffset(where);
    case 'apart':
      return byOtherHole(where);
    case 'edges':
      return byEdges(where);
    default:
      return where satisfies never;
  }
}

function byOffset({ offBy, towardDegrees, apart }: Extract<WhereAsked, { by: 'offset' }>): Place {
  const size = mean(offBy);
  const band = bandOf(offBy);
  const before = apart && { apart: mean(apart), degrees: 0 };
  return {
    offBy: size,
    ...band,
    towardDegrees,
    legs: [legOf('length', offBy, 1)],
    ...(before &&
      apart &&
      towardDegrees !== undefined && {
        twoHoles: {
          before,
          after: lineOf(minus(before.apart, along(size, towardDegrees)), along(size, towardDegrees + 90)),
          halfWidth: hypotenuse(band.halfWidth, bandOf(apart).halfWidth),
        },
      }),
  };
}

function byOtherHole({ apart, wanted }: Extract<WhereAsked, { by: 'apart' }>): Place {
  const { value, band } = difference(wanted, apart);
  const [now, then] = [mean(apart), mean(wanted)];
  const isTooFar = isLess(then, now);
  return {
    offBy: isTooFar ? minus(now, then) : value,
    ...band,
    towardDegrees: isTooFar ? 0 : 180,
    legs: [legOf('length', apart, -1), legOf('length', wanted, 1)],
    twoHoles: {
      before: { apart: now, degrees: 0 },
      after: { apart: then, degrees: 0 },
      halfWidth: band.halfWidth,
    },
  };
}

function byEdges({ now, wanted, other, otherWanted }: Extract<WhereAsked, { by: 'edges' }>): Place {
  const across = difference(wanted.across, now.across);
  const up = difference(wanted.up, now.up);
  const { apart: offBy, degrees } = lineOf(across.value, up.value);
  const halfWidth = hypotenuse(across.band.halfWidth, up.band.halfWidth);
  const spots = [now, wanted, ...(other ? [other] : []), ...(otherWanted ? [otherWanted] : [])];
  return {
    offBy,
    halfWidth,
    doubt: spots.some((spot) => spot.across.doubt ?? spot.up.doubt),
    towardDegrees: degrees,
    legs: [
      legOf('length', wanted.across, 1),
      legOf('length', now.across, -1),
      legOf('length', wanted.up, 1),
      legOf('length', now.up, -1),
    ],
    ...(other && {
      twoHoles: {
        before: between(now, other),
        after: between(wanted, otherWanted ?? other),
        halfWidth: hypotenuse(
          halfWidth,
          hypotenuse(bandOf(other.across).halfWidth, bandOf(other.up).halfWidth),
        ),
      },
    }),
  };
}

function difference(to: Estimate, from: Estimate) {
  return combine([
    { estimate: to, coefficient: 1 },
    { estimate: from, coefficient: -1 },
  ]);
}

function between(from: Spot, to: Spot): Line {
  return lineOf(minus(mean(to.across), mean(from.across)), minus(mean(to.up), mean(from.up)));
}

function lineOf(across: Length, up: Length): Line {
  return {
    apart: hypotenuse(across, up),
    degrees: (Math.atan2(floatMm(up), floatMm(across)) * 180) / Math.PI,
  };
}

/** What of a length lies along 3 o'clock where it points elsewhere. */
function along(size: Length, degrees: number): Length {
  return lengthFromFloat(floatMm(size) * Math.cos((degrees * Math.PI) / 180), STATISTICS_STEP);
}
