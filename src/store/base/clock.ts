/**
 * A hybrid logical clock reading as sortable text: milliseconds (15 digits), a counter (4 hexadecimal digits), the device.
 * Later stamps sort after earlier ones, also when the phone's clock was set back in between.
 */
export type Stamp = string;

/** Up to the year 2223: a stamp from further on would be a broken file, and would drag this phone's stamps along. */
export const stampShape = /^00[0-7]\d{12}-[0-9a-f]{4}-[a-z0-9-]{1,40}$/;

/** No Slipfit was there before: a phone that says so has lost its date. */
export const EARLIEST_MS = Date.UTC(2020, 0, 1);
/** Chosen, not published: nobody's phone is in that year, and a stamp of it would win over everything for good. */
export const LATEST_MS = Date.UTC(2100, 0, 1);
/** Two phones in two time zones, one of them set by hand, are less than this apart. */
export const DAY_MS = 24 * 3_600_000;

/** Whether a phone's clock can be right. */
export function canBeNow(ms: number): boolean {
  return ms >= EARLIEST_MS && ms < LATEST_MS;
}

/** The phone's time for what is kept; of a phone that has lost its date the first day that could be. */
export function timeToKeep(nowMs: number = Date.now()): number {
  return canBeNow(nowMs) ? nowMs : EARLIEST_MS;
}

/** Whether this is a stamp that a clock gave which could be right; `seed` is older than any. */
export function isSoundStamp(stamp: unknown): stamp is Stamp {
  return typeof stamp === 'string' && stampShape.test(stamp) && stampMs(stamp) < LATEST_MS;
}

/** Whether this names a device as a stamp does. */
export function isDeviceId(text: unknown): text is string {
  return typeof text === 'string' && /^[a-z0-9-]{1,40}$/.test(text);
}

/** The latest time that a stamp from elsewhere may bear: tomorrow, by this phone's clock or by what it gave last. */
export function latestBelieved(nowMs: number, last: unknown): number {
  const lastMs = isSoundStamp(last) ? stampMs(last) : 0;
  // A phone that has lost its date knows of no tomorrow: all that could be right is taken.
  return canBeNow(nowMs) ? Math.max(nowMs, lastMs) + DAY_MS : LATEST_MS;
}

/** The same stamp as if it had been given at this time. */
export function stampAtTime(stamp: Stamp, ms: number): Stamp {
  return `${digitsOf(ms)}${stamp.slice(DIGITS)}`;
}

const DIGITS = 15;
const LAST_COUNT = 0xffff;
const LAST_MS = 7_999_999_999_999;
/** Characters before the device: fifteen, four, and a dash behind each. */
const FIGURES = 21;

/**
 * The stamp after `last`: at the phone's time, or right behind `last` where the phone's clock lags. Behind the very last
 * one, which only a spoiled file brings, it begins that millisecond anew: a stamp that can't be kept would stop all work.
 */
export function nextStamp({
  last,
  nowMs,
  deviceId,
}: {
  readonly last: Stamp | undefined;
  readonly nowMs: number;
  readonly deviceId: string;
}): Stamp {
  const lastMs = last === undefined ? 0 : stampMs(last);
  // Without a date each stamp is a moment of its own, so that what is logged one after the other stays in that order.
  if (!canBeNow(nowMs)) return stampOf(Math.max(EARLIEST_MS, lastMs + 1), 0, deviceId);
  if (last === undefined || nowMs > lastMs) return stampOf(nowMs, 0, deviceId);
  const count = Number.parseInt(last.slice(16, 20), 16) + 1;
  return count > LAST_COUNT
    ? stampOf(Math.min(lastMs + 1, LAST_MS), 0, deviceId)
    : stampOf(lastMs, count, deviceId);
}

/** The milliseconds in a stamp. */
export function stampMs(stamp: Stamp): number {
  return Number(stamp.slice(0, 15));
}

/** The device that gave a stamp. */
export function deviceOf(stamp: Stamp): string {
  return stamp.slice(FIGURES);
}

/** What this device gave so far came at or before this stamp. The latest one it keeps may be another's that it has seen. */
export function latestOwn(last: Stamp, deviceId: string): Stamp {
  return `${last.slice(0, FIGURES)}${deviceId}`;
}

/** For records that every device starts with alike: older than anything a person does, so that any change wins. */
export const seedDevice = 'seed';
export const seedStamp: Stamp = stampOf(0, 0, seedDevice);

function stampOf(ms: number, count: number, deviceId: string): Stamp {
  return `${digitsOf(ms)}-${count.toString(16).padStart(4, '0')}-${deviceId}`;
}

function digitsOf(ms: number): string {
  return String(Math.max(0, Math.floor(ms))).padStart(DIGITS, '0');
}
