import { afterEach, expect, test } from 'vitest';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { addMoney, changeMoney, moneyOf, removeMoney } from '../../../src/store/kept/money.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('an amount comes back digit for digit, and hours can take its place', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const line = worked(await addMoney(store, { jobId: job.id, what: 'Bar', amount: '12.40' }));
  expect((await moneyOf(store, job.id))[0]?.amount).toBe('12.40');
  worked(await changeMoney(store, line.id, { amount: undefined, hours: '2.5', rate: '48' }));
  const [changed] = await moneyOf(store, job.id);
  expect(changed).toMatchObject({ hours: '2.5', rate: '48' });
  expect(changed).not.toHaveProperty('amount');
  worked(await removeMoney(store, line.id));
  expect(await moneyOf(store, job.id)).toEqual([]);
  const newest = await latestUndo(store, job.id);
  expect(worked(await undoLast(store, newest?.id ?? ''))).toBe('Removed Bar');
  expect(await moneyOf(store, job.id)).toHaveLength(1);
});

test.each(['1e3', '1,50', '', '£5', '.5', '1234567890123', '1.1234567'])(
  '%j is no amount',
  async (amount) => {
    const store = await openForTest();
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    expect(refused(await addMoney(store, { jobId: job.id, what: 'Bar', amount }))).toEqual({
      code: 'cannot-keep',
      store: 'money',
      field: 'amount',
    });
  },
);
