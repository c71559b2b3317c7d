import { evaluate, formOf, lessForm } from './chain-form.ts';
import type { Evaluated } from './chain.ts';
import { mean, typedEstimate, type Estimate } from '../../reading/estimate.ts';
import {
  isLess,
  isMore,
  isNegative,
  largest,
  minus,
  negate,
  plus,
  smallest,
  zero,
  type Length,
} from '../../length/length.ts';
import type { Leeway } from './line-up-budget.ts';
import { cutTarget, metalOnTarget } from '../../length/metal-on.ts';
import type { ToolInForce } from '../../reading/measuring-tool.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import type { LineUpLimit } from './tables/line-up-limits.ts';
import { verdictOf, type Limits, type Verdict } from '../../reading/verdict.ts';

/** A length to be reached, and between what it is proved to do. */
export type Reach = {
  readonly to: Length;
  readonly lower: Length;
  readonly upper: Length;
  /** The band that leaves nothing of its limits: they stand whole, by the sizes alone. */
  readonly unproved?: Length;
};

/** What to do about a spacer. `off` is the part on hand less the length wanted, where the others are as they were measured. */
export type SpacerDeed =
  | { readonly kind: 'no-room'; readonly by: Length }
  | { readonly kind: 'none' }
  /** Shorter than can be faced, and so little that without it all holds as well. */
  | { readonly kind: 'leave-out'; readonly by: Length }
  /** Shorter than can be faced: something else has to give. */
  | { readonly kind: 'too-short'; readonly by: Length; readonly least: Length }
  | { readonly kind: 'make'; readonly make: Result<Reach> }
  | { readonly kind: 'keep'; readonly off: Length; readonly halfWidth: Length }
  | { readonly kind: 'trim'; readonly off: Length; readonly cut: Result<Reach & { readonly take: Length }> }
  | {
      readonly kind: 'shim';
      readonly off: Length;
      readonly shim: Result<Reach>;
      readonly make: Result<Reach>;
    }
  /** Left until the parts that share its limits are in the hand: it is cut to what they were measured. */
  | { readonly kind: 'last'; readonly after: readonly string[] }
  | {
      readonly kind: 'too-close';
      readonly off: Length;
      readonly halfWidth: Length;
      readonly terms: Evaluated['terms'];
      readonly limits: Limits;
      readonly verdict: Verdict;
    };

/**
 * Whether what is to be done for a spacer is known to bring it right: a part on hand that can't be told from its limits, or
 * a length the readings don't prove, does not; one that no dial reaches is no good.
 */
export function deedVerdict(deed: SpacerDeed): Verdict['kind'] {
  switch (deed.kind) {
    case 'none':
    case 'leave-out':
    case 'keep':
      return 'good';
    case 'too-short':
      return 'no-good';
    // Whether it is short for certain is the word of its room; what is left for later isn't right yet.
    case 'no-room':
    case 'last':
    case 'too-close':
      return 'too-close';
    case 'make':
      return reachVerdict(deed.make);
    case 'trim':
      return reachVerdict(deed.cut);
    case 'shim':
      return deed.shim.ok ? reachVerdict(deed.shim) : reachVerdict(deed.make);
    default:
      return deed satisfies never;
  }
}

function reachVerdict(reach: Result<Reach>): Verdict['kind'] {
  if (reach.ok) return reach.value.unproved ? 'too-close' : 'good';
  return 'no-good';
}

/** What of a deed is still to be cut or shimmed to, and between which lengths. */
export function reachOf(deed: SpacerDeed): Result<Reach> | undefined {
  switch (deed.kind) {
    case 'make':
      return deed.make;
    case 'trim':
      return deed.cut;
    case 'shim':
      return deed.shim;
    case 'no-room':
    case 'none':
    case 'leave-out':
    case 'too-short':
    case 'keep':
    case 'last':
    case 'too-close':
      return undefined;
    default:
      return deed satisfies never;
  }
}

/** The band that leaves nothing of the limits of what is to be cut. */
export function unprovedOf(deed: SpacerDeed): Length | undefined {
  const reach = reachOf(deed);
  return reach?.ok === true ? reach.value.unproved : undefined;
}

export type SpacerQuestion = {
  readonly wanted: Evaluated;
  readonly sizes: Readonly<Record<string, Estimate>>;
  readonly onHand: Estimate | undefined;
  readonly limit: LineUpLimit;
  /** How closely it will be told from what is wanted then, once it is cut and measured. */
  readonly cutHalfWidth: Length;
  /** Shorter than that no spacer is faced. */
  readonly least: Length;
  readonly step: Length;
};

/** Whether a part on hand does, before it is known how closely the others have to be cut. */
export type SpacerChoice =
  | Extract<SpacerDeed, { kind: 'no-room' | 'none' | 'leave-out' | 'too-short' | 'keep' | 'too-close' }>
  | { readonly kind: 'make' }
  | { readonly kind: 'trim' | 'shim'; readonly off: Length; readonly halfWidth: Length };

const ON_HAND = 'on hand';

/**
 * What to do for a spacer of a wanted length: keep the part on hand, trim it, shim it, or make a new one.
 *
 * Units:   off = on hand − wanted, with the band of both together (one tool's error is common to both). Inside the limit
 *          by the band: keep; longer: trim; shorter: shim or make new.
 * Range:   a wanted length below zero has no room, by how much; exactly none needs no part. One that can't be faced so short
 *          is only kept or shimmed.
 */
