import { read } from '../opening/read.ts';
import { ownLatest } from '../phones/seen.ts';
import { forgetBrought } from '../file/backup-brought.ts';
import { findDocs, leavesOf, writeDocs, type Found } from './couch.ts';
import type { Json } from './couch-ask.ts';
import { EVERYTHING_HERE, type OutboxRow } from './home-rows.ts';
import { meetDocs } from './pull.ts';
import { notePictures } from './pictures.ts';
import { prepare, sealed, type Outgoing, type Wanted } from './outgoing.ts';
import { homeAct, step, takeToken, type Round } from './round-parts.ts';

/** Sends what was noted, until nothing is left that can go. True where everything else here is to be looked through too. */
export async function push(round: Round): Promise<boolean> {
  for (let isFirst = true; ; isFirst = false) {
    // A handful after the other: what an act notes meanwhile comes with the next.
    // oxlint-disable-next-line no-await-in-loop
    const { rows, isSweep } = await toGo(round);
    if (rows.length === 0 && !isSweep) return false;
    // oxlint-disable-next-line no-await-in-loop
    if (isFirst) await beforeSending(round);
    if (rows.length === 0) return true;
    // oxlint-disable-next-line no-await-in-loop
    await sendRows(round, rows);
    // oxlint-disable-next-line no-await-in-loop
    await step(round);
  }
}

/**
 * What a file brought can't be taken out again once home has it; and an older image of this phone must find a later token
 * at home than its own before anything of a later life is there.
 */
async function beforeSending(round: Round): Promise<void> {
  if (round.hasWritten) return;
  round.hasWritten = true;
  await homeAct(round.home, ['brought', 'undo'], forgetBrought);
  await takeToken(round);
}

const PICTURES = 'photoBytes/';

type ToGo = { readonly rows: readonly Wanted[]; readonly isSweep: boolean };

async function toGo(round: Round): Promise<ToGo> {
  const { home, stuck } = round;
  const isOpen = ({ id, mark }: OutboxRow) => home.sent.get(id) !== mark && stuck.get(id) !== mark;
  return read(home.store, ['outbox'], async (tx) => {
    const rows: Wanted[] = [];
    let isSweep = false;
    let cursor = await tx.objectStore('outbox').openCursor();
    while (cursor && rows.length < home.sizes.rows) {
      const row: OutboxRow = cursor.value;
      if (row.id === EVERYTHING_HERE) isSweep = isOpen(row);
      else if (!row.id.startsWith(PICTURES) && isOpen(row)) rows.push({ outboxId: row.id, mark: row.mark });
      // A cursor goes one by one.
      // oxlint-disable-next-line no-await-in-loop
      cursor = await cursor.continue();
    }
    return { rows, isSweep };
  });
}

async function sendRows(round: Round, rows: readonly Wanted[]): Promise<void> {
  const { outgoing, nothing, unreadable } = await prepare(round.home, rows);
  for (const one of nothing) isThere(round, one);
  for (const one of unreadable) isStuck(round, one);
  round.unreadable += unreadable.length;
  const photos = outgoing.filter(({ store }) => store === 'photos');
  await notePictures(
    round.home,
    photos.map(({ id }) => id),
  );
  const fresh = outgoing.filter(({ isFresh }) => isFresh);
  const taken = await sendFresh(round, fresh);
  await meetAndSend(round, [...outgoing.filter(({ isFresh }) => !isFresh), ...taken]);
}

function isThere({ home }: Round, { outboxId, mark }: Wanted): void {
  if (mark !== undefined) home.sent.set(outboxId, mark);
}

function isStuck({ stuck }: Round, { outboxId, mark }: Wanted): void {
  if (mark !== undefined) stuck.set(outboxId, mark);
}

/** Sends what home can't have otherwise, without asking first. Gives those of a name that is taken. */
export async function sendFresh(round: Round, fresh: readonly Outgoing[]): Promise<Outgoing[]> {
  const { conflicts } = await write(
    round,
    fresh.map((one) => ({ one })),
  );
  return conflicts;
}

// Chosen, not published: another phone is at the same records at this very moment; the next round comes in seconds.
const MOST_TRIES = 5;

/** What may be at home in another state: met first, then sent where home lacks something, on top of what is there. */
export async function meetAndSend(round: Round, all: readonly Outgoing[]): Promise<void> {
  const { sizes } = round.home;
  for (let at = 0; at < all.length; at += sizes.batch) {
    let left: readonly Outgoing[] = all.slice(at, at + sizes.batch);
    for (let tries = 0; left.length > 0 && tries < MOST_TRIES; tries += 1)
      // oxlint-disable-next-line no-await-in-loop
      left = await meetAndSendSome(round, left);
    for (const one of left) isStuck(round, one);
  }
}

