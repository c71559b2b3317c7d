import { isDeviceId, isSoundStamp, nextStamp, type Stamp } from '../base/clock.ts';
import type { Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import { isPlainObject } from '../base/paths.ts';
import { ClockDamaged, quiet, type ActParts, type Writing } from './act-parts.ts';

// The last stamp lives in the database and is read and written in the same transaction, so that two tabs of one
// phone can't give the same stamp twice and a clock that was set back doesn't run the stamps back.
// Whether the phone is paired stands beside it, so that an act asks nothing more to know that.
export async function takeStamp(parts: ActParts, nowMs: number): Promise<Stamp> {
  const { tx, writes, counted } = parts;
  const device: unknown = await tx.objectStore('device').get('clock');
  if (device === undefined ? await wasUsed(tx) : !isSoundClock(device)) throw new ClockDamaged();
  const known = isPlainObject(device) ? device : {};
  const deviceId = isDeviceId(known['deviceId']) ? known['deviceId'] : newId().slice(0, 8);
  const last = isSoundStamp(known['last']) ? known['last'] : undefined;
  const stamp = nextStamp({ last, nowMs, deviceId });
  const count = counted ? countedOn(known, nowMs) : {};
  writes.push(
    quiet(tx.objectStore('device').put({ ...known, ...count, id: 'clock', deviceId, last: stamp })),
  );
  if (known['home'] === true) parts.home = stamp;
  return stamp;
}

/** Both are written from the first act on; what a file brought could once carry the last stamp off to the end of all time. */
function isSoundClock(device: unknown): boolean {
  return isPlainObject(device) && isDeviceId(device['deviceId']) && isSoundStamp(device['last']);
}

/** Where nothing was ever done there is nothing to be behind. */
async function wasUsed(tx: Writing): Promise<boolean> {
  const [acts, notes] = await Promise.all([tx.objectStore('undo').count(), tx.objectStore('device').count()]);
  return acts + notes > 0;
}

// How much was changed since the last backup. It goes with the stamp, which is written anyway.
function countedOn({ acts, since }: Readonly<Record<string, unknown>>, nowMs: number) {
  return {
    acts: (typeof acts === 'number' ? acts : 0) + 1,
    since: typeof since === 'number' ? since : nowMs,
  };
}

/** Every stamp from now on comes behind this one. */
export async function keepLastStamp(tx: Writing, last: Stamp): Promise<void> {
  const clock: Kept | undefined = await tx.objectStore('device').get('clock');
  await tx.objectStore('device').put({ ...clock, id: 'clock', last });
}
