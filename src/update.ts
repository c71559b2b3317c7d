import { Workbox } from 'workbox-window';

/**
 * Keeping the app for work without signal, and taking a new version only when the fitter says so: a phone at the
 * lathe must not blink. The sentences are the screens' business; this file says what happened.
 */
export type UpdateHooks = {
  /** On the first visit, and after something was missing: every file was looked at and is right, signal is no longer needed. */
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
 * broke off half-way on the first visit, or something else came than what was built. `parts-gone`: the browser has thrown
 * some of the files away since. Both are tried again by themselves when the page is brought up or signal comes back.
 */
export type WhyNotOffline = 'not-here' | 'cut-off' | 'parts-gone';

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

// Chosen, not published: a phone hashes a megabyte well within the first; the second is for one that is asleep.
const LOOKED_AFTER_MS = 3000;
const LONGEST_LOOK_MS = 120_000;

/**
 * Has the worker look at every file it keeps and fetch anew what is gone: how many are missing all the same. Nothing where
 * there is no answer, from a worker of an earlier release.
 */
async function filesMissing(): Promise<number | undefined> {
  const { active } = await navigator.serviceWorker.ready;
  const { port1, port2 } = new MessageChannel();
  return new Promise((done) => {
    port1.addEventListener('message', ({ data }: MessageEvent<unknown>) =>
      done(typeof data === 'number' ? data : undefined),
    );
    port1.start();
    setTimeout(() => done(undefined), LONGEST_LOOK_MS);
    active?.postMessage({ type: 'CHECK' }, [port2]);
  });
}

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
  let worker: Workbox | undefined;
  let asked = false;
  let ready: 'not known' | 'yes' | 'no' = 'not known';

  /** Said only when every file was looked at. What was there at the last start needs no words. */
  const look = async (isFirst: boolean) => {
    const missing = await filesMissing();
    if (missing === undefined) return;
    const before = ready;
    ready = missing === 0 ? 'yes' : 'no';
    if (missing > 0) hooks.onCannotWorkOffline('parts-gone');
    else if (isFirst || before === 'no') hooks.onReadyOffline();
  };

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
      if (!isUpdate && !isExternal) void look(true);
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
    if (ready === 'no') void look(false);
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
  // Behind the first drawing: it reads all that is kept.
  if (isReadyOffline()) setTimeout(() => void look(false), LOOKED_AFTER_MS);
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
