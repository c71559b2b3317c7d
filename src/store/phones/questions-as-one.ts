import { canonicalText } from '../base/paths.ts';
import type { Conflict } from './conflict-schema.ts';
import type { LostField } from './conflicts-find.ts';

/**
 * The same question as two phones found it: each may have found fields of it that the other's copy no longer showed. In
 * either order the same comes out.
 */
export function questionsAsOne(a: Conflict, b: Conflict): Conflict {
  const [first, second] = isBefore(a, b) ? [a, b] : [b, a];
  return {
    ...first,
    fields: fieldsOfBoth(first.fields, second.fields),
    along: fieldsOfBoth(first.along, second.along),
  };
}

export function isSameQuestion(a: Conflict, b: Conflict): boolean {
  return canonicalText(a) === canonicalText(b);
}

function isBefore(a: Conflict, b: Conflict): boolean {
  if (a.foundAt !== b.foundAt) return a.foundAt < b.foundAt;
  return canonicalText(a) <= canonicalText(b);
}

function fieldsOfBoth(a: readonly LostField[], b: readonly LostField[]): LostField[] {
  const known = new Set(a.map(({ path }) => path));
  return [...a, ...b.filter(({ path }) => !known.has(path))];
}
