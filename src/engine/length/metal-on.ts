import { absolute, dividedBy, isLess, isMore, minus, roundToStep, times, type Length } from './length.ts';
import { refuse, worked, type Result } from './refusal.ts';

export type CutKind =
  | 'outside'
  | 'length'
  | 'bore'
  | 'recess-depth'
  | 'slot-depth'
  | 'slot-width'
  | 'tap-drill';

/** What a lathe or mill dial shows, and the smallest step it can be set to. */
export type Dial = {
  readonly reads: 'diameter' | 'radius';
  readonly graduation: Length;
  /** A compound at 29.5° from square, feeding a tool in along the flank of a 60° thread. */
  readonly alongFlank?: true;
};

/** What a step along the flank takes off a diameter: 2 cos 29.5°. */
const OFF_BY_FLANK = '1.7407113918798';

/** What a dial moves for so much off the size: half of it where it reads radius and the size is a diameter. */
export function onDial(of: CutKind, { reads, alongFlank }: Dial, take: Length): Length {
  if (!isDiameter(of)) return take;
  if (alongFlank) return dividedBy(take, OFF_BY_FLANK);
  return reads === 'radius' ? dividedBy(take, 2) : take;
}

type CutLimits = { readonly aim: Length; readonly lower: Length; readonly upper: Length };

/**
 * The step in which a size can be reached with this dial.
 *
 * Units:   a dial that reads radius steps a diameter (outside, bore, tap drill) by twice its graduation; lengths,
 *          depths and widths by the graduation itself. Along a flank at 29.5° it steps a diameter by 2 cos 29.5° of it.
 */
export function sizeStep(kind: CutKind, dial: Dial): Length {
  if (dial.alongFlank && isDiameter(kind)) return times(dial.graduation, OFF_BY_FLANK);
  return dial.reads === 'radius' && isDiameter(kind) ? times(dial.graduation, 2) : dial.graduation;
}

/**
 * A size rounded so that metal is left standing: it can still be taken off, never put back.
 *
 * Units:   outside sizes and lengths up; bores, recess and slot depths and widths, tap drills down.
 */
export function roundMetalOn(size: Length, kind: CutKind, step: Length): Length {
  return roundToStep(size, step, leavesMoreWhenLarge(kind) ? 'up' : 'down');
}

/**
 * The size to cut to: the aim rounded metal-on if that lies inside the limits, else the step inside them that leaves
 * most metal.
 *
 * Refuses: no-step-in-limits.
 */
export function metalOnTarget({ aim, lower, upper }: CutLimits, kind: CutKind, step: Length): Result<Length> {
  const inside = (size: Length) => !isLess(size, lower) && !isMore(size, upper);
  const aimed = roundMetalOn(aim, kind, step);
  if (inside(aimed)) return worked(aimed);
  const most = leavesMoreWhenLarge(kind) ? roundToStep(upper, step, 'down') : roundToStep(lower, step, 'up');
  return inside(most) ? worked(most) : refuse({ code: 'no-step-in-limits', step, lower, upper });
}

/**
 * The size to cut to and how much to take.
 *
 * Units:   target as `metalOnTarget`; take = the difference to the present size, never rounded by itself. A present
 *          size past the target but still inside the limits is left as it is: nothing to take.
 * Refuses: no-step-in-limits; metal-gone where the present size is past the limits already, with by how much.
 */
export function cutTarget(
  q: CutLimits & { readonly present: Length; readonly kind: CutKind; readonly step: Length },
): Result<{ readonly target: Length; readonly take: Length }> {
  const limit = leavesMoreWhenLarge(q.kind) ? q.lower : q.upper;
  if (isPast(q.present, limit, q.kind))
    return refuse({
      code: 'metal-gone',
      present: q.present,
      limit,
      past: absolute(minus(q.present, limit)),
    });
  const rounded = metalOnTarget(q, q.kind, q.step);
  if (!rounded.ok) return rounded;
  const target = isPast(q.present, rounded.value, q.kind) ? q.present : rounded.value;
  return worked({ target, take: absolute(minus(q.present, target)) });
}

function isPast(present: Length, size: Length, kind: CutKind): boolean {
  return leavesMoreWhenLarge(kind) ? isLess(present, size) : isMore(present, size);
}

/** Whether metal is left standing on the large side of the size: outsides and lengths. */
export function leavesMoreWhenLarge(kind: CutKind): boolean {
  return kind === 'outside' || kind === 'length';
}

/** Whether the size goes across an axis, so that a cut of some depth takes twice that off it. */
export function isDiameter(kind: CutKind): boolean {
  return kind === 'outside' || kind === 'bore' || kind === 'tap-drill';
}
