import { listedFigures } from '../../length/decimal-text.ts';
import { absolute, isNegative, type Length } from '../../length/length.ts';
import { say } from '../../length/say.ts';
import { sayStrength } from '../../cut/say-strength.ts';
import { sayProves, sayVerdict, sayWant } from '../../reading/say-verdict.ts';
import {
  withUnit,
  figure,
  figureBetween,
  show,
  showBand,
  sayFromTo,
  type ShownUnit,
} from '../../length/show.ts';
import { showAgainst } from '../../length/show-limits.ts';
import { listed } from '../../length/say-words.ts';
import type { Estimate } from '../../reading/estimate.ts';
import type { ShimWanted, StackAnswer, StackPart, StackWant } from './spacer-stack.ts';
import type { OutOfParallel, Proof } from './stack-change.ts';
import type { LeftOut } from './stack-leave-out.ts';
import type { MadeOne } from './stack-one-part.ts';
import type { LongerPart, NewPart, SharedTrim, Trim, TrimOffer } from './stack-trim.ts';

const QUANTITIES: Readonly<Record<StackWant['kind'], string>> = {
  float: 'float',
  'end-play': 'end play',
  clamp: 'clamp',
};

/** What a stack does, against what is wanted: `Too tight: float .002, want .008 to .012.` */
export function sayStack(answer: StackAnswer, want: StackWant, unit: ShownUnit): string {
  if (want.kind !== 'clamp' && answer.verdict.kind === 'no-good' && isNegative(answer.gap))
    return sayTooProud(absolute(answer.gap), want, unit);
  const verdict = sayVerdict(answer.verdict, {
    quantity: QUANTITIES[want.kind],
    unit,
    limits: want.limits,
    value: answer.wanted,
    halfWidth: answer.band.halfWidth,
  });
  return [verdict, ...sayProud(answer.gap, want, unit)].join(' ');
}

/** `Too tight: .022 proud, want .008 to .012 free.` */
function sayTooProud(proud: Length, { limits }: StackWant, unit: ShownUnit): string {
  const shown = showAgainst([proud], limits, unit);
  return `Too tight: ${withUnit(shown.values[0] ?? '', unit)} proud, ${sayWant(shown, unit)} free.`;
}

/** The gap was read, and what it asked for was done since. */
export function sayReadItAgain(why: string): string {
  return `Read it again: ${why} since it was read.`;
}

export function sayReadGap({ kind }: Pick<StackWant, 'kind'>): string {
  return kind === 'clamp' ? 'read how far the parts stand proud now.' : 'read the gap as it is now.';
}

/** How far the sum can be trusted: by the readings, and if every error stood against it at once. */
export function sayStackBand({ band, worstCase, direct }: StackAnswer, unit: ShownUnit): string {
  const known = withUnit(showBand(band.halfWidth, unit), unit);
  if (direct) return `Read directly, to ${known}.`;
  return `Worked out from the sizes, to ${known}; ${withUnit(showBand(worstCase, unit), unit)} at the very worst.`;
}

/** `Face .008 in off spacer: .385 to .377; good from .375 to .379.`, or what can be done instead. */
export function sayTrim(offer: TrimOffer, unit: ShownUnit): string {
  const { result, figure: off, instead } = offer;
  if (result.ok) return sayFaced(result.value, unit);
  if (off) return `${sayFaced(off, unit)} ${say(result.refusal, unit)}`;
  return instead ? sayLeftOut(offer.part, instead, unit) : say(result.refusal, unit);
}

function sayFaced(trim: Trim, unit: ShownUnit): string {
  const { part, take, from, to } = trim;
  return withStrength(
    `Face ${show(take, unit)} off ${part}: ${figure(from, unit)} to ${figure(to, unit)}; ${sayFrom(trim, unit)}.`,
    [part],
  );
}

/** `Leave washer out: float .010.`, with what goes into its place or what has to come off besides. */
export function sayLeftOut(
  part: string,
  { pieces, leaves, kind, put, still }: LeftOut,
  unit: ShownUnit,
): string {
  const out = `Leave ${pieces > 1 ? `${pieces} of ${part}` : part} out`;
  if (put)
    return `${out}, and put a shim of ${withUnit(figureBetween(put.aim, put.lower, put.upper, unit), unit)} in its place.`;
  if (still) return `${out}; ${withUnit(figure(still, unit), unit)} more has to come off another part.`;
  return `${out}: ${QUANTITIES[kind]} ${withUnit(figure(leaves, unit), unit)}.`;
}

/** What parts give together where none can alone: `Face spacer from .100 to .060 and washer from .062 to .032.` */
export function sayShared({ trims, missing }: SharedTrim, unit: ShownUnit): string {
  const faced = trims.map(
    ({ part, pieces, from, to }) =>
      `${pieces > 1 ? `${pieces} of ` : ''}${part} from ${figure(from, unit)} to ${figure(to, unit)}`,
  );
  const short = missing ? ` ${withUnit(figure(missing, unit), unit)} is missing still.` : '';
  return withStrength(
    `${missing ? 'At the most: face' : 'Together: face'} ${listedFigures(faced)}.${short}`,
    trims.map(({ part }) => part),
  );
}

