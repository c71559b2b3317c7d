import { afterEach, expect, test, vi } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf, sameLength, toText } from '../../../src/engine/length/length.ts';
import { usualTools, type MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import { nextStamp, stampShape } from '../../../src/store/base/clock.ts';
import {
  addPiece,
  changePiece,
  countPiece,
  drawerPieces,
  removePiece,
} from '../../../src/store/kept/drawer.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { clearDraft, getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { newId } from '../../../src/store/base/new-id.ts';
import { closeStore } from '../../../src/store/opening/open-store.ts';
import { changePart, createPart, partsOf, removePart } from '../../../src/store/kept/parts.ts';
import { askToPersist } from '../../../src/store/opening/persistence.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import {
  addTool,
  changeTool,
  measuringTools,
  putBackTool,
  removedTools,
  removeTool,
  toolRecords,
} from '../../../src/store/kept/tools.ts';
import { fillDisk } from '../fill-disk.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  closeAll();
});

const sizesOf = (tool: MeasuringTool) =>
  [tool.mpe, tool.resolution, tool.repeatability, tool.least, tool.most, tool.jawWidth].map(
    (size) => size && toText(size),
  );

test('a new shop has the usual tools, with their limits exactly as listed', async () => {
  const store = await openForTest();
  const tools = await measuringTools(store);
  expect(tools.map(({ id }) => id)).toEqual(usualTools.map(({ id }) => id));
  expect(tools.map(sizesOf)).toEqual(usualTools.map(sizesOf));
});

test('a usual tool that was removed stays removed at the next start', async () => {
  const name = freshName();
  const store = await openForTest({ name });
  const [first] = await measuringTools(store);
  worked(await removeTool(store, first?.id ?? ''));
  closeStore(store);
  const again = await openForTest({ name });
  expect((await measuringTools(again)).map(({ id }) => id)).not.toContain(first?.id);
});

test('a usual tool that was removed can be put back as it was, own figures and all', async () => {
  const store = await openForTest();
  await measuringTools(store);
  expect(await removedTools(store)).toEqual([]);
  worked(
    await changeTool(store, 'feeler-gauges', { tool: { name: 'Old feelers', mpe: lengthOf('.001 in') } }),
  );
  worked(await removeTool(store, 'feeler-gauges'));
  const [removed, ...others] = await removedTools(store);
  expect(others).toEqual([]);
  if (!removed) throw new Error('not removed');
  worked(await putBackTool(store, removed));
  expect(await removedTools(store)).toEqual([]);
  const back = (await measuringTools(store)).find(({ id }) => id === 'feeler-gauges');
  expect(back?.name).toBe('Old feelers');
  expect(back && toText(back.mpe)).toBe('0.0254');
});

test('a usual tool whose record is nowhere any longer is put back with the usual figures', async () => {
  const store = await openForTest();
  await measuringTools(store);
  await store.db.delete('tools', 'feeler-gauges');
  const [removed] = await removedTools(store);
  if (!removed) throw new Error('not removed');
  worked(await putBackTool(store, removed));
  expect((await measuringTools(store)).map(sizesOf)).toEqual(usualTools.map(sizesOf));
});

test('a tool that can’t be read is not among the removed ones', async () => {
  const store = await openForTest();
  await measuringTools(store);
  await store.db.put('tools', { id: 'feeler-gauges', tool: 'torn' });
  expect(await removedTools(store)).toEqual([]);
});

test('a tool’s limit is what its own paper says once that was typed in', async () => {
  const store = await openForTest();
  await measuringTools(store);
  worked(await changeTool(store, 'digital-caliper', { tool: { mpe: lengthOf('.0008 in') }, lastChecked: 5 }));
  const record = (await toolRecords(store)).find(({ id }) => id === 'digital-caliper');
  expect(record && sameLength(record.tool.mpe, lengthOf('.0008 in'))).toBe(true);
  expect(record?.lastChecked).toBe(5);
});

test('an own tool stands behind the usual ones', async () => {
  const store = await openForTest();
  await measuringTools(store);
  const [usual] = usualTools;
  if (!usual) throw new Error('no tools');
  worked(await addTool(store, { ...usual, name: 'Big caliper' }));
  const tools = await measuringTools(store);
  expect(tools.at(-1)?.name).toBe('Big caliper');
  expect(tools.at(-1)?.id).not.toBe(usual.id);
});

test('a full disk leaves the fitter with the usual tools all the same', async () => {
  const store = await openForTest();
  fillDisk('tools');
  expect(await measuringTools(store)).toHaveLength(usualTools.length);
});

test('a piece’s count is the sum of what was put in and taken', async () => {
  const store = await openForTest();
  const thickness = { from: 'typed', ...worked(readEntry('5 thou', { unit: 'in' })) } as const;
  const shim = worked(
    await addPiece(store, { kind: 'shim', name: 'Shim', thickness, material: 'brass' }, 10),
  );
  worked(await countPiece(store, shim.id, -3, 'Outfit'));
  worked(await countPiece(store, shim.id, 1, 'one left over'));
  const [kept] = await drawerPieces(store);
  expect(kept).toMatchObject({ count: 8, piece: { name: 'Shim', thickness: { typed: '5 thou' } } }); // 10 − 3 + 1
  worked(await removePiece(store, shim.id));
  expect(await drawerPieces(store)).toEqual([]);
  expect(refused(await countPiece(store, shim.id, 1, 'x'))).toEqual({ code: 'gone', store: 'drawer' });
});

