import { Big as SharedBig, type Big as BigValue } from 'big.js';

/**
 * Exact lengths. This is the only file that knows a length is a big.js value in millimetres; everyone else
 * uses these functions, so that a stray `<` or `+` on lengths cannot compile or slip through.
 */
declare const exactMm: unique symbol;
export type Length = { readonly [exactMm]: true };

export type Unit = 'in' | 'thou' | 'mm';

/** Our own constructor: strict (a JS number or a stray `<` throws), 40 places where a division has to end. */
const Big = SharedBig();
Big.strict = true;
Big.DP = 40;
Big.PE = 1e6;
Big.NE = -1e6;

const MM_PER: Record<Unit, BigValue> = {
  in: new Big('25.4'), // exact by definition since 1959 (NIST SP 811, B.8)
  thou: new Big('0.0254'),
  mm: new Big('1'),
};

const HALF_EVEN = 2;
const DOWN = 0;
const NOUGHT = new Big('0');
const ONE = new Big('1');
const TWO = new Big('2');

// The two doors of the opaque type: nothing else in the project casts to or from Length, so what is inside is always ours.
// oxlint-disable-next-line typescript/no-unsafe-type-assertion
const seal = (mm: BigValue): Length => mm as unknown as Length;
// oxlint-disable-next-line typescript/no-unsafe-type-assertion
const open = (length: Length): BigValue => length as unknown as BigValue;

/** No length at all: exactly zero. */
export const zero: Length = seal(NOUGHT);

/**
 * A length from plain decimal text and a unit, or from text such as '0.4487 in', '29/64 in', '1-1/2 in', '11.4 mm'.
 *
 * For constants, tables and stored text. What a person types goes through `readEntry`, which refuses with a
 * sentence; here a malformed text is a broken promise of our own code, and throws.
 */
export function lengthOf(text: string): Length {
  const match = /^(-?)(?:(\d+)[- ](?=\d+\/))?(\d*\.?\d+)(?:\/(\d+))? ?(in|thou|mm)$/.exec(text.trim());
  const [, sign, whole = '0', top, bottom, unit] = match ?? [];
  if (top === undefined || (unit !== 'in' && unit !== 'thou' && unit !== 'mm'))
    throw new Error(`not a length: ${text}`);
  const parts = bottom === undefined ? new Big(top) : new Big(whole).times(bottom).plus(top);
  const inMm = unit === 'mm' ? parts : parts.times(MM_PER[unit]);
  // Hundreds of these stand in the tables, and dividing is what takes long.
  const size = bottom === undefined ? inMm : inMm.div(bottom);
  return seal(sign === '-' ? size.neg() : size);
}

/** From the decimal text kept in the database: millimetres, as `toText` wrote it. */
export function fromText(mm: string): Length {
  return seal(new Big(mm));
}

/** Plain decimal text in millimetres, never with an exponent; the form kept in the database and sent between devices. */
export function toText(length: Length): string {
  return withoutMinusZero(open(length).toFixed());
}

export function plus(a: Length, b: Length): Length {
  return seal(open(a).plus(open(b)));
}

export function minus(a: Length, b: Length): Length {
  return seal(open(a).minus(open(b)));
}

export function sum(lengths: readonly Length[]): Length {
  return lengths.reduce(plus, zero);
}

export function negate(a: Length): Length {
  return seal(open(a).neg());
}

export function absolute(a: Length): Length {
  return seal(open(a).abs());
}

/** A length times an exact factor, given as a whole number or as decimal text ('1.299038'). */
export function times(a: Length, factor: number | string): Length {
  return seal(open(a).times(exactFactor(factor)));
}

/** A length divided by an exact divisor; ends after 40 decimal places. Divide last, and once. */
export function dividedBy(a: Length, divisor: number | string): Length {
  return seal(open(a).div(exactFactor(divisor)));
}

/** a · numerator / denominator with the division last: clearance · arm / bore length, say. */
export function scaledBy(a: Length, ratio: { numerator: Length; denominator: Length }): Length {
  return seal(open(a).times(open(ratio.numerator)).div(open(ratio.denominator)));
}

/** √(a² + b²), 40 places. */
export function hypotenuse(a: Length, b: Length): Length {
  return seal(open(a).pow(2).plus(open(b).pow(2)).sqrt());
}

