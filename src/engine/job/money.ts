import { addFractions, fraction, multiplyFractions, NONE, type Fraction } from '../length/exact-fraction.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';

/** What was typed for money or time, tidied so that it reads the same everywhere, and what it is exactly. */
export type Counted = { readonly text: string; readonly exact: Fraction };

export type MoneyField = 'amount' | 'rate' | 'hours';

/** Why a typed text is no amount, rate or number of hours. `say-money.ts` has the sentences. */
export type MoneyRefusal =
  | { readonly code: 'nothing-counted'; readonly field: MoneyField }
  | { readonly code: 'not-counted'; readonly field: MoneyField; readonly typed: string }
  | {
      readonly code: 'perhaps-thousands';
      readonly mark: 'comma' | 'point';
      readonly whole: string;
      readonly decimal: string;
    }
  | { readonly code: 'thousands-marked'; readonly plain: string }
  | { readonly code: 'too-fine'; readonly typed: string; readonly places: number }
  | { readonly code: 'too-much'; readonly field: MoneyField; readonly most: number }
  | { readonly code: 'below-nothing'; readonly field: MoneyField }
  | { readonly code: 'minutes-past-59'; readonly minutes: string }
  | { readonly code: 'bottom-of-zero' };

export type MoneyResult = Result<Counted, MoneyRefusal>;

// Chosen, not published: what one line of a one-person shop never reaches, so that more is a slip of the point.
const MOST: Record<MoneyField, number> = { amount: 1_000_000, rate: 10_000, hours: 1000 };
// Chosen, not published: finer than any coin, for a price by the piece or the metre.
const FINEST_PLACES = 4;
const LONGEST = 24;

/**
 * An amount of money or a rate as typed: `12.50`, `12,50`, `$12.50`, `-20` for money taken off.
 *
 * Units:   the currency's whole unit. `sign` may stand before or behind it; left out: text that is kept already.
 * Range:   −1,000,000 to 1,000,000 for an amount, 0 to 10,000 for a rate; at most four places.
 * Refuses: anything else; also `1,250`, which may be meant as thousands, `1.250` where the shop's currency isn't one of
 *          those counted with a decimal point, and `1.234,50`. Never a NaN and never a silent 0.
 */
export function readMoney(typed: string, field: 'amount' | 'rate', sign?: string): MoneyResult {
  const bare = plain(typed).replace(/^(-?) */, '$1');
  const text = bare
    .replace(sign?.trim() ?? '', '')
    .replace(/\s+/g, ' ')
    .trim();
  const value = readDecimal(text, field, sign !== undefined && !pointIsDecimal(sign));
  if (!value.ok) return value;
  if (field === 'rate' && value.value.exact.top < 0n) return refuse({ code: 'below-nothing', field });
  return withinMost(value.value, field);
}

/**
 * A time as typed: hours in decimals (`1.5`, `1,5`), in hours and minutes (`1:30`), or as a fraction (`1 1/2`, `3/4`).
 *
 * Units:   hours; minutes behind a colon.
 * Range:   0 to 1,000 hours.
 * Refuses: anything else, minutes past 59, a time below zero.
 */
export function readHours(typed: string): MoneyResult {
  const text = plain(typed)
    .replace(/ *h(ours?|rs?)?\.?$/i, '')
    .replace(/\s+/g, ' ');
  if (text.startsWith('-')) return refuse({ code: 'below-nothing', field: 'hours' });
  const clock = /^(\d{1,6}):(\d{1,2})$/.exec(text);
  if (clock) return hoursAndMinutes(clock[1] ?? '0', clock[2] ?? '0');
  const parts = /^(?:(\d{1,6}) )?(\d{1,6}) ?\/ ?(\d{1,6})$/.exec(text);
  if (parts) return fractionOfHours(parts[1], parts[2] ?? '0', parts[3] ?? '0');
  const value = readDecimal(text, 'hours');
  return value.ok ? withinMost(value.value, 'hours') : value;
}

function hoursAndMinutes(hours: string, minutes: string): MoneyResult {
  if (minutes.length < 2 || BigInt(minutes) > 59n) return refuse({ code: 'minutes-past-59', minutes });
  const exact = fraction(BigInt(hours) * 60n + BigInt(minutes), 60n);
  return withinMost({ text: `${BigInt(hours)}:${minutes}`, exact }, 'hours');
}

function fractionOfHours(whole: string | undefined, top: string, bottom: string): MoneyResult {
  if (/^0+$/.test(bottom)) return refuse({ code: 'bottom-of-zero' });
  const exact = addFractions(fraction(BigInt(whole ?? 0), 1n), fraction(BigInt(top), BigInt(bottom)));
  const text = `${whole === undefined ? '' : `${whole} `}${top}/${bottom}`;
  return withinMost({ text, exact }, 'hours');
}

// Where they pay with these a point stands before the cents, never between thousands. From memory.
const POINT_SIGNS = new Set(
  '$ £ US$ A$ AU$ C$ CA$ NZ$ HK$ S$ USD GBP AUD CAD NZD HKD SGD JPY CNY INR MXN ¥ ₹'.split(' '),
);

function pointIsDecimal(sign: string): boolean {
  return POINT_SIGNS.has(sign.trim().toUpperCase());
}

