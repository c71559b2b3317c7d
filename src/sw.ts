import { createHandlerBoundToURL, precacheAndRoute, type PrecacheEntry } from 'workbox-precaching';
import { registerRoute } from 'workbox-routing';

/**
 * The service worker: keeps every file of the app, so that all of it works without signal from the first visit on.
 * A new version waits until the page says SKIP_WAITING; it never takes over under a page that is being used.
 */

/** The part of the worker's own scope that is used here; the DOM types that the rest of the app needs don't have it. */
type WorkerScope = {
  readonly __WB_MANIFEST: PrecacheEntry[];
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'message', heard: (event: MessageEvent<unknown>) => void): void;
  addEventListener(type: 'activate', heard: (event: { waitUntil(work: Promise<void>): void }) => void): void;
};
declare const self: WorkerScope;

// oxlint-disable-next-line eslint/no-underscore-dangle -- the name workbox gives the list; vite.config.ts writes it in
precacheAndRoute(self.__WB_MANIFEST);

// Any page address straight in the app's folder, such as ./?from=home, is the app. Deeper ones are left to the host:
// the relative file names in index.html would not lead anywhere from there.
registerRoute(
  ({ request, url }) => request.mode === 'navigate' && new URL('.', url).href === self.registration.scope,
  createHandlerBoundToURL('index.html'),
);

// The same words stand in handed-files.ts; nothing of the app is imported here.
const shared = { cache: 'slipfit-shared', file: 'shared-file', mark: '?shared' };

// A file shared to the app comes as a form sent to an address that no server answers: kept here until the app has read it.
registerRoute(
  ({ url }) => url.href === new URL('share', self.registration.scope).href,
  async ({ request }) => {
    const file = (await request.formData()).get('file');
    const cache = await caches.open(shared.cache);
    if (file instanceof File)
      await cache.put(new URL(shared.file, self.registration.scope), new Response(file));
    return Response.redirect(new URL(`./${shared.mark}#/shop`, self.registration.scope).href, 303);
  },
  'POST',
);

self.addEventListener('message', ({ data }) => {
  if (isSkipWaiting(data)) void self.skipWaiting();
});

// Without this the page of the first visit has no worker, and the update button would do nothing there.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

function isSkipWaiting(data: unknown): boolean {
  return typeof data === 'object' && data !== null && 'type' in data && data.type === 'SKIP_WAITING';
}
