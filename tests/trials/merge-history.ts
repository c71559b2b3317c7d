import { backupLines, restoreBackup } from '../../src/store/file/backup.ts';
import { previewBackup } from '../../src/store/file/backup-preview.ts';
import { applyPreviewed } from '../../src/store/file/backup-restore.ts';
import { openConflicts } from '../../src/store/phones/conflicts-open.ts';
import { settleConflict } from '../../src/store/phones/conflicts-settle.ts';
import { listJobs } from '../../src/store/kept/job-list.ts';
import { isStamped, type Kept } from '../../src/store/base/kept.ts';
import { stampAt } from '../../src/store/base/merge.ts';
import { closeStore, openStore, type Store } from '../../src/store/opening/open-store.ts';
import { isPlainObject } from '../../src/store/base/paths.ts';
import { latestUndo, undoLast } from '../../src/store/undo/undo.ts';
import { chanceOf, oneAct, type Chance } from './merge-acts.ts';
import { asText, heldBy, writesIn, writtenApart, type Held, type Writes } from './merge-known.ts';
import { chanceFrom } from './seeded.ts';

/** What went wrong in one history, a line for each case; all empty when nothing did. */
export type Outcome = {
  readonly lost: string[];
  readonly differing: string[];
  /** Written apart and not asked about; asked about without need; asked about after it was settled. */
  readonly hidden: string[];
  readonly needless: string[];
  readonly again: string[];
  /** Asked about, and the preview of the file didn't say how many there would be. */
  readonly unsaid: string[];
  readonly count: { acts: number; merges: number; asked: number; settled: number; readings: number };
};

type Phone = { readonly name: string; readonly store: Store; met: Writes; before?: { met: Writes } };

type History = {
  readonly chance: Chance;
  readonly phones: readonly Phone[];
  readonly outcome: Outcome;
  readonly logged: Set<string>;
  /** Readings that a fitter removed with what they were in. */
  readonly removed: Set<string>;
  /** Fields that were settled, as `store/id path losing stamp`. */
  readonly settled: Set<string>;
  readonly open: () => Promise<Store>;
};

const HOUR_MS = 3_600_000;

/** Plays what two or three phones do to their jobs, by chance; brings all together; says what is lost or differs. */
export async function playHistory(seed: number): Promise<Outcome> {
  const random = chanceFrom(seed);
  const chance = chanceOf(random);
  const giveBack = idsByChance(random);
  const stores: Store[] = [];
  const open = async () => {
    const store = await openPhone(`merge-${seed}-${stores.length}`, chance);
    stores.push(store);
    return store;
  };
  try {
    const history = await startHistory(chance, open);
    await shareAJob(history);
    const acts = 25 + chance.below(40);
    // One after the other: it is a history.
    // oxlint-disable-next-line no-await-in-loop
    for (let act = 0; act < acts; act += 1) await step(history);
    await bringTogether(history);
    return history.outcome;
  } finally {
    giveBack();
    await Promise.all(stores.map(discard));
  }
}

async function startHistory(chance: Chance, open: History['open']): Promise<History> {
  const stores = [await open(), await open(), ...(chance.below(2) === 0 ? [] : [await open()])];
  const count = { acts: 0, merges: 0, asked: 0, settled: 0, readings: 0 };
  return {
    chance,
    open,
    phones: stores.map((store, index) => ({ name: String(index), store, met: new Set() })),
    outcome: { lost: [], differing: [], hidden: [], needless: [], again: [], unsaid: [], count },
    logged: new Set(),
    removed: new Set(),
    settled: new Set(),
  };
}

/** Most of what is written apart is written in a job that all have. */
async function shareAJob(history: History): Promise<void> {
  const [first, ...others] = history.phones;
  if (!first) return;
  for (let number = 0; number < 10; number += 1)
    // oxlint-disable-next-line no-await-in-loop
    await act(history, first);
  // oxlint-disable-next-line no-await-in-loop
  for (const other of others) await merge(history, first, other);
}

/** A phone whose clock is hours off, runs on unevenly, and is set back now and then. */
async function openPhone(name: string, chance: Chance): Promise<Store> {
  let nowMs = 1_700_000_000_000 + (chance.below(13) - 6) * HOUR_MS;
  const now = () => (nowMs += chance.below(400) === 0 ? -HOUR_MS : chance.below(4000));
  const opened = await openStore({ name, now });
  if (!opened.ok) throw new Error(`not opened: ${opened.refusal.code}`);
  return opened.value;
}

