import { PrecacheController, PrecacheRoute } from 'workbox-precaching';
import { registerRoute } from 'workbox-routing';

/**
 * The service worker: keeps every file of the app, so that all of it works without signal from the first visit on. Each
 * file is kept only as it was built, by its SHA-256: a network's own page, a file of another release and one cut short are
 * none of them. A new version waits until the page says SKIP_WAITING; it never takes over under a page that is being used.
 */

type KeptFile = { readonly url: string; readonly revision: string; readonly integrity: string };

/** The part of the worker's own scope that is used here; the DOM types that the rest of the app needs don't have it. */
type WorkerScope = {
  readonly __WB_MANIFEST: KeptFile[];
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'message', heard: (event: MessageEvent<unknown> & Working) => void): void;
  addEventListener(type: 'install' | 'activate', heard: (event: Working) => void): void;
};
/** An event that keeps the worker awake until the work is done. */
type Working = { waitUntil(work: Promise<unknown>): void };
declare const self: WorkerScope;

// oxlint-disable-next-line eslint/no-underscore-dangle -- the name workbox gives the list; vite.config.ts writes it in
const files = self.__WB_MANIFEST;
const FRAME = 'index.html';
/** Stands on its own, with its script: it hands over a backup where the app itself can't be read. */
const RESCUE = 'rescue.html';
/** Behind the app's address where a version that can't come up is tried again. */
const AGAIN = '?again';

// Chosen, not published: a network that never answers is none. A frame of 4 kB has come by then, or somebody looks at a
// blank page; what a screen waits for says by itself that it is on its way; the rest, 400 kB at most, is waited for by nobody.
const FRAME_WITHIN_MS = 5000;
const PART_WITHIN_MS = 30_000;
const KEPT_WITHIN_MS = 120_000;
const LOOK_WITHIN_MS = 10_000;

/** The one script that may reach beyond the app's own origin. The same words stand in store/home/page-worker.ts. */
const HOME_WORKER = 'home-worker.js';
const allowed = { cache: 'slipfit-home', origin: 'home-origin' };

const kept = new PrecacheController({
  plugins: [
    {
      // What the browser's own store has may be a network's page too.
      requestWillFetch: async ({ request, event }) =>
        new Request(request, { cache: 'reload', signal: AbortSignal.timeout(waitFor(request, event)) }),
      handlerDidError: async ({ request, event }) =>
        event.type === 'fetch' && isFrame(request) ? inPlaceOfTheFrame() : undefined,
    },
  ],
});
kept.addToCacheList(files);
// Before the route of all files, which would serve it as any other.
registerRoute(
  ({ url }) => url.href === new URL(HOME_WORKER, self.registration.scope).href,
  async () => {
    const script = await kept.matchPrecache(HOME_WORKER);
    return script ? heldTo(await allowedOrigin(), script) : Response.error();
  },
);
registerRoute(new PrecacheRoute(kept));

