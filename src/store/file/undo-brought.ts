import { backupStores } from '../base/stores.ts';
import { act, type Act } from '../opening/act.ts';
import {
  forgetBrought,
  isMark,
  WHAT_IT_BROUGHT,
  type BroughtBundle,
  type BroughtStore,
} from './backup-brought.ts';
import { shortened } from './backup-names.ts';
import { unitOf } from '../base/unit-of.ts';
import { forgetSeen } from './conflicts-keep.ts';
import { rowsTakenBack } from './seen-rows.ts';
import { eachKept } from '../opening/each-kept.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { latestStamp } from '../base/merge.ts';
import { isPlainObject } from '../base/paths.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import type { Id } from '../base/records.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** The undo of what the last file brought, also when other acts came behind it; nothing when there is none. */
export async function broughtUndo(store: Store): Promise<Id | undefined> {
  const mark: unknown = await read(store, ['brought'], (tx) => tx.objectStore('brought').get('mark'));
  return isMark(mark) ? mark.undoId : undefined;
}

/**
 * Takes out again what the last file brought, in one transaction: what was new goes as if it had never come, what was
 * changed is as it was. The same file can be put in again after that. A job or drawer piece that was worked on since
 * stays whole, and is named.
 */
export async function undoBrought(store: Store, undoId: Id): Promise<StoreResult<string>> {
  return act(store, { stores: [...backupStores, 'brought', 'conflicts', 'home'] }, async (a) => {
    const mark: unknown = await a.tx.objectStore('brought').get('mark');
    if (!isMark(mark) || mark.undoId !== undoId) return a.refuse({ code: 'nothing-to-undo' });
    const changed = await unitsChangedAfter(a, mark.after);
    const staying = new Set<string>();
    const takeRowBack = await rowsTakenBack(a, mark.undoId);
    const stays = (unit: string) => {
      if (changed.has(unit)) staying.add(unit);
      return changed.has(unit);
    };
    await eachBrought(a, (bundle) => takeOut(a, bundle, { stays, takeRowBack }));
    await forgetBrought(a);
    await forgetSeen(a, mark.seenBefore, staying);
    return saidOf(await namesOf(a, [...staying]));
  });
}

type Going = {
  readonly stays: (unit: string) => boolean;
  /** What one record had met goes back with it. */
  readonly takeRowBack: (store: BroughtStore, id: Id) => Promise<void>;
};

async function takeOut(
  a: Act,
  { store, added, before }: BroughtBundle,
  { stays, takeRowBack }: Going,
): Promise<void> {
  const going = before.filter(([unit]) => !stays(unit)).map(([, record]) => record);
  await a.putMany(store, going);
  for (const { id } of going)
    // oxlint-disable-next-line no-await-in-loop
    await takeRowBack(store, id);
  for (const [unit, ids] of added) {
    if (store === 'photoBytes') {
      // oxlint-disable-next-line no-await-in-loop
      await dropBytes(a, ids, stays);
    } else if (!stays(unit)) {
      for (const id of ids) {
        a.drop(store, id);
        // oxlint-disable-next-line no-await-in-loop
        await takeRowBack(store, id);
      }
      // What is dropped doesn't say whose it was.
      if (unit.startsWith('jobs/')) a.drop('words', unit.slice('jobs/'.length));
    }
  }
}

// Bytes name no job: they go with their photo, which stands before them among what came.
async function dropBytes(a: Act, ids: readonly string[], stays: (unit: string) => boolean): Promise<void> {
  for (const id of ids) {
    // oxlint-disable-next-line no-await-in-loop
    const photo = await a.kept('photos', id);
    if (!photo || !stays(unitOf('photos', photo))) a.drop('photoBytes', id);
  }
}

/** What was changed since the file came: by a stamp of its own, as every act on this phone gives one that is later. */
async function unitsChangedAfter(a: Act, after: string): Promise<ReadonlySet<string>> {
  const units = new Set<string>();
  for (const store of backupStores) {
    if (store === 'photoBytes') continue;
    // oxlint-disable-next-line no-await-in-loop
    await eachKept(a.tx, store, (record) => {
      if (hasStamps(record) && latestStamp(record) > after) units.add(unitOf(store, record));
    });
  }
  return units;
}

async function eachBrought(a: Act, work: (bundle: BroughtBundle) => Promise<void>): Promise<void> {
  let last = '';
  for (;;) {
    const range = IDBKeyRange.bound(last, 'mark', true, true);
    // oxlint-disable-next-line no-await-in-loop
    const [bundle]: BroughtBundle[] = await a.tx.objectStore('brought').getAll(range, 1);
    if (!bundle) return;
    // oxlint-disable-next-line no-await-in-loop
    await work(bundle);
    last = bundle.id;
  }
}

// Chosen, not published: more is no sentence any more.
const MOST_NAMED = 3;

async function namesOf(a: Act, units: readonly string[]): Promise<readonly string[]> {
  const records = await Promise.all(
    units.map(async (unit) => {
      const [name, ...id] = unit.split('/');
      const store = backupStores.find((one) => one === name);
      const kept = store && (await a.kept(store, id.join('/')));
      return kept && !isGone(kept) ? kept : undefined;
    }),
  );
  return records.flatMap((record) => {
    const tool = record?.['tool'];
    const name = record?.['name'] ?? (isPlainObject(tool) ? tool['name'] : undefined);
    return typeof name === 'string' ? [`“${shortened(name)}”`] : [];
  });
}

function saidOf(names: readonly string[]): string {
  if (names.length === 0) return WHAT_IT_BROUGHT;
  const more = names.length > MOST_NAMED ? ` and ${names.length - MOST_NAMED} more` : '';
  return `${WHAT_IT_BROUGHT}, except ${names.slice(0, MOST_NAMED).join(', ')}${more}: worked on since`;
}

function hasStamps(
  record: Kept,
): record is Kept & { readonly stamps: Readonly<Record<string, string>> & { '*': string } } {
  return isPlainObject(record['stamps']);
}