async function meetAndSendSome(round: Round, some: readonly Outgoing[]): Promise<Outgoing[]> {
  const { home } = round;
  const found = await findDocs(
    home.couch,
    some.map(({ docId }) => docId),
    { withDocs: true },
  );
  const there = new Map(found.map((one) => [one.id, one]));
  const others = await losingLeaves(round, found);
  const docs = [...found.flatMap(({ doc }) => doc ?? []), ...others];
  const { lacking, aside } = await meetDocs(round, docs, () => false);
  if (round.isFull) {
    // What can't be met can't be sent on top of either.
    for (const one of some) if (there.get(one.docId)?.doc) isStuck(round, one);
    return write(
      round,
      some.filter(({ docId }) => !there.get(docId)?.doc).map((one) => ({ one })),
    ).then(({ conflicts }) => conflicts);
  }
  const wanted: Outgoing[] = [];
  for (const one of some) {
    const stands = there.get(one.docId);
    // A later Slipfit's is left as it is; one that can't be opened is replaced by what is here.
    if (aside.get(one.docId) === 'newer') isStuck(round, one);
    else if (!stands?.doc || aside.has(one.docId) || lacking.has(one.outboxId) || stands.conflicts.length > 0)
      wanted.push(one);
    else isThere(round, one);
  }
  // Anew: what came from home is in it by now.
  const { outgoing, nothing, unreadable } = await prepare(home, wanted);
  for (const one of nothing) isThere(round, one);
  for (const one of unreadable) isStuck(round, one);
  const { conflicts, written } = await write(
    round,
    outgoing.map((one) => ({ one, rev: there.get(one.docId)?.rev })),
  );
  await dropLosers(
    round,
    written.flatMap(({ docId }) => there.get(docId) ?? []),
  );
  return conflicts;
}

async function losingLeaves({ home }: Round, found: readonly Found[]) {
  const leaves = found.flatMap(({ id, conflicts }) => conflicts.map((rev) => ({ id, rev })));
  return leaves.length === 0 ? [] : leavesOf(home.couch, leaves);
}

/** The winner has met all of them by now. */
async function dropLosers({ home }: Round, there: readonly Found[]): Promise<void> {
  const losers = there.flatMap(({ id, conflicts }) =>
    conflicts.map((rev) => ({ _id: id, _rev: rev, _deleted: true })),
  );
  if (losers.length > 0) await writeDocs(home.couch, losers);
}

type Writing = { readonly one: Outgoing; readonly rev?: string | undefined };
type Outcome = { readonly written: readonly Outgoing[]; readonly conflicts: Outgoing[] };

/** Writes them in portions that home takes; what is too large by itself stays, and is said. */
async function write(round: Round, all: readonly Writing[]): Promise<Outcome> {
  const { home } = round;
  const written: Outgoing[] = [];
  const conflicts: Outgoing[] = [];
  let portion: { readonly one: Outgoing; readonly doc: Json & { readonly _id: string } }[] = [];
  let bytes = 0;
  const send = async () => {
    const some = portion;
    [portion, bytes] = [[], 0];
    await writePortion(round, some, { written, conflicts });
  };
  for (const { one, rev } of all) {
    // oxlint-disable-next-line no-await-in-loop
    const made = await sealed(home, one);
    if (!made.ok) {
      // oxlint-disable-next-line no-await-in-loop
      await isTooLarge(round, one, made.tooLarge);
      continue;
    }
    const doc = rev === undefined ? made.doc : { ...made.doc, _rev: rev };
    const length = String(doc['d']).length;
    // oxlint-disable-next-line no-await-in-loop
    if (bytes > 0 && bytes + length > home.sizes.bytes) await send();
    portion.push({ one, doc });
    bytes += length;
  }
  await send();
  return { written, conflicts };
}

type Portion = readonly { readonly one: Outgoing; readonly doc: Json & { readonly _id: string } }[];

async function writePortion(
  round: Round,
  portion: Portion,
  outcome: { readonly written: Outgoing[]; readonly conflicts: Outgoing[] },
): Promise<void> {
  const [first, ...more] = portion;
  if (!first) return;
  const { home } = round;
  const results = await writeDocs(
    home.couch,
    portion.map(({ doc }) => doc),
  );
  if (results === 'too-large') {
    if (more.length === 0) return isTooLarge(round, first.one, String(first.doc['d']).length);
    const half = Math.ceil(portion.length / 2);
    await writePortion(round, portion.slice(0, half), outcome);
    return writePortion(round, portion.slice(half), outcome);
  }
  const byId = new Map(results.map((result) => [result.id, result]));
  for (const { one, doc } of portion) {
    const result = byId.get(one.docId);
    if (result && 'rev' in result) {
      round.wrote = true;
      home.ownRevs.add(`${one.docId} ${result.rev}`);
      isThere(round, one);
      outcome.written.push(one);
    } else if (result?.refused === 'conflict') outcome.conflicts.push(one);
    // oxlint-disable-next-line no-await-in-loop
    else if (result?.refused === 'too-large') await isTooLarge(round, one, String(doc['d']).length);
    else isStuck(round, one);
  }
}

async function isTooLarge(round: Round, one: Outgoing, bytes: number): Promise<void> {
  isStuck(round, one);
  await homeAct(round.home, ['home'], (a) => a.putKept('home', { id: `big/${one.outboxId}`, bytes }));
}

/** The stamp up to which all of this phone's own changes are at home; nothing while some are not. */
export async function allSentUpTo({ home, stuck, unreadable }: Round): Promise<string | undefined> {
  return read(home.store, ['outbox', 'device'], async (tx) => {
    const rows: OutboxRow[] = await tx.objectStore('outbox').getAll();
    const left = rows.filter(({ id, mark }) => !id.startsWith(PICTURES) && home.sent.get(id) !== mark);
    if (left.length > 0 || stuck.size > 0 || unreadable > 0) return undefined;
    return ownLatest(await tx.objectStore('device').get('clock'));
  });
}
