import type { Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { Store } from '../opening/open-store.ts';
import { read, type Reads } from '../opening/read.ts';
import { asideRange, EVERYTHING_HERE, placeFrom, tooBigRange, type Place } from './home-rows.ts';
import { picturesIn, stateIn, type StateRow } from './home-state-row.ts';
import type { HomeNote, HomeState, PhoneAtHome, PicturesState } from './home-state.ts';
import { marksIn, type MarkRow } from './marks.ts';
import { sweptStores } from './swept-stores.ts';
import { onWifi } from './on-wifi.ts';

/** How things stand with home, from this phone's own database. */
export async function readHomeState(store: Store): Promise<HomeState> {
  return read(store, [...sweptStores, 'home', 'outbox', 'device'], async (tx): Promise<HomeState> => {
    const place = await placeFrom(tx);
    if (!place) return { isPaired: false };
    const home = tx.objectStore('home');
    const [state, choice, marks, outbox, clock]: unknown[] = await Promise.all([
      home.get('state'),
      home.get('pictures'),
      home.get('phones'),
      tx.objectStore('outbox').getAllKeys(),
      tx.objectStore('device').get('clock'),
    ]);
    const known = stateIn(state);
    const rows = marksIn(marks);
    const device = isPlainObject(clock) ? clock['deviceId'] : undefined;
    const ids = Array.isArray(outbox) ? outbox.map(String) : [];
    const isSweepDue = ids.includes(EVERYTHING_HERE);
    const all = isSweepDue ? await toLookThrough(tx) : 0;
    const progress =
      known.progress ?? (isSweepDue ? ({ way: 'home', done: 0, of: all } as const) : undefined);
    const notes = [...(await notesIn(tx, known)), ...clocksApart(rows, device)];
    return {
      isPaired: true,
      host: new URL(place.address).host,
      phone: place.phone,
      waiting: ids.filter((id) => !id.startsWith('photoBytes/') && id !== EVERYTHING_HERE).length + all,
      ...(known.wholeAt !== undefined && { wholeAt: known.wholeAt }),
      ...(known.trouble && { trouble: known.trouble }),
      ...(progress && { progress }),
      pictures: picturesNow(ids, choice, known),
      notes,
      phones: phonesIn(rows, place),
      isMarkDue: isMarkDue(known, store.now()),
    };
  });
}

async function notesIn(tx: Reads, state: StateRow): Promise<HomeNote[]> {
  const home = tx.objectStore('home');
  const [aside, big]: [Kept[], Kept[]] = await Promise.all([
    home.getAll(asideRange()),
    home.getAll(tooBigRange()),
  ]);
  const { homePutBackAt, phonePutBackAt, unreadable = 0 } = state;
  const newer = aside.filter(({ why }) => why === 'newer').length;
  const largest = Math.max(0, ...big.map(({ bytes }) => Number(bytes)));
  const all: readonly (HomeNote | false)[] = [
    homePutBackAt !== undefined && { code: 'home-put-back', at: homePutBackAt },
    phonePutBackAt !== undefined && { code: 'phone-put-back', at: phonePutBackAt },
    newer > 0 && { code: 'from-newer', count: newer },
    aside.length > newer && { code: 'cannot-be-opened', count: aside.length - newer },
    unreadable > 0 && { code: 'unreadable-here', count: unreadable },
    big.length > 0 && { code: 'too-big', count: big.length, largestBytes: largest },
  ];
  return all.filter((note) => note !== false);
}

// Chosen, not published: less is nothing that anybody would see in a list.
const APART_MS = 10 * 60_000;

/**
 * A mark says when it was written by its phone's clock. It can't be from after it was met here; how much too early it is
 * can't be told, as it may have waited. CouchDB lets no page read what time it has itself.
 */
function clocksApart(rows: readonly MarkRow[], device: unknown): HomeNote[] {
  return rows
    .filter((row) => row.device !== device && row.at - row.metAt > APART_MS)
    .map(({ name, at, metAt }) => ({ code: 'clocks-apart', phone: name, apartMs: at - metAt }));
}

function picturesNow(ids: readonly string[], row: unknown, { toFetch = 0 }: StateRow): PicturesState {
  const { choice, now } = picturesIn(row);
  const toSend = ids.filter((id) => id.startsWith('photoBytes/')).length;
  const goes = now === true || choice === 'always' || (choice === 'wifi' && onWifi());
  return { choice, toSend, toFetch, isWaiting: toSend + toFetch > 0 && !goes };
}

/** What is still to be looked through is counted whole: how much of it home lacks is not known before. */
async function toLookThrough(tx: Reads): Promise<number> {
  const counts = await Promise.all(sweptStores.map((name) => tx.objectStore(name).count()));
  return counts.reduce((sum, count) => sum + count, 0);
}

/** Of a phone that went on as a new one only the latest. */
function phonesIn(rows: readonly MarkRow[], { user }: Place): PhoneAtHome[] {
  const latest = new Map<string, MarkRow>();
  for (const row of rows.toSorted((a, b) => a.metAt - b.metAt || a.at - b.at)) latest.set(row.user, row);
  return [...latest.values()]
    .filter(({ isOut }) => isOut !== true)
    .map((row) => ({ user: row.user, name: row.name, lastAt: row.at, isThis: row.user === user }))
    .toSorted((a, b) => b.lastAt - a.lastAt);
}

// Chosen, not published: a weekend away from home is nothing to be told of.
const WRONG_FOR_MS = 3 * 24 * 3_600_000;
const asksAPerson: ReadonlySet<string> = new Set([
  'nothing-there',
  'wrong-password',
  'wrong-words',
  'not-allowed',
  'newer-home',
]);

function isMarkDue({ trouble }: StateRow, now: number): boolean {
  return trouble !== undefined && (asksAPerson.has(trouble.code) || now - trouble.since > WRONG_FOR_MS);
}
