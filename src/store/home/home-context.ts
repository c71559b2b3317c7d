import type { Stamp } from '../base/clock.ts';
import type { Kept, KeptStamped } from '../base/kept.ts';
import type { BackupStore } from '../base/stores.ts';
import type { Store } from '../opening/open-store.ts';
import type { Conflict } from '../phones/conflict-schema.ts';
import type { RecordSeen } from '../phones/record-seen.ts';
import type { Couch } from './couch.ts';
import type { HomeKeys } from './sealing.ts';

/** What a round works with. Nothing in it is worth keeping: a round that was broken off begins anew from the database. */
export type Home = {
  readonly store: Store;
  readonly couch: Couch;
  readonly keys: HomeKeys;
  /** This phone's mark in its stamps, as it is now. */
  device: () => string;
  /** Revisions that this phone wrote itself, `id rev`: what is in them was here. */
  readonly ownRevs: Set<string>;
  /** Outbox rows that home has, with the mark they had: they go once both hold the same token. */
  readonly sent: Map<string, string>;
  /** Whose a stamp is, as far as the marks at home tell. */
  whoIs: (stamp: Stamp) => Conflict['from'];
  readonly sizes: Sizes;
  /** Told of each record that meets its copy from home. For the trial, which knows another way what must be asked. */
  readonly onMet?: (meeting: MetRecord) => void;
};

/** How much goes at once. Small steps, so that logging waits for nothing: 50 documents a transaction took 16 ms, 35 at most. */
export type Sizes = {
  /** Lines of the feed in one answer. */
  readonly page: number;
  /** Documents fetched, opened and met at once. */
  readonly batch: number;
  /** Records looked up and sent at once, and at most so many bytes. */
  readonly rows: number;
  readonly bytes: number;
  /** Steps between two tokens: what a break costs at most. */
  readonly stepsToToken: number;
};

export const usualSizes: Sizes = { page: 500, batch: 50, rows: 250, bytes: 700_000, stepsToToken: 20 };

export type MetRecord = {
  readonly docId: string;
  readonly rev: string;
  readonly store: BackupStore;
  readonly id: string;
  readonly here: Kept | undefined;
  readonly there: KeptStamped;
  readonly metThere: RecordSeen;
};
