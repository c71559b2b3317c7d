import { canonicalText } from './paths.ts';

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

function isSame(one: unknown, other: unknown): boolean {
  return canonicalText(one) === canonicalText(other);
}

function withoutSource(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'source' in value
    ? { ...value, source: undefined }
    : value;
}
