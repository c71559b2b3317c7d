import { backupStores } from '../../../src/store/base/stores.ts';
import * as fc from 'fast-check';
import { afterEach, expect, test, vi } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { addPiece } from '../../../src/store/kept/drawer.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { isPlainObject } from '../../../src/store/base/paths.ts';
import { logReading } from '../../../src/store/kept/readings.ts';
import { sayBackup } from '../../../src/store/file/say-backup.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';
import {
  countsOf,
  linesOf,
  recordsOf,
  sealed,
  sealedTexts,
  type Line,
  type Lines,
} from '../sealed-backup.ts';

afterEach(closeAll);

async function shop(): Promise<Store> {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: ['axle'] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  for (let count = 1; count <= 15; count += 1) {
    const entry = worked(readEntry('.4487', { unit: 'in' }));
    worked(await logReading(store, { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: true }));
  }
  const sizes = { bore: { from: 'feature', featureId: bore.id } } as const;
  worked(await createWorksheet(store, { jobId: job.id, kind: 'hole-and-pin', title: 'Slop', sizes }));
  worked(await addPiece(store, { kind: 'shim', name: 'shim', material: 'brass' }, 3));
  return store;
}

async function shopLines(): Promise<Lines> {
  return linesOf(await shop());
}

/** Restores onto an empty phone; whatever comes, that phone must be as empty afterwards. */
async function refusalFor(text: string | Blob) {
  const phone = await openForTest();
  const refusal = refused(await restoreBackup(phone, text));
  for (const name of backupStores) expect(await phone.db.count(name)).toBe(0);
  return refusal;
}

test('the untouched backup restores, so what is refused below is refused for its own fault', async () => {
  const restored = worked(await restoreBackup(await openForTest(), await sealed(await shopLines())));
  expect(restored).toEqual({ added: 1 + 1 + 15 + 1 + 1 + 1, changed: 0, same: 0, canUndo: true }); // job, bore, readings, sheet, shim, its count
});

test('the 14th reading of the left bore is named when it holds no length', async () => {
  const lines = await shopLines();
  const reading = recordsOf(lines, 'readings')[13];
  Object.assign(reading ?? {}, { exact: 'eleven and a half' });
  const refusal = await refusalFor(await sealed(lines));
  expect(refusal).toMatchObject({ code: 'wrong-field', field: 'exact' });
  expect(sayBackup(refusal)).toMatch(/^Reading 14 of the left bore \(line 17\) does not hold what it should/);
});

