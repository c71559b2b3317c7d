import { act } from '../opening/act.ts';
import { eachKept } from '../opening/each-kept.ts';
import { isGone, type Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import type { StoreResult } from '../base/store-refusal.ts';

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
    days: wholeDays(from, store.now()),
    changes: Math.max(0, acts - (numberIn(backup, 'acts') ?? 0)),
  };
}

/** Days by the clock on the wall: one is over at the same hour, also where it was 23 or 25 hours long. */
function wholeDays(from: number, now: number): number {
  let days = Math.ceil((now - from) / DAY_MS);
  const isOver = (count: number) => new Date(from).setDate(new Date(from).getDate() + count) <= now;
  while (days > 0 && !isOver(days)) days -= 1;
  return Math.max(0, days);
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

// Chosen, not published: more than that are not looked through while somebody waits for another screen.
const MOST_LOOKED_THROUGH = 2000;

/**
 * How much is kept here as the fitter would count it: what was removed is left out, a job with all that is in it. Readings
 * are counted job by job, as there may be a hundred thousand of them; they are removed with their feature only. Where
 * there is too much to look through, what was removed counts too.
 */
export async function countsKept(
  store: Store,
): Promise<Readonly<Record<'jobs' | 'readings' | 'photos', number>>> {
  return read(store, ['jobs', 'features', 'readings', 'photos'], async (tx) => {
    const jobs = new Set((await tx.objectStore('jobs').index('listedAt').getAllKeys()).map(String));
    const readings = tx.objectStore('readings');
    const pictures = await tx.objectStore('photos').count();
    if (pictures + (await tx.objectStore('features').count()) > MOST_LOOKED_THROUGH)
      return { jobs: jobs.size, readings: await readings.count(), photos: pictures };
    const logged = [...jobs].map((id) => readings.index('jobId+at').count(under(id)));
    const removed: Promise<number>[] = [];
    await eachKept(tx, 'features', ({ id, jobId, deleted }) => {
      if (deleted !== undefined && jobs.has(String(jobId)))
        removed.push(readings.index('featureId+at').getAll(under(id)).then(goneAmong));
    });
    let photos = 0;
    await eachKept(tx, 'photos', (photo) => {
      const { jobId } = photo;
      const isShown = typeof jobId !== 'string' || jobs.has(jobId);
      if (isShown && !isGone(photo)) photos += 1;
    });
    return { jobs: jobs.size, readings: (await sumOf(logged)) - (await sumOf(removed)), photos };
  });
}

function under(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}

function goneAmong(readings: readonly Kept[]): number {
  return readings.filter(isGone).length;
}

async function sumOf(counts: readonly Promise<number>[]): Promise<number> {
  return (await Promise.all(counts)).reduce((sum, count) => sum + count, 0);
}

function numberIn(record: unknown, field: string): number | undefined {
  const value = isPlainObject(record) ? record[field] : undefined;
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}
