/**
 * Whether every file of the app is kept on this phone as it was built. Only the worker can look; what it finds is said once,
 * on whichever visit it is found out: the one on which the first worker was begun may have been reloaded or left meanwhile.
 */
type FileHooks = { readonly onAllThere: () => void; readonly onMissing: () => void };

export type FileWatch = {
  /** Nothing is kept yet: what an earlier visit was told holds no longer. */
  readonly notYet: () => void;
  /** Looks as soon as there is a worker that keeps them. */
  readonly lookWhenKept: () => Promise<void>;
  /** For when signal may be there: only where they weren't all there, or it isn't known. */
  readonly lookAgain: () => void;
};

// Chosen, not published: a phone hashes a megabyte well within the first; the second is for one that is asleep.
const LOOKED_AFTER_MS = 3000;
const LONGEST_LOOK_MS = 120_000;
// In the browser's other storage; its value says nothing.
const SAID = 'slipfit ready said';

export function watchFiles(hooks: FileHooks): FileWatch {
  let found: 'not known' | 'all there' | 'some missing' = 'not known';
  let isNewHere = false;
  let looking: Promise<void> | undefined;

  const look = async () => {
    // A message may get lost with a worker that the phone ended: asked twice.
    const missing = (await filesMissing()) ?? (await filesMissing());
    if (missing === undefined) return;
    const before = found;
    found = missing === 0 ? 'all there' : 'some missing';
    if (missing > 0) {
      dropMark();
      hooks.onMissing();
    } else if (isNewHere || before === 'some missing' || !isMarked()) {
      isNewHere = false;
      await seen();
      hooks.onAllThere();
      setMark();
    }
  };
  const lookOnce = async () => {
    looking ??= look().finally(() => (looking = undefined));
    return looking;
  };

  return {
    notYet: () => {
      isNewHere = true;
      dropMark();
    },
    lookWhenKept: async () => {
      await navigator.serviceWorker.ready;
      // Behind the first drawing: it reads all that is kept.
      if (isMarked()) await new Promise((done) => setTimeout(done, LOOKED_AFTER_MS));
      return lookOnce();
    },
    lookAgain: () => {
      if (found === 'all there') return;
      // Signal that comes while it looks: what it asked for before may have got no answer, or a network's page.
      if (looking) void looking.then(() => (found === 'all there' ? undefined : lookOnce()));
      else void lookOnce();
    },
  };
}

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

/** A page behind another one, or on a phone that was put away, tells nobody. */
async function seen(): Promise<void> {
  while (document.visibilityState !== 'visible')
    // oxlint-disable-next-line no-await-in-loop -- each is the wait for the next change
    await new Promise((done) => document.addEventListener('visibilitychange', done, { once: true }));
}

// A browser may forbid it at the very word: then it is said at every visit, which is as true.
function isMarked(): boolean {
  try {
    return localStorage.getItem(SAID) !== null;
  } catch {
    return false;
  }
}

function setMark(): void {
  try {
    localStorage.setItem(SAID, 'yes');
  } catch {
    // as above
  }
}

function dropMark(): void {
  try {
    localStorage.removeItem(SAID);
  } catch {
    // as above
  }
}
