import { absolute, isNegative, type Length } from './length.ts';
import { say } from './say.ts';
import { sayVerdict, withUnit } from './say-verdict.ts';
import { figure, figureBetween, show, showBand, showBetween, type ShownUnit } from './show.ts';
import type { LongerPart, StackAnswer, StackPart, StackWant, TrimOffer } from './spacer-stack.ts';

const QUANTITIES: Readonly<Record<StackWant['kind'], string>> = {
  float: 'float',
  'end-play': 'end play',
  clamp: 'clamp',
};

/** What a stack does, against what is wanted: `Too tight: float .002, want .008 to .012.` */
export function sayStack(answer: StackAnswer, want: StackWant, unit: ShownUnit): string {
  const verdict = sayVerdict(answer.verdict, {
    quantity: QUANTITIES[want.kind],
    unit,
    limits: want.limits,
    value: answer.wanted,
    halfWidth: answer.band.halfWidth,
  });
  return [verdict, ...sayProud(answer.gap, want, unit)].join(' ');
}

/** How far the sum can be trusted: by the readings, and if every error stood against it at once. */
export function sayStackBand({ band, worstCase, direct }: StackAnswer, unit: ShownUnit): string {
  const known = withUnit(showBand(band.halfWidth, unit), unit);
  if (direct) return `Read directly, to ${known}.`;
  return `Worked out from the sizes, to ${known}; ${withUnit(showBand(worstCase, unit), unit)} at the very worst.`;
}

/** `Face .008 in off spacer: .385 to .377; good from .375 to .379.`, or why it can't be done. */
export function sayTrim({ part, result }: TrimOffer, unit: ShownUnit): string {
  if (!result.ok) return say(result.refusal, unit);
  const { take, from, to, lower, upper } = result.value;
  return `Face ${show(take, unit)} off ${part}: ${figure(from, unit)} to ${figure(to, unit)}; good from ${range(lower, upper, unit)}.`;
}

export function sayShim(shim: NonNullable<StackAnswer['shim']>, unit: ShownUnit): string {
  return `Add a shim of ${shimFigure(shim, unit)} ${unit}; good from ${range(shim.lower, shim.upper, unit)}.`;
}

/** How thick the shim should be, where its limits have it. */
export function shimFigure(
  { thickness, lower, upper }: NonNullable<StackAnswer['shim']>,
  unit: ShownUnit,
): string {
  return figureBetween(thickness, lower, upper, unit);
}

export function sayLongerPart({ part, from, to, lower, upper }: LongerPart, unit: ShownUnit): string {
  return `Or make ${part} new: ${show(to, unit)} in place of ${figure(from, unit)}; good from ${range(lower, upper, unit)}.`;
}

/** `One part of .447 in does for washer and spacer, and leaves the same gap.` */
export function sayOnePart(parts: readonly StackPart[], length: Length, unit: ShownUnit): string {
  const names = parts.map(({ name, count }) => (count > 1 ? `${count} × ${name}` : name));
  const list =
    names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}` : names.join('');
  return `One part of ${show(length, unit)} does for ${list}, and leaves the same gap.`;
}

function sayProud(gap: Length, want: StackWant, unit: ShownUnit): readonly string[] {
  if (want.kind === 'clamp')
    return isNegative(gap) ? [] : [`The parts don't stand proud: ${show(gap, unit)} is left.`];
  return isNegative(gap) ? [`The parts stand ${show(absolute(gap), unit)} proud, so nothing moves.`] : [];
}

function range(lower: Length, upper: Length, unit: ShownUnit): string {
  return withUnit(showBetween(lower, upper, unit), unit);
}
