import { Workbox } from 'workbox-window';

/**
 * Keeping the app for work without signal, and taking a new version only when the fitter says so: a phone at the
 * lathe must not blink. The sentences are the screens' business; this file says what happened.
 */
export type UpdateHooks = {
  /** Once, on the first visit: every file is kept, signal is no longer needed. */
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
 * broke off half-way on the first visit; it is tried again by itself when the page is brought up or signal comes back.
 */
export type WhyNotOffline = 'not-here' | 'cut-off';

/**
 * Trusted Types as far as they are used here: TypeScript's DOM types don't have them yet, and Safari before 26 neither.
 * In truth a TrustedScriptURL comes back, not text; workbox-window hands it on untouched, but its types only know text.
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

/** True when the next start needs no signal. */
export function isReadyOffline(): boolean {
  return 'serviceWorker' in navigator && navigator.serviceWorker.controller !== null;
}

export function watchForUpdates(hooks: UpdateHooks): void {
  const reload = reloadOnce(hooks.beforeReload);
  window.addEventListener('vite:preloadError', () => hooks.onPartMissing(reload));
  if (!import.meta.env.PROD) return;
  if ('serviceWorker' in navigator) keepAndWatch(hooks, reload);
  else hooks.onCannotWorkOffline('not-here');
}

function keepAndWatch(hooks: UpdateHooks, reload: () => Promise<void>): void {
  const address = trustedWorkerAddress();
  let worker: Workbox | undefined;
  let asked = false;

  const takeIt = async () => {
    await hooks.beforeReload();
    asked = true;
    worker?.messageSkipWaiting();
    // The sign that the new version has taken over got lost in some browsers; without this the button would seem dead.
    setTimeout(() => void reload().catch(() => undefined), reloadAnywayAfterMs);
  };

  const keep = async () => {
    worker = new Workbox(address);
    worker.addEventListener('activated', ({ isUpdate, isExternal }) => {
      if (!isUpdate && !isExternal) hooks.onReadyOffline();
    });
    worker.addEventListener('waiting', () => hooks.onWaiting(takeIt));
    worker.addEventListener('redundant', () => {
      if (isReadyOffline()) return; // an old version that made room, or a new one that comes again
      worker = undefined;
      hooks.onCannotWorkOffline('cut-off');
    });
    try {
      await worker.register();
    } catch {
      worker = undefined;
      hooks.onCannotWorkOffline(navigator.onLine ? 'not-here' : 'cut-off');
    }
  };

  const lookForNew = async () => {
    if (document.visibilityState !== 'visible' || !navigator.onLine) return;
    if (!worker) return keep();
    // Not workbox-window's own update(), which does nothing before the page's load event.
    const registration = await navigator.serviceWorker.getRegistration();
    // Rejects when the signal is too weak to look: the next time the page is brought up will do.
    await registration?.update().catch(() => undefined);
    // workbox-window stops listening after the first version it didn't ask for itself, so one after it is found here.
    if (registration?.waiting) hooks.onWaiting(takeIt);
  };

  reloadWithTheOthers(reload, () => asked);
  // Phones leave an app open for weeks, so it looks whenever it is brought up or signal comes back.
  document.addEventListener('visibilitychange', () => void lookForNew());
  window.addEventListener('online', () => void lookForNew());
  void keep();
}

/** Another tab took the new version, so the chunks this page may still ask for are gone: draft and reload too. */
function reloadWithTheOthers(reload: () => Promise<void>, isAsked: () => boolean): void {
  let hadWorker = isReadyOffline();
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
