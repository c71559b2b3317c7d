import { backupStores, storeNames } from '../../src/store/base/stores.ts';
import { restoreBackup, backupLines } from '../../src/store/file/backup.ts';
import type { BackupRefusal } from '../../src/store/file/backup-refusal.ts';
import { type Kept } from '../../src/store/base/kept.ts';
import { openStore, type Store } from '../../src/store/opening/open-store.ts';
import { canonicalText } from '../../src/store/base/paths.ts';
import { sayBackup } from '../../src/store/file/say-backup.ts';
import { putSetting } from '../../src/store/kept/settings.ts';
import { latestUndo, undoLast } from '../../src/store/undo/undo.ts';
import { fillWithEveryKind, fillWithOwnWork } from './every-kind.ts';
import { hostileFile, type Hostile } from './hostile-files.ts';
import { withHostileWords } from './hostile-records.ts';
import { differenceFrom } from './same-content.ts';

export type FuzzTally = {
  files: number;
  refused: number;
  imported: number;
  /** Refused, and something of it is here all the same; or imported, and something of it isn't. */
  halfApplied: number;
  /** What was here before changed, or the phone can't go on after it. */
  harmed: number;
  thrown: number;
  /** Taken where it had to be refused or the other way round, or said in a way that helps nobody. */
  misjudged: number;
  readonly troubles: string[];
};

type Phone = {
  readonly store: Store;
  readonly before: Snapshot;
  readonly text: string;
  readonly isTwin: boolean;
};
type Snapshot = ReadonlyMap<string, readonly Kept[]>;

/** Three phones: one whose backup is tampered with, one with other work that gets the files, one that is the first one's twin. */
export async function startFuzz() {
  const giver = await opened('giver');
  await fillWithEveryKind(giver, await picture());
  const whole: string[] = [];
  for await (const line of backupLines(giver)) whole.push(line.trimEnd());
  const own = await opened('own');
  await fillWithOwnWork(own);
  const twin = await opened('twin');
  await putBack(twin, await snapshotOf(giver));
  const phones = [await phoneOf(own, false), await phoneOf(twin, true)] as const;
  return {
    lines: whole.length,
    wordsFile: () => withHostileWords(whole),
    run: async (seed: number, from: number, count: number): Promise<FuzzTally> => {
      const tally = newTally();
      for (let number = from; number < from + count; number += 1) {
        const phone = number % 4 === 3 ? phones[1] : phones[0];
        // One after another, as a fitter would.
        // oxlint-disable-next-line no-await-in-loop
        await tryFile(phone, tally, { number, hostile: await hostileFile(whole, seed, number) });
      }
      return tally;
    },
  };
}

export function newTally(): FuzzTally {
  return {
    files: 0,
    refused: 0,
    imported: 0,
    halfApplied: 0,
    harmed: 0,
    thrown: 0,
    misjudged: 0,
    troubles: [],
  };
}

type Try = { readonly number: number; readonly hostile: Hostile };

async function tryFile(phone: Phone, tally: FuzzTally, { number, hostile }: Try): Promise<void> {
  const note = (count: 'halfApplied' | 'harmed' | 'thrown' | 'misjudged', why: string) => {
    tally[count] += 1;
    tally.troubles.push(`file ${number} (${hostile.what}): ${count}: ${why.slice(0, 300)}`);
  };
  tally.files += 1;
  try {
    const result = await weighed(hostile, async () => restoreBackup(phone.store, hostile.file));
    if (result.ok) {
      tally.imported += 1;
      if (hostile.expects === 'refused') note('misjudged', 'was taken');
      await checkImported(phone, hostile, note);
    } else {
      tally.refused += 1;
      const said = sayBackup(result.refusal);
      // A phone that has the same readings and signed sheets must not take others for them.
      const differs = phone.isTwin && /^(reading|sheet)-differs$/.test(result.refusal.code);
      if (hostile.expects === 'imported' && !differs) note('misjudged', `was refused: ${said}`);
      if (!isGoodSentence(result.refusal, said)) note('misjudged', `badly said: ${said}`);
      if ((await textOf(phone.store)) !== phone.text)
        note('halfApplied', `refused, but something changed: ${said}`);
    }
  } catch (error) {
    note('thrown', String(error));
  }
  if (await isAsBefore(phone)) return;
  await putBack(phone.store, phone.before);
}

// What a smaller one takes is lost in what the page takes anyway.
const WORTH_WEIGHING = 1_000_000;

async function weighed<T>({ file }: Hostile, doing: () => Promise<T>): Promise<T> {
  if (file.size < WORTH_WEIGHING) return doing();
  await window.startWeighing();
  try {
    return await doing();
  } finally {
    await window.stopWeighing();
  }
}

type Note = (count: 'halfApplied' | 'harmed' | 'thrown' | 'misjudged', why: string) => void;

