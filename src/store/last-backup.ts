import { act } from './act.ts';
import type { Store } from './open-store.ts';
import { isPlainObject } from './paths.ts';
import { read } from './read.ts';
import type { StoreResult } from './store-refusal.ts';

/** What the phone has changed since its last backup, and when that was. */
export type SinceBackup = {
  /** When the last one was saved; none yet. */
  readonly at?: number;
  /** Whole days since then, or since the first change. */
  readonly days: number;
  /** Acts of a finger since then: each that was kept counts as one. */
  readonly changes: number;
};

const DAY_MS = 24 * 3_600_000;

export async function sinceBackup(store: Store): Promise<SinceBackup> {
  const [clock, backup]: unknown[] = await read(store, ['device'], (tx) =>
    Promise.all([tx.objectStore('device').get('clock'), tx.objectStore('device').get('backup')]),
  );
  const acts = numberIn(clock, 'acts') ?? 0;
  const at = numberIn(backup, 'at');
  const from = at ?? numberIn(clock, 'since') ?? store.now();
  return {
    ...(at !== undefined && { at }),
    days: Math.max(0, Math.floor((store.now() - from) / DAY_MS)),
    changes: Math.max(0, acts - (numberIn(backup, 'acts') ?? 0)),
  };
}

// Chosen, not published: a week's work is what a shop may have to measure again, and a handful of readings is no reason
// to disturb anybody.
const DUE_AFTER_DAYS = 7;
const DUE_AFTER_CHANGES = 25;

export function isBackupDue({ days, changes }: SinceBackup): boolean {
  return days >= DUE_AFTER_DAYS && changes >= DUE_AFTER_CHANGES;
}

/** How many acts were kept so far: asked before a backup is written, so that what comes meanwhile counts as new. */
export async function actsSoFar(store: Store): Promise<number> {
  const clock: unknown = await read(store, ['device'], (tx) => tx.objectStore('device').get('clock'));
  return numberIn(clock, 'acts') ?? 0;
}

/** Notes that a backup with that many acts in it was handed over. */
export async function noteBackup(store: Store, acts: number): Promise<StoreResult<void>> {
  return act(store, { stores: ['device'], stamped: false }, (a) => {
    a.putKept('device', { id: 'backup', at: a.at, acts });
  });
}

/** This phone's own mark, as its files name it. */
export async function phoneMark(store: Store): Promise<string | undefined> {
  const clock: unknown = await read(store, ['device'], (tx) => tx.objectStore('device').get('clock'));
  const mark = isPlainObject(clock) ? clock['deviceId'] : undefined;
  return typeof mark === 'string' ? mark : undefined;
}

/** How much is kept here, removed jobs apart. */
export async function countsKept(
  store: Store,
): Promise<Readonly<Record<'jobs' | 'readings' | 'photos', number>>> {
  return read(store, ['jobs', 'readings', 'photos'], async (tx) => {
    const [jobs, readings, photos] = await Promise.all([
      tx.objectStore('jobs').index('listedAt').count(),
      tx.objectStore('readings').count(),
      tx.objectStore('photos').count(),
    ]);
    return { jobs, readings, photos };
  });
}

function numberIn(record: unknown, field: string): number | undefined {
  const value = isPlainObject(record) ? record[field] : undefined;
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}
