import { refuse, worked } from '../../engine/length/refusal.ts';
import { isPlainObject } from '../base/paths.ts';
import { goesHome, storeNames } from '../base/stores.ts';
import { openStore, type Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import { watch } from '../opening/watch.ts';
import type { Home } from './home-context.ts';
import type { HomeResult } from './home-calls.ts';
import { readPlace } from './home-rows.ts';
import { picturesIn } from './home-state-row.ts';
import { onWifi } from './on-wifi.ts';
import { openHome } from './pair.ts';
import { bringPicture, fetchPictures, picturesMissing, sayMissing, sendPictures } from './pictures.ts';
import { homeAct } from './round-parts.ts';
import { goRound } from './round.ts';
import { startRounds, type Waiting } from './schedule.ts';
import { addPhone, join, joinByHand, lockOut, saying, setUp, type Doing } from './set-up.ts';
import type { AskWorker, FromPage, ToPage } from './worker-messages.ts';

/** What this worker stands in: it is told things by its page and tells it things. */
export type WorkerScope = {
  postMessage(message: ToPage): void;
  addEventListener(type: 'message', heard: (event: { readonly data: unknown }) => void): void;
  addEventListener(type: 'online', heard: () => void): void;
};

/**
 * Home's own worker: the only place from which anything leaves the phone. It has a connection of its own to the database and
 * makes rounds while the phone is paired, one window's worker at a time.
 */
export async function startHomeWorker(scope: WorkerScope): Promise<void> {
  const fetch: Doing['fetch'] = (url, init) => globalThis.fetch(url, init);
  const opening = openStore();
  let rounds: Waiting | undefined;
  let isVisible = true;
  const begin = (store: Store) => {
    rounds ??= roundsOf(store, fetch);
    rounds.seen(isVisible);
  };
  scope.addEventListener('online', () => rounds?.perked());
  // At once: what is said before somebody listens is lost.
  scope.addEventListener('message', ({ data }) => {
    if (!isFromPage(data)) return;
    if (data.say === 'seen') rounds?.seen((isVisible = data.isVisible));
    else if (data.say === 'pressed') rounds?.pressed();
    else void answerPage(data);
  });
  const answerPage = async (asked: AskWorker) => {
    const opened = await opening;
    const result = await answer(opened, fetch, asked);
    // Its page is of the same origin.
    // oxlint-disable-next-line unicorn/require-post-message-target-origin
    scope.postMessage({ ask: asked.number, result });
    if (opened.ok && asked.ask !== 'picture' && result.ok) await onlyOne(() => begin(opened.value));
  };
  const opened = await opening;
  if (opened.ok && (await readPlace(opened.value))) await onlyOne(() => begin(opened.value));
}

const LOCK = 'slipfit-home';
let isWaiting = false;

/** One window's worker at a time; the next takes over when that window is closed. */
async function onlyOne(begin: () => void): Promise<void> {
  if (isWaiting) return;
  isWaiting = true;
  await navigator.locks.request(LOCK, async () => {
    begin();
    await new Promise(() => undefined);
  });
}

function roundsOf(store: Store, fetch: Doing['fetch']): Waiting {
  let home: Home | undefined;
  const go = async (): Promise<boolean> => {
    const place = await readPlace(store);
    if (!place) return false;
    const isSame = home?.couch.database === place.database && home.couch.way.password === place.password;
    if (!isSame) home = await openHome(store, { fetch });
    if (!home) return false;
    const { isWhole } = await goRound(home);
    await goPictures(home, isWhole);
    return false;
  };
  const rounds = startRounds({ go, store, chance: Math.random });
  // Its own writes come by here too, and are none of the fitter's.
  watch(store, storeNames.filter(goesHome), () => void hasToGo(store).then((has) => has && rounds.acted()));
  return rounds;
}

async function hasToGo(store: Store): Promise<boolean> {
  return read(store, ['outbox'], async (tx) => (await tx.objectStore('outbox').count()) > 0).catch(
    () => false,
  );
}

/** Behind the records, and only where the fitter wants it so. */
async function goPictures(home: Home, isWhole: boolean): Promise<void> {
  const wants = async () => {
    const row: unknown = await read(home.store, ['home'], (tx) => tx.objectStore('home').get('pictures'));
    const { choice, now } = picturesIn(row);
    return now === true || choice === 'always' || (choice === 'wifi' && onWifi());
  };
  if (!(await wants())) return sayMissing(home, (await picturesMissing(home)).length);
  await sendPictures(home, wants);
  await fetchPictures(home, wants);
  // His word was for those of that moment.
  if (isWhole)
    await homeAct(home, ['home'], async (a) => {
      const row = picturesIn(await a.kept('home', 'pictures'));
      if (row.now === true) a.putKept('home', { id: 'pictures', choice: row.choice });
    });
}

type Opened = Awaited<ReturnType<typeof openStore>>;

async function answer(opened: Opened, fetch: Doing['fetch'], asked: AskWorker): Promise<HomeResult<unknown>> {
  if (!opened.ok) return refuse({ code: 'store', refusal: opened.refusal });
  try {
    return await answerWith({ store: opened.value, fetch }, asked);
  } catch {
    return refuse({ code: 'own-fault' });
  }
}

async function answerWith(doing: Doing, asked: AskWorker): Promise<HomeResult<unknown>> {
  switch (asked.ask) {
    case 'setUp':
      return setUp(doing, asked.wanted);
    case 'join':
      return join(doing, asked.wanted);
    case 'joinByHand':
      return joinByHand(doing, asked.wanted);
    case 'addPhone':
      return addPhone(doing, asked.wanted);
    case 'lockOut':
      return lockOut(doing, asked.wanted);
    case 'picture':
      return saying(async () => {
        const home = await openHome(doing.store, { fetch: doing.fetch });
        return home ? worked(await bringPicture(home, asked.wanted)) : refuse({ code: 'nothing-there' });
      });
    default:
      return asked satisfies never;
  }
}

function isFromPage(data: unknown): data is FromPage {
  // Nobody but this app's own page holds this worker.
  return isPlainObject(data) && ('ask' in data || 'say' in data);
}
