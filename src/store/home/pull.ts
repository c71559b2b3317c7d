import type { Kept } from '../base/kept.ts';
import { read } from '../opening/read.ts';
import {
  bytesAt,
  changesAfter,
  FROM_THE_START,
  leavesOf,
  type Change,
  type Doc,
  type Leaf,
} from './couch.ts';
import { openDoc } from './doc-form.ts';
import { asideRange, comingRange, type AsideRow, type ComingRow } from './home-rows.ts';
import { meetAll, type Coming } from './meet.ts';
import { dropAll, homeAct, PhonePutBack, step, storeFault, type Round } from './round-parts.ts';
import { fetchProgress } from './home-progress.ts';

/** Everything that changed at home since the last time, to its end. From the start of the feed it is listed first, and comes newest first. */
export async function pull(round: Round): Promise<void> {
  if (round.since === FROM_THE_START) return listAll(round);
  const { couch, sizes } = round.home;
  for (;;) {
    // Page by page, each from where the one before it ended.
    // oxlint-disable-next-line no-await-in-loop
    const page = await changesAfter(couch, round.since, sizes.page);
    // oxlint-disable-next-line no-await-in-loop
    await takeIn(round, leavesIn(page.changes));
    round.since = page.since;
    // oxlint-disable-next-line no-await-in-loop
    if (page.changes.some(({ id }) => isRecord(id))) await step(round);
    if (page.changes.length < sizes.page) return;
  }
}

/** The feed as a list on the disk, so that what is newest can come first and a break loses no more than a handful. */
async function listAll(round: Round): Promise<void> {
  const { home } = round;
  await homeAct(home, ['home'], (a) => dropAll(a, comingRange()));
  let since = FROM_THE_START;
  for (let number = 0; ; number += 1) {
    // oxlint-disable-next-line no-await-in-loop
    const page = await changesAfter(home.couch, since, home.sizes.page);
    const leaves = leavesIn(page.changes).map(({ id, rev }) => [id, rev] as const);
    const row: ComingRow = { id: `coming/${String(number).padStart(9, '0')}`, leaves };
    // oxlint-disable-next-line no-await-in-loop
    if (leaves.length > 0) await homeAct(home, ['home'], (a) => a.putKept('home', row));
    since = page.since;
    if (page.changes.length < home.sizes.page) break;
  }
  // An empty home has no place in its feed to go on from.
  round.since = since;
  await step(round);
}

// Chosen, not published: then what was logged here meanwhile goes home.
const ROWS_IN_A_GO = 5;

/** Some of what was listed, newest first; true while more is to come. */
export async function bringListed(round: Round): Promise<boolean> {
  const { home } = round;
  for (let count = 0; count < ROWS_IN_A_GO; count += 1) {
    // oxlint-disable-next-line no-await-in-loop
    const row = await lastListed(round);
    if (!row) return false;
    const leaves = row.leaves.map(([id, rev]) => ({ id, rev }));
    // oxlint-disable-next-line no-await-in-loop
    await takeIn(round, leaves.toReversed());
    if (round.isFull) return false;
    // oxlint-disable-next-line no-await-in-loop
    await homeAct(home, ['home'], (a) => a.drop('home', row.id));
    // oxlint-disable-next-line no-await-in-loop
    await fetchProgress(home);
    // oxlint-disable-next-line no-await-in-loop
    await step(round);
  }
  return true;
}

async function lastListed({ home }: Round): Promise<ComingRow | undefined> {
  return read(home.store, ['home'], async (tx) => {
    const cursor = await tx.objectStore('home').openCursor(comingRange(), 'prev');
    // Written above.
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion
    return cursor?.value as ComingRow | undefined;
  });
}

export async function isAllBrought({ home }: Round): Promise<boolean> {
  return read(home.store, ['home'], async (tx) => (await tx.objectStore('home').count(comingRange())) === 0);
}

function isRecord(id: string): boolean {
  return id.startsWith('r');
}

function leavesIn(changes: readonly Change[]): Leaf[] {
  return changes
    .filter(({ id, isDeleted }) => isRecord(id) && !isDeleted)
    .flatMap(({ id, revs }) => revs.map((rev) => ({ id, rev })));
}

