import type { Stamp } from '../base/clock.ts';
import type { Id } from '../base/records.ts';
import { sha256 } from '../base/sha-256.ts';
import type { BackupStore } from '../base/stores.ts';

// Chosen: 128 bits of it, as many as in the ids of records.
const BYTES_OF_THE_NAME = 16;

/**
 * The name of a question, by what it is about: the record and the two writes that did not know each other. Whichever phone
 * finds it, by a file or by what is at home, it is the same question, found once and answered once.
 */
export function questionId(
  of: { readonly store: BackupStore; readonly id: Id },
  { lostStamp, wonStamp }: { readonly lostStamp: Stamp; readonly wonStamp: Stamp },
): Id {
  const about = new TextEncoder().encode(`${of.store}/${of.id} ${lostStamp} ${wonStamp}`);
  const name = sha256(about).subarray(0, BYTES_OF_THE_NAME);
  return `q-${Array.from(name, (byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
