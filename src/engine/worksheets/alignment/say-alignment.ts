import { marked } from '../../length/decimal-text.ts';
import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import { figure, figureTo, showBand, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Verdict } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import type { AlignmentRefusal, OutfitQuestion } from './alignment.ts';
import type { Lean } from './lean.ts';
import { goesIn, type Move } from './toe.ts';

/** Degrees to a tenth: `1.8°`, `−0.4°`. */
export function sayTenths(degrees: number): string {
  return marked(`${(Math.round(degrees * 10) / 10 + 0).toFixed(1)}°`.replace('-', '−'));
}

/** Lean-out against what is wanted. */
export function sayLean({ degrees, withinDegrees, want, verdict }: Lean): string {
  const is = `lean-out ${sayTenths(degrees)}`;
  const wants = `want ${sayTenths(want.lower)} to ${sayTenths(want.upper)}`;
  switch (verdict.kind) {
    case 'good':
      return `Good: ${is}, ${wants}.`;
    case 'no-good':
      return `${verdict.way === 'under' ? 'Too little' : 'Too much'}: ${is}, ${wants}.`;
    case 'too-close':
      return `Too close to call: ${is} ±${marked(withinDegrees)}°, ${wants}.`;
    default:
      return verdict satisfies never;
  }
}

/** Two distances that should be alike: the diagonals, or both sides of two axles. */
export function sayAlike(
  what: string,
  { verdict, value, halfWidth, limits }: Judged,
  unit: ShownUnit,
): string {
  const by = withUnit(figure(absolute(value), unit), unit);
  const want = `want ${withUnit(figure(limits.upper ?? value, unit), unit)} or less`;
  const words: Readonly<Record<Verdict['kind'], string>> = {
    good: `Good: ${what} differ by ${by}, ${want}.`,
    'no-good': `Out of square: ${what} differ by ${by}, ${want}.`,
    'too-close': `Too close to call: ${what} differ by ${by}, known to ${showBand(halfWidth, unit)}.`,
  };
  return words[verdict.kind];
}

/** `Move the front fitting in`. */
export function sayFitting(move: Move, { moves }: Pick<OutfitQuestion, 'moves'>): string {
  return `Move the ${moves} fitting ${goesIn(move, moves) ? 'in' : 'out'}`;
}

/** What moves it: `2.4 turns of the turnbuckle`, `shim it so much`. */
export function sayTurns(
  { turns }: Move,
  { adjuster, pitch }: Pick<OutfitQuestion, 'adjuster' | 'pitch'>,
): string {
  const what = adjuster === 'turnbuckle' ? 'turnbuckle' : 'screwed end';
  if (turns !== undefined) return `${marked(turns.toFixed(turns < 10 ? 1 : 0))} turns of the ${what}`;
  if (adjuster === 'shim') return 'by shims, or in its clamp';
  return pitch ? `by its ${what}` : `by its ${what}: thread not given`;
}

/** A length that gets longer or shorter: `.350 longer`. */
export function sayLonger(move: Parameters<typeof moveFigure>[0], unit: ShownUnit): string {
  return `${moveFigure(move, unit)} ${isNegative(move.by) ? 'shorter' : 'longer'}`;
}

export function sayAlignmentRefusal(refusal: AlignmentRefusal): string {
  switch (refusal.code) {
    case 'no-triangle':
      return 'No axle is that long between those diagonals. Read all three again.';
    case 'places-together':
      return 'The front and rear places have to lie apart. Give the distance between them.';
    case 'fittings-together':
      return 'The lower fittings have to lie apart. Give the distance between them.';
    case 'limits-crossed':
      return 'The least that is wanted is more than the most. Swap them, or leave one out.';
    default:
      return refusal satisfies never;
  }
}

/** `in, known to ±.020`; nothing is known of what is taken as exact. */
export function withBand(
  said: string,
  { halfWidth }: { readonly halfWidth: Length },
  unit: ShownUnit,
): string {
  if (isZero(halfWidth)) return said;
  const known = `known to ${withUnit(showBand(halfWidth, unit), unit)}`;
  return said === '' ? known : `${said}, ${known}`;
}

/** How far; what was read by tape or straight edge no finer than a thou or a hundredth of a millimetre. */
export function moveFigure(
  { by, halfWidth }: { readonly by: Length; readonly halfWidth: Length },
  unit: ShownUnit,
): string {
  return isZero(halfWidth) ? figure(absolute(by), unit) : figureTo(absolute(by), unit, unit === 'in' ? 3 : 2);
}
