import { bandOf, mean, type Band, type Estimate } from '../../reading/estimate.ts';
import { dividedBy, isLess, isMore, minus, plus, zero, type Length } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import { metalOnTarget, type CutKind } from '../../length/metal-on.ts';
import { refuse, worked, type Refusal, type Result } from '../../length/refusal.ts';
import { ringFromBlanks, type FromBlanks, type RingBlank } from './ring-blank.ts';
import { leastRing, type RingClearance } from './tables/ring-practice.ts';

type Places = { readonly tightest: Estimate; readonly loosest: Estimate };

export type RingQuestion = {
  readonly recess: Places;
  /** Its tightest place is its largest. */
  readonly stem: Places;
  /** Recess bore less ring, and ring less stem, on the diameter. */
  readonly outsideClearance: RingClearance;
  readonly insideClearance: RingClearance;
  /** The recess's depth at its shallowest; left out, nothing limits the thickness. */
  readonly depth?: Estimate;
  /** Depth that must stay free above the ring; below zero the ring may stand so much proud. */
  readonly stayFree?: Length;
  /** The fitter's own; left out, or nothing at all: the usual least. */
  readonly leastThickness?: Length;
  /** What usual figures are round in; inches where it is left out. */
  readonly shop?: ShownUnit;
  readonly blanks: readonly RingBlank[];
  /** Of the dial, for diameters and for lengths. */
  readonly steps: { readonly diameter: Length; readonly length: Length };
};

/** A size of the ring: where to cut to, and from where to where it is good. */
export type RingSize = {
  readonly kind: CutKind;
  readonly aim: Length;
  readonly lower: Length;
  readonly upper: Length;
  readonly target: Length;
  /** Of the size it comes from. */
  readonly band: Band;
  /** Whether the band has been taken off the limits; where it would leave nothing of them, they stand whole and prove nothing. */
  readonly provable: boolean;
};

export type RingAnswer = {
  readonly outside: RingSize;
  readonly inside: RingSize;
  readonly thickness?: RingSize;
  /** Metal between inside and outside. */
  readonly wall: Length;
  /** The ring as it will be cut, less the recess's depth: above zero it stands proud. */
  readonly proud?: Length;
  readonly fromBlanks: FromBlanks;
};

export type RingRefusal =
  | {
      readonly code: 'ring-no-wall';
      readonly outside: Length;
      readonly inside: Length;
      readonly least: Length;
    }
  | {
      readonly code: 'ring-no-depth';
      readonly depth: Length;
      readonly stayFree: Length;
      readonly most: Length;
    }
  | { readonly code: 'ring-too-thin'; readonly most: Length; readonly least: Length };

/**
 * A ring cut to fill a recess round a stem, and what to cut it from.
 *
 * Units:   outside = recess bore − clearance, inside = stem + clearance, both on the diameter; thickness ≤ depth − what
 *          must stay free. The tightest place rules the least clearance, the loosest the most; what the readings' bands
 *          leave of the limits is what the cut may use; where that is nothing, or no step of the dial, the limits
 *          stand whole, from the tightest place, and the size is not provable. Targets are rounded metal-on to the dial's steps.
 *          proud = thickness − depth.
 * Range:   stayFree may be below zero. Without a depth there is no thickness to cut. Never thinner than .020 in or 0.6 mm, through its
 *          thickness or its wall, unless the fitter's own least thickness says otherwise: then it is left out.
 * Refuses: ring-no-wall, ring-no-depth, ring-too-thin, no-step-in-limits.
 * Source:  geometry; clearances as they say themselves.
 */
