import type { StoreName } from '../../store/base/stores.ts';
import { openConflicts, type OpenConflict } from '../../store/phones/conflicts-open.ts';
import type { Kept } from '../../store/base/kept.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { isPlainObject } from '../../store/base/paths.ts';
import { read } from '../../store/opening/read.ts';

/** The questions with the names of what they are about, by `store/id`. */
export type BothData = {
  readonly open: readonly OpenConflict[];
  readonly names: ReadonlyMap<string, string>;
};

export async function bothData(store: Store): Promise<BothData> {
  const open = await openConflicts(store);
  if (open.length === 0) return { open, names: new Map() };
  const wanted = [...new Set(open.flatMap(namesWanted))];
  const found = await read(store, named, (tx) =>
    Promise.all(
      wanted.map(async (key): Promise<Kept | undefined> => {
        const [name = '', ...id] = key.split('/');
        return tx.objectStore(name).get(id.join('/'));
      }),
    ),
  );
  return { open, names: new Map(wanted.map((key, index) => [key, nameOf(found[index])])) };
}

const named = [
  'jobs',
  'features',
  'parts',
  'worksheets',
  'cuts',
  'checks',
] as const satisfies readonly StoreName[];

/** Names of what stands above the record, and of what its values point to. */
function namesWanted({ conflict, record, fields }: OpenConflict): string[] {
  const jobs = conflict.jobId === undefined ? [] : [`jobs/${conflict.jobId}`];
  const values = fields.flatMap(({ path, now, lost }) => [{ [path]: now }, { [path]: lost }, now, lost]);
  return [...jobs, ...[record, ...values].flatMap(pointsTo)];
}

const pointers: Readonly<Record<string, (typeof named)[number]>> = {
  featureId: 'features',
  partId: 'parts',
  worksheetId: 'worksheets',
};

function pointsTo(value: unknown): string[] {
  if (!isPlainObject(value)) return [];
  const own = Object.entries(pointers).flatMap(([field, store]) => {
    const id = value[field];
    return typeof id === 'string' ? [`${store}/${id}`] : [];
  });
  const { owner, partIds, size } = value;
  const photographed =
    isPlainObject(owner) && named.some((name) => name === owner['store'])
      ? [`${String(owner['store'])}/${String(owner['id'])}`]
      : [];
  const parts = Array.isArray(partIds) ? partIds.map((id) => `parts/${String(id)}`) : [];
  return [...own, ...photographed, ...parts, ...pointsTo(size)];
}

function nameOf(record: Kept | undefined): string {
  const name = record?.['name'] ?? record?.['title'];
  return typeof name === 'string' ? name : '';
}
