import { readEntry } from '../../engine/length/entry.ts';
import { isMore, zero, type Length } from '../../engine/length/length.ts';
import type { Draft, Id } from '../../store/base/records.ts';

/**
 * The work's diameter where the cut is a length, for its speed only. It is kept like what is half typed: on this phone,
 * until it is typed anew.
 */
export function workDiameterKey(cutId: Id): string {
  return `lathe/${cutId}/work-diameter`;
}

/** What is half typed is no diameter yet: only a whole size counts. */
export function workDiameter(draft: Draft | undefined): Length | undefined {
  if (!draft) return undefined;
  const entry = readEntry(draft.typed, { unit: draft.unit });
  return entry.ok && isMore(entry.value.exact, zero) ? entry.value.exact : undefined;
}