function readDecimal(text: string, field: MoneyField, pointMayBeThousands = false): MoneyResult {
  if (text === '' || text === '-') return refuse({ code: 'nothing-counted', field });
  const typed = text.slice(0, LONGEST);
  // "1,250" is 1250 to one fitter and 1.25 to another: money is not guessed at.
  const thousands = /^(-?[1-9]\d{0,2})([.,])(\d{3})$/.exec(text);
  if (thousands && (thousands[2] === ',' || pointMayBeThousands)) {
    const [, whole = '', mark, rest = ''] = thousands;
    return refuse({
      code: 'perhaps-thousands',
      mark: mark === ',' ? 'comma' : 'point',
      whole: `${whole}${rest}`,
      decimal: `${whole}.${rest}`,
    });
  }
  const marked = withoutThousands(text);
  if (marked !== undefined) return refuse({ code: 'thousands-marked', plain: marked });
  const parts = /^(-?)(\d*)(?:[.,](\d+))?$/.exec(text);
  const [, minus = '', whole = '', places = ''] = parts ?? [];
  if (!parts || text.length > LONGEST || whole + places === '')
    return refuse({ code: 'not-counted', field, typed });
  if (places.length > FINEST_PLACES) return refuse({ code: 'too-fine', typed, places: FINEST_PLACES });
  const size = fraction(BigInt(whole + places), 10n ** BigInt(places.length));
  const exact = minus === '' ? size : fraction(-size.top, size.bottom);
  const tidy = `${BigInt(whole === '' ? 0 : whole)}${places === '' ? '' : `.${places}`}`;
  return worked({ text: exact.top < 0n ? `-${tidy}` : tidy, exact });
}

/** `1.234,50`, `1,234.50`, `1 234 567`: what it most likely is, to be typed without the marks. */
function withoutThousands(text: string): string | undefined {
  const grouped =
    /^(-?[1-9]\d{0,2}(?:\.\d{3})+),(\d+)$/.exec(text) ??
    /^(-?[1-9]\d{0,2}(?:,\d{3})+)\.(\d+)$/.exec(text) ??
    /^(-?[1-9]\d{0,2}(?: \d{3})+)(?:[.,](\d+))?$/.exec(text) ??
    /^(-?[1-9]\d{0,2}(?:(?:\.\d{3}){2,}|(?:,\d{3}){2,}))$/.exec(text);
  if (!grouped || text.length > LONGEST) return undefined;
  const [, whole = '', places] = grouped;
  return `${whole.replace(/[., ]/g, '')}${places === undefined ? '' : `.${places}`}`;
}

function withinMost(value: Counted, field: MoneyField): MoneyResult {
  const { top, bottom } = value.exact;
  const size = top < 0n ? -top : top;
  const most = MOST[field];
  return size > BigInt(most) * bottom ? refuse({ code: 'too-much', field, most }) : worked(value);
}

// One character for one sign: a minus from any keyboard, a no-break space.
function plain(typed: string): string {
  return typed
    .replace(/\s/g, ' ')
    .replace(/[−‐‑‒–]/g, '-')
    .trim();
}

/** A line as it is kept: an amount, or hours at a rate. */
export type LineText = { readonly amount?: string; readonly hours?: string; readonly rate?: string };

/** What a line comes to, exactly; nothing while its rate is missing or where its text can't be read. */
export function lineMoney({ amount, hours, rate }: LineText): Fraction | undefined {
  if (amount !== undefined) return exactOf(readMoney(amount, 'amount'));
  if (hours === undefined || rate === undefined) return undefined;
  const time = exactOf(readHours(hours));
  const price = exactOf(readMoney(rate, 'rate'));
  return time && price && multiplyFractions(time, price);
}

function exactOf(read: MoneyResult): Fraction | undefined {
  return read.ok ? read.value.exact : undefined;
}

export type MoneyTotal = {
  /** Decimal text with the currency's places. */
  readonly total: string;
  /** Hours of all lines, rated or not, exactly. */
  readonly hours: Fraction;
  /** Lines that don't count: a rate or a figure is missing. */
  readonly leftOut: number;
  /** The lines as shown, each rounded by itself, don't add up to the total. */
  readonly differsFromLines: boolean;
};

/**
 * What the lines of a job come to.
 *
 * Units:   the currency's whole unit, `places` behind the point.
 * Range:   any lines as kept; none come to 0.
 * Source:  common practice, no source: added up exactly, rounded once, at the end; half to even (ISO 80000-1:2009,
 *          annex B, rule B), so that many totals don't drift upwards.
 */
export function moneyTotal(lines: readonly LineText[], places: number): MoneyTotal {
  const known = lines.map(lineMoney).filter((money) => money !== undefined);
  const total = roundMoney(known.reduce(addFractions, NONE), places);
  const ofLines = known.map((money) => fractionOf(roundMoney(money, places))).reduce(addFractions, NONE);
  const exact = fractionOf(total);
  return {
    total,
    hours: lines
      .map(({ hours }) => hours && exactOf(readHours(hours)))
      .filter((hours) => typeof hours === 'object')
      .reduce(addFractions, NONE),
    leftOut: lines.length - known.length,
    differsFromLines: exact.top * ofLines.bottom !== ofLines.top * exact.bottom,
  };
}

/** Decimal text with so many places, half to even (ISO 80000-1:2009, annex B, rule B). */
export function roundMoney({ top, bottom }: Fraction, places: number): string {
  const size = (top < 0n ? -top : top) * 10n ** BigInt(places);
  const below = size / bottom;
  const twiceRest = 2n * (size % bottom);
  const up = twiceRest > bottom || (twiceRest === bottom && below % 2n === 1n);
  const rounded = up ? below + 1n : below;
  const digits = String(rounded).padStart(places + 1, '0');
  const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return top < 0n && rounded !== 0n ? `-${text}` : text;
}

function fractionOf(decimal: string): Fraction {
  const [whole = '0', places = ''] = decimal.split('.');
  return fraction(BigInt(whole + places), 10n ** BigInt(places.length));
}
