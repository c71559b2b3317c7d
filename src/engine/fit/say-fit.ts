import { marked } from '../length/decimal-text.ts';
import type { FormRefusal } from './fit-check.ts';
import type { FitLimits } from './fits.ts';
import type { IsoRefusal } from './fits-iso.ts';
import {
  absolute,
  decimalText,
  dividedBy,
  exactDecimalText,
  isMore,
  isNegative,
  isZero,
  lengthOf,
  negate,
  roundToStep,
  zero,
  type Length,
} from '../length/length.ts';
import { capital } from '../length/say-words.ts';
import { show, type ShownUnit } from '../length/show.ts';

/** Why a class gives no limits, and what to do about it. */
export function sayFitRefusal(refusal: IsoRefusal | FormRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'no-such-class':
      return `${refusal.fitClass} is no class of these tables. Metric ones read H7/g6, hole first; inch ones RC5, LC3, FN2.`;
    case 'class-not-at-size':
      return `${refusal.fitClass} is not made at ${show(refusal.nominal, unit)}. Pick the class next to it.`;
    case 'size-outside-fit-table':
      return isMore(refusal.nominal, zero)
        ? `${show(refusal.nominal, unit)} is past this table, which ends at ${show(refusal.upTo, unit)}. Set the clearance by hand, or use the other system.`
        : `A fit needs a size above zero. Type the size that hole and pin share, such as ${unit === 'in' ? '1/2' : '12'}.`;
    case 'form-eats-class':
      return `The ${refusal.part} is ${show(refusal.form, unit)} out of true, and the class leaves only ${show(refusal.room, unit)}. True it up first, or take a wider class.`;
    default:
      return refusal satisfies never;
  }
}

/** The clearance of a class in words: `.0012 to .0029 of clearance`, `.0004 of interference to .0011 of clearance`. */
export function sayClearance(
  { clearance, kind }: Pick<FitLimits, 'clearance' | 'kind'>,
  unit: ShownUnit,
): string {
  const { lower, upper } = clearance;
  const tail = unit === 'mm' ? ' mm' : '';
  const part = (length: Length) => limitFigure(length, unit);
  switch (kind) {
    case 'clearance':
      return `${part(lower)} to ${part(upper)}${tail} of clearance`;
    case 'transition':
      return `${part(negate(lower))}${tail} of interference to ${part(upper)}${tail} of clearance`;
    case 'interference':
      return `${part(negate(upper))} to ${part(negate(lower))}${tail} of interference`;
    default:
      return kind satisfies never;
  }
}

/** What a class is for, in plain words. */
export function sayFitClass(fit: Pick<FitLimits, 'fitClass' | 'system' | 'kind'>): string {
  return (
    (fit.system === 'ansi' ? ANSI_WORDS.get(fit.fitClass) : isoWords(fit.fitClass)) ?? KIND_WORDS[fit.kind]
  );
}

/** The same in two: the name that stands large, and what it means at the bench. */
export function fitClassNamed(fit: Pick<FitLimits, 'fitClass' | 'system' | 'kind'>): {
  readonly name: string;
  readonly meaning: string | undefined;
} {
  const [name = '', meaning] = sayFitClass(fit).split(': ');
  return { name: capital(name), meaning: meaning && capital(meaning) };
}

