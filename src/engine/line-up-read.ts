import type { AxleLayout, DiscInSlot } from './axle-layout.ts';
import { bandOf, mean, type Estimate } from './estimate.ts';
import { absolute, isMore, largest, minus, plus, sum, times, zero, type Length } from './length.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import type { LineUpLimit, LineUpLimits } from './tables/line-up-limits.ts';
import { verdictOf, type Limits } from './verdict.ts';

type Known = Readonly<Record<string, Estimate>>;

/** The size that holds what was read of the wheel's centre on the machine: how much the two sides differ. */
export const CENTRE_READ = 'centreRead';

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
 * How much the two sides of a wheel may differ.
 *
 * Units:   twice as much as the wheel is off, as what one side gains the other loses: 2·|o| ± 2·limit.
 * Range:   never below zero; a lower limit that would be is left out.
 */
export function centreLimits(offset: Length, { by, source }: LineUpLimit): Limits {
  const wanted = times(absolute(offset), 2);
  const lower = minus(wanted, times(by, 2));
  return { source, ...(isMore(lower, zero) && { lower }), upper: plus(wanted, times(by, 2)) };
}

type SidePlay = {
  readonly float: Length;
  readonly padWear?: Length;
  readonly limits: Pick<LineUpLimits, 'spacer' | 'wearMargin'>;
};

/**
 * The side play a bracket may have.
 *
 * Units:   the float aimed at ± what a spacer may be off.
 * Range:   a lower limit of nothing or less is left out.
 */
export function sidePlayLimits(q: SidePlay): Limits {
  const { by, source } = q.limits.spacer;
  const aim = sidePlayAim(q);
  const lower = minus(aim, by);
  return { source, ...(isMore(lower, zero) && { lower }), upper: plus(aim, by) };
}

/**
 * The float that a bracket is set to: the one wanted; where it follows its pads, so much that their wear and the margin are
 * still there when a spacer is off by all it may be.
 */
function sidePlayAim({ float, padWear, limits: { spacer, wearMargin } }: SidePlay): Length {
  return padWear ? largest(float, sum([padWear, wearMargin.by, spacer.by])) : float;
}

/** What was read of the wheel's centre, in place of the sum of the spacers. */
export function centreReadCheck(known: Known, limit: LineUpLimit): LineUpCheck | undefined {
  const read = known[CENTRE_READ];
  const offset = known['offset'];
  return (
    read &&
    readCheck(read, CENTRE_READ, {
      kind: 'wheel-centre',
      name: 'wheel centre',
      limits: centreLimits(offset ? mean(offset) : zero, limit),
    })
  );
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

export const DISC_LIMITS: Limits = { lower: zero, source: 'the disc must not touch the slot' };

/** What was read beside the disc at the ends of the float, in place of the sum of slot, disc and float. */
export function discReadChecks(disc: DiscInSlot, known: Known): readonly LineUpCheck[] {
  const { inside, outside } = readOfDisc(disc);
  return [inside, outside].flatMap((name) => {
    const read = known[name];
    return read
      ? [readCheck(read, name, { kind: 'disc-in-slot', name: disc.name, limits: DISC_LIMITS })]
      : [];
  });
}

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
    verdict: verdictOf({ value, halfWidth: band.halfWidth, limits: said.limits }),
    against: [],
    gives: [],
    direct: true,
  };
}
