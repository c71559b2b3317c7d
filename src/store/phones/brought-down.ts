import { EARLIEST_MS, stampAtTime, stampMs, type Stamp } from '../base/clock.ts';
import type { KeptStamped } from '../base/kept.ts';

/** The latest time that is believed, and the time that a stamp from beyond it counts as. */
export type Believed = { readonly latestMs: number; readonly insteadMs: number };

/** A stamp from after tomorrow counts as given when its file was written; where that is no time either, it wins over nothing. */
export function believedFor(latestMs: number, writtenAt: number): Believed {
  const isSound = Number.isInteger(writtenAt) && writtenAt >= EARLIEST_MS && writtenAt <= latestMs;
  return { latestMs, insteadMs: isSound ? writtenAt : EARLIEST_MS };
}

/**
 * The record with its stamps from after tomorrow brought down, and how many those were. As it stands it would win over
 * everything that is done until then, and this phone's own stamps would go along with it.
 */
export function broughtDown(
  record: KeptStamped,
  { latestMs, insteadMs }: Believed,
): { readonly record: KeptStamped; readonly count: number } {
  const isAhead = (stamp: Stamp) => stampMs(stamp) > latestMs;
  const all = Object.entries(record.stamps);
  const count = all.filter(([, stamp]) => isAhead(stamp)).length;
  const { deleted } = record;
  const isRemovalAhead = typeof deleted === 'string' && isAhead(deleted);
  if (count === 0 && !isRemovalAhead) return { record, count };
  const sound = (stamp: Stamp) => (isAhead(stamp) ? stampAtTime(stamp, insteadMs) : stamp);
  const stamps = Object.fromEntries(all.map(([path, stamp]) => [path, sound(stamp)]));
  return {
    count: Math.max(1, count),
    record: {
      ...record,
      stamps: { ...stamps, '*': sound(record.stamps['*']) },
      ...(isRemovalAhead && { deleted: sound(deleted) }),
    },
  };
}