export function spacerChoice(q: SpacerQuestion): SpacerChoice {
  const { value } = q.wanted;
  if (isNegative(value)) return { kind: 'no-room', by: negate(value) };
  if (!isMore(value, zero)) return { kind: 'none' };
  const choice: SpacerChoice = q.onHand ? comparedWith(q.onHand, q) : { kind: 'make' };
  const isFaced = choice.kind === 'make' || choice.kind === 'trim';
  return isFaced && isLess(value, q.least) ? { kind: 'too-short', by: value, least: q.least } : choice;
}

/** The wider of what the sizes leave a wanted length known to, and what it and the cut part will be told apart by. */
export function halfWidthOnceCut({
  wanted,
  wantedThen,
  cutSizes,
  tool,
}: {
  readonly wanted: Evaluated;
  readonly wantedThen: Evaluated;
  readonly cutSizes: Readonly<Record<string, Estimate>>;
  readonly tool: ToolInForce | undefined;
}): Length {
  const difference = lessForm(formOf([{ of: ON_HAND, top: 1, bottom: 1 }]), formOf(wantedThen.terms));
  const { band } = evaluate(difference, { ...cutSizes, [ON_HAND]: typedEstimate(wanted.value, tool) });
  return largest(wanted.band.halfWidth, band.halfWidth);
}

function comparedWith(onHand: Estimate, q: SpacerQuestion): SpacerChoice {
  const difference = lessForm(formOf([{ of: ON_HAND, top: 1, bottom: 1 }]), formOf(q.wanted.terms));
  const { value: off, band, terms } = evaluate(difference, { ...q.sizes, [ON_HAND]: onHand });
  const { halfWidth } = band;
  const { by, source } = q.limit;
  const limits = { lower: negate(by), upper: by, source };
  const verdict = verdictOf({ value: off, ...band, limits });
  if (verdict.kind === 'good') return { kind: 'keep', off, halfWidth };
  if (verdict.kind === 'too-close') return { kind: 'too-close', off, halfWidth, terms, limits, verdict };
  return { kind: verdict.way === 'over' ? 'trim' : 'shim', off, halfWidth };
}

/** How far a part may be off by itself, before it shares with others: what its wanted length's own band leaves of the limit. */
export function mostLeeway({
  wanted,
  limit,
  least,
  cutHalfWidth,
}: Pick<SpacerQuestion, 'wanted' | 'limit' | 'least' | 'cutHalfWidth'>): Leeway {
  const { value } = wanted;
  const room = largest(zero, minus(limit.by, cutHalfWidth));
  // What is less than can be faced is made up by shims, which can be as thin as they like.
  const down = isLess(value, least) ? value : minus(value, least);
  return { down: smallest(room, largest(down, zero)), up: room };
}

/**
 * What to do for a spacer, with the limits that are left for it.
 *
 * Units:   the wanted length rounded metal-on, inside the leeway that it has of what all parts share.
 * Range:   where the readings leave nothing of the limits (`unproved` is the band that took it) the figure stands all the same,
 *          with its limits whole.
 * Refuses: per cut: below-least-length, no-step-in-limits.
 */
export function spacerDeed(
  choice: SpacerChoice,
  q: SpacerQuestion,
  { leeway, unproved }: { readonly leeway: Leeway; readonly unproved: Length | undefined },
): SpacerDeed {
  switch (choice.kind) {
    case 'no-room':
    case 'none':
    case 'leave-out':
    case 'too-short':
    case 'keep':
    case 'too-close':
      return choice;
    case 'make':
      return { kind: 'make', make: makeNew(q, leftOf(q.wanted.value, q, leeway, unproved)) };
    case 'trim':
      return {
        kind: 'trim',
        off: choice.off,
        cut: trimmed(q, leftOf(q.wanted.value, q, leeway, unproved)),
      };
    case 'shim': {
      const left = leftOf(negate(choice.off), q, leeway, unproved, choice.halfWidth);
      return {
        kind: 'shim',
        off: choice.off,
        shim: worked({ to: negate(choice.off), ...left }),
        make: makeNew(q, leftOf(q.wanted.value, q, leeway, unproved)),
      };
    }
    default:
      return choice satisfies never;
  }
}

type Left = Omit<Reach, 'to'>;

function makeNew({ wanted, least, step }: SpacerQuestion, limits: Left): Result<Reach> {
  if (isLess(wanted.value, least))
    return refuse({ code: 'below-least-length', part: 'it', least, missing: minus(least, wanted.value) });
  const target = metalOnTarget({ aim: wanted.value, ...limits }, 'length', step);
  return target.ok ? worked({ to: target.value, ...limits }) : target;
}

function trimmed({ wanted, onHand, step }: SpacerQuestion, limits: Left) {
  const present = onHand ? mean(onHand) : wanted.value;
  const cut = cutTarget({ aim: wanted.value, ...limits, present, kind: 'length', step });
  return cut.ok ? worked({ to: cut.value.target, take: cut.value.take, ...limits }) : cut;
}

/** The leeway about an aim; nothing below zero. */
function leftOf(
  aim: Length,
  { limit: { by }, cutHalfWidth }: SpacerQuestion,
  { down, up }: Leeway,
  unproved: Length | undefined,
  // A shim makes up for what is known of wanted length and part on hand together.
  halfWidth: Length = cutHalfWidth,
): Left {
  const tooWide = isMore(halfWidth, by) ? halfWidth : unproved;
  if (tooWide) return { lower: largest(zero, minus(aim, by)), upper: plus(aim, by), unproved: tooWide };
  const room = minus(by, halfWidth);
  return {
    lower: largest(zero, minus(aim, smallest(down, room))),
    upper: plus(aim, smallest(up, room)),
  };
}
