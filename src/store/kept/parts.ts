import { act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readByIndex } from '../opening/read.ts';
import type { Id, Part } from '../base/records.ts';
import { featureRecordKind } from './feature-schema.ts';
import { partKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's parts by name. */
export async function partsOf(store: Store, jobId: Id): Promise<Part[]> {
  const parts = await readByIndex(store, partKind, { index: 'jobId', key: jobId });
  return parts.sort((a, b) => a.name.localeCompare(b.name));
}

/** Makes a part; with a feature, that size is one of it. */
export async function createPart(
  store: Store,
  part: Omit<Part, 'id'>,
  featureId?: Id,
): Promise<StoreResult<Part>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'parts', 'features'] }, async (a) => {
    await touchJob(a, part.jobId);
    const made = a.make(partKind, { ...part, id });
    if (featureId !== undefined)
      await a.change(featureRecordKind, featureId, (feature) => ({ ...feature, partId: id }));
    a.undoable(`Made ${part.name}`, part.jobId);
    return made;
  });
}

export type PartChanges = Changes<Part, 'name' | 'origin' | 'swapped'>;

/** Changes a part; `swapped: undefined` says that the mock-up is in after all. */
export async function changePart(store: Store, id: Id, changes: PartChanges): Promise<StoreResult<Part>> {
  return act(store, { stores: ['jobs', 'parts'] }, async (a) => {
    const before = await a.get(partKind, id);
    await touchJob(a, before.jobId);
    const after = await a.change(partKind, id, (part) => withChanges(part, changes));
    a.undoable(changes.swapped ? `Swapped ${before.name}` : `Changed ${before.name}`, before.jobId);
    return after;
  });
}

export async function removePart(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'parts'] }, async (a) => {
    const part = await a.get(partKind, id);
    await touchJob(a, part.jobId);
    await a.remove('parts', id);
    a.undoable(`Removed ${part.name}`, part.jobId);
  });
}