export function isLess(a: Length, b: Length): boolean {
  return open(a).lt(open(b));
}

export function isMore(a: Length, b: Length): boolean {
  return open(a).gt(open(b));
}

export function sameLength(a: Length, b: Length): boolean {
  return open(a).eq(open(b));
}

export function isNegative(a: Length): boolean {
  return open(a).lt(open(zero));
}

export function isZero(a: Length): boolean {
  return open(a).eq(open(zero));
}

/** For `.sort()`: smallest first. */
export function byLength(a: Length, b: Length): number {
  return open(a).cmp(open(b));
}

export function smallest(first: Length, ...rest: readonly Length[]): Length {
  return rest.reduce((least, next) => (isLess(next, least) ? next : least), first);
}

export function largest(first: Length, ...rest: readonly Length[]): Length {
  return rest.reduce((most, next) => (isMore(next, most) ? next : most), first);
}

/** How large a is beside b, as a plain ratio (floating point): for drawings, statistics and percents, never for a size. */
export function ratioOf(a: Length, b: Length): number {
  return Number(open(a).div(open(b)).toFixed());
}

/**
 * The one way back from floating point: millimetres from statistics or trigonometry, rounded half to even to `step`.
 * The caller names the step, so that it is written down how fine the figure is meant.
 */
export function lengthFromFloat(mm: number, step: Length): Length {
  if (!Number.isFinite(mm)) throw new Error('a length must be finite');
  const steps = new Big(mm.toFixed(15)).div(open(step)).round(0, HALF_EVEN);
  return seal(steps.times(open(step)));
}

/** For statistics only: the millimetres as a floating point number. A size never comes back from it except through `lengthFromFloat`. */
export function floatMm(a: Length): number {
  return Number(open(a).toFixed());
}

/** Rounded to a multiple of `step`, half to even (ISO 80000-1 annex B, ASTM E29): for showing, not for cutting. */
export function roundForShow(a: Length, step: Length): Length {
  return roundToStep(a, step, 'nearest');
}

export type Rounding = 'up' | 'down' | 'nearest';

/** The nearest multiple of `step` (above zero) above, below or closest (half to even); up and down mean towards plus and minus. */
export function roundToStep(a: Length, step: Length, way: Rounding): Length {
  const { below, over } = wholeSteps(open(a), open(step));
  if (way === 'down' || over.eq(NOUGHT)) return seal(below.times(open(step)));
  if (way === 'up') return seal(below.plus(ONE).times(open(step)));
  const side = over.times(TWO).cmp(open(step));
  const isOdd = !below.mod(TWO).eq(NOUGHT);
  return seal((side > 0 || (side === 0 && isOdd) ? below.plus(ONE) : below).times(open(step)));
}

// The whole steps at or below a value and what is over. A quotient is cut at 40 places and may round on to the next
// whole number, so the remainder, which is exact, has the last word.
function wholeSteps(value: BigValue, step: BigValue): { below: BigValue; over: BigValue } {
  const truncated = value.div(step).round(0, DOWN);
  const below = truncated.times(step).gt(value) ? truncated.minus(ONE) : truncated;
  return { below, over: value.minus(below.times(step)) };
}

/** Decimal text of a length in a unit with a fixed number of places, half to even; keeps the leading zero. Never "-0.00". */
export function decimalText(a: Length, unit: Unit, places: number): string {
  return withoutMinusZero(open(a).div(MM_PER[unit]).round(places, HALF_EVEN).toFixed(places));
}

/** Decimal text of a length in a unit, all its places where it ends within 40, else cut there. */
export function exactDecimalText(a: Length, unit: Unit): string {
  return withoutMinusZero(open(a).div(MM_PER[unit]).toFixed());
}

/** The place of the first significant digit after the point in a unit: 0.0012 → 3, 0.12 → 1, 3.4 → 0; zero → 0. */
export function leadingZeros(a: Length, unit: Unit): number {
  const size = open(a).abs().div(MM_PER[unit]);
  if (size.eq(new Big('0'))) return 0;
  return Math.max(0, -size.e);
}

function withoutMinusZero(text: string): string {
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}

function exactFactor(factor: number | string): BigValue {
  if (typeof factor === 'number' && !Number.isSafeInteger(factor))
    throw new Error('a factor must be whole, or decimal text');
  return new Big(String(factor));
}