async function checkImported(phone: Phone, hostile: Hostile, note: Note): Promise<void> {
  const { store } = phone;
  const difference = await differenceFrom(hostile.file, store, phone);
  if (difference !== undefined) note('halfApplied', difference);
  const lost = await lostFrom(phone);
  if (lost !== undefined) note('harmed', lost);
  const again =
    phone.isTwin || hostile.file.size > 1_000_000 ? undefined : await restoreBackup(store, hostile.file);
  if (again && !again.ok) note('harmed', `the second time refused: ${sayBackup(again.refusal)}`);
  if (again?.ok && again.value.added + again.value.changed > 0)
    note('harmed', `the second time brought ${again.value.added} and changed ${again.value.changed}`);
  const acted = await putSetting(store, 'sayAloud', 'on');
  if (!acted.ok) note('harmed', `nothing can be kept any more: ${acted.refusal.code}`);
  await store.db.delete('settings', 'sayAloud');
  const undo = await latestUndo(store);
  if (undo?.brought !== true) {
    if ((await textOf(store)) !== phone.text) note('harmed', 'what it brought can’t be taken out again');
    return;
  }
  const undone = await weighed(hostile, async () => undoLast(store, undo.id));
  if (!undone.ok) note('harmed', `not undone: ${undone.refusal.code}`);
  else if ((await textOf(store)) !== phone.text) note('harmed', 'undone, and not as it was');
}

/** Whatever comes, a record of before is there after it; on a phone with other work every one unchanged. */
async function lostFrom({ store, before, isTwin }: Phone): Promise<string | undefined> {
  const after = await snapshotOf(store);
  for (const name of backupStores) {
    const now = new Map(after.get(name)?.map((record) => [record.id, record]));
    for (const record of before.get(name) ?? []) {
      const kept = now.get(record.id);
      if (!kept) return `${name}/${record.id} is gone`;
      const mayChange = isTwin && name !== 'sheets' && name !== 'photoBytes';
      if (!mayChange && canonicalText(kept) !== canonicalText(record)) return `${name}/${record.id} changed`;
      if (name === 'readings' && kept['exact'] !== record['exact']) return `${name}/${record.id} changed`;
    }
  }
  return undefined;
}

const ofTheWholeFile: ReadonlySet<BackupRefusal['code']> = new Set([
  'not-a-backup',
  'newer-backup',
  'too-big',
  'too-many',
  'not-text',
  'cut-off',
  'checksum-differs',
  'counts-differ',
]);

/** It says that nothing was changed, names the line or record where one is at fault, and shows nothing of a program's. */
function isGoodSentence({ code }: BackupRefusal, said: string): boolean {
  const own = said.replace(/“[^”]*”/g, '').replace(/ of the .{1,60} \(line/s, ' (line');
  return (
    said.includes('Nothing was changed here.') &&
    said.length < 400 &&
    (ofTheWholeFile.has(code) || /\bline \d+/i.test(said)) &&
    !/undefined|NaN|\[object|Infinity/.test(own) &&
    // Nothing in a name may turn what stands behind it.
    !/[\u202a-\u202e\u2066-\u2069\p{Cc}]/u.test(said.replace(/\u2068[^\u2066-\u2069]*\u2069/g, ''))
  );
}

/** A JPEG as a camera writes one, small. */
async function picture(): Promise<ArrayBuffer> {
  const canvas = new OffscreenCanvas(24, 16);
  canvas.getContext('2d')?.fillRect(4, 4, 12, 8);
  return (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer();
}

async function opened(name: string): Promise<Store> {
  const result = await openStore({ name });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

async function phoneOf(store: Store, isTwin: boolean): Promise<Phone> {
  return { store, isTwin, before: await snapshotOf(store), text: await textOf(store) };
}

async function snapshotOf(store: Store): Promise<Snapshot> {
  const tx = store.db.transaction([...storeNames], 'readonly');
  return new Map(
    await Promise.all(
      storeNames.map(async (name): Promise<[string, Kept[]]> => [name, await tx.objectStore(name).getAll()]),
    ),
  );
}

const compared = [...backupStores, 'staging', 'conflicts', 'drafts'] as const;

/** All that is kept of the fitter's, as text. */
async function textOf(store: Store): Promise<string> {
  const all = await snapshotOf(store);
  return canonicalText(compared.map((name) => all.get(name) ?? []));
}

async function isAsBefore({ store, before }: Phone): Promise<boolean> {
  const now = await snapshotOf(store);
  return storeNames.every((name) => canonicalText(now.get(name)) === canonicalText(before.get(name)));
}

async function putBack(store: Store, snapshot: Snapshot): Promise<void> {
  const tx = store.db.transaction([...storeNames], 'readwrite');
  for (const name of storeNames) {
    void tx.objectStore(name).clear();
    for (const record of snapshot.get(name) ?? []) void tx.objectStore(name).put(record);
  }
  await tx.done;
}
