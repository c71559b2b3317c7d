import { evaluate, formOf, lessForm } from './chain-form.ts';
import type { Evaluated } from './chain.ts';
import { mean, type Estimate } from './estimate.ts';
import { isMore, isNegative, largest, minus, negate, plus, zero, type Length } from './length.ts';
import { cutTarget, metalOnTarget } from './metal-on.ts';
import { refuse, worked, type Result } from './refusal.ts';
import type { LineUpLimit } from './tables/line-up-limits.ts';
import { verdictOf, type Verdict } from './verdict.ts';

/** A length to be reached, and between what it is proved to do. */
export type Reach = { readonly to: Length; readonly lower: Length; readonly upper: Length };

/** What to do about a spacer. `off` is the part on hand less the length wanted. */
export type SpacerDeed =
  | { readonly kind: 'no-room'; readonly by: Length }
  | { readonly kind: 'none' }
  | { readonly kind: 'make'; readonly make: Result<Reach> }
  | { readonly kind: 'keep'; readonly off: Length; readonly halfWidth: Length }
  | { readonly kind: 'trim'; readonly off: Length; readonly cut: Result<Reach & { readonly take: Length }> }
  | {
      readonly kind: 'shim';
      readonly off: Length;
      readonly shim: Result<Reach>;
      readonly make: Result<Reach>;
    }
  | {
      readonly kind: 'too-close';
      readonly off: Length;
      readonly halfWidth: Length;
      readonly terms: Evaluated['terms'];
      readonly verdict: Verdict;
    };

/**
 * Whether what is to be done for a spacer is known to bring it right: a part on hand that can't be told from its limits, or
 * a length the readings don't prove, does not; one that no dial reaches is no good.
 */
export function deedVerdict(deed: SpacerDeed): Verdict['kind'] {
  switch (deed.kind) {
    case 'none':
    case 'keep':
      return 'good';
    // Whether it is short for certain is the word of its room.
    case 'no-room':
    case 'too-close':
      return 'too-close';
    case 'make':
      return reachVerdict(deed.make);
    case 'trim':
      return reachVerdict(deed.cut);
    case 'shim':
      return deed.shim.ok ? 'good' : reachVerdict(deed.make);
    default:
      return deed satisfies never;
  }
}

function reachVerdict(reach: Result<Reach>): Verdict['kind'] {
  if (reach.ok) return 'good';
  return reach.refusal.code === 'no-proof' ? 'too-close' : 'no-good';
}

export type SpacerQuestion = {
  readonly wanted: Evaluated;
  readonly sizes: Readonly<Record<string, Estimate>>;
  readonly onHand: Estimate | undefined;
  readonly limit: LineUpLimit;
  readonly step: Length;
};

const ON_HAND = 'on hand';

/**
 * What to do for a spacer of a wanted length: keep the part on hand, trim it, shim it, or make a new one.
 *
 * Units:   off = on hand − wanted, with the band of both together (one tool's error is common to both). Inside the limit
 *          by the band: keep; longer: trim to the wanted length, rounded metal-on; shorter: a shim of −off, or a new
 *          part. The limits of a cut are what the wanted length's own band leaves of it ± the limit.
 * Range:   a wanted length below zero has no room, by how much; exactly none needs no part.
 * Refuses: per cut: no-proof (the band leaves nothing of the limits), no-step-in-limits.
 */
export function spacerDeed(q: SpacerQuestion): SpacerDeed {
  const { value } = q.wanted;
  if (isNegative(value)) return { kind: 'no-room', by: negate(value) };
  if (!isMore(value, zero)) return { kind: 'none' };
  if (!q.onHand) return { kind: 'make', make: makeNew(q) };
  return comparedWith(q.onHand, q);
}

function comparedWith(onHand: Estimate, q: SpacerQuestion): SpacerDeed {
  const difference = lessForm(formOf([{ of: ON_HAND, top: 1, bottom: 1 }]), formOf(q.wanted.terms));
  const { value: off, band, terms } = evaluate(difference, { ...q.sizes, [ON_HAND]: onHand });
  const { halfWidth } = band;
  const { by, source } = q.limit;
  const verdict = verdictOf({ value: off, halfWidth, limits: { lower: negate(by), upper: by, source } });
  if (verdict.kind === 'good') return { kind: 'keep', off, halfWidth };
  if (verdict.kind === 'too-close') return { kind: 'too-close', off, halfWidth, terms, verdict };
  if (verdict.way === 'over') return { kind: 'trim', off, cut: trimmed(mean(onHand), q) };
  return { kind: 'shim', off, shim: shimOf(off, halfWidth, by), make: makeNew(q) };
}

function makeNew({ wanted, limit, step }: SpacerQuestion): Result<Reach> {
  const limits = leftOf(wanted.value, wanted.band.halfWidth, limit.by);
  if (!limits.ok) return limits;
  const target = metalOnTarget({ aim: wanted.value, ...limits.value }, 'length', step);
  return target.ok ? worked({ to: target.value, ...limits.value }) : target;
}

function trimmed(present: Length, { wanted, limit, step }: SpacerQuestion) {
  const limits = leftOf(wanted.value, wanted.band.halfWidth, limit.by);
  if (!limits.ok) return limits;
  const cut = cutTarget({ aim: wanted.value, ...limits.value, present, kind: 'length', step });
  return cut.ok ? worked({ to: cut.value.target, take: cut.value.take, ...limits.value }) : cut;
}

function shimOf(off: Length, halfWidth: Length, by: Length): Result<Reach> {
  const limits = leftOf(negate(off), halfWidth, by);
  return limits.ok ? worked({ to: negate(off), ...limits.value }) : limits;
}

/** What a band leaves of a length ± its limit; nothing below zero. */
function leftOf(
  aim: Length,
  halfWidth: Length,
  by: Length,
): Result<{ readonly lower: Length; readonly upper: Length }> {
  if (isMore(halfWidth, by))
    return refuse({ code: 'no-proof', halfWidth, lower: minus(aim, by), upper: plus(aim, by) });
  const room = minus(by, halfWidth);
  return worked({ lower: largest(zero, minus(aim, room)), upper: plus(aim, room) });
}
