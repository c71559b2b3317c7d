import { afterEach, expect, test } from 'vitest';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { backupLines, restoreBackup } from '../../../src/store/file/backup.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';
import { linesOf, recordsOf, sealed } from '../sealed-backup.ts';

afterEach(closeAll);

const TURNING = '\u202e';

test.each([
  { what: 'a turning character', name: `bore ${TURNING}`, shown: 'bore ' },
  { what: 'one that closes what it never opened', name: `\u2069${TURNING}bore`, shown: 'bore' },
  { what: 'letters from right to left', name: 'קדח', shown: '\u2068קדח\u2069' },
  { what: 'a mark that counts as such a letter', name: 'bore\u200f', shown: '\u2068bore\u200f\u2069' },
  {
    what: 'four hundred accents on one letter',
    name: `e${'\u0301'.repeat(400)}`,
    shown: `e${'\u0301'.repeat(20)}`,
  },
  { what: 'none of it', name: 'Achse hinten, ø 25 “left” 👩‍🔧', shown: 'Achse hinten, ø 25 “left” 👩‍🔧' },
])('out of a file a name with $what can’t turn the figure behind it', async ({ name, shown }) => {
  const from = await openForTest();
  const { id } = worked(await createJob(from, { name: 'Outfit', systems: [] }));
  const lines = await linesOf(from);
  Object.assign(recordsOf(lines, 'jobs')[0] ?? {}, { name });
  const phone = await openForTest();
  worked(await restoreBackup(phone, await sealed(lines)));
  expect((await getJob(phone, id))?.name).toBe(shown);
  const written: string[] = [];
  for await (const line of backupLines(phone)) written.push(line);
  expect(written.join('')).toContain(JSON.stringify(name));
});

test('what closes a name off on the screen is never kept with it', async () => {
  const store = await openForTest();
  const { id } = worked(await createJob(store, { name: 'קדח', systems: [] }));
  const shown = (await getJob(store, id))?.name ?? '';
  worked(await changeJob(store, id, { what: 'left hub' }));
  expect(await store.db.get('jobs', id)).toMatchObject({ name: 'קדח' });
  const { stamps } = await store.db.get('jobs', id);
  expect(Object.keys(stamps)).not.toContain('name');
  worked(await changeJob(store, id, { name: `${shown} 2` }));
  expect(await store.db.get('jobs', id)).toMatchObject({ name: 'קדח 2' });
});
