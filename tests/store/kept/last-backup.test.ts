import { afterEach, expect, test, vi } from 'vitest';
import { createFeature, removeFeature } from '../../../src/store/kept/features.ts';
import {
  actsSoFar,
  countsKept,
  isBackupDue,
  noteBackup,
  sinceBackup,
} from '../../../src/store/kept/last-backup.ts';
import { changeJob, createJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { putDraft } from '../../../src/store/kept/drafts.ts';
import { addPhoto, removePhoto } from '../../../src/store/kept/photos.ts';
import { readingsOf, strikeOut } from '../../../src/store/kept/readings.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';
import { carry, log, twoPhonesWithABore } from '../two-phones-for-test.ts';

afterEach(closeAll);

const DAY_MS = 86_400_000;
const start = 1_700_000_000_000;

test('each kept act counts as one change since the last backup; half-typed numbers and places don’t', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await changeJob(store, job.id, { what: 'hub' }));
  worked(await putDraft(store, '#/x', { typed: '.4', unit: 'in' }));
  worked(await putSetting(store, 'lastPlace', '#/jobs'));
  expect(await sinceBackup(store)).toEqual({ days: 0, changes: 2 });
});

test('what is changed while the backup is written counts as new', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const acts = await actsSoFar(store);
  worked(await changeJob(store, job.id, { what: 'hub' }));
  worked(await noteBackup(store, acts));
  expect((await sinceBackup(store)).changes).toBe(1);
});

test('a backup is due after a week and 25 changes, not after one of them', async () => {
  let now = start;
  const store = await openForTest({ now: () => now });
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  for (let count = 0; count < 24; count += 1)
    worked(await changeJob(store, job.id, { what: `hub ${count}` }));
  expect(isBackupDue(await sinceBackup(store))).toBe(false); // 25 changes on the first day
  now = start + 7 * DAY_MS - 1;
  expect(isBackupDue(await sinceBackup(store))).toBe(false);
  now = start + 7 * DAY_MS;
  expect(await sinceBackup(store)).toEqual({ days: 7, changes: 25 });
  expect(isBackupDue(await sinceBackup(store))).toBe(true);
  worked(await noteBackup(store, await actsSoFar(store)));
  now = start + 30 * DAY_MS;
  expect(isBackupDue(await sinceBackup(store))).toBe(false); // nothing was changed since
});

// In Berlin the clocks went on at 2:00 on 29 March 2026 and back at 3:00 on 25 October (EU directive 2000/84/EC: the last
// Sundays of both months, at 1:00 UTC). The days counted are those on the wall's clock.
test.each([
  { saved: '2026-03-28T12:00+01:00', now: '2026-03-29T12:00+02:00', days: 1 }, // 23 hours
  { saved: '2026-03-28T12:00+01:00', now: '2026-03-29T11:59+02:00', days: 0 },
  { saved: '2026-10-24T12:00+02:00', now: '2026-10-25T11:59+01:00', days: 0 }, // 24 h 59 min
  { saved: '2026-10-24T12:00+02:00', now: '2026-10-25T12:00+01:00', days: 1 },
  { saved: '2026-03-22T12:00+01:00', now: '2026-03-29T12:00+02:00', days: 7 }, // 167 hours
  { saved: '2026-10-25T02:50+02:00', now: '2026-10-25T02:10+01:00', days: 0 }, // 20 minutes, the clock set back
])('a backup of $saved is $days days old at $now', async ({ saved, now, days }) => {
  vi.stubEnv('TZ', 'Europe/Berlin');
  let clock = Date.parse(saved);
  const store = await openForTest({ now: () => clock });
  worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await noteBackup(store, await actsSoFar(store)));
  clock = Date.parse(now);
  expect((await sinceBackup(store)).days).toBe(days);
  vi.unstubAllEnvs();
});

test('a refused act counts as none', async () => {
  const store = await openForTest();
  await changeJob(store, 'nowhere', { what: 'x' });
  expect((await sinceBackup(store)).changes).toBe(0);
});

test('what is kept is counted as the fitter sees it: without what was removed, or stands in a removed job', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  const first = worked(await log(owner, bore.id, job.id, '.4487'));
  worked(await log(owner, bore.id, job.id, '.4489'));
  worked(await strikeOut(owner, first.id, 'chip')); // struck out, and still to be seen
  const pin = worked(await createFeature(owner, { jobId: job.id, kind: 'pin', name: 'pin' }));
  worked(await log(owner, pin.id, job.id, '.4370'));
  const about = { jobId: job.id, owner: { store: 'jobs', id: job.id }, note: '' } as const;
  const picture = { mime: 'image/png', width: 1, height: 1, preview: new ArrayBuffer(4) };
  const photo = worked(await addPhoto(owner, { ...about, ...picture, bytes: new ArrayBuffer(8) }));
  worked(await addPhoto(owner, { ...about, ...picture, bytes: new ArrayBuffer(8) }));
  expect(await countsKept(owner)).toEqual({ jobs: 1, readings: 3, photos: 2 });
  worked(await removePhoto(owner, photo.id));
  worked(await removeFeature(owner, bore.id));
  expect(await countsKept(owner)).toEqual({ jobs: 1, readings: 1, photos: 1 });
  // A reading from elsewhere brings the bore back; the two that were removed with it stay removed.
  worked(await log(helper, bore.id, job.id, '.4491'));
  await carry(helper, owner);
  expect(await readingsOf(owner, bore.id)).toHaveLength(1);
  expect(await countsKept(owner)).toEqual({ jobs: 1, readings: 2, photos: 1 });
  worked(await removeJob(owner, job.id));
  expect(await countsKept(owner)).toEqual({ jobs: 0, readings: 0, photos: 0 });
  worked(await undoLast(owner, (await latestUndo(owner))?.id ?? ''));
  expect(await countsKept(owner)).toEqual({ jobs: 1, readings: 2, photos: 1 });
});
