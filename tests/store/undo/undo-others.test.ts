import { afterEach, expect, test } from 'vitest';
import { backupLines, restoreBackup } from '../../../src/store/file/backup.ts';
import { checksOf, createCheck, lastTake, sayCheckSeen } from '../../../src/store/kept/checks.ts';
import { addPiece, countPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { changeJob, createJob, getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { addPhoto } from '../../../src/store/kept/photos.ts';
import { sayStore } from '../../../src/store/base/say-store.ts';
import { addSteps, markDone, stepsOf } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoHeldByOthers, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, refused, tickingClock, worked } from '../open-for-test.ts';

afterEach(closeAll);

/** A job made on one phone and handed over to a helper's, whose clock is behind. */
async function jobHandedOver() {
  const owner = await openForTest();
  const job = worked(await createJob(owner, { name: 'Outfit', systems: ['brake'] }));
  const made = (await latestUndo(owner, job.id))?.id ?? '';
  const helper = await openForTest({ now: tickingClock(1_699_999_000_000) });
  await hand(owner, helper, job.id);
  return { owner, helper, job, made };
}

async function hand(from: Store, to: Store, jobId?: string): Promise<void> {
  let file = '';
  for await (const line of backupLines(from, jobId)) file += line;
  worked(await restoreBackup(to, file));
}

/** On a helper's phone a check was made that failed; the owner touches the job last. */
async function withFailedCheck() {
  const { owner, helper, job, made } = await jobHandedOver();
  const eye = { jobId: job.id, name: 'Hose', by: 'by-eye', limitsFrom: '', how: 'look' } as const;
  const check = worked(await createCheck(helper, eye));
  worked(await sayCheckSeen(helper, check.id, lastTake(check)?.id ?? '', 'fails', 'rubs'));
  await hand(helper, owner, job.id);
  worked(await changeJob(owner, job.id, { what: 'hub' }));
  worked(await undoLast(owner, (await latestUndo(owner, job.id))?.id ?? ''));
  return { owner, job, made };
}

test('a job that a helper’s check came into isn’t undone away, and it is said why', async () => {
  const { owner, job, made } = await withFailedCheck();
  const refusal = refused(await undoLast(owner, made));
  expect(refusal).toEqual({ code: 'others-since', label: 'Made the job Outfit' });
  expect(sayStore(refusal)).toContain('“Made the job Outfit”');
  expect((await getJob(owner, job.id))?.name).toBe('Outfit');
  expect((await checksOf(owner, job.id)).map(({ name }) => name)).toEqual(['Hose']);
  expect(await latestUndo(owner, job.id)).toBeUndefined();
  expect(await undoHeldByOthers(owner, job.id)).toBe('Made the job Outfit');
});

test('removing it is another matter, and can be undone', async () => {
  const { owner, job } = await withFailedCheck();
  worked(await removeJob(owner, job.id));
  expect(await undoHeldByOthers(owner, job.id)).toBeUndefined();
  worked(await undoLast(owner, (await latestUndo(owner))?.id ?? ''));
  expect(await checksOf(owner, job.id)).toHaveLength(1);
});

test('a job that only came to the helper and back is undone', async () => {
  const { owner, helper, job, made } = await jobHandedOver();
  await hand(helper, owner, job.id);
  expect(worked(await undoLast(owner, made))).toBe('Made the job Outfit');
});

test('a step that a helper has done isn’t undone away', async () => {
  const { owner, helper, job } = await jobHandedOver();
  const [step] = worked(await addSteps(owner, [{ jobId: job.id, text: 'Fit the axle' }]));
  const added = (await latestUndo(owner, job.id))?.id ?? '';
  await hand(owner, helper, job.id);
  worked(await markDone(helper, step?.id ?? '', 'Jo B.'));
  await hand(helper, owner, job.id);
  expect(refused(await undoLast(owner, added)).code).toBe('others-since');
  expect(await stepsOf(owner, job.id)).toMatchObject([{ done: { by: 'Jo B.' } }]);
});

test('a step that a helper took a photo of isn’t either', async () => {
  const { owner, helper, job } = await jobHandedOver();
  const [step] = worked(await addSteps(owner, [{ jobId: job.id, text: 'Fit the axle' }]));
  const added = (await latestUndo(owner, job.id))?.id ?? '';
  await hand(owner, helper, job.id);
  const of = { jobId: job.id, owner: { store: 'steps', id: step?.id ?? '' } } as const;
  const picture = { mime: 'image/png', width: 1, height: 1, preview: new ArrayBuffer(4) };
  worked(await addPhoto(helper, { ...of, ...picture, note: '', bytes: new ArrayBuffer(8) }));
  await hand(helper, owner, job.id);
  expect(refused(await undoLast(owner, added)).code).toBe('others-since');
});

test('a piece that was counted on another phone isn’t either', async () => {
  const owner = await openForTest();
  const piece = worked(await addPiece(owner, { kind: 'shim', name: 'shim', material: 'brass' }, 3));
  const added = (await latestUndo(owner))?.id ?? '';
  const helper = await openForTest();
  await hand(owner, helper);
  worked(await countPiece(helper, piece.id, -1, 'bent'));
  await hand(helper, owner);
  expect(refused(await undoLast(owner, added)).code).toBe('others-since');
  expect((await drawerPieces(owner)).map(({ count }) => count)).toEqual([2]);
});
