import type { AxleLayout, DiscInSlot } from './axle-layout.ts';
import { bandOf, mean, type Estimate } from '../../reading/estimate.ts';
import {
  absolute,
  isMore,
  isNegative,
  largest,
  minus,
  negate,
  plus,
  sum,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import type { LineUpLimit, LineUpLimits } from './tables/line-up-limits.ts';
import { verdictOf, type Limits, type Verdict } from '../../reading/verdict.ts';

type Known = Readonly<Record<string, Estimate>>;

/**
 * The sizes that hold what was read of the wheel's centre on the machine: by how much the side of that name is the wider
 * one. `either` is a difference without its side: +.100 and −.100 off the middle read the same.
 */
export const CENTRE_READ = {
  either: 'centreRead',
  left: 'centreLeftRead',
  right: 'centreRightRead',
} as const;

export type WiderSide = keyof typeof CENTRE_READ;

/** The sizes that hold what was read on the machine of one disc and its bracket. */
export function readOfDisc({ float }: Pick<DiscInSlot, 'float'>): {
  readonly float: string;
  /** The disc's face towards the hub, with the bracket pushed out; the other face with it pushed in. */
  readonly inside: string;
  readonly outside: string;
} {
  const side = /^(left|right)Float$/.exec(float)?.[1];
  const named = (name: string) =>
    side === undefined ? name : side + name.charAt(0).toUpperCase() + name.slice(1);
  return { float: named('floatRead'), inside: named('discInsideRead'), outside: named('discOutsideRead') };
}

/** The side of an axle with two discs that a disc is on, with a space behind it; else empty. */
export function sideOfDisc({ float }: Pick<DiscInSlot, 'float'>): string {
  const side = /^(left|right)Float$/.exec(float)?.[1];
  return side === undefined ? '' : `${side} `;
}

export function hasWheelCentre({ conditions }: Pick<AxleLayout, 'conditions'>): boolean {
  return conditions.some(({ name }) => name === 'wheel centre');
}

/**
 * By how much one side of a wheel may be wider than the other, where that side is named.
 *
 * Units:   twice as much as the wheel is off, as what one side gains the other loses: the left side is wider by
 *          2·o ± 2·limit (o + right), the right one by −2·o ± 2·limit.
 * Range:   a lower limit of nothing or less: on the side that should be the wider one at least half of what is wanted has
 *          to be read, as nothing there may be anything on the other side; on the other it is left out. Without its side
 *          a difference has to hold whichever side it is: 2·limit − 2·|o| at most, and nothing where that is below zero.
 */
export function centreLimits(offset: Length, { by, source }: LineUpLimit, side: WiderSide): Limits {
  if (side === 'either') return { source, upper: times(minus(by, absolute(offset)), 2) };
  const wanted = times(side === 'left' ? offset : negate(offset), 2);
  const lower = minus(wanted, times(by, 2));
  const upper = plus(wanted, times(by, 2));
  if (isMore(lower, zero)) return { source, lower, upper };
  return { source, ...(isMore(wanted, zero) && { lower: absolute(offset) }), upper };
}

/** The side to be read: where either may be the wider one, and half the room is left whichever it is, none is named. */
export function centreSide(offset: Length, { by }: LineUpLimit): WiderSide {
  if (!isMore(times(absolute(offset), 2), by)) return 'either';
  return isNegative(offset) ? 'right' : 'left';
}

type SidePlay = {
  readonly float: Length;
  readonly padWear?: Length;
  readonly limits: Pick<LineUpLimits, 'spacer' | 'wearMargin' | 'leastFloat'>;
};

/**
 * The side play a bracket may have.
 *
 * Units:   the float aimed at ± what it may be off.
 * Range:   the lower limit is always there and above zero: a bracket without any play is seized.
 */
export function sidePlayLimits(q: SidePlay): Limits & { readonly lower: Length; readonly upper: Length } {
  const { spacer, leastFloat } = q.limits;
  const aim = sidePlayAim(q);
  return {
    source: spacer.source,
    lower: largest(minus(aim, spacer.by), leastFloat.by),
    upper: plus(aim, spacer.by),
  };
}

/**
 * The float that a bracket is set to: the one wanted; where it follows its pads, so much that their wear and the margin are
 * still there when the parts are off by all they may be.
 */
function sidePlayAim({ float, padWear, limits: { spacer, wearMargin, leastFloat } }: SidePlay): Length {
  const least = padWear ? sum([padWear, wearMargin.by, spacer.by]) : leastFloat.by;
  return largest(float, least);
}

/** What was read of the wheel's centre, in place of the sum of the spacers. */
export function centreReadChecks(known: Known, limit: LineUpLimit): readonly LineUpCheck[] {
  const offset = known['offset'];
  const wanted = offset ? mean(offset) : zero;
  return WIDER_SIDES.flatMap((side) => {
    const read = known[CENTRE_READ[side]];
    return read ? [centreReadCheck(read, side, wanted, limit)] : [];
  });
}

const WIDER_SIDES: readonly WiderSide[] = ['left', 'right', 'either'];

function centreReadCheck(read: Estimate, side: WiderSide, wanted: Length, limit: LineUpLimit): LineUpCheck {
  const shown = side === 'either' ? centreSide(wanted, limit) : side;
  const limits = centreLimits(wanted, limit, shown);
  const check = readCheck(read, CENTRE_READ[side], { kind: 'wheel-centre', name: 'wheel centre', limits });
  if (side !== 'either') return check;
  return { ...check, verdict: whicheverSide(check, wanted, limit) };
}

/** A difference without its side is good only where it would be on either side, and no good where it would be on none. */
function whicheverSide({ value, band }: LineUpCheck, wanted: Length, { by, source }: LineUpLimit): Verdict {
  const middle = times(wanted, 2);
  const limits = { lower: minus(middle, times(by, 2)), upper: plus(middle, times(by, 2)), source };
  const asLeft = verdictOf({ value, ...band, limits });
  const asRight = verdictOf({ value: negate(value), ...band, limits });
  if (asLeft.kind === asRight.kind && asLeft.kind !== 'too-close')
    return isNegative(wanted) ? asRight : asLeft;
  return { kind: 'too-close', near: 'both', short: zero };
}

/** What was read of a bracket's side play, in place of the float that its spacers should leave. */
export function sidePlayCheck(
  disc: DiscInSlot,
  known: Known,
  { limits, slides }: { readonly limits: LineUpLimits; readonly slides: 'bracket' | 'caliper' | undefined },
): LineUpCheck | undefined {
  const name = readOfDisc(disc).float;
  const read = known[name];
  const float = known[disc.float];
  const padWear = slides === 'bracket' ? known['padWear'] : undefined;
  if (!read || !float) return undefined;
  const q = { float: mean(float), ...(padWear && { padWear: mean(padWear) }), limits };
  return readCheck(read, name, {
    kind: 'side-play',
    name: disc.name,
    limits: sidePlayLimits(q),
    aim: sidePlayAim(q),
  });
}

/**
 * What must be left beside a disc. Read on the machine at its tightest over a whole turn its runout is counted already,
 * and so it is in a sum that has it; in one that hasn't, what a disc usually has comes on top.
 */
export function discLimits(
  {
    discClearance,
    discRunout,
    leastFloat,
  }: Pick<LineUpLimits, 'discClearance' | 'discRunout' | 'leastFloat'>,
  runout: 'counted' | 'not-read',
): Limits {
  const { source } = discClearance;
  // Whatever was asked for: a disc with nothing beside it rubs.
  const by = largest(discClearance.by, leastFloat.by);
  return { lower: runout === 'counted' ? by : plus(by, discRunout.by), source };
}

/** A disc's face towards the hub, read with the bracket pushed out, or its other one, read with it pushed in. */
export type DiscFace = 'inside' | 'outside';

/** What was read beside the disc at the ends of the float, in place of the sum of slot, disc and float. */
export function discReadChecks(
  disc: DiscInSlot,
  known: Known,
  limits: LineUpLimits,
): readonly { readonly face: DiscFace; readonly check: LineUpCheck }[] {
  const names = readOfDisc(disc);
  const limitsOf = discLimits(limits, 'counted');
  return DISC_FACES.flatMap((face) => {
    const read = known[names[face]];
    const said = { kind: 'disc-in-slot', name: disc.name, limits: limitsOf } as const;
    return read ? [{ face, check: readCheck(read, names[face], said) }] : [];
  });
}

export const DISC_FACES: readonly DiscFace[] = ['inside', 'outside'];

/** How much the part between bracket and leg has to become shorter, below zero longer, for the float that is aimed at. */
export function sidePlayMiss({ value, aim }: LineUpCheck): Length | undefined {
  return aim && minus(aim, value);
}

function readCheck(
  read: Estimate,
  of: string,
  said: Pick<LineUpCheck, 'kind' | 'name' | 'limits' | 'aim'>,
): LineUpCheck {
  const value = mean(read);
  const band = bandOf(read);
  return {
    ...said,
    value,
    band,
    worstCase: band.halfWidth,
    terms: [{ of, top: 1, bottom: 1 }],
    verdict: verdictOf({ value, ...band, limits: said.limits }),
    against: [],
    gives: [],
    direct: true,
  };
}
