import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { addPiece, drawerPieces, removePiece } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { TypedSize } from '../../../src/store/base/records.ts';
import { takeShims } from '../../../src/store/kept/take-shims.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

function typed(text: string): TypedSize {
  const entry = readEntry(text, { unit: 'in' });
  if (!entry.ok) throw new Error(entry.refusal.code);
  return { from: 'typed', ...entry.value };
}

async function stackAndDrawer(store: Store) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Pivot',
      parts: { hub: { name: 'hub', order: 4, count: 1, adjustable: false, size: typed('.900') } },
    }),
  );
  const put = async (name: string, size: string, count: number) =>
    worked(await addPiece(store, { kind: 'shim', name, material: 'steel', thickness: typed(size) }, count));
  return { worksheet, ten: await put('Shim .010', '.010', 5), five: await put('Shim .005', '.005', 1) };
}

const counts = async (store: Store) => (await drawerPieces(store)).map(({ count }) => count);
const parts = async (store: Store, id: string) =>
  Object.values((await getWorksheet(store, id))?.parts ?? {})
    .toSorted((a, b) => a.order - b.order)
    .map(({ name, count }) => `${count} × ${name}`);

test('shims taken for a stack leave the drawer and stand behind the stack’s last part', async () => {
  const store = await openForTest();
  const { worksheet, ten, five } = await stackAndDrawer(store);
  worked(
    await takeShims(store, worksheet.id, [
      { pieceId: ten.id, count: 2 },
      { pieceId: five.id, count: 1 },
    ]),
  );
  // The drawer is listed by name: .005 before .010.
  expect(await counts(store)).toEqual([0, 3]);
  expect(await parts(store, worksheet.id)).toEqual(['1 × hub', '2 × Shim .010', '1 × Shim .005']);
});

test('one undo puts them back into the drawer and takes them out of the stack', async () => {
  const store = await openForTest();
  const { worksheet, ten } = await stackAndDrawer(store);
  worked(await takeShims(store, worksheet.id, [{ pieceId: ten.id, count: 2 }]));
  const last = await latestUndo(store, worksheet.jobId);
  expect(last?.label).toBe('Changed Pivot: shims taken from the drawer');
  worked(await undoLast(store, last?.id ?? ''));
  expect(await counts(store)).toEqual([1, 5]);
  expect(await parts(store, worksheet.id)).toEqual(['1 × hub']);
});

test('a shim that went out of the drawer meanwhile is not put into the stack, nor any other with it', async () => {
  const store = await openForTest();
  const { worksheet, ten, five } = await stackAndDrawer(store);
  worked(await removePiece(store, five.id));
  refused(
    await takeShims(store, worksheet.id, [
      { pieceId: ten.id, count: 2 },
      { pieceId: five.id, count: 1 },
    ]),
  );
  expect(await counts(store)).toEqual([5]);
  expect(await parts(store, worksheet.id)).toEqual(['1 × hub']);
});
