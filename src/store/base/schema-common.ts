import type { StoreName } from './stores.ts';
import './jitless.ts';
import * as z from 'zod/mini';
import { fromText, toText, type Length } from '../../engine/length/length.ts';
import { stampShape } from './clock.ts';
import type { Kept } from './kept.ts';
import { keptWords, shownWords } from './plain-words.ts';
import type { Stamped } from './records.ts';

/** A kind of record: where it is kept and its schema, which turns decimal text into `Length` on the way in and back on the way out. */
export type RecordKind<T extends { readonly id: string }> = {
  readonly store: StoreName;
  readonly schema: z.ZodMiniType<T & Stamped>;
};

// Chosen, not published: far more than a fitter types, far less than would slow a phone down.
const LONGEST_LINE = 500;
const LONGEST_NOTE = 20_000;
const LONGEST_BASIS = 200_000;

const wordsUpTo = (most: number) =>
  z.codec(z.string().check(z.maxLength(most)), z.string(), { decode: shownWords, encode: keptWords });

/** Words of the fitter's: read, they can stand in any sentence. */
export const line = wordsUpTo(LONGEST_LINE);
export const note = wordsUpTo(LONGEST_NOTE);
// Ids stand in addresses, where `new` is a place of its own, and name entries of maps, as no word of an object's making may.
export const id = z.string().check(z.regex(/^(?!(?:new|__proto__|constructor|prototype)$)[\w/.:-]{1,100}$/));
/** Whole milliseconds since 1970, up to the year 2200. */
export const time = z.int().check(z.minimum(0), z.maximum(7_258_118_400_000));
/** Miles, kilometres, days: a whole number, none below zero. */
export const wholeNumber = z.int().check(z.minimum(0), z.maximum(100_000_000));
export const stamp = z.string().check(z.regex(stampShape));

const lengthLike = (shape: RegExp) =>
  z.codec(
    z.string().check(z.regex(shape)),
    // On the way out zod also looks at fields that aren't there; this stops it before it asks them for their text.
    z.custom<Length>((value) => typeof value === 'object' && value !== null),
    { decode: (text) => fromText(text), encode: (exact) => toText(exact) },
  );

/** Decimal text in millimetres, as `toText` writes it: at most 10 km, 60 places (a division ends after 40). */
export const length = lengthLike(/^-?(?:0|[1-9]\d{0,6})(?:\.\d{1,60})?$/);
/** The same, not below zero: what a tool is good for. */
export const lengthFromZero = lengthLike(/^(?:0|[1-9]\d{0,6})(?:\.\d{1,60})?$/);
/** The same, and not zero either: one mark of a dial. */
export const lengthOverZero = lengthLike(/^(?!0(?:\.0*)?$)(?:0|[1-9]\d{0,6})(?:\.\d{1,60})?$/);

export const unit = z.enum(['in', 'thou', 'mm']);
export const featureKind = z.enum(['bore', 'pin', 'length', 'depth', 'gap', 'runout']);
export const place = z.enum(['top', 'middle', 'bottom']);
export const direction = z.enum(['0', '90']);

/** What every record carries beside its own fields. */
export const stamped = {
  id,
  stamps: z.catchall(z.object({ '*': stamp }), stamp),
  deleted: z.exactOptional(stamp),
};

export const entry = { typed: line, unit, exact: length };
export const entrySchema = z.looseObject(entry);

/** Names in a map: of sizes, choices, parts, passes, takes. The three words that reach into an object's making are no names. */
export const entryName = z.string().check(z.regex(/^(?!(?:__proto__|constructor|prototype)$).{1,100}$/));

export const struckOutSchema = z.looseObject({ why: note, at: time });

/** A worksheet's inputs as canonical text. */
export const inputsAsText = z.string().check(z.maxLength(LONGEST_BASIS));

/** What an answer was worked out from. */
export const basisSchema = z.looseObject({
  readings: z.array(id).check(z.maxLength(10_000)),
  worksheet: inputsAsText,
});

/** An amount, hours: decimal text with a point, exact. */
export const decimalText = z.string().check(z.regex(/^-?(?:0|[1-9]\d{0,11})(?:\.\d{1,6})?$/));

export type ParsedRecord<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly field: string };

/** A kept record as its type; refuses with the field that doesn't hold what it should. */
export function parseKept<T extends { readonly id: string }>(
  kind: RecordKind<T>,
  kept: unknown,
): ParsedRecord<T & Stamped> {
  return outcome(z.safeParse(kind.schema, kept));
}

/** The record as it is kept. The way out is checked like the way in, so that nothing unreadable is ever written. */
export function toKept<T extends { readonly id: string }>(
  kind: RecordKind<T>,
  record: T & Stamped,
): ParsedRecord<Kept> {
  const encoded = outcome(z.safeEncode(kind.schema, record));
  if (!encoded.ok) return encoded;
  // The schema has just checked that this is an object with an id.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return { ok: true, value: encoded.value as Kept };
}

function outcome<T>(result: z.core.util.SafeParseResult<T>): ParsedRecord<T> {
  if (result.success) return { ok: true, value: result.data };
  const path = result.error.issues[0]?.path ?? [];
  return { ok: false, field: path.map(String).join('.') };
}

/** How warm something was read, and of what metal. */
export const readWarmthSchema = z.looseObject({ degrees: line, unit: z.enum(['C', 'F']), material: line });
