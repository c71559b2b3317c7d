import type { Store } from '../opening/open-store.ts';
import { canonicalText } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import type { SettingKey, SettingValues } from '../base/records.ts';
import { readSetting } from './setting-schema.ts';
import { watch } from '../opening/watch.ts';

/**
 * The settings as they stand: read whole, once, and again where one changes, in this tab or another. So a screen is drawn
 * in the right unit from its first frame, and a hundred rows don't ask the database a hundred times.
 */
export type KnownSettings = {
  /** Resolves when they were read, or could not be. */
  readonly ready: () => Promise<void>;
  /** Why they could not be read, so that nobody takes an unread setting for one that was never made. */
  readonly fault: () => unknown;
  readonly isRead: () => boolean;
  /** Nothing while it isn't read, when it was never set, or when what is kept doesn't parse. */
  readonly get: <Key extends SettingKey>(key: Key) => SettingValues[Key] | undefined;
  /** Calls back after each change of this one, and when all were read or could not be. Returns its undo. */
  readonly follow: (key: SettingKey, onChange: () => void) => () => void;
};

const all = new WeakMap<Store, KnownSettings>();

/** Those of this store, the same ones for everybody who asks. */
export function knownSettings(store: Store): KnownSettings {
  const known = all.get(store) ?? startKnowing(store);
  all.set(store, known);
  return known;
}

function startKnowing(store: Store): KnownSettings {
  const held = settingsHeld();
  let fault: unknown;
  let reading: Promise<void> | undefined;
  const readAll = async (): Promise<void> => {
    const found: { id: string }[] = await read(store, ['settings'], (tx) =>
      tx.objectStore('settings').getAll(),
    );
    for (const record of found) held.put(record.id, record);
    held.markRead();
    fault = undefined;
  };
  const begin = (): Promise<void> =>
    (reading ??= readAll()
      .catch((error: unknown) => {
        fault = error;
      })
      .finally(() => {
        reading = undefined;
        held.tellAll();
      }));
  readAgainOnChange(store, held.put);
  void begin();
  return {
    ready: () => (held.isRead() ? Promise.resolve() : begin()),
    fault: () => (held.isRead() ? undefined : fault),
    isRead: held.isRead,
    get: held.get,
    follow: (key, onChange) => {
      const stop = held.follow(key, onChange);
      if (!held.isRead()) void begin();
      return stop;
    },
  };
}

type Put = (id: string, record: unknown) => void;

/** Each setting that changes, in this tab or another, is read anew. */
function readAgainOnChange(store: Store, put: Put): void {
  watch(store, ['settings'], (touched) => {
    const ids = [...new Set(touched.map(({ id }) => id))];
    read(store, ['settings'], async (tx) =>
      Promise.all(ids.map(async (id) => [id, await tx.objectStore('settings').get(id)] as const)),
    ).then(
      (fresh) => fresh.forEach(([id, record]) => put(id, record)),
      // What was known stays drawn; the next change, or a screen that reads more, says what is wrong.
      () => undefined,
    );
  });
}

/** The records as they were read last, what they parse to, and who wants to hear of each. */
function settingsHeld() {
  const kept = new Map<string, unknown>();
  const parsed = new Map<string, unknown>();
  const followers = new Map<string, Set<() => void>>();
  let isRead = false;
  const put: Put = (id, record) => {
    if (isRead && canonicalText(kept.get(id)) === canonicalText(record)) return;
    kept.set(id, record);
    parsed.delete(id);
    if (isRead) for (const onChange of followers.get(id) ?? []) onChange();
  };
  return {
    put,
    isRead: () => isRead,
    markRead: () => {
      isRead = true;
    },
    get: <Key extends SettingKey>(key: Key) => {
      if (!parsed.has(key)) parsed.set(key, readSetting(key, kept.get(key)));
      // The cache holds under each key what was read for it.
      // oxlint-disable-next-line typescript/no-unsafe-type-assertion
      return parsed.get(key) as SettingValues[Key] | undefined;
    },
    tellAll: () => {
      for (const callbacks of followers.values()) for (const onChange of callbacks) onChange();
    },
    follow: (key: SettingKey, onChange: () => void) => {
      const callbacks = followers.get(key) ?? new Set();
      followers.set(key, callbacks.add(onChange));
      return () => void callbacks.delete(onChange);
    },
  };
}