test('a dial’s graduation comes back as it was typed and exact', async () => {
  const store = await openForTest();
  const graduation = worked(readEntry('.001', { unit: 'in' }));
  worked(await putSetting(store, 'dial', { reads: 'radius', graduation }));
  const dial = await getSetting(store, 'dial');
  expect(dial).toMatchObject({ reads: 'radius', graduation: { typed: '.001', unit: 'in' } });
  expect(dial && toText(dial.graduation.exact)).toBe('0.0254');
});

test('a setting that was never set, or went bad, is nothing', async () => {
  const store = await openForTest();
  expect(await getSetting(store, 'shownUnit')).toBeUndefined();
  await store.db.put('settings', { id: 'shownUnit', value: 'cubit' });
  expect(await getSetting(store, 'shownUnit')).toBeUndefined();
});

test('what was last used is kept for each kind of feature by itself', async () => {
  const store = await openForTest();
  worked(
    await putSetting(store, 'lastUsed/bore', { toolId: 'a', unit: 'in', place: 'top', direction: '90' }),
  );
  worked(await putSetting(store, 'lastUsed/pin', { toolId: 'b', unit: 'mm' }));
  expect(await getSetting(store, 'lastUsed/bore')).toEqual({
    toolId: 'a',
    unit: 'in',
    place: 'top',
    direction: '90',
  });
  expect(await getSetting(store, 'lastUsed/pin')).toEqual({ toolId: 'b', unit: 'mm' });
});

test('of drafts written press by press without waiting the last one stands', async () => {
  const store = await openForTest();
  const presses = ['.', '.4', '.44', '.448'];
  await Promise.all(presses.map((typed) => putDraft(store, 'field', { typed, unit: 'in' })));
  expect(await getDraft(store, 'field')).toEqual({ typed: '.448', unit: 'in' });
  worked(await clearDraft(store, 'field'));
  expect(await getDraft(store, 'field')).toBeUndefined();
});

test('a job’s parts are kept with where they come from', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const part = worked(await createPart(store, { jobId: job.id, name: 'Spacer', origin: 'mock-up' }));
  worked(await changePart(store, part.id, { origin: 'made' }));
  expect(await partsOf(store, job.id)).toMatchObject([{ name: 'Spacer', origin: 'made' }]);
  worked(await removePart(store, part.id));
  expect(await partsOf(store, job.id)).toEqual([]);
});

test.each([
  { persisted: true, persist: false, answer: 'granted' },
  { persisted: false, persist: true, answer: 'granted' },
  { persisted: false, persist: false, answer: 'refused' },
])(
  'asked to keep the data, the browser’s answer is shown as $answer',
  async ({ persisted, persist, answer }) => {
    const storage = { persisted: async () => persisted, persist: async () => persist };
    vi.stubGlobal('navigator', { storage });
    expect(await askToPersist()).toBe(answer);
  },
);

test('a browser that can’t be asked to keep the data is unknown, not refused', async () => {
  vi.stubGlobal('navigator', {});
  expect(await askToPersist()).toBe('unknown');
  const fails = async () => {
    throw new Error('not here');
  };
  vi.stubGlobal('navigator', { storage: { persisted: fails, persist: fails } });
  expect(await askToPersist()).toBe('unknown');
});

test('stamps given one after the other sort in that order, also when the clock stands or runs back', () => {
  const times = [1000, 1000, 999, 5000, 1, ...Array.from({ length: 70_000 }, () => 5000)];
  let last: string | undefined;
  for (const nowMs of times) {
    const stamp = nextStamp({ last, nowMs, deviceId: 'phone' });
    if (last !== undefined && stamp <= last) throw new Error(`${stamp} is not behind ${last}`);
    last = stamp;
  }
  expect(last).toMatch(stampShape);
});

test('an id is a random UUID of version 4', () => {
  const ids = new Set(Array.from({ length: 1000 }, newId));
  expect(ids.size).toBe(1000);
  const shape = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
  expect([...ids].every((id) => shape.test(id))).toBe(true);
});

test('a washer gets its other sizes after it was put in, and undo takes one back', async () => {
  const store = await openForTest();
  const typed = (text: string) => {
    const entry = readEntry(text, { unit: 'in' });
    if (!entry.ok) throw new Error(text);
    return { from: 'typed', ...entry.value } as const;
  };
  const washer = worked(
    await addPiece(store, { kind: 'washer', name: 'Washer .125', material: '', thickness: typed('.125') }, 2),
  );
  await putDraft(store, 'drawer/w/outside', { typed: '2', unit: 'in' });
  worked(await changePiece(store, washer.id, { outside: typed('2') }, 'drawer/w/outside'));
  expect(await getDraft(store, 'drawer/w/outside')).toBeUndefined();
  const [kept] = await drawerPieces(store);
  expect(kept).toMatchObject({ count: 2, piece: { outside: { typed: '2' }, thickness: { typed: '.125' } } });
  const last = await latestUndo(store);
  worked(await undoLast(store, last?.id ?? ''));
  expect((await drawerPieces(store))[0]?.piece.outside).toBeUndefined();
});
