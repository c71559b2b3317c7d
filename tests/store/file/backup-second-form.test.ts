import { backupStores } from '../../../src/store/base/stores.ts';
import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { cutsOf } from '../../../src/store/kept/cuts.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { sayBackup } from '../../../src/store/file/say-backup.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, tickingClock, refused, worked } from '../open-for-test.ts';
import { linesOf, recordsOf, sealed, sealedTexts, type Line, type Lines } from '../sealed-backup.ts';

afterEach(closeAll);

/** The stored shop of the second release: it has something of every store. */
async function shop(version = 2): Promise<Store> {
  const name = freshName();
  await writeFixture(name, fixture(version));
  return openForTest({ name });
}

async function refusalFor(lines: Lines) {
  const phone = await openForTest();
  const refusal = refused(await restoreBackup(phone, await sealed(lines)));
  for (const name of backupStores) expect(await phone.db.count(name)).toBe(0);
  return refusal;
}

test('every store of the second release comes back on an empty phone as it was', async () => {
  const store = await shop();
  // Its records are of two days after a test's clock begins, and what a file says of after tomorrow isn't believed.
  const phone = await openForTest({ now: tickingClock(1_701_000_000_000) });
  worked(await restoreBackup(phone, await sealed(await linesOf(store))));
  for (const name of ['checks', 'steps', 'rechecks', 'photos', 'money', 'sheets', 'parts'] as const) {
    expect(await phone.db.getAll(name)).toEqual(await store.db.getAll(name));
  }
  const [old] = (await listJobs(store, { limit: 1 })).jobs;
  expect(await cutsOf(phone, old?.id ?? '')).toEqual(await cutsOf(store, old?.id ?? ''));
  expect(await phone.db.count('photoBytes')).toBe(1); // two were taken, one was removed
});

test('a backup of the first form, which knew no cuts, is still read', async () => {
  const [header, ...others] = (await linesOf(await shop(1))).slice(0, -1);
  const oldStores = new Set([
    'jobs',
    'parts',
    'features',
    'readings',
    'worksheets',
    'drawer',
    'drawerCounts',
    'tools',
    'settings',
  ]);
  expect(others.every(({ store, unreadable }) => oldStores.has(String(store ?? unreadable)))).toBe(true);
  const counts: Record<string, unknown> = { ...Object(header?.['counts']) };
  const oldCounts = Object.fromEntries(Object.entries(counts).filter(([name]) => oldStores.has(name)));
  const texts = [{ ...header, version: 1, counts: oldCounts }, ...others].map((line) => JSON.stringify(line));
  const phone = await openForTest();
  worked(await restoreBackup(phone, await sealedTexts(texts)));
  expect((await listJobs(phone, { limit: 5 })).jobs.map(({ name }) => name)).toEqual(['Outfit 3']);
});

// As they were written when that form was the newest; they stay as they are for ever. One reading of the first can't be read, and is kept as it is.
test.each([
  { form: 1, jobs: ['Outfit 3'], readings: 6, sheets: 0, photos: 0 },
  { form: 2, jobs: ['Outfit 7', 'Boat-trailer hub'], readings: 34, sheets: 1, photos: 2 },
])('a file of form $form still comes in whole', async ({ form, jobs, readings, sheets, photos }) => {
  const text = readFileSync(new URL(`../../fixtures/backup-${form}.jsonl`, import.meta.url), 'utf8');
  const phone = await openForTest();
  worked(await restoreBackup(phone, text));
  const listed = (await listJobs(phone, { limit: 5 })).jobs.map(({ name }) => name);
  expect(listed.toSorted()).toEqual(jobs.toSorted());
  expect(await phone.db.count('readings')).toBe(readings);
  expect(await phone.db.count('sheets')).toBe(sheets);
  expect(await phone.db.count('photoBytes')).toBe(photos);
  const changed = text.replace('"typed":".', '"typed":"0.');
  const other = await openForTest();
  expect(refused(await restoreBackup(other, changed)).code).toBe('checksum-differs');
});

