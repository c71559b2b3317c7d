import { afterEach, expect, test } from 'vitest';
import { checksOf, createCheck, createChecks, type NewCheck } from '../../../src/store/kept/checks.ts';
import { createFeature, featuresOf } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { addMoney, moneyOf } from '../../../src/store/kept/money.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { addPhoto, photosOf, photosOfJob } from '../../../src/store/kept/photos.ts';
import { addSteps, stepsOf } from '../../../src/store/kept/steps.ts';
import { createWorksheet, worksheetsOf } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

type Making = {
  readonly what: string;
  readonly make: (store: Store, jobId: string, name: string) => Promise<unknown>;
  readonly names: (store: Store, jobId: string) => Promise<readonly string[]>;
};

const preview = new Uint8Array([255, 216]).buffer;
const photo = { width: 2, height: 1, mime: 'image/jpeg', preview, bytes: preview } as const;
const photoNotes = (photos: readonly { note: string }[]) => photos.map(({ note }) => note);
const byEye = (jobId: string, name: string): NewCheck => ({
  jobId,
  name,
  by: 'by-eye',
  how: '',
  limitsFrom: '',
});

const makings: readonly Making[] = [
  {
    what: 'feature',
    make: async (store, jobId, name) => worked(await createFeature(store, { jobId, kind: 'bore', name })),
    names: async (store, jobId) => (await featuresOf(store, jobId)).map(({ name }) => name),
  },
  {
    what: 'worksheet',
    make: async (store, jobId, title) => worked(await createWorksheet(store, { jobId, kind: 'fit', title })),
    names: async (store, jobId) => (await worksheetsOf(store, jobId)).map(({ title }) => title),
  },
  {
    what: 'line of money',
    make: async (store, jobId, what) => worked(await addMoney(store, { jobId, what, amount: '1' })),
    names: async (store, jobId) => (await moneyOf(store, jobId)).map(({ what }) => what),
  },
  {
    what: 'check',
    make: async (store, jobId, name) => worked(await createCheck(store, byEye(jobId, name))),
    names: async (store, jobId) => (await checksOf(store, jobId)).map(({ name }) => name),
  },
  {
    what: 'step',
    make: async (store, jobId, text) => worked(await addSteps(store, [{ jobId, text }])),
    names: async (store, jobId) => (await stepsOf(store, jobId)).map(({ text }) => text),
  },
  {
    what: 'photo of a thing',
    make: async (store, jobId, note) =>
      worked(await addPhoto(store, { owner: { store: 'jobs', id: jobId }, jobId, note, ...photo })),
    names: async (store, jobId) => photoNotes(await photosOf(store, { store: 'jobs', id: jobId })),
  },
  {
    what: 'photo of a job',
    make: async (store, jobId, note) =>
      worked(await addPhoto(store, { owner: { store: 'jobs', id: jobId }, jobId, note, ...photo })),
    names: async (store, jobId) => photoNotes(await photosOfJob(store, jobId)),
  },
];

test.each(makings)(
  'a $what made after the phone’s clock was set back is the last one',
  async ({ make, names }) => {
    let nowMs = 1_700_000_000_000;
    const store = await openForTest({ now: () => nowMs });
    const { id } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    await make(store, id, 'first');
    nowMs -= 3_600_000;
    await make(store, id, 'second');
    nowMs += 60_000;
    await make(store, id, 'third');
    expect(await names(store, id)).toEqual(['first', 'second', 'third']);
  },
);

test('what one act made keeps its order', async () => {
  const store = await openForTest();
  const { id } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const named = ['a', 'b', 'c', 'd', 'e', 'f'];
  worked(
    await createChecks(
      store,
      named.map((name) => byEye(id, name)),
    ),
  );
  expect((await checksOf(store, id)).map(({ name }) => name)).toEqual(named);
});
