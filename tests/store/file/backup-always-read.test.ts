import { afterEach, expect, test } from 'vitest';
import { backupLines, restoreBackup } from '../../../src/store/file/backup.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { broughtUndo } from '../../../src/store/file/undo-brought.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { oneLinkingAct, spoilOne } from '../../trials/linked-acts.ts';
import { chanceOf, oneAct, type Chance } from '../../trials/merge-acts.ts';
import { chanceFrom, trialSize } from '../../trials/seeded.ts';
import { closeAll, openForTest, tickingClock } from '../open-for-test.ts';

afterEach(closeAll);

async function fileOf(store: Store, jobId?: string): Promise<string> {
  const lines: string[] = [];
  for await (const line of backupLines(store, jobId)) lines.push(line);
  return lines.join('');
}

async function step(store: Store, other: Store, chance: Chance): Promise<void> {
  const what = chance.below(20);
  if (what === 0) await restoreBackup(store, await fileOf(other));
  else if (what <= 2)
    await restoreBackup(
      store,
      await fileOf(other, chance.one((await listJobs(other, { limit: 9 })).jobs)?.id),
    );
  else if (what === 3) await undoLast(store, (await broughtUndo(store)) ?? '');
  else if (what === 4) await undoLast(store, (await latestUndo(store))?.id ?? '');
  else if (what === 5 && chance.below(4) === 0) await spoilOne(store, chance);
  else if (what <= 12) await oneLinkingAct(store, chance);
  else await oneAct(store, chance);
}

/** What is refused of a phone's files: of its backup, of each of its jobs handed over, and of the backups of those who got them. */
async function refusedOf(store: Store): Promise<string[]> {
  const { jobs } = await listJobs(store, { limit: 20 });
  const files = [await fileOf(store), ...(await Promise.all(jobs.map(({ id }) => fileOf(store, id))))];
  const refusals: string[] = [];
  for (const file of files) {
    const next = await openForTest();
    const got = await restoreBackup(next, file);
    const passedOn = got.ok ? await restoreBackup(await openForTest(), await fileOf(next)) : got;
    if (!passedOn.ok) refusals.push(JSON.stringify(passedOn.refusal));
  }
  return refusals;
}

test('whatever was done on two phones, every backup and every job file they write can be put in', async () => {
  const { count, seed } = trialSize({ short: 12, long: 1000 });
  for (let history = seed; history < seed + count; history += 1) {
    const chance = chanceOf(chanceFrom(history));
    const phones = [await openForTest(), await openForTest({ now: tickingClock(1_700_000_900_000) })];
    const acts = 40 + chance.below(60);
    for (let act = 0; act < acts; act += 1) {
      const [store, other] = chance.below(2) === 0 ? phones : phones.toReversed();
      if (store && other) await step(store, other, chance);
    }
    const refusals = await Promise.all(phones.map(refusedOf));
    expect(refusals.flat(), `history ${history}`).toEqual([]);
    closeAll();
  }
}, 3_600_000);