async function step(history: History): Promise<void> {
  const { chance, phones } = history;
  const phone = chance.one(phones);
  const other = chance.one(phones.filter((one) => one !== phone));
  if (!phone || !other) return;
  const what = chance.below(30);
  if (what <= 1) {
    await merge(history, other, phone);
    await settle(history, phone);
  } else if (what <= 3)
    await merge(history, other, phone, (await listJobs(other.store, { limit: 1 })).jobs[0]?.id);
  else if (what <= 5) await undo(history, phone);
  else if (what <= 8) await settle(history, phone);
  else await act(history, phone);
}

async function act({ chance, outcome, logged, removed }: History, { store }: Phone): Promise<void> {
  outcome.count.acts += 1;
  const told = await oneAct(store, chance);
  if (told.logged !== undefined) logged.add(told.logged);
  if (told.removed) for (const id of await goneReadings(store)) removed.add(id);
}

/** A file from one phone put in on another: whole, or one job handed over. What is asked must be what was written apart. */
async function merge(history: History, from: Phone, to: Phone, jobId?: string): Promise<void> {
  const { outcome } = history;
  outcome.count.merges += 1;
  const [there, here] = await Promise.all([heldBy(from.store), heldBy(to.store)]);
  const inFile = jobId === undefined ? there : onlyJob(there, jobId);
  const isInFile = (record: Kept) => jobId === undefined || isOfJob(record, jobId);
  const fromMet = new Set([...from.met, ...writesIn(there)]);
  const toMet = new Set([...to.met, ...writesIn(here)]);
  const wanted = writtenApart({ held: here, met: toMet }, { held: inFile, met: fromMet });
  const before = await askedOn(to.store);
  const openBefore = await openIds(to.store);
  const announced = await carry(from.store, to.store, jobId);
  const opened = [...(await openIds(to.store))].filter((id) => !openBefore.has(id)).length;
  if (announced !== opened) outcome.unsaid.push(`${announced} were said, ${opened} are asked`);
  const asked = [...(await askedOn(to.store))].filter((one) => !before.has(one));
  const after = await heldBy(to.store);
  // What was done last and is to be done again, as the other phone changed what it says, leaves nothing to ask.
  const isOpenedAgain = ({ key, path }: (typeof wanted)[number]) => {
    if (path !== 'done' || after.get(key)?.['done']) return false;
    const [ours, theirs] = [here.get(key), inFile.get(key)];
    if (!ours || !theirs || !isStamped(ours) || !isStamped(theirs)) return false;
    return (stampAt(ours, path) > stampAt(theirs, path) ? ours : theirs)['done'] !== undefined;
  };
  const expected = new Set(
    wanted.filter((one) => !isOpenedAgain(one)).map(({ key, path, stamps }) => askedText(key, path, stamps)),
  );
  outcome.count.asked += asked.length;
  outcome.hidden.push(...[...expected].filter((one) => !asked.includes(one)));
  outcome.needless.push(...asked.filter((one) => !expected.has(one)));
  const jobsKeys = new Set([...there].filter(([, record]) => isInFile(record)).map(([key]) => key));
  const told = [...fromMet].filter(
    (write) => jobId === undefined || jobsKeys.has(write.slice(0, write.indexOf(' '))),
  );
  from.met = fromMet;
  to.before = { met: toMet };
  to.met = new Set([...toMet, ...told]);
}

/** How many things the preview says that both wrote. */
async function carry(from: Store, to: Store, jobId?: string): Promise<number> {
  const lines: string[] = [];
  for await (const line of backupLines(from, jobId)) lines.push(line);
  const preview = await previewBackup(to, lines.join(''));
  if (!preview.ok) throw new Error(`refused: ${JSON.stringify(preview.refusal)}`);
  const restored = await applyPreviewed(to);
  if (!restored.ok) throw new Error(`refused: ${JSON.stringify(restored.refusal)}`);
  return preview.value.apart;
}

/** What is asked, but for what was removed and came back by what was logged in it: the preview can't know of that. */
async function openIds(store: Store): Promise<ReadonlySet<string>> {
  const open = (await openConflicts(store)).filter(({ record }) => record['broughtBack'] !== true);
  return new Set(open.map(({ conflict }) => conflict.id));
}

function onlyJob(held: Held, jobId: string): Held {
  return new Map([...held].filter(([, record]) => isOfJob(record, jobId)));
}

