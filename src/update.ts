import { watchFiles } from './kept-files.ts';

/**
 * Keeping the app for work without signal, and taking a new version only when the fitter says so: a phone at the
 * lathe must not blink. The sentences are the screens' business; this file says what happened.
 */
export type UpdateHooks = {
  /** Once, on the visit on which it is found out, and again after something was missing: every file was looked at and is right, signal is no longer needed. */
  onReadyOffline: () => void;
  /** The app could not be kept for work without signal. */
  onCannotWorkOffline: (why: WhyNotOffline) => void;
  /** A new version is kept and waits. `takeIt` writes the drafts and reloads; it rejects, with nothing changed, if they can't be written. */
  onWaiting: (takeIt: () => Promise<void>) => void;
  /** A part of the app loaded on demand didn't come. The screen says so and offers `reload`; nothing reloads by itself. */
  onPartMissing: (reload: () => Promise<void>) => void;
  /** Writes what is half-typed; the page reloads when it is done. */
  beforeReload: () => Promise<void>;
};

/**
 * `not-here`: this browser, a private window or a plain http address can't keep an app at all. `cut-off`: the signal
 * broke off half-way on the first visit, or something else came than what was built. `slow`: it neither came nor broke off
 * in a good while. `parts-gone`: the browser has thrown some of the files away since. All but the first are tried again by
 * themselves, when the page is brought up, signal comes back, or a minute has gone.
 */
export type WhyNotOffline = 'not-here' | 'cut-off' | 'slow' | 'parts-gone';

/**
 * Trusted Types as far as they are used here: TypeScript's DOM types don't have them yet, and Safari before 26 neither.
 * In truth a TrustedScriptURL comes back, not text; the types of `register` only know text.
 */
type WorkerAddressPolicy = { createScriptURL(address: string): string };
declare global {
  interface Window {
    readonly trustedTypes?: {
      createPolicy(name: string, rules: WorkerAddressPolicy): WorkerAddressPolicy;
    };
  }
}

const workerAddress = './sw.js';
const reloadAnywayAfterMs = 8000; // chosen, not published: taking over needs well under a second, 3 s under load
// Chosen, not published: one that nobody has a page of takes over at once and isn't offered.
const STANDS_BY_AFTER_MS = 200;
// Chosen, not published: on a weak signal all of it comes within this; the network may hold one file back for good.
const SLOW_AFTER_MS = 40_000;
const AGAIN_AFTER_MS = 60_000;

export function watchForUpdates(hooks: UpdateHooks): void {
  const reload = reloadOnce(hooks.beforeReload);
  // Back from the browser's own store of pages: it heard nothing meanwhile, neither of another tab's work nor of a new version.
  window.addEventListener('pageshow', ({ persisted }) => {
    if (persisted) reload().catch(() => undefined);
  });
  window.addEventListener('vite:preloadError', () => hooks.onPartMissing(reload));
  if (!import.meta.env.PROD) return;
  if ('serviceWorker' in navigator) keepAndWatch(hooks, reload);
  else hooks.onCannotWorkOffline('not-here');
}

function keepAndWatch(hooks: UpdateHooks, reload: () => Promise<void>): void {
  const address = trustedWorkerAddress();
  let keeping: Promise<ServiceWorkerRegistration | undefined> | undefined;
  let asked = false;
  let said: WhyNotOffline | undefined;

  const cannot = (why: WhyNotOffline) => {
    // Once is enough: it is tried again and again.
    if (why !== said) hooks.onCannotWorkOffline(why);
    said = why;
    if (why === 'cut-off' || why === 'not-here') keeping = undefined;
    // A network that wants to be paid first sends no sign when it lets go.
    if (why === 'cut-off' || why === 'parts-gone') setTimeout(() => void lookForNew(), AGAIN_AFTER_MS);
  };
  const files = watchFiles({
    onAllThere: () => {
      said = undefined;
      hooks.onReadyOffline();
    },
    onMissing: () => cannot('parts-gone'),
  });

  const takeIt = async () => {
    await hooks.beforeReload();
    asked = true;
    (await keeping)?.waiting?.postMessage({ type: 'SKIP_WAITING' });
    // The sign that the new version has taken over got lost in some browsers; without this the button would seem dead.
    setTimeout(() => void reload().catch(() => undefined), reloadAnywayAfterMs);
  };
  const onWaiting = () => hooks.onWaiting(takeIt);
  const keep = async () => (keeping ??= register(address, { onFirst: files.notYet, onWaiting, cannot }));

  const lookForNew = async () => {
    if (document.visibilityState !== 'visible' || !navigator.onLine) return;
    if (!keeping) {
      void keep();
      return;
    }
    files.lookAgain();
    const registration = await keeping;
    // Rejects when the signal is too weak to look: the next time the page is brought up will do.
    await registration?.update().catch(() => undefined);
    if (registration?.waiting) onWaiting();
  };

  reloadWithTheOthers(reload, () => asked);
  // Phones leave an app open for weeks, so it looks whenever it is brought up or signal comes back.
  document.addEventListener('visibilitychange', () => void lookForNew());
  window.addEventListener('online', () => void lookForNew());
  void keep();
  void files.lookWhenKept();
  const slow = setTimeout(() => said ?? cannot('slow'), SLOW_AFTER_MS);
  void navigator.serviceWorker.ready.then(() => clearTimeout(slow));
}

