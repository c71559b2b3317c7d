import type { BackupStore } from '../base/stores.ts';
import type { OddCounts } from './backup-figures.ts';
import type { FileOrigin, StagedRecord } from './backup-staged.ts';
import type { Aside } from './backup-unreadable.ts';
import type { Believed } from '../phones/brought-down.ts';
import type { Store } from '../opening/open-store.ts';
import type { PointsOfPicture } from '../base/picture-size.ts';
import type { Seen } from '../phones/seen.ts';

/** What is known of a file while its lines are read. */
export type Reading = {
  readonly store: Store;
  readonly ids: Record<BackupStore, Map<string, string | undefined>>;
  readonly found: Record<BackupStore, number>;
  /** Records on their way to the disk. */
  readonly bundles: Map<BackupStore, { readonly entries: StagedRecord[]; length: number }>;
  /** The same for those that can't be read. */
  readonly aside: Aside;
  from: FileOrigin;
  latest: string;
  /** What the first line says its phone had seen, and the latest stamp of each phone among the records. */
  seen: Seen | undefined;
  readonly stamps: Map<string, string>;
  /** Up to when a time is believed. */
  believed: Believed;
  readonly odd: OddCounts;
  /** Of each photo how large it says that it is, or its bytes, whichever came first. */
  readonly pictures: Map<string, { readonly said?: PointsOfPicture; readonly has?: PointsOfPicture }>;
  /** Characters that went to the disk, photos' bytes apart. */
  length: number;
};

/** One of what `make` gives for each store of a backup. */
export function eachStore<T>(make: () => T): Record<BackupStore, T> {
  return {
    jobs: make(),
    parts: make(),
    features: make(),
    readings: make(),
    worksheets: make(),
    cuts: make(),
    checks: make(),
    steps: make(),
    rechecks: make(),
    photos: make(),
    photoBytes: make(),
    money: make(),
    sheets: make(),
    drawer: make(),
    drawerCounts: make(),
    tools: make(),
    settings: make(),
  };
}