function isOfJob(record: Kept, jobId: string): boolean {
  return record.id === jobId || record['jobId'] === jobId;
}

function askedText(key: string, path: string, [a, b]: readonly [string, string]): string {
  return `${key} ${path} ${a < b ? `${a} ${b}` : `${b} ${a}`}`;
}

/** Every field that a phone asks about or asked about, settled ones too. */
async function askedOn(store: Store): Promise<ReadonlySet<string>> {
  const kept: Kept[] = await store.db.getAll('conflicts');
  return new Set(
    kept.flatMap(({ of, fields, lostStamp, wonStamp }) => {
      const { store: name, id }: { store: string; id: string } = Object(of);
      const paths = Array.isArray(fields) ? fields.map(({ path }: { path: string }) => path) : [];
      return paths.map((path) => askedText(`${name}/${id}`, path, [String(lostStamp), String(wonStamp)]));
    }),
  );
}

async function undo({ chance, settled, removed }: History, phone: Phone): Promise<void> {
  const newest = await latestUndo(phone.store);
  // What a file brought is taken out only now and then, or few histories would come together.
  if (!newest || (newest.brought && chance.below(3) > 0)) return;
  const staying = newest.brought ? await workedOnSince(phone.store) : undefined;
  const undone = await undoLast(phone.store, newest.id);
  if (!undone.ok) return;
  if (newest.label.startsWith('Took '))
    for (const one of newest.label.slice(5).split(', ')) settled.delete(one);
  for (const id of await goneReadings(phone.store)) removed.add(id);
  if (!staying || !phone.before) return;
  const held = await heldBy(phone.store);
  const stays = new Set([...held].filter(([, record]) => staying.has(unitOf(record))).map(([key]) => key));
  const kept = [...phone.met].filter((write) => stays.has(write.slice(0, write.indexOf(' '))));
  phone.met = new Set([...phone.before.met, ...kept]);
}

/** Jobs and drawer pieces that were written on after the file came. */
async function workedOnSince(store: Store): Promise<ReadonlySet<string>> {
  const mark: unknown = await store.db.get('brought', 'mark');
  const after = isPlainObject(mark) ? String(mark['after']) : '';
  const held = await heldBy(store);
  const later = [...held.values()].filter((record) =>
    Object.values(Object(record['stamps'])).some((stamp) => String(stamp) > after),
  );
  return new Set(later.map(unitOf));
}

function unitOf(record: Kept): string {
  const { jobId, pieceId } = record;
  return typeof jobId === 'string' ? jobId : typeof pieceId === 'string' ? pieceId : record.id;
}

async function settle({ chance, outcome, settled }: History, { store }: Phone): Promise<boolean> {
  const open = chance.one(await openConflicts(store));
  if (!open) return false;
  const { conflict } = open;
  const names = conflict.fields.map(
    ({ path }) => `${conflict.of.store}/${conflict.of.id} ${path} ${conflict.lostStamp}`,
  );
  const take = chance.one(['now', 'lost'] as const) ?? 'now';
  const done = await settleConflict(store, {
    id: conflict.id,
    take,
    label: `Took ${names.join(', ')}`.slice(0, 500),
  });
  if (!done.ok) return false;
  outcome.count.settled += 1;
  for (const name of names) settled.add(name);
  return true;
}

async function goneReadings(store: Store): Promise<string[]> {
  const readings: Kept[] = await store.db.getAll('readings');
  return readings.filter(({ deleted }) => deleted !== undefined).map(({ id }) => id);
}

/** Every phone gets every other's file, in any order, twice; a fourth and a fifth only get the files, in two orders. */
async function bringTogether(history: History): Promise<void> {
  const { phones, chance, outcome, logged } = history;
  const passes = await passesOn(phones.map(({ store }) => store));
  const files = await Promise.all(phones.map(({ store }) => fileOf(store)));
  const [fourth, fifth] = [await history.open(), await history.open()];
  await putIn(fourth, shuffled([...files, ...files], chance));
  await putIn(fifth, shuffled([...files, ...files], chance));
  await exchangeAll(history);
  const all = await Promise.all([...phones.map(({ store }) => store), fourth, fifth].map(heldBy));
  const [first] = all;
  const text = first && asText(first);
  for (const [index, held] of all.entries())
    if (asText(held) !== text) outcome.differing.push(differenceOf(first, held, index));
  outcome.count.readings = logged.size;
  for (const held of all) outcome.lost.push(...lostIn(history, held));
  const after = await passesOn(phones.map(({ store }) => store));
  outcome.lost.push(...[...passes].filter((pass) => !after.has(pass)).map((pass) => `pass ${pass}`));
  await settleAll(history);
}

