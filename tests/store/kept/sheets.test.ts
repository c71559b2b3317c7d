import { afterEach, expect, test } from 'vitest';
import * as sheets from '../../../src/store/kept/sheets.ts';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { SheetNode } from '../../../src/store/base/records.ts';
import { isSheetContent, MOST_SHEET_DEPTH } from '../../../src/store/kept/sheet-schema.ts';
import { addRecheck, rechecksOf, setOdometer } from '../../../src/store/kept/rechecks.ts';
import { latestUndo } from '../../../src/store/undo/undo.ts';
import { backupLines, restoreBackup } from '../../../src/store/file/backup.ts';
import { drawnMark } from '../../../src/store/kept/drawn-mark.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { addSteps } from '../../../src/store/kept/steps.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';
import { linesOf, recordsOf, sealed } from '../sealed-backup.ts';

afterEach(closeAll);

function element(
  tag: string,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly SheetNode[]
): SheetNode {
  return { tag, attributes, children };
}

function sheetOf(jobId: string, content: readonly SheetNode[]): sheets.NewSheet {
  return {
    jobId,
    signedBy: 'R. Tiller',
    engineVersion: '0.1.0',
    content,
    readingsCsv: 'feature,reading\r\n',
    cutsCsv: 'cut,target\r\n',
  };
}

async function sign(store: Store, jobId: string, words: string) {
  return worked(await sheets.signSheet(store, sheetOf(jobId, [element('p', {}, words)])));
}

test('a signed sheet comes back as it was signed, the newest first', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const first = await sign(store, job.id, 'float .004 in');
  const second = await sign(store, job.id, 'float .003 in');
  worked(await changeJob(store, job.id, { name: 'Outfit 9' }));
  expect((await sheets.sheetsOf(store, job.id)).map(({ id }) => id)).toEqual([second.id, first.id]);
  expect(await sheets.getSheet(store, first.id)).toMatchObject({
    signedBy: 'R. Tiller',
    content: [{ tag: 'p', attributes: {}, children: ['float .004 in'] }],
  });
});

test('nothing in Slipfit can change or remove a signed sheet, nor undo it or the job it is of', async () => {
  expect(Object.keys(sheets).toSorted()).toEqual(['getSheet', 'sheetsOf', 'signSheet']);
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  await sign(store, job.id, 'float .004 in');
  expect(await latestUndo(store, job.id)).toBeUndefined();
  expect(await getJob(store, job.id)).toMatchObject({ name: 'Outfit' });
});

test('signing and counting the re-checks from it are one act: no killed phone leaves one without the other', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const nuts = { jobId: job.id, what: 'Nuts', from: 1_700_000_000_000 };
  worked(await addRecheck(store, { ...nuts, afterDays: 7, afterDistance: 50, unit: 'mi' }));
  worked(await setOdometer(store, job.id, { reading: 41_250, unit: 'mi' }));
  worked(await setOdometer(store, job.id, { reading: 41_300, unit: 'mi' }));
  const acts = await actsIn(store);
  const sheet = await sign(store, job.id, 'float .004 in');
  expect(await actsIn(store)).toBe(acts + 1);
  expect(await rechecksOf(store, job.id)).toMatchObject([{ from: sheet.signedAt, fromOdometer: 41_300 }]);
});

const ACTS_BETWEEN: Readonly<Record<string, (store: Store, jobId: string) => Promise<unknown>>> = {
  'a step': (store, jobId) => addSteps(store, [{ jobId, text: 'Fit the spacer' }]),
  'the name': (store, jobId) => changeJob(store, jobId, { name: 'Outfit 9' }),
  'the odometer': (store, jobId) => setOdometer(store, jobId, { reading: 41_250, unit: 'mi' }),
  'the unit the figures are in': (store) => putSetting(store, 'shownUnit', 'mm'),
};

test.each(Object.keys(ACTS_BETWEEN))(
  'a sheet drawn before %s was changed in another tab is not signed, and signed once it is drawn anew',
  async (what) => {
    const store = await openForTest();
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const sheet = sheetOf(job.id, [element('p', {}, 'float .004 in')]);
    const before = await drawnMark(store, job.id);
    await ACTS_BETWEEN[what]?.(store, job.id);
    expect(refused(await sheets.signSheet(store, sheet, before))).toEqual({ code: 'drawn-is-old' });
    expect(await sheets.sheetsOf(store, job.id)).toEqual([]);
    expect((await getJob(store, job.id))?.signedOff).toBeUndefined();
    worked(await sheets.signSheet(store, sheet, await drawnMark(store, job.id)));
  },
);

