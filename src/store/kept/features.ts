import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { act, type Act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readAsMade, readOne } from '../opening/read.ts';
import type { Feature, Id } from '../base/records.ts';
import { featureRecordKind } from './feature-schema.ts';
import { partKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's features in the order in which they were made. */
export async function featuresOf(store: Store, jobId: Id): Promise<Feature[]> {
  return readAsMade(store, featureRecordKind, { index: 'jobId', key: jobId });
}

export async function getFeature(store: Store, id: Id): Promise<Feature | undefined> {
  return readOne(store, featureRecordKind, id);
}

export type NewFeature = {
  readonly jobId: Id;
  readonly partId?: Id;
  readonly kind: FeatureKind;
  readonly name: string;
};

export async function createFeature(store: Store, feature: NewFeature): Promise<StoreResult<Feature>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'parts', 'features'] }, async (a) => {
    await touchJob(a, feature.jobId);
    await partMustBeThere(a, feature.partId);
    const made = a.make(featureRecordKind, { ...feature, id, createdAt: a.at });
    a.undoable(`Made ${feature.name}`, feature.jobId);
    return made;
  });
}

export type FeatureChanges = Changes<Feature, 'name' | 'kind' | 'partId' | 'material'>;

export async function changeFeature(
  store: Store,
  id: Id,
  changes: FeatureChanges,
): Promise<StoreResult<Feature>> {
  return act(store, { stores: ['jobs', 'parts', 'features'] }, async (a) => {
    const before = await a.get(featureRecordKind, id);
    await touchJob(a, before.jobId);
    await partMustBeThere(a, changes.partId);
    const after = await a.change(featureRecordKind, id, (feature) => withChanges(feature, changes));
    a.undoable(`Changed ${before.name}`, before.jobId);
    return after;
  });
}

/**
 * Removes a feature and marks its readings as removed with it. A reading logged elsewhere carries no such mark, and so
 * brings the feature back when the two are merged.
 */
export async function removeFeature(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'features', 'readings'] }, async (a) => {
    const feature = await a.get(featureRecordKind, id);
    await touchJob(a, feature.jobId);
    await removeWithReadings(a, id);
    a.undoable(`Removed ${feature.name}`, feature.jobId);
  });
}

/** Removes a feature and its readings, as part of an act. */
export async function removeWithReadings(a: Act, featureId: Id): Promise<void> {
  const range = IDBKeyRange.bound([featureId], [featureId, []]);
  const readings: Kept[] = await a.tx.objectStore('readings').index('featureId+at').getAll(range);
  await a.remove('features', featureId);
  await Promise.all(readings.filter((one) => !isGone(one)).map((one) => a.remove('readings', one.id)));
}

async function partMustBeThere(a: Act, partId: Id | undefined): Promise<void> {
  if (partId !== undefined) await a.get(partKind, partId);
}
