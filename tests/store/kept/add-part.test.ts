import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { addPart, partsAreIn } from '../../../src/store/kept/add-part.ts';
import { getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { StackPartInput, TypedSize } from '../../../src/store/base/records.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet, setPart } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

function typed(text: string): TypedSize {
  const entry = readEntry(text, { unit: 'in' });
  if (!entry.ok) throw new Error(entry.refusal.code);
  return { from: 'typed', ...entry.value };
}

const part = (name: string, size: string) => ({ name, count: 1, adjustable: false, size: typed(size) });

async function emptyStack(store: Store, parts: Readonly<Record<string, StackPartInput>> = {}) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  return worked(await createWorksheet(store, { jobId: job.id, kind: 'spacer-stack', title: 'Pivot', parts }));
}

async function kept(store: Store, id: string) {
  const worksheet = await getWorksheet(store, id);
  if (!worksheet) throw new Error('no worksheet');
  return {
    areIn: partsAreIn(worksheet),
    names: Object.values(worksheet.parts)
      .toSorted((a, b) => a.order - b.order)
      .map(({ name }) => name),
  };
}

test('parts stand in the order in which they were put in, and are not all in until that is said', async () => {
  const store = await openForTest();
  const { id } = await emptyStack(store);
  expect(await kept(store, id)).toEqual({ areIn: false, names: [] });
  worked(await addPart(store, { worksheetId: id, part: part('washer', '1/16') }));
  worked(await addPart(store, { worksheetId: id, part: part('bracket', '.500') }));
  expect(await kept(store, id)).toEqual({ areIn: false, names: ['washer', 'bracket'] });
  worked(await addPart(store, { worksheetId: id, part: part('spacer', '1.155'), isLast: true }));
  expect(await kept(store, id)).toEqual({ areIn: true, names: ['washer', 'bracket', 'spacer'] });
});

test('one undo takes the last part out again, and the stack is open as it was before', async () => {
  const store = await openForTest();
  const { id, jobId } = await emptyStack(store);
  worked(await addPart(store, { worksheetId: id, part: part('washer', '1/16') }));
  worked(await addPart(store, { worksheetId: id, part: part('spacer', '1.155'), isLast: true }));
  const last = await latestUndo(store, jobId);
  expect(last?.label).toBe('Changed Pivot: spacer put in');
  worked(await undoLast(store, last?.id ?? ''));
  expect(await kept(store, id)).toEqual({ areIn: false, names: ['washer'] });
});

test('a stack whose parts were all in stays so with one part more', async () => {
  const store = await openForTest();
  const { id } = await emptyStack(store);
  worked(await addPart(store, { worksheetId: id, part: part('spacer', '1.155'), isLast: true }));
  worked(await addPart(store, { worksheetId: id, part: part('shim', '.032') }));
  expect(await kept(store, id)).toEqual({ areIn: true, names: ['spacer', 'shim'] });
});

test('a stack that was filled before anybody asked whether that is all stands as it is', async () => {
  const store = await openForTest();
  const { id } = await emptyStack(store, { a: { ...part('spacer', '1.155'), order: 1 } });
  expect(await kept(store, id)).toEqual({ areIn: true, names: ['spacer'] });
  worked(await addPart(store, { worksheetId: id, part: part('shim', '.032') }));
  expect(await kept(store, id)).toEqual({ areIn: true, names: ['spacer', 'shim'] });
});

test('a stack that lost its last part is filled anew', async () => {
  const store = await openForTest();
  const { id } = await emptyStack(store, { a: { ...part('spacer', '1.155'), order: 1 } });
  worked(await setPart(store, id, 'a', undefined));
  worked(await addPart(store, { worksheetId: id, part: part('shim', '.032') }));
  expect(await kept(store, id)).toEqual({ areIn: false, names: ['shim'] });
});

test('what a part was typed in goes with it, in the same act', async () => {
  const store = await openForTest();
  const { id } = await emptyStack(store);
  const draftKeys = [`worksheet/${id}/parts`, `worksheet/${id}/parts/what`];
  for (const key of draftKeys) worked(await putDraft(store, key, { typed: '.03', unit: 'in' }));
  worked(await addPart(store, { worksheetId: id, part: part('shim', '.032'), draftKeys }));
  expect(await Promise.all(draftKeys.map(async (key) => getDraft(store, key)))).toEqual([
    undefined,
    undefined,
  ]);
});
