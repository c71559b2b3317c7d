import { fromText, toText, type Length } from '../../engine/length/length.ts';
import { passesOf } from './cut-state.ts';
import type { Cut, Draft, Id } from '../base/records.ts';

/**
 * What was dialled in and cut since the size was last measured. It hangs on that measurement: a new one starts from
 * nothing, and striking that one out brings back what was dialled before it.
 */
export function dialledKey(cutId: Id, lastPassId: Id | undefined): string {
  return `lathe/${cutId}/dialled-since/${lastPassId ?? 'blank'}`;
}

/** In place of what was dialled since a measurement that was struck out: it hangs on the one before by now. */
export const MOVED = 'moved';

/**
 * What was cut since the size was last measured. A measurement whose striking out was undone has what was cut since
 * then, too, as has one before it that was struck out with it.
 */
export async function dialledSince(
  cut: Pick<Cut, 'id' | 'passes'>,
  draftOf: (key: string) => Promise<Draft | undefined>,
): Promise<readonly Length[]> {
  const standing = passesOf(cut).filter(([, { struckOut }]) => !struckOut);
  const since = async (back: number): Promise<readonly Length[]> => {
    const pass = standing.at(-1 - back);
    const own = await draftOf(dialledKey(cut.id, pass?.[0]));
    if (!pass || own?.typed !== MOVED) return readDialled(own);
    const before = await since(back + 1);
    return pass[1].asked ? before.slice(1) : before;
  };
  return since(0);
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
