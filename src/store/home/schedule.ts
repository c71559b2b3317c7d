import type { Store } from '../opening/open-store.ts';
import { StoreUnreadable } from '../opening/read.ts';
import { HomeFault } from './couch-ask.ts';
import type { HomeTrouble } from './home-state.ts';
import { changeState } from './home-state-row.ts';

/** When a round is due. Everything here is chosen, not published. */
const AFTER_AN_ACT_MS = 2000;
const WHILE_VISIBLE_MS = 30_000;
const FIRST_WAIT_MS = 5000;
const LONGEST_WAIT_MS = 300_000;
/** CouchDB locks a name for five minutes after five wrong passwords. */
const LOCKED_MS = 330_000;

/** Only a person can help: nothing is tried again until somebody presses. */
const waitsForAPress: ReadonlySet<HomeTrouble['code']> = new Set<HomeTrouble['code']>([
  'wrong-password',
  'not-allowed',
  'wrong-words',
  'nothing-there',
  'newer-home',
  'origin-not-allowed',
]);

export type Waiting = {
  /** Something was logged or changed here. */
  readonly acted: () => void;
  /** Signal came back, the app was brought up. */
  readonly perked: () => void;
  /** Somebody pressed. */
  readonly pressed: () => void;
  readonly seen: (isVisible: boolean) => void;
};

export type Rounds = {
  /** One round and what comes with it; true where another is due at once. */
  readonly go: () => Promise<boolean>;
  readonly store: Store;
  readonly chance: () => number;
};

/** Rounds as they fall due, one after the other, until the database is closed to this window. */
export function startRounds({ go, store, chance }: Rounds): Waiting {
  let fails = 0;
  let wait: { readonly forPress: boolean } = { forPress: false };
  let isVisible = true;
  let isGoing = false;
  let isAskedAgain = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let dueAt = Number.POSITIVE_INFINITY;

  const inMs = (ms: number) => {
    const at = Date.now() + ms;
    // What is due sooner stays so.
    if (timer !== undefined && at >= dueAt) return;
    clearTimeout(timer);
    dueAt = at;
    timer = setTimeout(() => void run(), ms);
  };
  const rest = () => {
    clearTimeout(timer);
    timer = undefined;
    dueAt = Number.POSITIVE_INFINITY;
  };
  const run = async () => {
    rest();
    if (store.closed) return;
    if (isGoing) {
      isAskedAgain = true;
      return;
    }
    isGoing = true;
    isAskedAgain = false;
    try {
      const isMore = await go();
      fails = 0;
      wait = { forPress: false };
      if (isMore || isAskedAgain) inMs(0);
      else if (isVisible) inMs(WHILE_VISIBLE_MS);
    } catch (error) {
      const fault = faultOf(error);
      fails += 1;
      const forPress = waitsForAPress.has(fault.trouble.code);
      wait = { forPress };
      await saveTrouble(store, fault.trouble, !forPress);
      if (!forPress) inMs(fault.waitMs ?? waitAfter(fault.trouble, fails, chance));
    } finally {
      isGoing = false;
    }
  };
  inMs(0);
  return {
    acted: () => !wait.forPress && fails === 0 && inMs(AFTER_AN_ACT_MS),
    perked: () => !wait.forPress && inMs(0),
    pressed: () => void run(),
    seen: (now) => {
      isVisible = now;
      if (isVisible && !wait.forPress) inMs(0);
    },
  };
}

function waitAfter({ code }: HomeTrouble, fails: number, chance: () => number): number {
  if (code === 'locked-for-minutes') return LOCKED_MS;
  const doubled = Math.min(FIRST_WAIT_MS * 2 ** (fails - 1), LONGEST_WAIT_MS);
  // Not all phones at the same moment, when home comes back.
  return doubled * (0.5 + chance());
}

/** What nobody foresaw is no reason to stop for good, and is called what it is. */
function faultOf(error: unknown): HomeFault {
  if (error instanceof HomeFault) return error;
  if (error instanceof StoreUnreadable) return new HomeFault({ code: 'store', refusal: error.refusal });
  return new HomeFault({ code: 'own-fault' });
}

async function saveTrouble(store: Store, trouble: HomeTrouble, triesAgain: boolean): Promise<void> {
  await changeState(store, (state) => {
    const since = state.trouble?.code === trouble.code ? state.trouble.since : store.now();
    return { ...state, trouble: { ...trouble, since, triesAgain } };
  });
}
