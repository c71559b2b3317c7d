import { afterEach, expect, test } from 'vitest';
import { writeDecimalsWith } from '../../../src/engine/length/decimal-mark.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { limitFields } from '../../../src/screens/fit-up/check-from-offer.ts';
import { createCheck } from '../../../src/store/kept/checks.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { linesOf, recordsOf, sealed } from '../sealed-backup.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(() => {
  writeDecimalsWith('.');
  closeAll();
});

test('limits worked out in a shop that types commas are kept with points, and its own backup comes back', async () => {
  writeDecimalsWith(',');
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  // .4487 in is 11.39698 mm: shown to a micrometre, it is not the exact size any more
  const limits = { lower: lengthOf('.4487 in'), upper: lengthOf('.4490 in'), source: 'table' };
  const check = { jobId: job.id, name: 'Float', by: 'gap', how: '', ...limitFields(limits, 'mm') } as const;
  worked(await createCheck(store, check));
  const lines = await linesOf(store);
  expect(recordsOf(lines, 'checks')[0]).toMatchObject({
    lower: { typed: '11.397 mm', exact: '11.39698' },
    upper: { typed: '11.405 mm', exact: '11.4046' },
  });
  worked(await restoreBackup(await openForTest(), await sealed(lines)));
});
