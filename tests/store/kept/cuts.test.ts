import { afterEach, expect, test, vi } from 'vitest';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { show } from '../../../src/engine/length/show.ts';
import { passesOf } from '../../../src/store/kept/cut-state.ts';
import {
  changeCut,
  createCuts,
  cutsOf,
  getCut,
  openCuts,
  removeCut,
  setCutState,
} from '../../../src/store/kept/cuts.ts';
import { logPass, strikeOutPass } from '../../../src/store/kept/cut-passes.ts';
import { makeAgain } from '../../../src/store/kept/make-cut-again.ts';
import { dialledKey, dialledSince, dialledText } from '../../../src/store/kept/dialled.ts';
import { getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { changeJob, createJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { hasOpenWork } from '../../../src/store/kept/open-work.ts';
import { createPart } from '../../../src/store/kept/parts.ts';
import type { CutState } from '../../../src/store/base/records.ts';
import { replaceCuts } from '../../../src/store/kept/replace-cuts.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { facing, inches } from '../cut-for-test.ts';
import { fillDisk } from '../fill-disk.ts';
import { closeAll, freshName, openForTest, refused, tickingClock, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function withCut(store: Store, more = {}) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const [cut] = worked(await createCuts(store, [facing(job.id, more)]));
  if (!cut) throw new Error('no cut was made');
  return { job, cut };
}

async function undoNewest(store: Store) {
  const newest = await latestUndo(store);
  return newest && worked(await undoLast(store, newest.id));
}

test('cuts handed over together keep their order, and one undo takes them all back', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const names = ['first', 'second', 'third'];
  worked(
    await createCuts(
      store,
      names.map((name) => facing(job.id, { name })),
    ),
  );
  expect((await cutsOf(store, job.id)).map(({ name, state }) => [name, state])).toEqual(
    names.map((name) => [name, 'to-cut']),
  );
  expect(await undoNewest(store)).toBe('Put down to cut: 3 cuts');
  expect(await cutsOf(store, job.id)).toEqual([]);
});

test('a cut for a part or from a worksheet that never was is not kept', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const nowhere = [facing(job.id, { partId: 'never-was' })];
  expect(refused(await createCuts(store, nowhere))).toEqual({ code: 'gone', store: 'parts' });
  const unasked = [facing(job.id, { worksheetId: 'never-was' })];
  expect(refused(await createCuts(store, unasked))).toEqual({ code: 'gone', store: 'worksheets' });
  expect(await store.db.count('cuts')).toBe(0);
});

test('a logged pass is there after the window was closed, in the order measured, with its tool and state', async () => {
  const name = freshName();
  const store = await openForTest({ name });
  const { cut } = await withCut(store);
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  worked(await logPass(store, cut.id, { measured: inches('1.520'), tool }));
  worked(await logPass(store, cut.id, { measured: inches('1.4802'), asked: inches('.040') }));
  closeStore(store);
  const again = await openForTest({ name });
  const kept = await getCut(again, cut.id);
  expect(kept?.state).toBe('to-size');
  const passes = kept ? passesOf(kept).map(([, pass]) => pass) : [];
  expect(passes.map(({ measured, asked }) => [measured.typed, asked?.typed])).toEqual([
    ['1.520', undefined],
    ['1.4802', '.040'],
  ]);
  expect(passes[0]?.tool?.mpe).toEqual(tool.mpe);
  expect(passes[0]?.tool).not.toHaveProperty('measures');
});

test('a pass logged after the phone’s clock was set back still comes behind the one before it', async () => {
  let nowMs = 1_700_000_000_000;
  const store = await openForTest({ now: () => nowMs });
  const { cut } = await withCut(store);
  worked(await logPass(store, cut.id, { measured: inches('1.520') }));
  nowMs -= 3_600_000;
  const after = worked(await logPass(store, cut.id, { measured: inches('1.500') }));
  expect(passesOf(after).map(([, { measured }]) => measured.typed)).toEqual(['1.520', '1.500']);
});

