export type Persistence = 'granted' | 'refused' | 'unknown';

/**
 * Asks the browser not to throw the data away when the phone runs low. Ask at every start until granted: the answer
 * changes with use and once the app is installed. `unknown` where the browser can't be asked.
 */
export async function askToPersist(): Promise<Persistence> {
  try {
    const storage = typeof navigator === 'undefined' ? undefined : storageOf(navigator);
    if (!storage) return 'unknown';
    return (await storage.persisted()) || (await storage.persist()) ? 'granted' : 'refused';
  } catch {
    return 'unknown';
  }
}

const BYTES_IN_A_MEGABYTE = 1_000_000;

/** About how much the browser holds for Slipfit, the app itself with it; nothing where it doesn't say. */
export async function megabytesKept(): Promise<number | undefined> {
  try {
    const storage = typeof navigator === 'undefined' ? undefined : storageOf(navigator);
    const { usage } = (await storage?.estimate()) ?? {};
    return usage === undefined || usage === 0
      ? undefined
      : Math.max(1, Math.round(usage / BYTES_IN_A_MEGABYTE));
  } catch {
    return undefined;
  }
}

// The types promise a storage manager; pages served over plain http and old browsers have none.
function storageOf(browser: { readonly storage?: StorageManager }): StorageManager | undefined {
  return browser.storage && 'persist' in browser.storage ? browser.storage : undefined;
}
