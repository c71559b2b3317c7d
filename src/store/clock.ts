/**
 * A hybrid logical clock reading as sortable text: milliseconds (15 digits), a counter (4 hexadecimal digits), the device.
 * Later stamps sort after earlier ones, also when the phone's clock was set back in between.
 */
export type Stamp = string;

/** Up to the year 2223: a stamp from further on would be a broken file, and would drag this phone's stamps along. */
export const stampShape = /^00[0-7]\d{12}-[0-9a-f]{4}-[a-z0-9-]{1,40}$/;

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
  return `${String(Math.max(0, Math.floor(ms))).padStart(15, '0')}-${count.toString(16).padStart(4, '0')}-${deviceId}`;
}
