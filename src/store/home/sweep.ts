import type { Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import type { BackupStore } from '../base/stores.ts';
import { read } from '../opening/read.ts';
import { findDocs } from './couch.ts';
import { docIdOf } from './doc-form.ts';
import { changeState } from './home-state-row.ts';
import { EVERYTHING_HERE, isOfTheDemo, type OutboxRow } from './home-rows.ts';
import { prepare } from './outgoing.ts';
import { noteAllPictures } from './pictures.ts';
import { sendFresh } from './push.ts';
import { sweptStores } from './swept-stores.ts';
import { homeAct, step, type Round } from './round-parts.ts';

/**
 * Looks through everything that is here, store by store, and sends what home lacks. What home has was met from the start of
 * its feed. It goes on where the last token left it.
 */
export async function sweep(round: Round): Promise<void> {
  const { home } = round;
  const mark = await sweepMark(round);
  if (mark === undefined) return;
  const of = await countOf(round);
  let done = 0;
  const from = round.sweep;
  const first = from
    ? Math.max(
        0,
        sweptStores.findIndex((name) => name === from.store),
      )
    : 0;
  for (const store of sweptStores.slice(first)) {
    let after = store === from?.store ? from.after : '';
    for (;;) {
      // Handful by handful.
      // oxlint-disable-next-line no-await-in-loop
      const records = await recordsAfter(round, store, after);
      const last = records.at(-1);
      if (!last) break;
      // oxlint-disable-next-line no-await-in-loop
      await sendMissing(round, store, records);
      after = last.id;
      done += records.length;
      round.sweep = { store, after };
      // oxlint-disable-next-line no-await-in-loop
      await sayProgress(round, done, of);
      // oxlint-disable-next-line no-await-in-loop
      await step(round);
    }
  }
  await noteAllPictures(home);
  round.sweep = undefined;
  round.isMoved = true;
  home.sent.set(EVERYTHING_HERE, mark);
  await changeState(home.store, ({ progress: _done, ...state }) => state);
}

async function sweepMark({ home }: Round): Promise<string | undefined> {
  const row: OutboxRow | undefined = await read(home.store, ['outbox'], (tx) =>
    tx.objectStore('outbox').get(EVERYTHING_HERE),
  );
  return row?.mark;
}

async function countOf({ home }: Round): Promise<number> {
  const counts = await read(home.store, sweptStores, (tx) =>
    Promise.all(sweptStores.map((name) => tx.objectStore(name).count())),
  );
  return counts.reduce((sum, count) => sum + count, 0);
}

async function recordsAfter(
  { home }: Round,
  store: BackupStore | 'conflicts',
  after: string,
): Promise<Kept[]> {
  return read(home.store, [store], (tx) =>
    tx.objectStore(store).getAll(IDBKeyRange.lowerBound(after, true), home.sizes.rows),
  );
}

async function sendMissing(
  round: Round,
  store: BackupStore | 'conflicts',
  records: readonly Kept[],
): Promise<void> {
  const { home } = round;
  const own = records.filter((record) => !isOfTheDemo(record));
  const names = await Promise.all(own.map(({ id }) => docIdOf(home.keys, store, id)));
  if (names.length === 0) return;
  const found = await findDocs(home.couch, names, { withDocs: false });
  const there = new Set(found.filter(({ rev }) => rev !== undefined).map(({ id }) => id));
  const missing = own.filter((_record, index) => !there.has(names[index] ?? ''));
  const wanted = missing.map(({ id }) => ({ outboxId: `${store}/${id}`, mark: undefined }));
  const { outgoing, unreadable } = await prepare(home, wanted);
  round.unreadable += unreadable.length;
  const taken = await sendFresh(round, outgoing);
  // Another phone was quicker: they meet as any other.
  if (taken.length > 0)
    await homeAct(home, ['outbox'], async (a) => {
      for (const { outboxId } of taken)
        // oxlint-disable-next-line no-await-in-loop
        if ((await a.kept('outbox', outboxId)) === undefined)
          a.putKept('outbox', { id: outboxId, mark: newId() } satisfies OutboxRow);
    });
}

async function sayProgress({ home }: Round, done: number, of: number): Promise<void> {
  await changeState(home.store, (state) => ({ ...state, progress: { way: 'home', done, of } }));
}