/** Fetches, opens and meets these, a handful at a time. What this phone wrote itself is not fetched. */
async function takeIn(round: Round, leaves: readonly Leaf[]): Promise<void> {
  const { ownRevs, sizes, couch } = round.home;
  const isOwn = ({ id, rev }: Leaf) => ownRevs.has(`${id} ${rev}`);
  const own = new Set(leaves.filter(isOwn).map(({ id }) => id));
  for (const some of handfuls(leaves, sizes.batch)) {
    if (round.isFull) return;
    const others = some.filter((leaf) => !isOwn(leaf));
    if (others.length === 0) continue;
    // oxlint-disable-next-line no-await-in-loop
    const docs = await leavesOf(couch, others);
    const count = new Map<string, number>();
    for (const { _id } of docs) count.set(_id, (count.get(_id) ?? (own.has(_id) ? 1 : 0)) + 1);
    // oxlint-disable-next-line no-await-in-loop
    await meetDocs(round, docs, (id) => (count.get(id) ?? 0) > 1);
  }
}

/** The leaves of one document stay together. */
function handfuls(leaves: readonly Leaf[], size: number): Leaf[][] {
  const all: Leaf[][] = [];
  let last: Leaf[] = [];
  for (const leaf of leaves) {
    const isOfLast = last.at(-1)?.id === leaf.id;
    if (last.length === 0 || (last.length >= size && !isOfLast)) all.push((last = []));
    last.push(leaf);
  }
  return all;
}

/** Opens documents and has them meet what is here. Gives which outbox rows home lacks something of, and what was laid aside. */
export async function meetDocs(
  round: Round,
  docs: readonly Doc[],
  hasOthers: (id: string) => boolean,
): Promise<{ readonly lacking: ReadonlySet<string>; readonly aside: ReadonlyMap<string, AsideRow['why']> }> {
  const { home } = round;
  const fetchBytes = (id: string) => bytesAt(home.couch, id);
  const aside = new Map<string, AsideRow['why']>();
  const openings = await Promise.all(
    docs.map(async (doc) => ({ doc, opening: await openDoc(home.keys, doc, fetchBytes) })),
  );
  const coming = openings.flatMap(({ doc: { _id, _rev }, opening }): Coming[] => {
    if (opening.ok)
      return [{ docId: _id, rev: _rev, opened: opening.value, ...(hasOthers(_id) && { others: true }) }];
    aside.set(_id, opening.why);
    return [];
  });
  const met = await meetAll(home, coming);
  if (!met.ok) {
    if (met.refusal.code !== 'full-disk') throw storeFault(met.refusal);
    round.isFull = true;
    return { lacking: new Set(), aside };
  }
  if (met.value.code === 'unknown-own-write') throw new PhonePutBack();
  for (const { docId } of met.value.closed) aside.set(docId, 'closed');
  await layAside(round, docs, aside);
  return { lacking: met.value.lacking, aside };
}

/** Notes what can't be taken in, and that what could not be can be by now. */
async function layAside(
  { home }: Round,
  docs: readonly Doc[],
  aside: ReadonlyMap<string, AsideRow['why']>,
): Promise<void> {
  const known = await read(home.store, ['home'], (tx) => tx.objectStore('home').getAllKeys(asideRange()));
  if (aside.size === 0 && known.length === 0) return;
  const ids = new Set(known.map(String));
  await homeAct(home, ['home'], (a) => {
    for (const { _id, _rev } of docs) {
      const why = aside.get(_id);
      if (why !== undefined) a.putKept('home', { id: `aside/${_id}`, rev: _rev, why } satisfies AsideRow);
      else if (ids.has(`aside/${_id}`)) a.drop('home', `aside/${_id}`);
    }
  });
}

/** What was laid aside before is looked at again: this may be a later Slipfit than the one that could not read it. */
export async function lookAtAside(round: Round): Promise<void> {
  const { home } = round;
  const rows: Kept[] = await read(home.store, ['home'], (tx) => tx.objectStore('home').getAll(asideRange()));
  const leaves = rows.map(({ id, rev }) => ({ id: id.slice('aside/'.length), rev: String(rev) }));
  for (let at = 0; at < leaves.length; at += home.sizes.batch) {
    const some = leaves.slice(at, at + home.sizes.batch);
    // oxlint-disable-next-line no-await-in-loop
    const docs = await leavesOf(home.couch, some);
    // oxlint-disable-next-line no-await-in-loop
    await meetDocs(round, docs, () => false);
  }
}
