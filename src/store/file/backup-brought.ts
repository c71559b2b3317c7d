import type { BackupStore, StoreName } from '../base/stores.ts';
import type { Act } from '../opening/act.ts';
import { unitOf } from '../base/unit-of.ts';
import type { Kept } from '../base/kept.ts';
import { isBytes, isPlainObject } from '../base/paths.ts';
import type { SeenLists } from '../phones/seen.ts';

/** Stores whose records a file can bring. */
export type BroughtStore = BackupStore | 'conflicts';

/**
 * What a file brought, so that it can be taken out again as one: of a new record its id, of a changed one how it was. It
 * goes by unit, the job or drawer piece it belongs to; bundled, as a file may bring a hundred thousand.
 */
export type BroughtBundle = {
  readonly id: string;
  readonly store: BroughtStore;
  readonly added: readonly (readonly [unit: string, ids: readonly string[]])[];
  readonly before: readonly (readonly [unit: string, record: Kept])[];
};

/** `after`: whatever was changed since carries a later stamp. */
export type BroughtMark = {
  readonly id: 'mark';
  readonly undoId: string;
  readonly after: string;
  /** What this phone had seen of the others' changes before. */
  readonly seenBefore?: SeenLists;
};

export const WHAT_IT_BROUGHT = 'What the file brought';

// Chosen, not published: more than a phone should keep twice. A file that changes more has no undo, and that is said.
const MOST_CHARACTERS = 30_000_000;
const CHARACTERS_IN_A_BUNDLE = 500_000;

export type Noting = {
  /** Notes a record that is being put: it was `before`, or is new here. The first note of a record counts. */
  readonly note: (store: BroughtStore, before: Kept | undefined, record: Kept) => Promise<void>;
  /** Ends the notes. False when there was nothing, or too much, to take out again. */
  readonly end: (after: string, seenBefore: SeenLists) => Promise<boolean>;
};

/**
 * Takes down what a file brings, in the transaction that brings it. The notes of the file before go with the first one:
 * only the last file's are kept, and a file that brings nothing takes none away.
 */
export function startNoting(a: Act): Noting {
  let forgotten: Promise<void> | undefined;
  const added = new Map<BroughtStore, Map<string, string[]>>();
  const before = new Map<BroughtStore, [string, Kept][]>();
  const noted = new Set<string>();
  const count = { bundles: 0, characters: 0, waiting: 0 };
  const put = async (bundle: Omit<BroughtBundle, 'id'>) => {
    count.bundles += 1;
    await a.tx.objectStore('brought').put({ ...bundle, id: String(count.bundles).padStart(6, '0') });
  };
  const flush = async () => {
    count.waiting = 0;
    for (const [store, records] of before)
      // oxlint-disable-next-line no-await-in-loop
      await put({ store, added: [], before: records });
    before.clear();
  };
  return {
    async note(store, was, record) {
      await (forgotten ??= forgetBrought(a));
      const unit = unitOf(store, was ?? record);
      if (!was) {
        listIn(listsIn(added, store), unit).push(record.id);
        if (canComeBack.has(store)) noted.add(`${store}/${record.id}`);
        return;
      }
      if (noted.has(`${store}/${was.id}`)) return;
      if (canComeBack.has(store)) noted.add(`${store}/${was.id}`);
      const length = lengthOf(was);
      count.characters += length;
      count.waiting += length;
      if (count.characters > MOST_CHARACTERS) return;
      listIn(before, store).push([unit, was]);
      if (count.waiting > CHARACTERS_IN_A_BUNDLE) await flush();
    },
    async end(after, seenBefore) {
      const isNothing = count.characters === 0 && added.size === 0;
      if (isNothing) return false;
      if (count.characters > MOST_CHARACTERS) {
        await a.tx.objectStore('brought').clear();
        return false;
      }
      await flush();
      for (const [store, units] of added)
        // oxlint-disable-next-line no-await-in-loop
        await put({ store, added: [...units], before: [] });
      const mark: BroughtMark = { id: 'mark', undoId: a.stamp, after, seenBefore };
      await a.tx.objectStore('brought').put(mark);
      a.putKept('undo', { id: a.stamp, at: a.at, label: WHAT_IT_BROUGHT, brought: true, changes: [] });
      return true;
    },
  };
}

function listIn<Key, Value>(lists: Map<Key, Value[]>, key: Key): Value[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}

function listsIn<Key, Value>(all: Map<Key, Map<string, Value[]>>, key: Key): Map<string, Value[]> {
  const lists = all.get(key) ?? new Map<string, Value[]>();
  all.set(key, lists);
  return lists;
}

/** Records that may be put a second time by what they bring back. */
const canComeBack: ReadonlySet<StoreName> = new Set<StoreName>(['jobs', 'features', 'checks', 'cuts']);

/** The notes of a file go, and its undo with them. */
export async function forgetBrought(a: Act): Promise<void> {
  const mark: unknown = await a.tx.objectStore('brought').get('mark');
  if (isMark(mark)) a.drop('undo', mark.undoId);
  await a.tx.objectStore('brought').clear();
}

export function isMark(value: unknown): value is BroughtMark {
  return isPlainObject(value) && value['id'] === 'mark' && typeof value['after'] === 'string';
}

function lengthOf(record: Kept): number {
  const bytes = Object.values(record).reduce<number>(
    (sum, value) => sum + (isBytes(value) ? value.byteLength : 0),
    0,
  );
  return JSON.stringify(record).length + bytes;
}