test('a full disk keeps the half-typed measurement and neither pass nor state', async () => {
  const store = await openForTest();
  const { cut } = await withCut(store);
  const key = '#/jobs/1/cuts/1.measured';
  worked(await putDraft(store, key, { typed: '1.4802', unit: 'in' }));
  fillDisk('cuts');
  const pass = { measured: inches('1.4802') };
  expect(refused(await logPass(store, cut.id, pass, key))).toEqual({ code: 'full-disk' });
  vi.restoreAllMocks();
  expect(await getCut(store, cut.id)).toMatchObject({ state: 'to-cut', passes: {} });
  expect(await getDraft(store, key)).toEqual({ typed: '1.4802', unit: 'in' });
  worked(await logPass(store, cut.id, pass, key));
  expect(await getDraft(store, key)).toBeUndefined();
});

test('a logged pass can’t be undone, and neither can putting down the cut it was measured on', async () => {
  const store = await openForTest();
  const { cut, job } = await withCut(store);
  worked(await logPass(store, cut.id, { measured: inches('1.520') }));
  expect(await latestUndo(store, job.id)).toBeUndefined();
  expect(Object.keys((await getCut(store, cut.id))?.passes ?? {})).toHaveLength(1);
});

test('a struck-out pass stays readable with its reason, and undo makes it count again', async () => {
  const store = await openForTest();
  const { cut } = await withCut(store);
  const logged = worked(await logPass(store, cut.id, { measured: inches('1.400') }));
  const [passId] = Object.keys(logged.passes);
  const struck = worked(await strikeOutPass(store, cut.id, passId ?? '', 'chip on the anvil'));
  expect(struck.state).toBe('to-cut');
  expect(passesOf(struck)[0]?.[1]).toMatchObject({
    measured: { typed: '1.400' },
    struckOut: { why: 'chip on the anvil' },
  });
  expect(await undoNewest(store)).toBe('Struck out a pass of Spacer, face to length');
  const back = await getCut(store, cut.id);
  expect(back?.state).toBe('over');
  expect(back && passesOf(back)[0]?.[1].struckOut).toBeUndefined();
});

test('a cut is to size by the limits it has now: changed ones, and an undo of them, tell it anew', async () => {
  const store = await openForTest();
  const { cut, job } = await withCut(store);
  worked(await logPass(store, cut.id, { measured: inches('1.4802'), asked: inches('.040') }));
  const state = async () => (await getCut(store, cut.id))?.state;
  const narrower = { target: inches('1.4785'), lower: inches('1.478'), upper: inches('1.479') };
  expect(worked(await changeCut(store, cut.id, narrower)).state).toBe('cutting');
  expect(await openCuts(store)).toHaveLength(1);
  expect(await undoNewest(store)).toBe('Changed Spacer, face to length');
  expect(await state()).toBe('to-size');
  expect(await openCuts(store)).toHaveLength(0);
  worked(await changeCut(store, cut.id, { lower: inches('1.4805'), target: inches('1.481') }));
  expect(await state()).toBe('over');
  expect(job.id).toBe(cut.jobId);
});

test('a cut that is found again after it was scrapped is what it measures, and no other takes its place', async () => {
  const store = await openForTest();
  const { cut, job } = await withCut(store);
  worked(await logPass(store, cut.id, { measured: inches('1.480') }));
  worked(await setCutState(store, cut.id, 'scrapped'));
  expect(worked(await setCutState(store, cut.id, 'to-cut')).state).toBe('to-size');
  worked(await replaceCuts(store, [cut.id], [facing(job.id, { name: 'another' })]));
  expect((await cutsOf(store, job.id)).map(({ name }) => name)).toEqual([cut.name, 'another']);
});