// The standard's own short names, with what they mean at the bench.
const ANSI_WORDS: ReadonlyMap<string, string> = new Map([
  ['RC1', 'close sliding: put in place exactly, no play to feel'],
  ['RC2', 'sliding: moves and turns easily by hand, does not run'],
  ['RC3', 'precision running: slow and light, the closest that runs freely'],
  ['RC4', 'close running: a pivot or bearing that must be accurate'],
  ['RC5', 'medium running: turns faster or carries more'],
  ['RC6', 'medium running, wider limits'],
  ['RC7', 'free running: accuracy does not matter, or it gets warm'],
  ['RC8', 'loose running: shafting and cold-rolled bar as it comes'],
  ['RC9', 'loose running, the widest'],
  ...['LC1', 'LC2', 'LC3', 'LC4'].map(
    (name) => [name, 'locates, goes together by hand, line to line at its tightest'] as const,
  ),
  ...['LC5', 'LC6'].map((name) => [name, 'locates with a little room, goes together easily'] as const),
  ...['LC7', 'LC8', 'LC9', 'LC10', 'LC11'].map(
    (name) => [name, 'goes together freely, locates only roughly'] as const,
  ),
  ['LT1', 'locates closely, mostly a little room'],
  ['LT2', 'locates closely, mostly a little room'],
  ['LT3', 'locates without play, light tap with a mallet'],
  ['LT4', 'locates without play, light tap with a mallet'],
  ['LT5', 'locates rigidly, light press'],
  ['LT6', 'locates rigidly, light press'],
  ['LN1', 'locates by a light press, holds no load by itself'],
  ['LN2', 'locates by a press, holds no load by itself'],
  ['LN3', 'locates by a press, holds no load by itself'],
  ['FN1', 'light drive: thin walls, long fits, cast iron'],
  ['FN2', 'medium drive: the usual press for steel parts'],
  ['FN3', 'heavy drive: heavy steel parts'],
  ['FN4', 'force: goes in with heat, for strong hubs only'],
  ['FN5', 'force: goes in with heat, for strong hubs only'],
]);

const KIND_WORDS = {
  clearance: 'always leaves room',
  transition: 'room or grip, as the parts fall out',
  interference: 'always grips',
} as const;

const ISO_WORDS: Readonly<Record<string, string>> = {
  c: 'loose: plenty of room, dirt and heat allowed for',
  d: 'free running: accuracy does not matter, or it gets warm',
  e: 'easy running: turns freely, carries load',
  f: 'close running: a pivot or bearing that must be accurate',
  g: 'sliding: moves and turns by hand, does not run',
  h: 'locates, goes together by hand, line to line at its tightest',
  js: 'locates closely, room or a light tap',
  k: 'locates without play, light tap with a mallet',
  m: 'locates rigidly, light press',
  n: 'locates rigidly, press',
  p: 'locates by a press, holds little load by itself',
  r: 'medium drive: press for softer parts and bushings',
  s: 'medium drive: the usual press for steel parts',
  t: 'heavy drive: with heat, for strong hubs',
  u: 'force: goes in with heat, for strong hubs only',
};

/** On a basic hole the pin's letter speaks, on a basic pin the hole's; any other pair only says what it leaves. */
function isoWords(fitClass: string): string | undefined {
  const [hole = '', pin = ''] = fitClass.split('/').map((zone) => zone.replace(/\d+$/, ''));
  if (hole === 'H') return ISO_WORDS[pin];
  return pin === 'h' ? ISO_WORDS[hole.toLowerCase()] : undefined;
}

/** The limits of one part as a fitter writes them: `.4998 to .5000`, `.62445 to .62475`; what no place ends is rounded inwards. */
export function sayLimits(
  { lower, upper }: { readonly lower: Length; readonly upper: Length },
  unit: ShownUnit,
): string {
  const from = inward(lower, unit, 'up');
  const to = inward(upper, unit, 'down');
  const isCrossed = isMore(from, to);
  return `${limitFigure(isCrossed ? lower : from, unit)} to ${limitFigure(isCrossed ? upper : to, unit)}`;
}

function inward(limit: Length, unit: ShownUnit, way: 'up' | 'down'): Length {
  const most = MOST_PRINTED[unit];
  if (placesIn(limit, unit) <= most) return limit;
  return roundToStep(limit, dividedBy(lengthOf(`1 ${unit}`), 10 ** (most - 1)), way);
}

// Half tenths and half micrometres.
const MOST_PRINTED: Readonly<Record<ShownUnit, number>> = { in: 5, mm: 4 };

function placesIn(limit: Length, unit: ShownUnit): number {
  return exactDecimalText(limit, unit).split('.')[1]?.length ?? 0;
}

/**
 * A limit of a class, with all the places that the tables print: tenths and micrometres always, half tenths and half
 * micrometres where a limit has them.
 */
export function limitFigure(limit: Length, unit: ShownUnit): string {
  if (isZero(limit)) return '0';
  const most = MOST_PRINTED[unit];
  const text = decimalText(absolute(limit), unit, placesIn(limit, unit) === most ? most : most - 1);
  return marked(`${isNegative(limit) ? '−' : ''}${unit === 'in' ? text.replace(/^0\./, '.') : text}`);
}
