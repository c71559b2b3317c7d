import {
  deviceOf,
  isDeviceId,
  isSoundStamp,
  latestBelieved,
  latestOwn,
  seedDevice,
  stampMs,
  stampShape,
  type Stamp,
} from '../base/clock.ts';
import type { KeptStamped } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';

/**
 * What a phone has seen of every phone's changes, its own too: by unit (a job, or `*` for everything) and device the
 * latest stamp. A whole backup hands over everything up to that stamp; a job handed over by itself only that job.
 */
export type Seen = ReadonlyMap<string, Latest>;
type Latest = ReadonlyMap<string, Stamp>;

/** The same as it stands in a backup's first line and in the database: a stamp names its device itself. */
export type SeenLists = Readonly<Record<string, readonly Stamp[]>>;

export const EVERYTHING = '*';

/** Whether a change to something in this unit had been seen. */
export function hasSeen(seen: Seen, unit: string, stamp: Stamp): boolean {
  const device = deviceOf(stamp);
  if (device === seedDevice) return true;
  return [EVERYTHING, unit].some((name) => (seen.get(name)?.get(device) ?? '') >= stamp);
}

/** What two have seen together. */
export function seenByBoth(a: Seen, b: Seen): Seen {
  const units = new Set([...a.keys(), ...b.keys()]);
  const every = laterOf(a.get(EVERYTHING), b.get(EVERYTHING));
  const joined = new Map<string, Latest>();
  for (const unit of units) {
    const latest = unit === EVERYTHING ? every : beyond(laterOf(a.get(unit), b.get(unit)), every);
    if (latest.size > 0) joined.set(unit, latest);
  }
  return joined;
}

/** What is known of one unit, and of nothing else. */
export function seenOfUnit(seen: Seen, unit: string): Seen {
  return new Map([[unit, laterOf(seen.get(EVERYTHING), seen.get(unit))]]);
}

/** Everything of one device up to this stamp. */
export function seenUpTo(stamp: Stamp): Seen {
  return new Map([[EVERYTHING, new Map([[deviceOf(stamp), stamp]])]]);
}

/**
 * What whoever holds these records must have seen at least, where nobody wrote it down: of each device everything up to
 * its latest stamp among them, as backups were always whole then. A change that was overwritten since leaves no stamp, so
 * this may be less than was really seen.
 */
export function noteStamps(latest: Map<string, Stamp>, { stamps }: KeptStamped): void {
  for (const stamp of Object.values(stamps)) {
    const device = deviceOf(stamp);
    if (device !== seedDevice && stamp > (latest.get(device) ?? '')) latest.set(device, stamp);
  }
}

/**
 * For a backup's first line: what this phone has seen, of the one job where it is one. A phone that never took a file in
 * writes nothing: its records tell as much.
 */
export function seenForFile(clock: unknown, kept: unknown, jobId: string | undefined): { seen?: SeenLists } {
  const seen = isPlainObject(kept) ? seenIn(kept['lists']) : undefined;
  const own = ownLatest(clock);
  if (!seen || own === undefined) return {};
  const all = seenByBoth(seen, seenUpTo(own));
  return { seen: listsOf(jobId === undefined ? all : seenOfUnit(all, `jobs/${jobId}`)) };
}

/** Behind everything this phone did, by its note of the last stamp; nothing where that can't be read. */
export function ownLatest(clock: unknown): Stamp | undefined {
  const { last, deviceId } = isPlainObject(clock) ? clock : {};
  return isSoundStamp(last) && isDeviceId(deviceId) ? latestOwn(last, deviceId) : undefined;
}

export function listsOf(seen: Seen): SeenLists {
  return Object.fromEntries([...seen].map(([unit, latest]) => [unit, [...latest.values()]]));
}

/**
 * What a file says that its phone had seen, as far as it can have: nothing that this phone had not done yet (`last`, its
 * latest stamp), and nothing of a day after tomorrow. A claim to know what is still to come would hide what both wrote.
 */
export function seenBelieved(
  lists: unknown,
  { last, nowMs }: { readonly last: Stamp | undefined; readonly nowMs: number },
): Seen {
  const latestMs = latestBelieved(nowMs, last);
  const isPossible = ([device, stamp]: readonly [string, Stamp]) =>
    stampMs(stamp) <= latestMs && (last === undefined || device !== deviceOf(last) || stamp <= last);
  return new Map(
    [...(seenIn(lists) ?? [])].map(([unit, latest]) => [unit, new Map([...latest].filter(isPossible))]),
  );
}

// Chosen, not published: far more phones and handed-over jobs than a shop has.
const MOST_UNITS = 10_000;
const MOST_DEVICES = 200;
const LONGEST_UNIT = 120;

/** The lists read back; nothing when they aren't what they should be. */
export function seenIn(lists: unknown): Seen | undefined {
  if (!isPlainObject(lists)) return undefined;
  const units = Object.entries(lists);
  if (units.length > MOST_UNITS) return undefined;
  const seen = new Map<string, Latest>();
  for (const [unit, stamps] of units) {
    if (unit.length > LONGEST_UNIT || !Array.isArray(stamps) || stamps.length > MOST_DEVICES)
      return undefined;
    if (!stamps.every((stamp): stamp is Stamp => typeof stamp === 'string' && stampShape.test(stamp)))
      return undefined;
    seen.set(unit, new Map(stamps.map((stamp) => [deviceOf(stamp), stamp])));
  }
  return seen;
}

function laterOf(a: Latest | undefined, b: Latest | undefined): Latest {
  const later = new Map(a);
  for (const [device, stamp] of b ?? []) if (stamp > (later.get(device) ?? '')) later.set(device, stamp);
  return later;
}

function beyond(latest: Latest, every: Latest): Latest {
  return new Map([...latest].filter(([device, stamp]) => stamp > (every.get(device) ?? '')));
}
