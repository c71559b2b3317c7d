import { isGone, type Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import { isPlainObject } from '../base/paths.ts';
import { checkRecord } from '../kept/any-record.ts';
import { act } from '../opening/act.ts';
import { read } from '../opening/read.ts';
import { bytesAt, findDocs, putBytes } from './couch.ts';
import { HomeFault } from './couch-ask.ts';
import { bytesIdOf } from './doc-form.ts';
import type { Home } from './home-context.ts';
import { isOfTheDemo, type OutboxRow } from './home-rows.ts';
import { changeState } from './home-state-row.ts';
import { homeAct, worked } from './round-parts.ts';
import { openBytes, sealBytes } from './sealing.ts';

/**
 * Pictures go and come apart from the records, which carry a preview: they are large, and nobody waits for them. A picture
 * never changes, so its document is nothing but sealed bytes, and one that is there is the same.
 */
const PREFIX = 'photoBytes/';

/** Sends what home lacks; `isWanted` is asked before each, as the phone may leave its Wi-Fi meanwhile. */
export async function sendPictures(home: Home, isWanted: () => Promise<boolean>): Promise<void> {
  for (;;) {
    // oxlint-disable-next-line no-await-in-loop
    const rows = await rowsToSend(home);
    if (rows.length === 0) return;
    // oxlint-disable-next-line no-await-in-loop
    const there = await alreadyThere(home, rows);
    for (const row of rows) {
      // oxlint-disable-next-line no-await-in-loop
      if (!there.has(row.id) && !(await isWanted())) return;
      // oxlint-disable-next-line no-await-in-loop
      if (!there.has(row.id)) await sendPicture(home, row);
      // oxlint-disable-next-line no-await-in-loop
      await dropRow(home, row);
    }
  }
}

async function rowsToSend({ store, sizes }: Home): Promise<OutboxRow[]> {
  const range = IDBKeyRange.bound(PREFIX, `${PREFIX}\uffff`);
  return read(store, ['outbox'], (tx) => tx.objectStore('outbox').getAll(range, sizes.batch));
}

async function alreadyThere(home: Home, rows: readonly OutboxRow[]): Promise<ReadonlySet<string>> {
  const names = await Promise.all(rows.map(({ id }) => bytesIdOf(home.keys, 'photoBytes', idIn(id))));
  const found = await findDocs(home.couch, names, { withDocs: false });
  const there = new Set(found.filter(({ rev }) => rev !== undefined).map(({ id }) => id));
  return new Set(rows.filter((_row, index) => there.has(names[index] ?? '')).map(({ id }) => id));
}

function idIn(outboxId: string): string {
  return outboxId.slice(PREFIX.length);
}

async function sendPicture(home: Home, { id }: OutboxRow): Promise<void> {
  const { store, keys, couch } = home;
  const pictureId = idIn(id);
  const [photo, kept]: [Kept | undefined, Kept | undefined] = await read(
    store,
    ['photos', 'photoBytes'],
    (tx) =>
      Promise.all([tx.objectStore('photos').get(pictureId), tx.objectStore('photoBytes').get(pictureId)]),
  );
  // A removed photo's bytes wait for an undo on this phone; those of the demo are everybody's.
  if (!photo || isGone(photo) || isOfTheDemo(photo) || !kept || !checkRecord('photoBytes', kept).ok) return;
  const bytesId = await bytesIdOf(keys, 'photoBytes', pictureId);
  const sealedBytes = await sealBytes(keys, bytesId, withHeader(kept));
  const put = await putBytes(couch, bytesId, sealedBytes);
  if (put === 'too-large')
    await homeAct(home, ['home'], (a) =>
      a.putKept('home', { id: `big/${id}`, bytes: sealedBytes.byteLength }),
    );
}

/** A picture that was asked for anew meanwhile stays noted. */
async function dropRow(home: Home, { id, mark }: OutboxRow): Promise<void> {
  await homeAct(home, ['outbox'], async (a) => {
    if ((await a.kept('outbox', id))?.['mark'] === mark) a.drop('outbox', id);
  });
}

const LENGTH_BYTES = 4;

/** The record without its bytes as JSON, its length before it, the bytes behind it. */
function withHeader({ bytes, ...record }: Kept): Uint8Array<ArrayBuffer> {
  const picture = new Uint8Array(bytes instanceof ArrayBuffer ? bytes : new ArrayBuffer(0));
  const header = new TextEncoder().encode(JSON.stringify(record));
  const all = new Uint8Array(LENGTH_BYTES + header.length + picture.length);
  new DataView(all.buffer).setUint32(0, header.length);
  all.set(header, LENGTH_BYTES);
  all.set(picture, LENGTH_BYTES + header.length);
  return all;
}

function fromHeader(all: ArrayBuffer): Kept | undefined {
  const length = all.byteLength > LENGTH_BYTES ? new DataView(all).getUint32(0) : all.byteLength;
  if (LENGTH_BYTES + length > all.byteLength) return undefined;
  try {
    const record: unknown = JSON.parse(new TextDecoder().decode(new Uint8Array(all, LENGTH_BYTES, length)));
    const bytes = all.slice(LENGTH_BYTES + length);
    const checked = checkRecord('photoBytes', { ...(isPlainObject(record) && record), bytes });
    return checked.ok ? checked.value : undefined;
  } catch {
    return undefined;
  }
}

/** Brings every picture whose preview is here, two at a time, the newest first. */
export async function fetchPictures(home: Home, isWanted: () => Promise<boolean>): Promise<void> {
  const missing = await picturesMissing(home);
  await sayMissing(home, missing.length);
  let left = missing.length;
  const queue = [...missing];
  const bring = async () => {
    for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
      // oxlint-disable-next-line no-await-in-loop
      if (!(await isWanted())) return;
      // oxlint-disable-next-line no-await-in-loop
      if ((await bringPicture(home, id)) !== undefined) left -= 1;
    }
  };
  await Promise.all([bring(), bring()]);
  if (left !== missing.length) await sayMissing(home, left);
}

