import { backupStores } from '../base/stores.ts';
import { act } from './act.ts';
import { canBeNow, isDeviceId, isSoundStamp, nextStamp, type Stamp } from '../base/clock.ts';
import { eachKept } from './each-kept.ts';
import { isStamped } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from './open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/**
 * Makes the note of the last stamp anew, where it is damaged or gone: behind the latest stamp of all that is kept, so that
 * no stamp is ever given before one that was. A stamp that no clock could have given is not followed.
 */
export async function rebuildClock(store: Store): Promise<StoreResult<void>> {
  return act(store, { stores: [...backupStores, 'undo', 'device', 'home'], stamped: false }, async (a) => {
    const found: unknown = await a.tx.objectStore('device').get('clock');
    const known = isPlainObject(found) ? found : {};
    let latest: Stamp | undefined = isSoundStamp(known['last']) ? known['last'] : undefined;
    const note = (stamp: unknown) => {
      if (isSoundStamp(stamp) && (latest === undefined || stamp > latest)) latest = stamp;
    };
    for (const name of backupStores) {
      if (name === 'photoBytes') continue;
      // oxlint-disable-next-line no-await-in-loop
      await eachKept(a.tx, name, (record) => {
        if (isStamped(record)) Object.values(record.stamps).forEach(note);
      });
    }
    // An act's undo bears its stamp.
    for (const id of await a.tx.objectStore('undo').getAllKeys()) note(id);
    const deviceId = isDeviceId(known['deviceId']) ? known['deviceId'] : newId().slice(0, 8);
    const last = nextStamp({ last: latest, nowMs: canBeNow(a.at) ? a.at : 0, deviceId });
    const { acts, since } = known;
    const isPaired = (await a.tx.objectStore('home').get('place')) !== undefined;
    a.putKept('device', {
      ...(isPaired && { home: true }),
      ...(typeof acts === 'number' && { acts }),
      ...(typeof since === 'number' && { since }),
      id: 'clock',
      deviceId,
      last,
    });
  });
}