/** Every phone gets every other's file, in any order, twice. */
async function exchangeAll(history: History): Promise<void> {
  const { phones, chance } = history;
  const pairs = phones.flatMap((from) => phones.filter((to) => to !== from).map((to) => [from, to] as const));
  for (let round = 0; round < 2; round += 1)
    for (const [from, to] of shuffled(pairs, chance))
      // oxlint-disable-next-line no-await-in-loop
      await merge(history, from, to);
}

/** One fitter settles all that he is asked; every phone comes to that, and nobody is asked about it again. */
async function settleAll(history: History): Promise<void> {
  const { phones, chance, outcome } = history;
  const fitter = chance.one(phones);
  if (!fitter) return;
  while ((await openConflicts(fitter.store)).length > 0) if (!(await settle(history, fitter))) break;
  await exchangeAll(history);
  const all = await Promise.all(phones.map(({ store }) => heldBy(store)));
  const [first] = all;
  for (const [index, held] of all.entries())
    if (first && asText(held) !== asText(first)) outcome.differing.push(differenceOf(first, held, index));
  for (const { store } of phones) outcome.again.push(...(await askedAgain(store, history.settled)));
}

function lostIn({ logged, removed }: History, held: Held): string[] {
  return [...logged].flatMap((id) => {
    const reading = held.get(`readings/${id}`);
    if (!reading) return [`reading ${id}`];
    const isGone = reading['deleted'] !== undefined && !removed.has(id);
    return isGone ? [`reading ${id} was removed by nobody`] : [];
  });
}

async function askedAgain(store: Store, settled: ReadonlySet<string>): Promise<string[]> {
  return (await openConflicts(store)).flatMap(({ conflict: { of, lostStamp }, fields }) =>
    fields.map(({ path }) => `${of.store}/${of.id} ${path} ${lostStamp}`).filter((one) => settled.has(one)),
  );
}

async function fileOf(store: Store): Promise<string> {
  const lines: string[] = [];
  for await (const line of backupLines(store)) lines.push(line);
  return lines.join('');
}

async function putIn(store: Store, files: readonly string[]): Promise<void> {
  for (const file of files) {
    // oxlint-disable-next-line no-await-in-loop
    const restored = await restoreBackup(store, file);
    if (!restored.ok) throw new Error(`refused: ${JSON.stringify(restored.refusal)}`);
  }
}

async function passesOn(stores: readonly Store[]): Promise<ReadonlySet<string>> {
  const cuts: Kept[][] = await Promise.all(stores.map((store) => store.db.getAll('cuts')));
  return new Set(
    cuts.flat().flatMap(({ id, passes }) => Object.keys(Object(passes)).map((pass) => `${id}/${pass}`)),
  );
}

function differenceOf(first: Held | undefined, other: Held, index: number): string {
  const keys = [...new Set([...(first?.keys() ?? []), ...other.keys()])];
  const differing = keys.filter((key) => {
    const [a, b] = [first?.get(key), other.get(key)];
    return !a || !b || asText(new Map([[key, a]])) !== asText(new Map([[key, b]]));
  });
  return `phone ${index}: ${differing.join(', ')}`;
}

function shuffled<T>(of: readonly T[], chance: Chance): T[] {
  return of
    .map((one) => ({ one, at: chance.below(1_000_000) }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ one }) => one);
}

/** The same seed gives the same ids. Returns its undo. */
function idsByChance(random: () => number): () => void {
  const byChance = <T extends ArrayBufferView>(view: T): T => {
    const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
    for (const index of bytes.keys()) bytes[index] = Math.floor(random() * 256);
    return view;
  };
  Object.defineProperty(crypto, 'getRandomValues', { configurable: true, writable: true, value: byChance });
  return () => Reflect.deleteProperty(crypto, 'getRandomValues');
}

async function discard(store: Store): Promise<void> {
  const { name } = store.db;
  closeStore(store);
  await new Promise<void>((resolve) => {
    const request = indexedDB.deleteDatabase(name);
    request.addEventListener('success', () => resolve());
    request.addEventListener('error', () => resolve());
    request.addEventListener('blocked', () => resolve());
  });
}
