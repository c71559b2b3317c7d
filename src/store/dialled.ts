import { fromText, toText, type Length } from '../engine/length.ts';
import type { Draft, Id } from './records.ts';

/**
 * What was dialled in and cut since the size was last measured. It hangs on that measurement: a new one starts from
 * nothing, and striking that one out brings back what was dialled before it.
 */
export function dialledKey(cutId: Id, lastPassId: Id | undefined): string {
  return `lathe/${cutId}/dialled-since/${lastPassId ?? 'blank'}`;
}

/** Off the size, in the order they were cut; exact millimetres one behind the other. */
export function dialledText(amounts: readonly Length[]): string {
  return amounts.map(toText).join(' ');
}

/** What can't be read was not written by us: nothing dialled. */
export function readDialled(draft: Draft | undefined): readonly Length[] {
  const words = draft?.typed.split(' ').filter((word) => word !== '') ?? [];
  return words.every((word) => /^\d{1,7}(\.\d{1,60})?$/.test(word)) ? words.map(fromText) : [];
}