test('an undo of a struck-out pass leaves the state to the pass that was measured since', async () => {
  let nowMs = 1_700_000_000_000;
  const store = await openForTest({ now: () => (nowMs += 1000) });
  const { cut } = await withCut(store);
  worked(await logPass(store, cut.id, { measured: inches('1.500') }));
  const over = worked(await logPass(store, cut.id, { measured: inches('1.470') }));
  worked(await strikeOutPass(store, cut.id, passesOf(over)[1]?.[0] ?? '', 'chip'));
  worked(await logPass(store, cut.id, { measured: inches('1.490'), asked: inches('.010') }));
  await undoNewest(store);
  expect((await getCut(store, cut.id))?.state).toBe('cutting');
});

async function cutSince(store: Store, cutId: string) {
  const cut = await getCut(store, cutId);
  const since = cut && (await dialledSince(cut, (key) => getDraft(store, key)));
  return since?.map((take) => show(take, 'in'));
}

test('a struck-out pass was cut all the same: the dial has what was asked before it, and since it', async () => {
  const store = await openForTest();
  const { cut } = await withCut(store, { blank: inches('1.520') });
  const logged = worked(await logPass(store, cut.id, { measured: inches('1.505'), asked: inches('.010') }));
  const [passId] = Object.keys(logged.passes);
  const more = { typed: dialledText([inches('.004').exact]), unit: 'mm' } as const;
  worked(await putDraft(store, dialledKey(cut.id, passId), more));
  const struck = worked(await strikeOutPass(store, cut.id, passId ?? '', 'measured wrong'));
  expect(struck.state).toBe('cutting');
  expect(await cutSince(store, cut.id)).toEqual(['.010 in', '.004 in']);
  // One more pass, and then it was measured right after all.
  const all = ['.010', '.004', '.006'].map((take) => inches(take).exact);
  worked(await putDraft(store, dialledKey(cut.id, undefined), { typed: dialledText(all), unit: 'mm' }));
  await undoNewest(store);
  expect(await cutSince(store, cut.id)).toEqual(['.004 in', '.006 in']);
  // Struck out once more it is counted once all the same.
  worked(await strikeOutPass(store, cut.id, passId ?? '', 'measured wrong'));
  expect(await cutSince(store, cut.id)).toEqual(['.010 in', '.004 in', '.006 in']);
});

test('what is cut after two sizes were struck out is there when both count again', async () => {
  const store = await openForTest();
  const { cut } = await withCut(store);
  worked(await logPass(store, cut.id, { measured: inches('1.520') }));
  for (const measured of ['1.510', '1.500'])
    // oxlint-disable-next-line no-await-in-loop
    worked(await logPass(store, cut.id, { measured: inches(measured), asked: inches('.010') }));
  const passes = passesOf((await getCut(store, cut.id)) ?? cut);
  const [first, second, third] = passes.map(([id]) => id);
  worked(await strikeOutPass(store, cut.id, third ?? '', 'measured wrong'));
  worked(await strikeOutPass(store, cut.id, second ?? '', 'measured wrong'));
  const all = ['.010', '.010', '.005'].map((take) => inches(take).exact);
  worked(await putDraft(store, dialledKey(cut.id, first), { typed: dialledText(all), unit: 'mm' }));
  await undoNewest(store);
  expect(await cutSince(store, cut.id)).toEqual(['.010 in', '.005 in']);
  await undoNewest(store);
  expect(await cutSince(store, cut.id)).toEqual(['.005 in']);
});

type Said = Parameters<typeof setCutState>[2];

const states: readonly [CutState, boolean, ((store: Store, cutId: string) => Promise<unknown>)?][] = [
  ['to-cut', true],
  ['cutting', true, said('cutting')],
  ['over', true, measured('1.470')], // not cured yet
  ['to-size', false, measured('1.480')],
  ['scrapped', false, said('scrapped')],
  ['made-again', false, said('made-again')],
];

function said(state: Said) {
  return async (store: Store, cutId: string) => worked(await setCutState(store, cutId, state));
}