const nowhere = 'nowhere';
test.each<{ what: string; store: string; change: Line; code: string }>([
  { what: 'a cut of no job', store: 'cuts', change: { jobId: nowhere }, code: 'belongs-to-nothing' },
  { what: 'a cut on no part', store: 'cuts', change: { partId: nowhere }, code: 'belongs-to-nothing' },
  {
    what: 'a cut from no worksheet',
    store: 'cuts',
    change: { worksheetId: nowhere },
    code: 'belongs-to-nothing',
  },
  { what: 'a cut to a number', store: 'cuts', change: { target: 8.43 }, code: 'wrong-field' },
  {
    what: 'a pass of no size',
    store: 'cuts',
    change: { passes: { one: { at: 1_700_000_000_000 } } },
    code: 'wrong-field',
  },
  {
    what: 'a go at a check without its feature',
    store: 'checks',
    change: { takes: { one: { at: 1_700_000_000_000, featureId: nowhere } } },
    code: 'belongs-to-nothing',
  },
  {
    what: 'a step with no such part',
    store: 'steps',
    change: { partIds: [nowhere] },
    code: 'belongs-to-nothing',
  },
  { what: 'a step at half a place', store: 'steps', change: { order: 0.5 }, code: 'wrong-field' },
  { what: 'a re-check of no job', store: 'rechecks', change: { jobId: nowhere }, code: 'belongs-to-nothing' },
  {
    what: 'a re-check after half a mile',
    store: 'rechecks',
    change: { afterDistance: 0.5 },
    code: 'wrong-field',
  },
  {
    what: 'a photo of nothing',
    store: 'photos',
    change: { owner: { store: 'cuts', id: nowhere } },
    code: 'belongs-to-nothing',
  },
  {
    what: 'a photo of a setting',
    store: 'photos',
    change: { owner: { store: 'settings', id: 'dial' } },
    code: 'wrong-field',
  },
  { what: 'a preview that is no base64', store: 'photos', change: { preview: '*' }, code: 'wrong-field' },
  { what: 'a picture that is text', store: 'photos', change: { mime: 'text/html' }, code: 'wrong-field' },
  { what: 'bytes that are a list', store: 'photoBytes', change: { bytes: [1, 2] }, code: 'wrong-field' },
  { what: 'bytes of no photo', store: 'photoBytes', change: { id: nowhere }, code: 'belongs-to-nothing' },
  { what: 'an amount with letters', store: 'money', change: { amount: '12x' }, code: 'wrong-field' },
  { what: 'a sheet of no job', store: 'sheets', change: { jobId: nowhere }, code: 'belongs-to-nothing' },
  {
    what: 'a sheet with a script',
    store: 'sheets',
    change: { content: [{ tag: 'script', attributes: {}, children: ['alert(1)'] }] },
    code: 'wrong-field',
  },
  {
    what: 'the removal of a signed sheet',
    store: 'sheets',
    change: { deleted: '001800000000000-0000-other' },
    code: 'wrong-field',
  },
  {
    what: 'a sign-off without its sheet',
    store: 'jobs',
    change: { signedOff: { at: 1_700_000_000_000, by: 'x', sheetId: nowhere } },
    code: 'belongs-to-nothing',
  },
])('$what is refused and nothing is applied', async ({ store, change, code }) => {
  const lines = await linesOf(await shop());
  Object.assign(recordsOf(lines, store)[0] ?? {}, change);
  const refusal = await refusalFor(lines);
  expect(refusal.code).toBe(code);
  expect(sayBackup(refusal)).toContain('Nothing was changed here.');
});

test('a step is named by its own words when it is wrong', async () => {
  const lines = await linesOf(await shop());
  const step = recordsOf(lines, 'steps').find(({ text }) => text === 'Nut');
  Object.assign(step ?? {}, { torque: { typed: '65', unit: 'stone', source: '' } });
  expect(sayBackup(await refusalFor(lines))).toMatch(
    /^Assembly step “Nut” \(line \d+\) does not hold what it should: look at “torque\.unit”/,
  );
});

test('a file can’t change what was signed here, and a sheet signed elsewhere comes beside it', async () => {
  const store = await shop();
  const lines = await linesOf(store);
  const before = await store.db.getAll('sheets');
  const [sheet] = recordsOf(lines, 'sheets');
  const stamps = { '*': '007000000000000-0000-other' };
  Object.assign(sheet ?? {}, { signedBy: 'Somebody', stamps });
  const refusal = refused(await restoreBackup(store, await sealed(lines)));
  expect(sayBackup(refusal)).toMatch(
    /^Signed sheet 1 \(line \d+\) is here already with other words or figures/,
  );
  expect(await store.db.getAll('sheets')).toEqual(before);
  const elsewhere = await linesOf(store);
  const line = elsewhere.find(({ store: name }) => name === 'sheets');
  elsewhere.splice(1, 0, { store: 'sheets', record: { ...Object(line?.['record']), id: 'elsewhere' } });
  worked(await restoreBackup(store, await sealed(elsewhere)));
  expect(await store.db.count('sheets')).toBe(2);
});

test('whatever is changed in a record and sealed again, it is restored whole or nothing of it is', async () => {
  const lines = await linesOf(await shop());
  await fc.assert(
    fc.asyncProperty(
      fc.nat({ max: lines.length - 2 }),
      fc.nat({ max: 40 }),
      fc.jsonValue({ maxDepth: 4 }),
      async (which, field, value) => {
        const changed: Lines = structuredClone(lines);
        const record = Object(changed[which]?.['record'] ?? changed[which]);
        const names = Object.keys(record);
        record[names[field % names.length] ?? 'extra'] = value;
        const texts = changed.slice(0, -1).map((one) => JSON.stringify(one));
        const phone = await openForTest();
        const result = await restoreBackup(phone, await sealedTexts(texts));
        expect(await phone.db.count('cuts')).toBe(result.ok ? idsOfCuts(changed).size : 0);
        expect(await phone.db.count('photoBytes')).toBe(result.ok ? 1 : 0);
        expect(result.ok ? '' : sayBackup(result.refusal)).not.toMatch(/undefined|NaN|\[object/);
        closeAll();
      },
    ),
    { numRuns: 150 },
  );
}, 60_000);

/** Of all cuts of a file, those too that can't be read; an id that is none is kept nowhere. */
function idsOfCuts(lines: Lines): ReadonlySet<string> {
  const cuts = lines.filter(({ store, unreadable }) => store === 'cuts' || unreadable === 'cuts');
  const ids: unknown[] = cuts.map(({ record }) => Object(record)['id']);
  return new Set(ids.filter((id) => typeof id === 'string' && id !== '' && id.length <= 100).map(String));
}