/** A part that carries load is never faced without its strength being said. */
function withStrength(said: string, parts: readonly string[]): string {
  return [said, ...parts.map(sayStrength)].filter((sentence) => sentence !== '').join(' ');
}

/** How much is too much or too little in all, whichever part gives: nobody said yet which one may. */
export function sayNeeded({ needed }: Pick<StackAnswer, 'needed'>, unit: ShownUnit): string {
  const by = withUnit(figure(absolute(needed.aim), unit), unit);
  return isNegative(needed.aim)
    ? `In all ${by} has to go in, or one part be longer by it.`
    : `In all ${by} has to come off the parts.`;
}

/** What no shim and no cut of another part cures. */
export function sayOutOfParallel({ by, room }: OutOfParallel, unit: ShownUnit): string {
  const [taper, limits] = [by, room].map((one) => withUnit(figure(one, unit), unit));
  return `One side has ${taper} more than the other, and the limits are only ${limits} apart: make the parts parallel first.`;
}

export function sayShim(shim: Sized, unit: ShownUnit): string {
  return `Add a shim of ${shimFigure(shim, unit)} ${unit}; ${sayFrom(shim, unit)}.`;
}

/** How thick the shim should be, where its limits have it. */
export function shimFigure(
  { thickness, lower, upper }: Pick<ShimWanted, 'thickness' | 'lower' | 'upper'>,
  unit: ShownUnit,
): string {
  return figureBetween(thickness, lower, upper, unit);
}

export function sayLongerPart(longer: LongerPart, unit: ShownUnit): string {
  const { part, from, to } = longer;
  return `Or make ${part} new: ${show(to, unit)} in place of ${figure(from, unit)}; ${sayFrom(longer, unit)}.`;
}

export function sayNewPart(made: NewPart, unit: ShownUnit): string {
  return `Or put one more spacer in: ${show(made.to, unit)}; ${sayFrom(made, unit)}.`;
}

type Sized = Pick<ShimWanted, 'thickness' | 'lower' | 'upper'> & Partial<Proof>;

/** Limits that are proved are good; others are said as what they are. */
export function sayFrom({ proved, lower, upper }: Omit<Sized, 'thickness'>, unit: ShownUnit): string {
  return `${proved === false ? 'by the sizes alone' : 'good'} ${sayFromTo(lower, upper, unit)}`;
}

const CHECK_IT: Readonly<Record<StackWant['kind'], string>> = {
  float: 'Feeler the float once it is together.',
  'end-play': 'Read the end play by indicator once it is together.',
  clamp: 'Read by depth gauge how far the parts stand proud.',
};

type Unproved = Pick<Proof, 'halfWidth'> & {
  /** What it is worked out from: one tool that read all of it is named. */
  readonly sizes?: readonly Estimate[];
};

/** To what a figure is proved that leaves nothing of the limits, and the check that settles it. */
export function sayUnproved(
  { halfWidth, sizes = [] }: Unproved,
  { kind }: StackWant,
  direct: boolean,
  unit: ShownUnit,
): string {
  const known = withUnit(showBand(halfWidth, unit), unit);
  if (direct)
    return `This reading proves it to ${known} only. Read it again once that is done, with a finer tool.`;
  return `${sayProves(sizes, halfWidth, unit)}. ${CHECK_IT[kind]}`;
}

/** `One part of .447 in does for washer and spacer, and leaves the same gap.` */
export function sayOnePart(parts: readonly StackPart[], length: Length, unit: ShownUnit): string {
  const names = parts.map(({ name, count }) => (count > 1 ? `${count} × ${name}` : name));
  return `One part of ${show(length, unit)} does for ${listed(names)}, and leaves the same gap.`;
}

/** `Made .439 it brings a float of .010.`; the same figure as the cut it is handed over as. */
export function sayMadeOne(made: MadeOne, want: StackWant, unit: ShownUnit): string {
  const { target, isShim } = made;
  if (isShim)
    return `For ${QUANTITIES[want.kind]} ${withUnit(figure(want.aim, unit), unit)} a shim of ${show(target, unit)} does it.`;
  return `For ${QUANTITIES[want.kind]} ${withUnit(figure(want.aim, unit), unit)} make it ${show(target, unit)}; ${sayFrom(made, unit)}.`;
}

function sayProud(gap: Length, want: StackWant, unit: ShownUnit): readonly string[] {
  if (want.kind === 'clamp')
    return isNegative(gap) ? [] : [`The parts don't stand proud: ${show(gap, unit)} is left.`];
  return isNegative(gap) ? [`The parts stand ${show(absolute(gap), unit)} proud, so nothing moves.`] : [];
}
