import type { Stamp } from '../base/clock.ts';
import type { Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import type { StoreName } from '../base/stores.ts';
import type { StoreRefusal, StoreResult } from '../base/store-refusal.ts';
import { act, type Act } from '../opening/act.ts';
import { localNote, putLocalNote } from './couch.ts';
import { HomeFault } from './couch-ask.ts';
import type { Home } from './home-context.ts';
import { placeIn, type Place } from './home-rows.ts';

/** One round as it goes: what is on the way and not yet held by both. */
export type Round = {
  readonly home: Home;
  place: Place;
  /** The revision of this phone's own note at home. */
  noteRev: string | undefined;
  since: string;
  sweep: Place['sweep'];
  steps: number;
  /** Something is to be written down with the next token. */
  isMoved: boolean;
  hasWritten: boolean;
  /** Something was written since the feed was last looked at. */
  wrote: boolean;
  /** The mark of the note to look through everything, once it was begun from the start. */
  sweepMark: string | undefined;
  /** This phone had no room for something from home. */
  isFull: boolean;
  /** Outbox rows that can't go now, with the mark they have: they stay. */
  readonly stuck: Map<string, string>;
  /** Records that this Slipfit can't read, met on the way. */
  unreadable: number;
  /** Up to here all of this phone's own changes are at home, once it was found so. */
  upTo: Stamp | undefined;
};

/** Home has a write of this phone's own that the phone does not know. */
export class PhonePutBack extends Error {}

/** Nobody is asked to wait for these: a step that is lost is done again. */
const quietly = { durability: 'relaxed', stamped: false } as const;

/** One transaction of home's own; a refusal of the phone's database ends the round. */
export async function homeAct<T>(
  { store }: Home,
  stores: readonly StoreName[],
  work: (a: Act) => Promise<T> | T,
  durability: 'strict' | 'relaxed' = 'relaxed',
): Promise<T> {
  return worked(await act(store, { ...quietly, durability, stores }, work));
}

export function worked<T>(result: StoreResult<T>): T {
  if (result.ok) return result.value;
  throw storeFault(result.refusal);
}

export function storeFault(refusal: StoreRefusal): HomeFault {
  return new HomeFault({ code: 'store', refusal });
}

/**
 * Both are to hold the same token: home in this phone's own note, the phone in its place. Only with it does anything count
 * as done: how far the feed was met, how far the sweep is, which outbox rows go. What breaks off in between is told from
 * `next`: home has it or has it not, and both are right.
 */
export async function takeToken(round: Round): Promise<void> {
  const { home } = round;
  const token = newId();
  const n = round.place.n + 1;
  // Strict: a phone that forgot by a pulled battery what it sent as its token would seem to be put back.
  round.place = await homeAct(
    home,
    ['home'],
    async (a) => keepPlace(a, { ...round.place, next: token }),
    'strict',
  );
  round.noteRev = await putNote(round, { n, token });
  const sent = [...home.sent];
  round.place = await homeAct(
    home,
    ['home', 'outbox'],
    async (a) => {
      await dropSent(a, sent);
      const { next: _next, sweep: _sweep, sweepMark: _mark, again: _again, ...place } = round.place;
      const { since, sweep, sweepMark, upTo } = round;
      return keepPlace(a, {
        ...place,
        token,
        n,
        since,
        ...(sweep && { sweep }),
        ...(sweepMark !== undefined && { sweepMark }),
        ...(upTo !== undefined && { upTo }),
      });
    },
    'strict',
  );
  for (const [id, mark] of sent) if (home.sent.get(id) === mark) home.sent.delete(id);
  round.steps = 0;
  round.isMoved = false;
}

/** After each batch: every so often both hold a new token, so that a break costs little. */
export async function step(round: Round): Promise<void> {
  round.steps += 1;
  round.isMoved = true;
  if (round.steps >= round.home.sizes.stepsToToken) await takeToken(round);
}

async function putNote(round: Round, note: { readonly n: number; readonly token: string }): Promise<string> {
  const { home, place } = round;
  const put = await putLocalNote(home.couch, place.me, note, round.noteRev);
  if (put !== 'other-rev') return put.rev;
  // Some servers hold a note to its revision: one that was carried out late has changed it.
  const there = await localNote(home.couch, place.me);
  const again = await putLocalNote(home.couch, place.me, note, there?.rev);
  if (again === 'other-rev') throw new HomeFault({ code: 'busy' });
  return again.rev;
}

/** All of home's own rows of one kind. */
export async function dropAll(a: Act, range: IDBKeyRange): Promise<void> {
  for (const id of (await a.tx.objectStore('home').getAllKeys(range)).map(String)) a.drop('home', id);
}

/** A row that an act marked anew since was sent as it was before, and stays. */
async function dropSent(a: Act, sent: readonly (readonly [string, string])[]): Promise<void> {
  const rows = await Promise.all(sent.map(async ([id]): Promise<Kept | undefined> => a.kept('outbox', id)));
  for (const [index, [id, mark]] of sent.entries()) if (rows[index]?.['mark'] === mark) a.drop('outbox', id);
}

/** Puts the place, unless the fitter has taken this phone away from home meanwhile. */
export async function keepPlace(a: Act, place: Place): Promise<Place> {
  const kept = placeIn(await a.kept('home', 'place'));
  if (kept?.me !== place.me && kept?.database !== place.database)
    return a.refuse({ code: 'gone', store: 'home' });
  a.putKept('home', place);
  return place;
}