type Heard = {
  /** Nothing is kept yet. */
  readonly onFirst: () => void;
  readonly onWaiting: () => void;
  readonly cannot: (why: WhyNotOffline) => void;
};

async function register(address: string, heard: Heard): Promise<ServiceWorkerRegistration | undefined> {
  // Behind the first drawing: it fetches all that is to be kept.
  await loaded();
  try {
    const registration = await navigator.serviceWorker.register(address);
    if (!registration.active) heard.onFirst();
    follow(registration, { onWaiting: heard.onWaiting, onCutOff: () => heard.cannot('cut-off') });
    return registration;
  } catch {
    heard.cannot((await workerIsThere()) ? 'not-here' : 'cut-off');
    return undefined;
  }
}

/**
 * Hears of every worker from the registration itself. What one stands at when it is met counts like what it comes to: an
 * earlier page, gone by now, may have begun it.
 */
function follow(
  registration: ServiceWorkerRegistration,
  heard: { readonly onWaiting: () => void; readonly onCutOff: () => void },
): void {
  const heed = (worker: ServiceWorker | null) => {
    const judge = () => {
      if (worker?.state === 'installed') setTimeout(offer, STANDS_BY_AFTER_MS);
      // With one that is active it was a new version that comes again, or the old one that made room.
      if (worker?.state === 'redundant' && !registration.active) heard.onCutOff();
    };
    const offer = () => {
      if (registration.active && registration.waiting === worker) heard.onWaiting();
    };
    worker?.addEventListener('statechange', judge);
    judge();
  };
  registration.addEventListener('updatefound', () => heed(registration.installing));
  heed(registration.installing);
  heed(registration.waiting);
}

/** Whether the worker's own script can be had, so that it is the browser that won't have one: a network's page is none. */
async function workerIsThere(): Promise<boolean> {
  try {
    const { ok, headers } = await fetch(workerAddress, { cache: 'no-store' });
    return ok && /javascript/.test(headers.get('Content-Type') ?? '');
  } catch {
    return false;
  }
}

async function loaded(): Promise<void> {
  if (document.readyState === 'complete') return;
  await new Promise((done) => window.addEventListener('load', done, { once: true }));
}

/** Another tab took the new version, so the chunks this page may still ask for are gone: draft and reload too. */
function reloadWithTheOthers(reload: () => Promise<void>, isAsked: () => boolean): void {
  let hadWorker = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    // The first worker of a first visit replaces nothing: no reload then.
    if (hadWorker || isAsked()) reload().catch(() => undefined);
    hadWorker = true;
  });
}

/** Reloads at most once, and only after what is half-typed has been written. */
function reloadOnce(beforeReload: () => Promise<void>): () => Promise<void> {
  let reloading = false;
  return async () => {
    if (reloading) return;
    reloading = true;
    try {
      await beforeReload();
      location.reload();
    } catch (failure) {
      reloading = false;
      throw failure;
    }
  };
}

/** Registering a worker runs code, so under our content security policy it needs an address from a policy; ours knows one. */
function trustedWorkerAddress(): string {
  const makeOnly = (address: string) => {
    if (address !== workerAddress) throw new TypeError('not the address of the service worker');
    return address;
  };
  const policy = window.trustedTypes?.createPolicy('slipfit-worker', { createScriptURL: makeOnly });
  return policy?.createScriptURL(workerAddress) ?? workerAddress;
}