test('what another job or another place is about keeps nobody from signing', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const drawnFrom = await drawnMark(store, job.id);
  const other = worked(await createJob(store, { name: 'Trailer', systems: ['wheel'] }));
  worked(await addSteps(store, [{ jobId: other.id, text: 'Pack the bearings' }]));
  worked(await putSetting(store, 'lastPlace', '#/charts/drills'));
  worked(await putSetting(store, 'padSize', 'glove'));
  const { id } = worked(await sheets.signSheet(store, sheetOf(job.id, ['as drawn']), drawnFrom));
  expect((await getJob(store, job.id))?.signedOff).toMatchObject({ sheetId: id });
});

async function actsIn(store: Store): Promise<number> {
  return (await store.db.get('device', 'clock')).acts;
}

const text = 'text';
const allowed: readonly SheetNode[] = [
  'plain text with <script>alert(1)</script> in it',
  element('table', { class: 'sheet-table' }, element('td', { colspan: '2', scope: 'row' }, text)),
  element('svg', { viewBox: '0 0 40 10', role: 'img', 'aria-label': 'a stack; url(x)' }),
  element('rect', { fill: 'currentColor', stroke: 'currentColor', 'stroke-width': '2' }),
  element('path', { 'stroke-dasharray': '7 5', d: 'M0 0h9' }),
  element('text', { style: 'font-weight: 400; font-size: 23px;' }, text),
  element('path', { style: 'stroke-dasharray: 12px, 8px;', d: 'M0 0h390' }),
  dashedCircle('60'),
  centreLine('390'),
  element('svg', { width: '100%', height: '12em' }),
  'e\u0301\u0323 ज़्',
  element('li', { 'data-struck': 'true' }, text),
];

test.each(allowed.map((node) => [JSON.stringify(node), node] as const))(
  '%s may stand on a signed sheet',
  (_text, node) => {
    expect(isSheetContent([node])).toBe(true);
  },
);

function dashedCircle(r: string) {
  return element('circle', { r, 'stroke-dasharray': '1 1' });
}

function centreLine(to: string) {
  return element('path', { class: 'drawing-centre', d: `M0 0H${to}` });
}

const forbidden: readonly unknown[] = [
  element('script', {}, 'alert(1)'),
  element('style', {}, 'p { background: url(//elsewhere) }'),
  element('iframe'),
  element('img', { src: 'x' }),
  element('image', { href: 'x' }),
  element('foreignObject'),
  element('animate', { attributeName: 'href' }),
  element('a', { href: 'javascript:alert(1)' }, text),
  element('p', { onclick: 'alert(1)' }),
  element('P', {}),
  element('svg', { onload: 'alert(1)' }),
  // Seven levels of ten `use` each are ten million drawings; nothing of ours draws anything twice.
  element('use', { href: '#arrow' }),
  element('g', { href: '#arrow' }),
  element('symbol', { id: 'a' }),
  element('pattern', { id: 'hatch' }),
  element('linearGradient', { id: 'a' }),
  element('mask', { id: 'a' }),
  element('marker', { id: 'a' }),
  element('clipPath', { id: 'a' }),
  element('rect', { fill: 'url(#hatch)' }),
  element('rect', { stroke: 'URL( #hatch )' }),
  element('rect', { 'clip-path': 'url(#a)' }),
  element('path', { 'marker-mid': 'url(#a)' }),
  element('path', { 'stroke-dasharray': '.001 .001', d: 'M0 0h999999' }),
  element('path', { 'stroke-dasharray': '5 0' }),
  element('path', { style: 'stroke-dasharray: .001 .001' }),
  element('path', { style: 'fill: none; stroke-dasharray: 5, 0.5' }),
  element('g', { 'stroke-dasharray': '7 5' }),
  // 300 × 2π × 70,000 is 132 million units; with dashes of .5 Chromium had drawn nothing after 20 s.
  element('g', {}, ...Array.from({ length: 300 }, () => dashedCircle('70000'))),
  dashedCircle('1e9'),
  // Of a drawing of 100,000 units all round each: three hundred held Chromium up for more than 25 s.
  element('svg', { viewBox: '0 0 100000 100000' }, dashedCircle('100%')),
  element('rect', { width: '100%', height: '9' }),
  element('line', { x2: '999em', 'font-size': '100000' }),
  element('rect', { width: '9', height: '9', style: 'width: 99999px' }),
  element('g', {}, ...Array.from({ length: 300 }, () => centreLine('33000'))),
  element('g', { class: 'wide drawing-centre' }),
  element('text', { class: 'drawing-centre' }, text),
  // A broad line with fourteen thousand bends took 14 s.
  element('path', { d: `M0 0${'a1 2 3 0 1 1 1'.repeat(14_000)}` }),
  `a${'\u0301'.repeat(500)}`,
  element('path', { d: 'M0 0H1e30' }),
  element('td', { colspan: '1000' }, text),
  element('td', { rowspan: '65534' }, text),
  element('path', { pathLength: '1000000' }),
  element('use', { href: 'javascript:alert(1)' }),
  element('use', { href: 'https://elsewhere.example/a.svg#b' }),
  element('use', { 'xlink:href': '#arrow' }),
  element('rect', { fill: 'url(https://elsewhere.example/a.svg#b)' }),
  element('rect', { fill: 'u\\72l(//elsewhere.example)' }),
  element('p', { style: 'background: url(x)' }),
  element('p', { style: 'position: fixed; top: 0' }),
  element('p', { style: 'width: expression(alert(1))' }),
  element('p', { style: 'width: 1px; background-image: image-set("x" 1x)' }),
  element('p', { srcdoc: 'x' }),
  element('svg', { xmlns: 'http://elsewhere.example' }),
  { tag: 'p', attributes: { class: 7 }, children: [] },
  { tag: 'p', attributes: {}, children: 'text' },
  { tag: 'p', children: [] },
  { tag: '__proto__', attributes: {}, children: [] },
  7,
  null,
  ['p'],
];

