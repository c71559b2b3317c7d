import { act } from '../opening/act.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import type { Feature, Id, Job, Part, PartOrigin, ReadElsewhere, ReadingRecord } from '../base/records.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { featureRecordKind } from './feature-schema.ts';
import { featuresOf } from './features.ts';
import { partKind } from './job-schema.ts';
import { touchJob } from './jobs.ts';
import { partsOf } from './parts.ts';
import { readingsOfJob } from './readings.ts';

/** A size that was read in a job and can stand in for another one's. */
export type KnownSize = Pick<Feature, 'kind' | 'name' | 'material'> & { readonly elsewhere: ReadElsewhere };

/** A part that was measured in a job, with all its sizes; a size of no part is one by itself. */
export type KnownPart = {
  readonly id: Id;
  readonly jobId: Id;
  readonly name: string;
  /** Of a part; left out where a size stands alone. */
  readonly origin?: PartOrigin;
  readonly sizes: readonly KnownSize[];
};

/**
 * The parts that were measured in a job, in the order in which they were read last. Not what was read for a check, nor a
 * runout: those are of one single part. A mock-up is none.
 */
export async function knownPartsOf(store: Store, job: Job): Promise<KnownPart[]> {
  const [parts, features, readings] = await Promise.all([
    partsOf(store, job.id),
    featuresOf(store, job.id),
    readingsOfJob(store, job.id),
  ]);
  const sizes = features.flatMap((feature) => {
    const size = knownSizeOf(job, feature, readings);
    return size ? [{ feature, size }] : [];
  });
  const real = parts.filter((part) => part.origin !== 'mock-up' || part.swapped !== undefined);
  const isOf = (part: Part) => sizes.filter(({ feature }) => feature.partId === part.id);
  const ofNone = sizes.filter(({ feature }) => !parts.some(({ id }) => id === feature.partId));
  const known: KnownPart[] = [
    ...real.map((part) => ({
      id: part.id,
      jobId: job.id,
      name: part.name,
      // What a mock-up was swapped for is the real one.
      origin: part.origin === 'mock-up' ? ('bought' as const) : part.origin,
      sizes: isOf(part).map(({ size }) => size),
    })),
    ...ofNone.map(({ feature, size }) => ({
      id: feature.id,
      jobId: job.id,
      name: feature.name,
      sizes: [size],
    })),
  ];
  return known.filter((one) => one.sizes.length > 0).toSorted((a, b) => lastReadAt(b) - lastReadAt(a));
}

/** When a part was read last, there. */
export function lastReadAt({ sizes }: Pick<KnownPart, 'sizes'>): number {
  return Math.max(...sizes.flatMap(({ elsewhere }) => elsewhere.readings.map(({ at }) => at)));
}

function knownSizeOf(job: Job, feature: Feature, readings: readonly ReadingRecord[]): KnownSize | undefined {
  const { id, kind, name, material, checkId } = feature;
  if (checkId !== undefined || kind === 'runout') return undefined;
  const counted = readings.filter((one) => one.featureId === id && one.struckOut === undefined);
  // What was never read there either keeps where it was.
  const elsewhere =
    counted.length > 0
      ? { jobId: job.id, jobName: job.name, featureId: id, readings: counted.map(asElsewhere) }
      : feature.elsewhere;
  if (!elsewhere || elsewhere.readings.length === 0) return undefined;
  return { kind, name, elsewhere, ...(material !== undefined && { material }) };
}

function asElsewhere(reading: ReadingRecord): ReadElsewhere['readings'][number] {
  const { exact, typed, unit, tool, stops, place, direction, zeroChecked, warmth, at } = reading;
  return {
    exact,
    typed,
    unit,
    tool,
    zeroChecked,
    at,
    ...(stops && { stops }),
    ...(place && { place }),
    ...(direction && { direction }),
    ...(warmth && { warmth }),
  };
}

/**
 * Brings a known part into a job: the part and its sizes, each with what was read of the other one, where and when. None of
 * it is a reading of this job.
 */
export async function bringKnown(store: Store, jobId: Id, known: KnownPart): Promise<StoreResult<KnownPart>> {
  const partId = newId();
  const ids = known.sizes.map(() => newId());
  return act(store, { stores: ['jobs', 'parts', 'features'] }, async (a) => {
    await touchJob(a, jobId);
    const { name, origin } = known;
    if (origin) a.make(partKind, { id: partId, jobId, name, origin });
    known.sizes.forEach((size, index) => {
      a.make(featureRecordKind, {
        ...size,
        id: ids[index] ?? newId(),
        jobId,
        ...(origin && { partId }),
        // Times tell the order of what one act made.
        createdAt: a.at + index,
      });
    });
    a.undoable(`Brought in ${name}`, jobId);
    return known;
  });
}
