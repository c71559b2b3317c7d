import { isDeviceId, isSoundStamp, nextStamp, deviceOf, type Stamp } from '../base/clock.ts';
import { isStamped, type Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import { isPlainObject } from '../base/paths.ts';
import { backupStores, type BackupStore } from '../base/stores.ts';
import { putSeen } from '../file/conflicts-keep.ts';
import { withStamps } from '../opening/act-changes.ts';
import type { Act } from '../opening/act.ts';
import { eachKept } from '../opening/each-kept.ts';
import { keptSeen } from '../phones/seen-here.ts';
import { seenInRow } from '../phones/record-seen.ts';
import { FROM_THE_START, isThere, localNote, oneDoc, putDoc } from './couch.ts';
import { askHome, HomeFault } from './couch-ask.ts';
import {
  asideRange,
  comingRange,
  EVERYTHING_HERE,
  recordOf,
  type OutboxRow,
  type Place,
} from './home-rows.ts';
import { changeState } from './home-state-row.ts';
import { dropAll, homeAct, keepPlace, PhonePutBack, takeToken, type Round } from './round-parts.ts';
import { fitsShop, readShop, SHOP_DOC } from './sealing.ts';

/**
 * Which life of home is this, and which of this phone? Both hold the same token, or the phone never sent one: then it goes
 * on. Home has one that came after this phone's: the phone was put back. Anything else: home was, or is another.
 */
export async function checkLife(round: Round): Promise<void> {
  const { home, place } = round;
  const there = await localNote(home.couch, place.me);
  round.noteRev = there?.rev;
  const token = there?.note['token'];
  const isFirst = place.token === undefined && place.next === undefined;
  if (isFirst && !there) return checkShop(round);
  if (token !== undefined && token === place.token) return;
  if (token !== undefined && token === place.next) return tokenCame(round);
  const n = there?.note['n'];
  if (typeof n === 'number' && n > place.n) throw new PhonePutBack();
  if (place.token === undefined && !there) return;
  await checkShop(round);
  await homeWasPutBack(round);
}

/** The answer was lost, and home had it. What was on the way with it is done again. */
async function tokenCame(round: Round): Promise<void> {
  const { next, ...place } = round.place;
  if (next === undefined) return;
  round.place = await homeAct(
    round.home,
    ['home'],
    (a) => keepPlace(a, { ...place, token: next, n: place.n + 1 }),
    'strict',
  );
}

/** Whether what is there is this shop; nothing there is never filled by itself. */
async function checkShop(round: Round): Promise<void> {
  const { home, place } = round;
  const { couch, keys } = home;
  const doc = (await isThere(couch)) ? await oneDoc(couch, SHOP_DOC) : undefined;
  if (doc) {
    const shop = readShop(doc);
    if (shop === 'newer') throw new HomeFault({ code: 'newer-home' });
    if (!shop || !(await fitsShop(keys, shop))) throw new HomeFault({ code: 'wrong-words' });
    return;
  }
  if (place.again !== true) throw new HomeFault({ code: 'nothing-there' });
  // The fitter said so. A database can be made by the server's admin alone: where it is gone, that is said.
  if (!(await isThere(couch)))
    await askHome(couch.way, { method: 'PUT', path: `/${couch.database}`, also: [412] });
  await putDoc(couch, SHOP_DOC, place.shop);
}

/** What home lacks is sent again, and what it has is met anew: nothing that was agreed with it holds. */
async function homeWasPutBack(round: Round): Promise<void> {
  const { home } = round;
  home.ownRevs.clear();
  home.sent.clear();
  const isMeant = round.place.again === true;
  round.place = await homeAct(
    home,
    ['home', 'outbox'],
    async (a) => {
      const sweepMark = await noteEverything(a);
      const { again: _again, next: _next, sweep: _sweep, ...place } = round.place;
      return keepPlace(a, { ...place, since: FROM_THE_START, sweepMark });
    },
    'strict',
  );
  round.since = FROM_THE_START;
  round.sweep = undefined;
  round.sweepMark = round.place.sweepMark;
  const at = home.store.now();
  if (!isMeant) await changeState(home.store, (state) => ({ ...state, homePutBackAt: at }));
  // At once: a round that breaks off later would begin all of this anew.
  await takeToken(round);
}

/** All that is here is to be looked through anew, and all that is there met anew; what was listed of it before is of no use. */
async function noteEverything(a: Act): Promise<string> {
  const mark = newId();
  a.putKept('outbox', { id: EVERYTHING_HERE, mark } satisfies OutboxRow);
  for (const range of [comingRange(), asideRange()])
    // oxlint-disable-next-line no-await-in-loop
    await dropAll(a, range);
  return mark;
}

/**
 * This phone was put back to an older state of itself. It goes on as a new one: under its old mark others know writes that
 * it does not, and would take what it writes now for known. What it had not sent gets stamps of the new mark, so that it is
 * asked about rather than lost; what it claims to have seen of its old self is what was at home for certain.
 */
export async function goOnAsNew(round: Round): Promise<void> {
  const { home, place } = round;
  home.ownRevs.clear();
  home.sent.clear();
  await homeAct(
    home,
    [...backupStores, 'home', 'outbox', 'device'],
    async (a) => {
      const old = await newMark(a);
      await cutClaims(a, old, place.upTo ?? '');
      await cutRows(a, old, place.upTo ?? '');
      await stampAnew(a, old, place.upTo ?? '');
      const sweepMark = await noteEverything(a);
      const { token: _token, next: _next, sweep: _sweep, upTo: _upTo, ...rest } = place;
      const fresh: Place = { ...rest, me: newId(), n: 0, since: FROM_THE_START, sweepMark };
      await keepPlace(a, fresh);
    },
    'strict',
  );
  const at = home.store.now();
  await changeState(home.store, (state) => ({ ...state, phonePutBackAt: at }));
}

type NewMark = { readonly before: string; readonly stamp: Stamp };

async function newMark(a: Act): Promise<NewMark> {
  const clock: unknown = await a.tx.objectStore('device').get('clock');
  const known = isPlainObject(clock) ? clock : {};
  const before = isDeviceId(known['deviceId']) ? known['deviceId'] : '';
  const last = isSoundStamp(known['last']) ? known['last'] : undefined;
  const deviceId = newId().slice(0, 8);
  const stamp = nextStamp({ last, nowMs: a.at, deviceId });
  await a.tx.objectStore('device').put({ ...known, id: 'clock', deviceId, last: stamp });
  return { before, stamp };
}

/** Of its old self it claims to have seen what was at home for certain. */
async function cutClaims(a: Act, { before }: NewMark, upTo: Stamp): Promise<void> {
  const seen = await keptSeen(a.tx);
  if (!seen) return;
  const cut = [...seen].map(([unit, latest]) => {
    const { [before]: _own, ...others } = Object.fromEntries(latest);
    const claimed = latest.get(before);
    const kept = claimed === undefined ? undefined : earlier(claimed, upTo);
    return [unit, new Map([...Object.entries(others), ...(kept ? [[before, kept] as const] : [])])] as const;
  });
  await putSeen(a, new Map(cut));
}

function earlier(a: Stamp, b: Stamp): Stamp {
  return a < b ? a : b;
}

/** What single copies claim to have met of the old self, in the same way. */
async function cutRows(a: Act, { before }: NewMark, upTo: Stamp): Promise<void> {
  const rows: Kept[] = await a.tx.objectStore('home').getAll(IDBKeyRange.bound('seen/', 'seen/\uffff'));
  for (const row of rows) {
    const met = seenInRow(row);
    if ((met.get(before) ?? '') <= upTo) continue;
    const kept = [...met].flatMap(([device, stamp]) =>
      device !== before ? [stamp] : upTo === '' ? [] : [earlier(stamp, upTo)],
    );
    a.putKept('home', { id: row.id, stamps: kept });
  }
}

/** What this phone wrote and home may not have, field by field; what it made stays as it was made, as nobody else made that. */
async function stampAnew(a: Act, mark: NewMark, upTo: Stamp): Promise<void> {
  for (const store of await storesToSend(a)) {
    const later: Kept[] = [];
    // oxlint-disable-next-line no-await-in-loop
    await eachKept(a.tx, store, (record) => {
      if (pathsSince(record, mark, upTo).length > 0) later.push(record);
    });
    for (const record of later)
      a.putKept(store, withStamps(record, pathsSince(record, mark, upTo), mark.stamp));
  }
}

/** Only what is still to be sent can be later than what was at home for certain. */
async function storesToSend(a: Act): Promise<readonly BackupStore[]> {
  const ids = (await a.tx.objectStore('outbox').getAllKeys()).map(String);
  const names = new Set(ids.map((id) => recordOf(id).store));
  return backupStores.filter(
    (name) =>
      name !== 'photoBytes' && name !== 'settings' && (ids.includes(EVERYTHING_HERE) || names.has(name)),
  );
}

function pathsSince(record: Kept, { before }: NewMark, upTo: Stamp): string[] {
  if (!isStamped(record)) return [];
  return Object.entries(record.stamps)
    .filter(([path, stamp]) => path !== '*' && deviceOf(stamp) === before && stamp > upTo)
    .map(([path]) => path);
}