// Any page address straight in the app's folder, such as ./?from=home, is the app. Deeper ones are left to the host:
// the relative file names in index.html would not lead anywhere from there.
const answerWithFrame = kept.createHandlerBoundToURL(FRAME);
registerRoute(
  ({ request, url }) => request.mode === 'navigate' && url.href === self.registration.scope + AGAIN,
  async () => newerInPlace(),
);
registerRoute(
  ({ request, url }) => request.mode === 'navigate' && new URL('.', url).href === self.registration.scope,
  // Without its sum a frame that the browser threw away would be fetched as whatever comes, and not be kept again.
  (options) => answerWithFrame({ ...options, params: { integrity: integrityOf(FRAME) } }),
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

self.addEventListener('message', (event) => {
  if (asksFor(event.data, 'SKIP_WAITING')) void self.skipWaiting();
  if (asksFor(event.data, 'CHECK'))
    event.waitUntil(stillMissing(event, (missing) => event.ports[0]?.postMessage(missing)));
});

self.addEventListener('install', (event) => {
  event.waitUntil(install(event));
});

self.addEventListener('activate', (event) => {
  void kept.activate(event);
  // Without this the page of the first visit has no worker, and the update button would do nothing there.
  event.waitUntil(self.clients.claim());
});

/** The origin of the home that the fitter has paired this phone with, as the page has kept it. */
async function allowedOrigin(): Promise<string> {
  const cache = await caches.open(allowed.cache);
  const found = await cache.match(new URL(allowed.origin, self.registration.scope));
  const origin = (await found?.text()) ?? '';
  return /^https?:\/\/[\w.:[\]-]+$/.test(origin) ? origin : '';
}

/** A worker takes its policy from the answer it comes with: home's may reach the app's own origin and this one. */
function heldTo(origin: string, script: Response): Response {
  const policy = `default-src 'none'; connect-src 'self' ${origin}; require-trusted-types-for 'script'`;
  const headers = { 'Content-Type': 'text/javascript', 'Content-Security-Policy': policy };
  return new Response(script.body, { headers });
}

async function install(event: Working): Promise<void> {
  await kept.install(event);
  // An earlier worker may have kept something else under the same name. With one file wrong this version is not there.
  let missing = 0;
  await stillMissing(event, (count) => (missing = count));
  if (missing > 0) throw new Error('not every file is kept as it was built');
}

/**
 * Looks at every file that is to be kept, fetches anew what is gone or isn't as it was built, and tells how many can't be
 * had, or are not there after a while.
 */
async function stillMissing(event: Working, tell: (missing: number) => void): Promise<void> {
  const gone = new Set<KeptFile>();
  // One after the other: on a first visit the page itself is still fetching.
  for (const file of files) {
    // oxlint-disable-next-line no-await-in-loop
    if (!(await isThere(file))) gone.add(file);
  }
  // Side by side: one that never comes keeps no other from coming.
  const all = Promise.all(
    [...gone].map(async (file) => {
      if (await fetchAnew(file, event)) gone.delete(file);
    }),
  );
  const late = new Promise((done) => setTimeout(done, gone.size > 0 ? LOOK_WITHIN_MS : 0));
  await Promise.race([all, late]);
  tell(gone.size);
  await all;
}

async function isThere({ url, integrity }: KeptFile): Promise<boolean> {
  const response = await kept.matchPrecache(url);
  if (!response) return false;
  const sum = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
  if (integrity === `sha256-${btoa(String.fromCharCode(...new Uint8Array(sum)))}`) return true;
  // Better none than a wrong one: what is missing is fetched, or said.
  const cache = await caches.open(kept.strategy.cacheName);
  await cache.delete(kept.getCacheKeyForURL(url) ?? url);
  return false;
}

async function fetchAnew({ url, integrity }: KeptFile, event: Working): Promise<boolean> {
  const params = { cacheKey: kept.getCacheKeyForURL(url), integrity };
  const request = new Request(url, { integrity, credentials: 'same-origin' });
  try {
    const [response, done] = kept.strategy.handleAll({ request, event, params });
    await response;
    await done;
    return (await kept.matchPrecache(url)) !== undefined;
  } catch {
    return false;
  }
}

function integrityOf(wanted: string): string | undefined {
  return files.find(({ url }) => url === wanted)?.integrity;
}

/** Tried again: a newer version that is there by now takes over, as this one can't come up; without one it is this one again. */
async function newerInPlace(): Promise<Response> {
  const { registration } = self;
  const late = new Promise((done) => setTimeout(done, LOOK_WITHIN_MS));
  await Promise.race([registration.update().catch(() => undefined), late]);
  registration.waiting?.postMessage({ type: 'SKIP_WAITING' });
  if (registration.waiting) return comingBackTo('./', 'The new version is taken.');
  if (registration.installing) return comingBackTo(`./${AGAIN}`, 'A new version is being fetched.');
  return Response.redirect(registration.scope);
}

function comingBackTo(address: string, words: string): Response {
  return page(
    `<meta http-equiv="refresh" content="2;url=${address}"><p>${words} <a href="${address}">Go on</a></p>`,
  );
}

function waitFor(request: Request, event: { readonly type: string }): number {
  if (event.type !== 'fetch') return KEPT_WITHIN_MS;
  return isFrame(request) ? FRAME_WITHIN_MS : PART_WITHIN_MS;
}

function isFrame({ url }: Request): boolean {
  const { scope } = self.registration;
  return [scope, scope + FRAME].includes(url.replace(/[?#].*/s, ''));
}

/** Neither kept nor to be had: the page that stands on its own, or at least words and a way on. */
async function inPlaceOfTheFrame(): Promise<Response> {
  const words =
    '<p>The app can’t be read from this phone just now. Your records are still here.</p>' +
    `<p>Come back with signal, and <a href="./${AGAIN}">try again</a>.</p>`;
  return (await kept.matchPrecache(RESCUE)) ?? page(words);
}

function page(words: string): Response {
  return new Response(
    `<!doctype html><meta name="viewport" content="width=device-width"><title>Slipfit</title><h1>Slipfit</h1>${words}`,
    { headers: { 'Content-Type': 'text/html; charset=utf-8' } },
  );
}

function asksFor(data: unknown, what: 'SKIP_WAITING' | 'CHECK'): boolean {
  return typeof data === 'object' && data !== null && 'type' in data && data.type === what;
}
