import type { BackupStore } from '../base/stores.ts';
import type { Kept, KeptStamped } from '../base/kept.ts';
import { mergeRecords, sameRecord } from '../base/merge.ts';
import { putTogether } from '../kept/put-together.ts';
import { checkRecord } from '../kept/any-record.ts';

export type Outcome = 'added' | 'changed' | 'same';

export type Merged = { readonly outcome: Outcome; readonly merged: KeptStamped };

/** A record of a file put together with the one that is here, and what that comes to. */
export function mergedWith(store: BackupStore, here: Kept | undefined, other: KeptStamped): Merged {
  // A photo's bytes never change.
  if (store === 'photoBytes') return { outcome: here ? 'same' : 'added', merged: other };
  const readable = here && checkRecord(store, here);
  // A record that is here but can't be read is worth less than its copy that can.
  const together = (one: KeptStamped) => putTogether(store, mergeRecords(one, other));
  if (!readable?.ok) return { outcome: here ? 'changed' : 'added', merged: together(other) };
  if (store === 'settings') return { outcome: 'same', merged: readable.value }; // what this phone has set stays set
  // A signed sheet never changes, its stamps neither; one with other words or figures was refused before.
  if (store === 'sheets') return { outcome: 'same', merged: readable.value };
  const merged = together(readable.value);
  return { outcome: sameRecord(readable.value, merged) ? 'same' : 'changed', merged };
}
