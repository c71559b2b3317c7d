import { inPoints } from '../../engine/length/decimal-text.ts';
import type { BackupStore } from '../base/stores.ts';
import { readEntry } from '../../engine/length/entry.ts';
import { fromText, isNegative, sameLength, type Unit } from '../../engine/length/length.ts';
import { figure, show } from '../../engine/length/show.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { EARLIEST_MS, LATEST_MS } from '../base/clock.ts';
import type { KeptStamped } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import { shownWords } from '../base/plain-words.ts';

/** What a record of a file says that a fitter is asked about before it is put in, by count. */
export type OddCounts = {
  /** Changes that bear a time after tomorrow. */
  ahead: number;
  /** Dates after tomorrow, or from before there was a Slipfit. */
  dates: number;
  /** Sizes that are shown rounded: what is kept has more digits than was written. */
  rounded: number;
};

export type FigureFault =
  | { readonly code: 'typed-differs' | 'below-zero'; readonly field: string; readonly typed: string }
  | { readonly code: 'wrong-field'; readonly field: string };

/**
 * What is wrong with the figures of a record from a file, whose form was found right: what was typed is read again and
 * must give the size that is kept, and a date must be one that there can be. What may be right is counted, to be asked.
 */
export function figureFault(
  store: BackupStore,
  record: KeptStamped,
  { latestMs, odd }: { readonly latestMs: number; readonly odd: OddCounts },
): FigureFault | undefined {
  if (store === 'photoBytes' || store === 'sheets') return dateFault(record, '', { latestMs, odd });
  return inPoints(() => sizeFault(store, record, odd)) ?? dateFault(record, '', { latestMs, odd });
}

/** Where nothing below zero can be read. */
const neverBelowZero: ReadonlySet<BackupStore> = new Set(['readings', 'drawer', 'settings']);
/** Of a cut: its limits, where a hole stands and what the dial was asked for may lie below zero. */
const sizesOfCut = /^(?:target|blank|passes\..*\.measured)$/;

/** Whether no pad would take in a size below zero here; a kind of worksheet that is newer than this Slipfit may. */
function isNeverBelowZero(store: BackupStore, { kind }: KeptStamped, path: string): boolean {
  if (store === 'cuts') return sizesOfCut.test(path);
  if (store !== 'worksheets') return neverBelowZero.has(store);
  const [where, name = ''] = path.split('.');
  const field = worksheetOf(String(kind))?.fields[name];
  return where === 'parts' || (where === 'sizes' && field?.enter === 'size' && field.signed !== true);
}

// Limits of a check and what the dial was asked for are worked out; nobody typed the text they are shown by.
const isWorkedOut = (store: BackupStore, path: string): boolean =>
  store === 'checks' ? /^(?:lower|upper)$/.test(path) : store === 'cuts' && /^passes\..*\.asked$/.test(path);

function sizeFault(store: BackupStore, record: KeptStamped, odd: OddCounts): FigureFault | undefined {
  for (const { path, typed, unit, exact } of sizesIn(record, '')) {
    const shown = shownWords(typed);
    const size = fromText(exact);
    const read = readEntry(shown, { unit, signed: true });
    const isRead = read.ok && sameLength(read.value.exact, size);
    const workedOut = isWorkedOut(store, path);
    const isShownSo = shown === show(size, unit) || (workedOut && shown === figure(size, unit));
    if (!isRead && !isShownSo) return { code: 'typed-differs', field: path, typed: shown };
    if (isNegative(size) && isNeverBelowZero(store, record, path))
      return { code: 'below-zero', field: path, typed: shown };
    if (!isRead && !workedOut) odd.rounded += 1;
  }
  return undefined;
}

type KeptSize = {
  readonly path: string;
  readonly typed: string;
  readonly unit: Unit;
  readonly exact: string;
};

function* sizesIn(value: unknown, path: string): Generator<KeptSize> {
  if (Array.isArray(value)) {
    for (const [index, inner] of value.entries()) yield* sizesIn(inner, below(path, String(index)));
    return;
  }
  if (!isPlainObject(value)) return;
  const { typed, unit, exact } = value;
  if (typeof typed === 'string' && isUnit(unit) && isDecimal(exact)) yield { path, typed, unit, exact };
  for (const [name, inner] of Object.entries(value)) yield* sizesIn(inner, below(path, name));
}

function isUnit(unit: unknown): unit is Unit {
  return unit === 'in' || unit === 'thou' || unit === 'mm';
}

// What nobody knows may have any text; the schema has looked at the fields that are known.
function isDecimal(exact: unknown): exact is string {
  return typeof exact === 'string' && /^-?\d{1,7}(?:\.\d{1,60})?$/.test(exact);
}

// A number: `from` is also where a size comes from.
const dateFields: ReadonlySet<string> = new Set([
  'at',
  'otherwiseAt',
  'from',
  'createdAt',
  'touchedAt',
  'signedAt',
  'lastChecked',
]);

function dateFault(
  value: unknown,
  path: string,
  dates: { readonly latestMs: number; readonly odd: OddCounts },
): FigureFault | undefined {
  if (!isPlainObject(value) && !Array.isArray(value)) return undefined;
  for (const [name, inner] of Object.entries(value)) {
    if (typeof inner === 'number' && dateFields.has(name)) {
      if (inner >= LATEST_MS) return { code: 'wrong-field', field: below(path, name) };
      if (inner > dates.latestMs || inner < EARLIEST_MS) dates.odd.dates += 1;
    }
    const fault = dateFault(inner, below(path, name), dates);
    if (fault) return fault;
  }
  return undefined;
}

function below(path: string, name: string): string {
  return path === '' ? name : `${path}.${name}`;
}
