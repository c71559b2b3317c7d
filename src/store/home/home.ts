import { refuse, worked } from '../../engine/length/refusal.ts';
import { newId } from '../base/new-id.ts';
import { backupStores, type StoreName } from '../base/stores.ts';
import { act, type Act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import { watch } from '../opening/watch.ts';
import type { HomeCalls, HomeRefusal, HomeResult } from './home-calls.ts';
import { EVERYTHING_HERE, placeIn, readPlace, type OutboxRow } from './home-rows.ts';
import { picturesIn, type PicturesRow } from './home-state-row.ts';
import type { HomeState } from './home-state.ts';
import {
  allowNoOrigin,
  allowOrigin,
  askWorker,
  canHaveHome,
  startWorker,
  tellWorker,
} from './page-worker.ts';
import { unpair } from './pair.ts';
import { readAddress, readCode, readPlaceAt } from './pairing-code.ts';
import { readHomeState } from './read-home-state.ts';

/** What the screens ask for, on the page's side: what is kept is read here, what goes over the network home's worker does. */
export function homeCalls(store: Store): HomeCalls {
  return {
    state: () => readHomeState(store),
    watch: (onState) => watchHome(store, onState),
    setUp: (wanted) => reaching(store, readAddress(wanted.address), () => askWorker('setUp', wanted)),
    join: (wanted) => {
      const wayIn = readCode(wanted.code);
      return reaching(store, wayIn.ok ? worked(wayIn.value.address) : wayIn, () => askWorker('join', wanted));
    },
    joinByHand: (wanted) => {
      const place = readPlaceAt(wanted.address);
      return reaching(store, place.ok ? worked(place.value.address) : place, () =>
        askWorker('joinByHand', wanted),
      );
    },
    addPhone: (wanted) => askWorker('addPhone', wanted),
    lockOut: (wanted) => askWorker('lockOut', wanted),
    leave: () => leave(store),
    tryNow: async () => {
      tellWorker({ say: 'pressed' });
      return worked(undefined);
    },
    sendAllAgain: () => sendAllAgain(store),
    choosePictures: (choice) =>
      keepRow(store, async (a) => a.putKept('home', { ...(await picturesRow(a)), choice })),
    picturesNow: () =>
      keepRow(store, async (a) => a.putKept('home', { ...(await picturesRow(a)), now: true })),
    picture: (id) => askWorker('picture', id),
  };
}

/** At the start of the app, on a phone that is paired: home's worker goes on by itself. */
export async function startHome(store: Store): Promise<void> {
  if (canHaveHome() && (await readPlace(store))) startWorker();
}

/** Home's worker is let reach the one address that was typed; if nothing comes of it, only what it reached before. */
async function reaching<T>(
  store: Store,
  address: HomeResult<string>,
  work: () => Promise<HomeResult<T>>,
): Promise<HomeResult<T>> {
  if (!address.ok) return address;
  if (!canHaveHome()) return refuse({ code: 'not-in-this-browser' });
  await allowOrigin(address.value);
  const done = await work();
  if (done.ok) return done;
  const before = await readPlace(store);
  if (before) await allowOrigin(before.address);
  else await allowNoOrigin();
  if (before) startWorker();
  return done;
}

async function leave(store: Store): Promise<HomeResult<void>> {
  await allowNoOrigin();
  const left = await unpair(store);
  return left.ok ? left : refused(left.refusal);
}

async function sendAllAgain(store: Store): Promise<HomeResult<void>> {
  return keepRow(store, async (a) => {
    const place = placeIn(await a.kept('home', 'place'));
    if (!place) return;
    a.putKept('home', { ...place, again: true });
    a.putKept('outbox', { id: EVERYTHING_HERE, mark: newId() } satisfies OutboxRow);
  });
}

async function picturesRow(a: Act): Promise<PicturesRow> {
  return picturesIn(await a.kept('home', 'pictures'));
}

/** One of home's own rows is changed, and a round is made at once. */
async function keepRow(store: Store, work: (a: Act) => Promise<void>): Promise<HomeResult<void>> {
  const kept = await act(store, { stores: ['home', 'outbox'], stamped: false }, work);
  if (!kept.ok) return refused(kept.refusal);
  tellWorker({ say: 'pressed' });
  return kept;
}

function refused(refusal: Extract<HomeRefusal, { code: 'store' }>['refusal']): HomeResult<never> {
  return refuse({ code: 'store', refusal });
}

// Chosen, not published: what is read in a glance need not change more often.
const AT_MOST_EVERY_MS = 500;
const watched: readonly StoreName[] = [...backupStores, 'conflicts', 'home', 'outbox'];

function watchHome(store: Store, onState: (state: HomeState) => void): () => void {
  let isOver = false;
  let isDue = false;
  let isWaiting = false;
  const tell = async () => {
    if (isWaiting) {
      isDue = true;
      return;
    }
    isWaiting = true;
    isDue = false;
    const state = await readHomeState(store).catch(() => undefined);
    if (state && !isOver) onState(state);
    setTimeout(() => {
      isWaiting = false;
      if (isDue && !isOver) void tell();
    }, AT_MOST_EVERY_MS);
  };
  const stop = watch(store, watched, () => void tell());
  void tell();
  return () => {
    isOver = true;
    stop();
  };
}
