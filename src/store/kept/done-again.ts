import { deviceOf } from '../base/clock.ts';
import type { KeptStamped } from '../base/kept.ts';
import { stampAt } from '../base/merge.ts';
import { canonicalText, isPlainObject } from '../base/paths.ts';
import { keptWords } from '../base/plain-words.ts';

type Fields = Readonly<Record<string, unknown>>;

/**
 * What was done is what these say. A cure time and where a torque stands can still be written down afterwards: nobody
 * would have done it any other way.
 */
const DONE_AS = {
  steps: ['text', 'orientation', 'grease', 'locker', 'torque', 'cotterPin', 'worksheetId', 'partIds'],
  rechecks: ['what', 'afterDays', 'afterDistance', 'unit'],
} as const;

/** Whether what was done is no longer what the record says, so that it has to be done again. */
export function isToDoAgain(store: keyof typeof DONE_AS, before: Fields, after: Fields): boolean {
  // An act that also says by whom it was done knows what it says.
  if (before['done'] === undefined || !isSame(before['done'], after['done'])) return false;
  return DONE_AS[store].some((field) => !isSame(withoutSource(before[field]), withoutSource(after[field])));
}

/** What a step or re-check says, in short: it is kept with `done`, so that another phone's change shows. */
export function doneAs(store: keyof typeof DONE_AS, record: Fields): string {
  return inShort(DONE_AS[store].map((field) => withoutSource(record[field])));
}

/** The same for what a check by eye asks for. */
export function seenAs({ name, how }: Fields): string {
  return inShort([name, how]);
}

/** Whether the record says what it said to whoever did it. */
export function isDoneAs(store: keyof typeof DONE_AS, record: KeptStamped, done: unknown): boolean {
  return isAs({ record, as: isPlainObject(done) ? done['as'] : undefined, now: doneAs(store, record) }, [
    'done',
    ...DONE_AS[store],
  ]);
}

export function isSeenAs(check: KeptStamped, takeId: string, as: unknown): boolean {
  return isAs({ record: check, as, now: seenAs(check) }, [`takes.${takeId}`, 'name', 'how']);
}

/**
 * What an earlier Slipfit marked as done does not say as what: there a phone knew what it wrote itself, and nothing that
 * another wrote later.
 */
function isAs(
  { record, as, now }: { readonly record: KeptStamped; readonly as: unknown; readonly now: string },
  [doneAt, ...about]: readonly [string, ...string[]],
): boolean {
  if (as !== undefined) return as === now;
  const done = stampAt(record, doneAt);
  return !about.some((path) => {
    const written = stampAt(record, path);
    return written > done && deviceOf(written) !== deviceOf(done);
  });
}

/** A value in few letters, to see whether it is another by now: the same for words as they are kept and as they are shown. */
export function inShort(value: unknown): string {
  return canonicalText(new TextEncoder().encode(keptWords(canonicalText(value))).buffer);
}

function isSame(one: unknown, other: unknown): boolean {
  return canonicalText(one) === canonicalText(other);
}

function withoutSource(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'source' in value
    ? { ...value, source: undefined }
    : value;
}
