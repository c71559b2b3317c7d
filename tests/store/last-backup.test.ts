import { afterEach, expect, test } from 'vitest';
import { actsSoFar, isBackupDue, noteBackup, sinceBackup } from '../../src/store/last-backup.ts';
import { changeJob, createJob } from '../../src/store/jobs.ts';
import { putDraft } from '../../src/store/drafts.ts';
import { putSetting } from '../../src/store/settings.ts';
import { closeAll, openForTest, worked } from './open-for-test.ts';

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

test('a refused act counts as none', async () => {
  const store = await openForTest();
  await changeJob(store, 'nowhere', { what: 'x' });
  expect((await sinceBackup(store)).changes).toBe(0);
});