test.each<{ what: string; store: string; change: Line; code: string }>([
  { what: 'a number for a length', store: 'readings', change: { exact: 11.4 }, code: 'wrong-field' },
  { what: 'an exponent in a length', store: 'readings', change: { exact: '1e9' }, code: 'wrong-field' },
  {
    what: 'a length of 500 digits',
    store: 'readings',
    change: { exact: '9'.repeat(500) },
    code: 'wrong-field',
  },
  { what: 'a list for a tool', store: 'readings', change: { tool: [] }, code: 'wrong-field' },
  { what: 'text for yes or no', store: 'readings', change: { zeroChecked: 'yes' }, code: 'wrong-field' },
  { what: 'no stamps', store: 'jobs', change: { stamps: undefined }, code: 'wrong-field' },
  {
    what: 'a stamp from the year 9999',
    store: 'jobs',
    change: { stamps: { '*': '253370764800000-0000-x' } },
    code: 'wrong-field',
  },
  { what: 'an unknown system', store: 'jobs', change: { systems: ['warp drive'] }, code: 'wrong-field' },
  {
    what: 'a name of 100,000 letters',
    store: 'jobs',
    change: { name: 'x'.repeat(100_000) },
    code: 'wrong-field',
  },
  { what: 'a number for an id', store: 'jobs', change: { id: 5 }, code: 'wrong-field' },
  { what: 'an empty id', store: 'features', change: { id: '' }, code: 'wrong-field' },
  { what: 'a time before 1970', store: 'jobs', change: { createdAt: -1 }, code: 'wrong-field' },
  { what: 'a count of half a shim', store: 'drawerCounts', change: { change: 0.5 }, code: 'wrong-field' },
  {
    what: 'a reading of no feature',
    store: 'readings',
    change: { featureId: 'nowhere' },
    code: 'belongs-to-nothing',
  },
  {
    what: 'a feature of no job',
    store: 'features',
    change: { jobId: 'nowhere' },
    code: 'belongs-to-nothing',
  },
  {
    what: 'a worksheet with a size from nowhere',
    store: 'worksheets',
    change: { sizes: { bore: { from: 'feature', featureId: 'nowhere' } } },
    code: 'belongs-to-nothing',
  },
  {
    what: 'a count of no piece',
    store: 'drawerCounts',
    change: { pieceId: 'nowhere' },
    code: 'belongs-to-nothing',
  },
  { what: 'a part of no job', store: 'features', change: { partId: 'nowhere' }, code: 'belongs-to-nothing' },
  {
    what: 'a field name with a point',
    store: 'worksheets',
    change: { 'sizes.bore': 1 },
    code: 'forbidden-name',
  },
  {
    what: 'a field called constructor',
    store: 'jobs',
    change: { constructor: { prototype: 1 } },
    code: 'forbidden-name',
  },
])('$what is refused and nothing is applied', async ({ store, change, code }) => {
  const lines = await shopLines();
  Object.assign(recordsOf(lines, store)[0] ?? {}, change);
  const refusal = await refusalFor(await sealed(lines));
  expect(refusal.code).toBe(code);
  expect(sayBackup(refusal)).toContain('Nothing was changed here.');
});

test('a record that stands in the backup twice is named', async () => {
  const lines = await shopLines();
  const job = lines.find(({ store }) => store === 'jobs');
  const twice = [...lines.slice(0, 2), job ?? {}, ...lines.slice(2)];
  const refusal = await refusalFor(await sealed(twice));
  expect(sayBackup(refusal)).toMatch(/^Job “Outfit” \(line 3\) is in this backup twice/);
});

test.each(['__proto__', 'constructor', 'prototype'])(
  'a record with a field called %s, at any depth, is refused and reaches no prototype',
  async (name) => {
    const lines = await shopLines();
    const texts = lines.slice(0, -1).map((line) => JSON.stringify(line));
    const nested = texts.map((text) => text.replace('"tool":{', `"tool":{"${name}":{"hacked":true},`));
    const refusal = await refusalFor(await sealedTexts(nested));
    expect(refusal).toMatchObject({ code: 'forbidden-name', name });
    expect('hacked' in {}).toBe(false);
  },
);

test.each([
  { kind: 'lists', open: '[', close: ']' },
  { kind: 'objects', open: '{"a":', close: '}' },
])('a field of 100,000 $kind inside each other is refused', async ({ open, close }) => {
  const lines = await shopLines();
  const texts = lines.slice(0, -1).map((line) => JSON.stringify(line));
  const deep = `${open.repeat(100_000)}1${close.repeat(100_000)}`;
  texts[1] = (texts[1] ?? '').replace('"name":', `"extra":${deep},"name":`);
  const refusal = await refusalFor(await sealedTexts(texts));
  expect(['too-deep', 'not-json']).toContain(refusal.code);
});

test('a line of over a million characters is refused by its number, unless it is a photo or a signed sheet', async () => {
  const lines = await shopLines();
  Object.assign(recordsOf(lines, 'jobs')[0] ?? {}, { extra: 'x'.repeat(1_000_001) });
  expect(await refusalFor(await sealed(lines))).toEqual({ code: 'line-too-long', line: 2 });
});

test.each(['jobs', 'photoBytes', 'sheets'])(
  'a line of %s that holds a million little things is refused before it is taken apart',
  async (store) => {
    const text = `{"store":"${store}","record":{"id":"x","list":[${'{},'.repeat(1_000_000)}0]}}`;
    const [header = ''] = (await sealed(await shopLines())).split('\n');
    const parse = vi.spyOn(JSON, 'parse');
    const refusal = await refusalFor(`${header}\n${text}\n`);
    const longest = Math.max(...parse.mock.calls.map(([line]) => line.length));
    parse.mockRestore();
    expect(refusal).toEqual({ code: store === 'jobs' ? 'line-too-long' : 'too-deep', line: 2 });
    expect(longest).toBeLessThan(1_000_000);
  },
);