export function ring(q: RingQuestion): Result<RingAnswer, RingRefusal | Refusal> {
  const outside = outsideSize(q);
  if (!outside.ok) return outside;
  const inside = insideSize(q);
  if (!inside.ok) return inside;
  const thinnestWall = dividedBy(minus(outside.value.lower, inside.value.upper), 2);
  const least = leastRing[q.shop ?? 'in'];
  if (isLess(thinnestWall, least))
    return refuse({
      code: 'ring-no-wall',
      outside: outside.value.target,
      inside: inside.value.target,
      least,
    });
  const thickness = q.depth && thicknessSize(q, q.depth);
  if (thickness && !thickness.ok) return thickness;
  const sizes = {
    outside: outside.value,
    inside: inside.value,
    ...(thickness && { thickness: thickness.value }),
  };
  const fromBlanks = ringFromBlanks(q.blanks, { ...sizes, leastThickness: leastThicknessOf(q) });
  const made = fromBlanks.best?.thickness ?? sizes.thickness?.target;
  return worked({
    ...sizes,
    wall: dividedBy(minus(sizes.outside.target, sizes.inside.target), 2),
    ...(q.depth && made && { proud: minus(made, mean(q.depth)) }),
    fromBlanks,
  });
}

function outsideSize({ recess, outsideClearance: c, steps }: RingQuestion) {
  const tight = mean(recess.tightest);
  const band = bandOf(recess.tightest);
  return sizeWithin({
    kind: 'outside',
    aim: minus(tight, c.aim),
    proved: {
      lower: plus(minus(mean(recess.loosest), c.upper), bandOf(recess.loosest).halfWidth),
      upper: minus(minus(tight, c.lower), band.halfWidth),
    },
    wanted: { lower: minus(tight, c.upper), upper: minus(tight, c.lower) },
    band,
    step: steps.diameter,
  });
}

function insideSize({ stem, insideClearance: c, steps }: RingQuestion) {
  const thick = mean(stem.tightest);
  const band = bandOf(stem.tightest);
  return sizeWithin({
    kind: 'bore',
    aim: plus(thick, c.aim),
    proved: {
      lower: plus(plus(thick, c.lower), band.halfWidth),
      upper: minus(plus(mean(stem.loosest), c.upper), bandOf(stem.loosest).halfWidth),
    },
    wanted: { lower: plus(thick, c.lower), upper: plus(thick, c.upper) },
    band,
    step: steps.diameter,
  });
}

type Sides = { readonly lower: Length; readonly upper: Length };

function sizeWithin({
  step,
  proved,
  wanted,
  ...rest
}: Pick<RingSize, 'kind' | 'aim' | 'band'> & {
  readonly step: Length;
  readonly proved: Sides;
  readonly wanted: Sides;
}): Result<RingSize> {
  const { kind, aim } = rest;
  const surely = isMore(proved.lower, proved.upper)
    ? undefined
    : metalOnTarget({ aim, ...proved }, kind, step);
  if (surely?.ok) return worked({ ...rest, ...proved, target: surely.value, provable: true });
  const target = metalOnTarget({ aim, ...wanted }, kind, step);
  return target.ok ? worked({ ...rest, ...wanted, target: target.value, provable: false }) : target;
}

/** A ring of no thickness is none: the fitter's own least where he gave one, else the usual. */
function leastThicknessOf({ leastThickness, shop = 'in' }: RingQuestion): Length {
  return leastThickness && isMore(leastThickness, zero) ? leastThickness : leastRing[shop];
}

/** As thick as there is room: what is left over can still be taken off. */
function thicknessSize(q: RingQuestion, depth: Estimate): Result<RingSize, RingRefusal | Refusal> {
  const { stayFree = zero, steps } = q;
  const least = leastThicknessOf(q);
  const band = bandOf(depth);
  const most = minus(minus(mean(depth), stayFree), band.halfWidth);
  if (!isMore(most, zero)) return refuse({ code: 'ring-no-depth', depth: mean(depth), stayFree, most });
  if (isLess(most, least)) return refuse({ code: 'ring-too-thin', most, least });
  const limits = { aim: most, lower: least, upper: most };
  const target = metalOnTarget(limits, 'length', steps.length);
  if (!target.ok) return target;
  return worked({ kind: 'length', ...limits, target: target.value, band, provable: true });
}