function measured(size: string) {
  return async (store: Store, cutId: string) =>
    worked(await logPass(store, cutId, { measured: inches(size) }));
}

test.each(states)(
  'a cut that is %s is on the list of all there is to cut: %s',
  async (state, listed, how) => {
    const store = await openForTest();
    const { cut, job } = await withCut(store);
    await how?.(store, cut.id);
    expect((await getCut(store, cut.id))?.state).toBe(state);
    const open = await openCuts(store);
    expect(open.map((one) => [one.cut.id, one.job])).toEqual(
      listed ? [[cut.id, { id: job.id, name: 'Outfit' }]] : [],
    );
    // The list comes from an index that holds nothing else, however many cuts were ever made.
    expect(await store.db.countFromIndex('cuts', 'openAt')).toBe(listed ? 1 : 0);
    expect(await hasOpenWork(store, 'cuts')).toBe(listed);
  },
);

test('what there is to cut leaves out removed cuts and closed or removed jobs, and undo puts them back', async () => {
  const store = await openForTest();
  const { cut, job } = await withCut(store);
  worked(await removeCut(store, cut.id));
  expect(await openCuts(store)).toEqual([]);
  await undoNewest(store);
  expect(await openCuts(store)).toHaveLength(1);
  worked(await changeJob(store, job.id, { state: 'closed' }));
  expect(await openCuts(store)).toEqual([]);
  worked(await changeJob(store, job.id, { state: 'open' }));
  worked(await removeJob(store, job.id));
  expect(await openCuts(store)).toEqual([]);
  await undoNewest(store);
  expect(await openCuts(store)).toHaveLength(1);
});

test('a cut made again is a new one to cut, of a new blank, and a spoilt one in the same job is marked', async () => {
  const store = await openForTest();
  const { cut, job } = await withCut(store, { blank: inches('1.520') });
  worked(await logPass(store, cut.id, { measured: inches('1.470') }));
  const [again] = worked(await makeAgain(store, [cut.id], job.id));
  expect(again).toMatchObject({ state: 'to-cut', passes: {}, copyOf: cut.id, name: cut.name });
  expect(again?.blank).toBeUndefined();
  expect((await getCut(store, cut.id))?.state).toBe('made-again');
  expect(await undoNewest(store)).toBe('Make again: Spacer, face to length');
  expect((await cutsOf(store, job.id)).map(({ state }) => state)).toEqual(['over']);
});

test('a part’s cuts made again in another job leave that job’s parts and the first job’s cut alone', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const part = worked(await createPart(store, { jobId: job.id, name: 'Spacer', origin: 'made' }));
  const basis = { readings: [], worksheet: '' };
  const [cut] = worked(await createCuts(store, [facing(job.id, { partId: part.id, basis })]));
  worked(await setCutState(store, cut?.id ?? '', 'scrapped'));
  const next = worked(await createJob(store, { name: 'Trailer', systems: [] }));
  const [copy] = worked(await makeAgain(store, [cut?.id ?? ''], next.id));
  expect(copy).toMatchObject({ jobId: next.id, copyOf: cut?.id, part: 'Spacer' });
  expect(copy).not.toHaveProperty('partId');
  expect(copy).not.toHaveProperty('basis');
  expect((await getCut(store, cut?.id ?? ''))?.state).toBe('scrapped');
});

test('a cut changed later takes a field out again where there may be none', async () => {
  const store = await openForTest({ now: tickingClock() });
  const { cut } = await withCut(store, { drill: 'letter Q' });
  const after = worked(await changeCut(store, cut.id, { drill: undefined, machine: 'mill' }));
  expect(after.machine).toBe('mill');
  expect(await getCut(store, cut.id)).not.toHaveProperty('drill');
  expect(await undoNewest(store)).toBe('Changed Spacer, face to length');
  expect(await getCut(store, cut.id)).toMatchObject({ drill: 'letter Q', machine: 'lathe' });
});
