import type { BackupStore } from '../base/stores.ts';
import type { Act } from '../opening/act.ts';
import { withStamps } from '../opening/act-changes.ts';
import type { Kept, KeptStamped } from '../base/kept.ts';
import { bringsCheckBack, bringsCutBack, bringsFeatureBack, bringsJobBack } from '../base/merge.ts';
import { isPlainObject } from '../base/paths.ts';
import { checkRecord } from '../kept/any-record.ts';

/** Ids of what a file holds, and of what its readings were logged in. */
export type IdsBrought = Readonly<Record<'jobs' | 'features' | 'checks' | 'cuts', ReadonlySet<string>>>;

/** Puts a record that was `before`. */
export type PutChanged = (store: BackupStore, before: Kept, after: Kept) => void;

type BringingBack = { readonly a: Act; readonly put: PutChanged };

/** What was removed on one device while a reading or pass was logged in it on another is shown again, marked. */
export async function bringBack(a: Act, ids: IdsBrought, put: PutChanged): Promise<void> {
  const bringing = { a, put };
  // A check comes back with its feature and a job with a cut in it, so those go first.
  await markEach(bringing, 'features', ids.features, async (feature) =>
    bringsFeatureBack(feature, await readingsIn(a, 'featureId+at', feature.id)),
  );
  await giveTakesBack(bringing, ids.features);
  await markEach(bringing, 'cuts', ids.cuts, (cut) => isReadable('cuts', cut) && bringsCutBack(cut));
  await markEach(bringing, 'checks', ids.checks, async (check) =>
    bringsCheckBack(check, await featuresOfCheck(a, check)),
  );
  await markEach(bringing, 'jobs', ids.jobs, async (job) =>
    bringsJobBack(job, await readingsIn(a, 'jobId+at', job.id), await cutsIn(a, job.id)),
  );
}

/**
 * A go at a check that was undone on one device, while a reading was logged in its feature on another, is one again. It
 * gets the feature's id and stamp, which are the same on both, so that both come to the same check.
 */
async function giveTakesBack({ a, put }: BringingBack, featureIds: ReadonlySet<string>): Promise<void> {
  for (const id of featureIds) {
    // One after the other: two of them may belong to one check.
    // oxlint-disable-next-line no-await-in-loop
    const feature = await a.kept('features', id);
    if (feature?.['broughtBack'] === true && isReadable('features', feature))
      // oxlint-disable-next-line no-await-in-loop
      await giveTakeBack({ a, put }, feature);
  }
}

async function giveTakeBack({ a, put }: BringingBack, feature: KeptStamped): Promise<void> {
  const { checkId, createdAt } = feature;
  const check = typeof checkId === 'string' ? await a.kept('checks', checkId) : undefined;
  if (!check || !isReadable('checks', check) || featureIdsOf(check).includes(feature.id)) return;
  const takes = { ...Object(check['takes']), [feature.id]: { at: createdAt, featureId: feature.id } };
  put('checks', check, withStamps({ ...check, takes }, [`takes.${feature.id}`], feature.stamps['*']));
}

async function markEach(
  { a, put }: BringingBack,
  store: BackupStore,
  ids: Iterable<string>,
  comesBack: (kept: Kept) => boolean | Promise<boolean>,
): Promise<void> {
  for (const id of ids) {
    // One after the other, so that a file of thousands stays light in memory.
    // oxlint-disable-next-line no-await-in-loop
    const kept = await a.kept(store, id);
    if (kept?.['deleted'] === undefined) continue;
    // oxlint-disable-next-line no-await-in-loop
    const back = await comesBack(kept);
    const { broughtBack, ...rest } = kept;
    if (back !== (broughtBack === true))
      put(store, kept, { ...rest, id: kept.id, ...(back ? { broughtBack: true } : {}) });
  }
}

async function readingsIn(a: Act, index: 'featureId+at' | 'jobId+at', id: string): Promise<KeptStamped[]> {
  const range = IDBKeyRange.bound([id], [id, []]);
  const found: Kept[] = await a.tx.objectStore('readings').index(index).getAll(range);
  return found.filter((one) => isReadable('readings', one));
}

async function cutsIn(a: Act, jobId: string): Promise<KeptStamped[]> {
  const found: Kept[] = await a.tx.objectStore('cuts').index('jobId').getAll(jobId);
  return found.filter((one) => isReadable('cuts', one));
}

async function featuresOfCheck(a: Act, check: Kept): Promise<Kept[]> {
  const features = await Promise.all(featureIdsOf(check).map((id) => a.kept('features', id)));
  return features.filter((feature) => feature !== undefined);
}

function featureIdsOf({ takes }: Kept): string[] {
  if (!isPlainObject(takes)) return [];
  const ids = Object.values(takes).map((take) => (isPlainObject(take) ? take['featureId'] : undefined));
  return ids.filter((id) => typeof id === 'string');
}

function isReadable(store: BackupStore, record: Kept): record is KeptStamped {
  return checkRecord(store, record).ok;
}