test.each(forbidden.map((node) => [JSON.stringify(node), node] as const))(
  '%s may not, however deep it stands',
  (_text, node) => {
    expect(isSheetContent([node])).toBe(false);
    expect(isSheetContent([{ tag: 'div', attributes: {}, children: ['text', node] }])).toBe(false);
  },
);

test('fifty thousand things stand on a sheet, and no more', () => {
  const many = (count: number) => [element('p', {}, ...Array.from({ length: count }, () => element('br')))];
  expect(isSheetContent(many(49_999))).toBe(true);
  expect(isSheetContent(many(50_000))).toBe(false);
});

function nested(depth: number): SheetNode {
  let node: SheetNode = 'text';
  for (let level = 0; level < depth; level += 1) node = element('div', {}, node);
  return node;
}

test('a sheet is at most so deep and so long, and one past it says so before anything is kept', async () => {
  expect(isSheetContent([nested(MOST_SHEET_DEPTH)])).toBe(true);
  expect(isSheetContent([nested(MOST_SHEET_DEPTH + 1)])).toBe(false);
  expect(isSheetContent([nested(100_000)])).toBe(false);
  expect(isSheetContent(['x'.repeat(2_000_000)])).toBe(true);
  expect(isSheetContent(['x'.repeat(2_000_000), 'x'])).toBe(false);
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const result = await sheets.signSheet(store, sheetOf(job.id, [element('script')]));
  expect(refused(result)).toEqual({ code: 'cannot-keep', store: 'sheets', field: 'content' });
  expect((await getJob(store, job.id))?.signedOff).toBeUndefined();
});

test('a file with the same sheet, other stamps and a field that Slipfit works out itself changes nothing, nor the second time', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  await sign(store, job.id, 'float .004 in');
  const lines = await linesOf(store);
  for (const sheet of recordsOf(lines, 'sheets'))
    Object.assign(sheet, { openAt: 5, stamps: { '*': '001700000000000-0000-other' } });
  const file = new Blob([await sealed(lines)]);
  const before = await sheetLines(store);
  expect(before).toHaveLength(1);
  worked(await restoreBackup(store, file));
  expect(await sheetLines(store)).toEqual(before);
  // A phone that had nothing keeps the sheet without that field, and knows it again.
  const other = await openForTest();
  worked(await restoreBackup(other, file));
  expect((await sheetLines(other)).join('')).not.toContain('openAt');
  expect(worked(await restoreBackup(other, file))).toMatchObject({ added: 0, changed: 0 });
});

async function sheetLines(store: Store): Promise<string[]> {
  const found: string[] = [];
  for await (const line of backupLines(store)) if (line.startsWith('{"store":"sheets"')) found.push(line);
  return found;
}
