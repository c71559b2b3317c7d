import { act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import type { SettingKey, SettingValues } from '../base/records.ts';
import { followingSettings } from '../base/following-settings.ts';
import { keptSetting, readSetting } from './setting-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A setting, or nothing when it was never set or what is kept doesn't parse: the caller has its own usual value. */
export async function getSetting<Key extends SettingKey>(
  store: Store,
  key: Key,
): Promise<SettingValues[Key] | undefined> {
  const kept: unknown = await read(store, ['settings'], (tx) => tx.objectStore('settings').get(key));
  return readSetting(key, kept);
}

/** Keeps a setting, and what it was before for undo. What follows the fitter about by itself is kept the light way, without. */
export async function putSetting<Key extends SettingKey>(
  store: Store,
  key: Key,
  value: SettingValues[Key],
): Promise<StoreResult<void>> {
  return changeSetting(store, key, () => value);
}

/** The same from what is kept now, which a press just before this one may have changed. */
export async function changeSetting<Key extends SettingKey>(
  store: Store,
  key: Key,
  change: (kept: SettingValues[Key] | undefined) => SettingValues[Key],
): Promise<StoreResult<void>> {
  const onTheWay = followingSettings.has(key);
  const plan = { durability: onTheWay ? 'relaxed' : 'strict', counted: !onTheWay } as const;
  return act(store, { ...plan, stores: ['settings'] }, async (a) => {
    const before = await a.kept('settings', key);
    const value = change(readSetting(key, before));
    const kept = keptSetting(key, value) ?? a.refuse({ code: 'cannot-keep', store: 'settings', field: key });
    const setting = { id: key, value: kept, stamps: { '*': a.stamp } };
    const label = undoLabels[key];
    if (label === undefined) return a.putKept('settings', setting);
    a.changeKept('settings', before, setting);
    return a.undoable(label);
  });
}

/** Those a finger sets in Shop. The tool and place last used stand on the pad and are chosen there again by one press. */
const undoLabels: Readonly<Partial<Record<SettingKey, string>>> = {
  shownUnit: 'Changed the unit of the figures',
  decimalMark: 'Changed the decimals',
  padSize: 'Changed the keypad',
  light: 'Changed the light',
  dial: 'Changed the dial',
  lathe: 'Changed the lathe',
  mill: 'Changed the mill',
  fitter: 'Changed who signs',
  shopName: 'Changed the name of the shop',
  currency: 'Changed the sign of money',
  sayAloud: 'Changed what is read out',
};
