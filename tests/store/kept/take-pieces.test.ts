import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { cutsOf, createCuts, type NewCut } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { addPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { TypedSize } from '../../../src/store/base/records.ts';
import { replaceCuts } from '../../../src/store/kept/replace-cuts.ts';
import { takePieces } from '../../../src/store/kept/take-pieces.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

function typed(text: string): TypedSize {
  const entry = readEntry(text, { unit: 'in' });
  if (!entry.ok) throw new Error(entry.refusal.code);
  return { from: 'typed', ...entry.value };
}

async function undo(store: Store, jobId: string): Promise<string> {
  const last = await latestUndo(store, jobId);
  return last ? worked(await undoLast(store, last.id)) : 'nothing to undo';
}

const counts = async (store: Store) => (await drawerPieces(store)).map(({ count }) => count);

test('a washer taken for a ring leaves the drawer and is the one in hand; one undo puts it back', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const ring = worked(await createWorksheet(store, { jobId: job.id, kind: 'ring', title: 'Shield' }));
  const washer = { kind: 'washer', name: 'Washer', material: '', outside: typed('1.625') } as const;
  const piece = worked(await addPiece(store, washer, 3));
  worked(
    await takePieces(store, ring.id, [{ pieceId: piece.id, count: 1 }], { blankOutside: washer.outside }),
  );
  expect(await counts(store)).toEqual([2]);
  expect((await getWorksheet(store, ring.id))?.sizes['blankOutside']).toMatchObject({ typed: '1.625' });
  expect(await undo(store, job.id)).toBe('Changed Shield: Washer taken from the drawer');
  expect(await counts(store)).toEqual([3]);
  expect((await getWorksheet(store, ring.id))?.sizes).toEqual({});
});

function cut(jobId: string, name: string): NewCut {
  const { from: _typed, ...size } = typed('.5');
  return {
    jobId,
    name,
    part: 'spacer',
    operation: 'face',
    of: 'length',
    target: size,
    lower: size,
    upper: size,
    limitsFrom: 'own',
    cuttingTool: 'hss',
    machine: 'lathe',
  };
}

test('cuts that nobody has begun are replaced in one act, and one undo brings them back', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const names = async () => (await cutsOf(store, job.id)).map(({ name }) => name);
  const old = worked(await createCuts(store, [cut(job.id, 'old a'), cut(job.id, 'old b')]));
  worked(
    await replaceCuts(
      store,
      old.map(({ id }) => id),
      [cut(job.id, 'new a'), cut(job.id, 'new b')],
    ),
  );
  expect(await names()).toEqual(['new a', 'new b']);
  expect(await undo(store, job.id)).toBe('Replaced 2 cuts');
  expect(await names()).toEqual(['old a', 'old b']);
});

test('a cut that was begun meanwhile stays beside what replaces the others', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const [old] = worked(await createCuts(store, [cut(job.id, 'begun')]));
  if (!old) throw new Error('no cut');
  const { from: _typed, ...size } = typed('.6');
  worked(await logPass(store, old.id, { measured: size }));
  worked(await replaceCuts(store, [old.id], [cut(job.id, 'new')]));
  expect((await cutsOf(store, job.id)).map(({ name }) => name)).toEqual(['begun', 'new']);
});