test.each(['1e999', '-1e999'])(
  '%s, which no backup could hold again, is refused in any field',
  async (number) => {
    const lines = await shopLines();
    const texts = lines.slice(0, -1).map((line) => JSON.stringify(line));
    texts[1] = (texts[1] ?? '').replace('"name":', `"extra":[{"a":${number}}],"name":`);
    expect(await refusalFor(await sealedTexts(texts))).toEqual({ code: 'not-json', line: 2 });
  },
);

test('a file without a single line end is given up after one line’s length', async () => {
  let pulled = 0;
  async function* endless() {
    for (;;) {
      pulled += 1;
      yield 'x'.repeat(100_000);
    }
  }
  const refusal = refused(await restoreBackup(await openForTest(), endless()));
  expect(refusal).toEqual({ code: 'line-too-long', line: 1 });
  expect(pulled).toBeLessThan(125); // 12 million characters: a photo of 8 MB as base64 is 10.7 million
});

test('a file over the limit is refused before it is read', async () => {
  const huge = new Blob([]);
  Object.defineProperty(huge, 'size', { value: 2_000_000_001 });
  huge.stream = () => {
    throw new Error('was read');
  };
  expect(await refusalFor(huge)).toEqual({ code: 'too-big', mostMegabytes: 2000 });
});

test.each([
  { what: 'nothing', text: '' },
  { what: 'a shopping list', text: 'milk\neggs\n' },
  { what: 'some other JSON', text: '{"name":"x"}\n' },
  { what: 'a list', text: '[1,2,3]' },
  { what: 'null', text: 'null' },
  { what: 'version 2.5', text: '{"format":"slipfit backup","version":2.5,"counts":{}}\n' },
  { what: 'version nought', text: '{"format":"slipfit backup","version":0,"counts":{}}\n' },
])('$what is not taken for a backup', async ({ text }) => {
  expect(await refusalFor(text)).toEqual({ code: 'not-a-backup' });
});

test('a backup whose first line can’t be read is still taken for one, and the line is named', async () => {
  const text = '{"format":"slipfit backup","version":1e999,"counts":{}}\n';
  expect(await refusalFor(text)).toEqual({ code: 'not-json', line: 1 });
});

test('a backup of a newer form is refused by its form', async () => {
  const lines = await shopLines();
  Object.assign(lines[0] ?? {}, { version: 4 });
  expect(await refusalFor(await sealed(lines))).toEqual({ code: 'newer-backup', version: 4 });
});

test('bytes that are no text are refused', async () => {
  const refusal = await refusalFor(new Blob([new Uint8Array([0x7b, 0xff, 0xfe, 0x7d])]));
  expect(refusal).toEqual({ code: 'not-text' });
});

test('a backup cut off after any of its lines says that its end is missing', async () => {
  const texts = (await sealed(await shopLines())).trimEnd().split('\n');
  for (let length = 1; length < texts.length; length += 1) {
    const refusal = await refusalFor(`${texts.slice(0, length).join('\n')}\n`);
    expect(refusal.code).toBe('cut-off');
  }
});

test('a record left out, put twice or put elsewhere is found by the checksum or the counts', async () => {
  const texts = (await sealed(await shopLines())).trimEnd().split('\n');
  const without = texts.filter((_text, index) => index !== 5);
  const swapped = texts.map((text, index) => texts[index === 5 ? 6 : index === 6 ? 5 : index] ?? text);
  for (const changed of [without, swapped]) {
    expect((await refusalFor(changed.join('\n'))).code).toBe('checksum-differs');
  }
});

