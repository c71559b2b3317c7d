/**
 * Files that come from outside the app: opened with it on a desk, or shared to it on a phone. The worker keeps a shared one
 * until the app has started, as the phone hands it over as a form sent to an address of ours.
 */

// The same words stand in sw.ts: where it keeps a shared file, and what it puts behind the app's address then.
const SHARED_CACHE = 'slipfit-shared';
const SHARED_FILE = 'shared-file';
const SHARED_MARK = '?shared';

/** The browser's queue of files it was asked to open with the app; only some desktop browsers have one. */
type LaunchQueue = {
  setConsumer(take: (launch: { readonly files?: readonly FileSystemFileHandle[] }) => void): void;
};
declare global {
  interface Window {
    readonly launchQueue?: LaunchQueue;
  }
}

/** What was opened with the app; without a handle what was shared to it, if that is why it was opened. */
export async function handedFile(handle: FileSystemFileHandle | undefined): Promise<Blob | undefined> {
  if (handle) return handle.getFile().catch(() => undefined);
  if (location.search !== SHARED_MARK) return undefined;
  history.replaceState(null, '', `${location.pathname}${location.hash}`);
  return sharedFile().catch(() => undefined);
}

async function sharedFile(): Promise<Blob | undefined> {
  const cache = await caches.open(SHARED_CACHE);
  const kept = await cache.match(SHARED_FILE);
  const file = await kept?.blob();
  await caches.delete(SHARED_CACHE);
  return file;
}