export async function sayMissing({ store }: Home, toFetch: number): Promise<void> {
  await changeState(store, (state) => ({ ...state, toFetch }));
}

/** Photos that are here without their bytes, the oldest first. */
export async function picturesMissing({ store }: Home): Promise<string[]> {
  return read(store, ['photos', 'photoBytes'], async (tx) => {
    const here = new Set((await tx.objectStore('photoBytes').getAllKeys()).map(String));
    const missing: { readonly id: string; readonly at: number }[] = [];
    let last: string | undefined;
    for (;;) {
      const range = last === undefined ? null : IDBKeyRange.lowerBound(last, true);
      // With their previews: only some at a time.
      // oxlint-disable-next-line no-await-in-loop
      const photos: Kept[] = await tx.objectStore('photos').getAll(range, 100);
      for (const photo of photos)
        if (!isGone(photo) && !here.has(photo.id) && !isOfTheDemo(photo))
          missing.push({ id: photo.id, at: Number(photo['at']) });
      last = photos.at(-1)?.id;
      if (last === undefined) break;
    }
    return missing.toSorted((a, b) => a.at - b.at).map(({ id }) => id);
  });
}

/** One picture from home, kept here too; nothing where home has not got it. */
export async function bringPicture(home: Home, id: string): Promise<ArrayBuffer | undefined> {
  const { keys, couch, store } = home;
  const bytesId = await bytesIdOf(keys, 'photoBytes', id);
  const sealedBytes = await bytesAt(couch, bytesId);
  const opened = sealedBytes && (await openBytes(keys, bytesId, sealedBytes));
  const record = opened && fromHeader(opened);
  if (!record || record.id !== id) return undefined;
  const how = { stores: ['photos', 'photoBytes'], durability: 'relaxed', stamped: false } as const;
  const kept = await act(store, how, async (a) => {
    // Removed meanwhile: nothing would show it.
    const photo = await a.kept('photos', id);
    if (photo && !isGone(photo)) a.putKept('photoBytes', record);
  });
  if (!kept.ok && kept.refusal.code === 'full-disk') throw new HomeFault({ code: 'phone-full', waiting: 1 });
  worked(kept);
  return record['bytes'] instanceof ArrayBuffer ? record['bytes'] : undefined;
}

/** Each picture that is here is noted to be sent: once, when everything is looked through. */
export async function noteAllPictures(home: Home): Promise<void> {
  const ids = await read(home.store, ['photoBytes'], (tx) => tx.objectStore('photoBytes').getAllKeys());
  await notePictures(home, ids.map(String));
}

/** Those whose photos go home, as far as they are here: a file brings bytes past the outbox. */
export async function notePictures(home: Home, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  await homeAct(home, ['photoBytes', 'outbox'], async (a) => {
    const [here, noted] = await Promise.all([
      a.tx.objectStore('photoBytes').getAllKeys(),
      a.tx.objectStore('outbox').getAllKeys(),
    ]);
    const [isHere, isNoted] = [new Set(here.map(String)), new Set(noted.map(String))];
    for (const id of ids)
      if (isHere.has(id) && !isNoted.has(`${PREFIX}${id}`))
        a.putKept('outbox', { id: `${PREFIX}${id}`, mark: newId() } satisfies OutboxRow);
  });
}