test('a header that counts wrong is refused by what it counts wrong', async () => {
  const lines = await shopLines();
  const body = lines.slice(0, -1);
  Object.assign(body[0] ?? {}, { counts: { ...countsOf(body), readings: 16 } });
  const refusal = await refusalFor(await sealedTexts(body.map((line) => JSON.stringify(line))));
  expect(refusal).toEqual({ code: 'counts-differ', store: 'readings', said: 16, found: 15 });
});

test('a second backup pasted behind the first is refused', async () => {
  const text = await sealed(await shopLines());
  expect((await refusalFor(`${text}${text}`)).code).toBe('something-behind-the-end');
});

test('a file can’t change a reading that is here already', async () => {
  const store = await shop();
  const lines = await linesOf(store);
  const reading = recordsOf(lines, 'readings')[2];
  const stamps = { '*': '007000000000000-0000-other' };
  Object.assign(reading ?? {}, { typed: '.5000', exact: '12.7', stamps });
  const before = await store.db.getAll('readings');
  const refusal = refused(await restoreBackup(store, await sealed(lines)));
  expect(refusal.code).toBe('reading-differs');
  expect(await store.db.getAll('readings')).toEqual(before);
});

test('a file that brings the very last stamp there is stops nobody’s work', async () => {
  const lines = await shopLines();
  Object.assign(recordsOf(lines, 'jobs')[0] ?? {}, { stamps: { '*': '007999999999999-ffff-zzzz' } });
  const phone = await openForTest();
  worked(await restoreBackup(phone, await sealed(lines)));
  for (const name of ['Saw table', 'Planer'])
    expect(worked(await createJob(phone, { name, systems: [] })).name).toBe(name);
});

test('names that are HTML or formulas are kept as the plain text they are', async () => {
  const lines = await shopLines();
  const name = '<img src=x onerror=alert(1)> =1+1 @SUM(A1)';
  Object.assign(recordsOf(lines, 'jobs')[0] ?? {}, { name });
  const phone = await openForTest();
  worked(await restoreBackup(phone, await sealed(lines)));
  expect((await phone.db.getAll('jobs'))[0].name).toBe(name);
});

test('whatever is changed in a backup’s text, it is restored whole or refused with nothing applied', async () => {
  const text = await sealed(await shopLines());
  const scraps = ['', '"', '}', ']', ',', '\n', '0', 'null', '{}', '__proto__', '\u0000', '1e999', '𝟙'];
  await fc.assert(
    fc.asyncProperty(
      fc.nat({ max: text.length - 1 }),
      fc.nat({ max: 20 }),
      fc.oneof(fc.constantFrom(...scraps), fc.string({ maxLength: 5 })),
      async (at, cut, put) => {
        const changed = text.slice(0, at) + put + text.slice(at + cut);
        const phone = await openForTest();
        const result = await restoreBackup(phone, changed);
        const records = await phone.db.count('readings');
        expect(records).toBe(result.ok ? 15 : 0);
        expect(result.ok ? '' : sayBackup(result.refusal)).not.toMatch(/undefined|NaN|\[object/);
        closeAll();
      },
    ),
    { numRuns: 200 },
  );
}, 60_000);

test('whatever is changed in a record and sealed again, it never half-applies and never throws', async () => {
  const lines = await shopLines();
  await fc.assert(
    fc.asyncProperty(
      fc.nat({ max: lines.length - 2 }),
      fc.nat({ max: 30 }),
      fc.jsonValue({ maxDepth: 4 }),
      async (which, field, value) => {
        const changed: Lines = structuredClone(lines);
        const line = changed[which] ?? {};
        const target = isPlainObject(line['record']) ? line['record'] : line;
        const names = Object.keys(target);
        Object.assign(target, { [names[field % names.length] ?? 'extra']: value });
        const texts = changed.slice(0, -1).map((one) => JSON.stringify(one));
        const phone = await openForTest();
        const result = await restoreBackup(phone, await sealedTexts(texts));
        expect(await phone.db.count('readings')).toBe(result.ok ? 15 : 0);
        closeAll();
      },
    ),
    { numRuns: 200 },
  );
}, 60_000);
