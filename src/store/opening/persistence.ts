export type Persistence = 'granted' | 'refused' | 'unknown';

/** Whether the browser has promised to keep the data; it is not asked to. `unknown` where it can't be asked. */
export async function promisedToPersist(): Promise<Persistence> {
  try {
    const storage = typeof navigator === 'undefined' ? undefined : storageOf(navigator);
    if (!storage) return 'unknown';
    return (await storage.persisted()) ? 'granted' : 'refused';
  } catch {
    return 'unknown';
  }
}

/** Asks the browser not to throw the data away when the phone runs low. `unknown` where it can't be asked. */
export async function askToPersist(): Promise<Persistence> {
  try {
    const promised = await promisedToPersist();
    return promised === 'refused' && (await navigator.storage.persist()) ? 'granted' : promised;
  } catch {
    return 'unknown';
  }
}

/**
 * Whether the browser puts the question to whoever holds the phone, as Firefox does, instead of answering by itself. There
 * is no way to ask for that, so it goes by a property that only that engine has.
 */
export function asksAPerson(): boolean {
  return typeof CSS !== 'undefined' && CSS.supports('-moz-appearance', 'none');
}

/** At every start until granted, as the answer changes with use and once the app is installed; a person isn't asked so. */
export async function askAtStart(): Promise<void> {
  if (!asksAPerson()) await askToPersist();
}

const ASKED = 'slipfit asked to persist';

/** At the first thing worth keeping, and once: a person who was asked and said no is asked by a key in Shop only. */
export async function askAtFirstJob(): Promise<void> {
  if (!asksAPerson()) return;
  try {
    if (localStorage.getItem(ASKED) !== null) return;
    localStorage.setItem(ASKED, 'yes');
  } catch {
    return; // where it can't be noted that it was asked, it would be asked again and again
  }
  await askToPersist();
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
