import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { createFeature, removeFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import {
  createWorksheet,
  getWorksheet,
  removeWorksheet,
  renameWorksheet,
  setChoice,
  setPart,
  setSize,
  worksheetsOf,
  worksheetsUsing,
} from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

const typed = (text: string) => ({ from: 'typed', ...worked(readEntry(text, { unit: 'in' })) }) as const;

async function stackIn(store: Store) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const sleeve = worked(await createFeature(store, { jobId: job.id, kind: 'length', name: 'sleeve' }));
  const stack = worked(
    await createWorksheet(store, { jobId: job.id, kind: 'spacer-stack', title: 'Left side' }),
  );
  return { job, sleeve, stack };
}

test('sizes, choices and parts of a worksheet are kept one by one and taken out one by one', async () => {
  const store = await openForTest();
  const { stack, sleeve } = await stackIn(store);
  worked(await setSize(store, stack.id, 'fixed', { from: 'feature', featureId: sleeve.id }));
  worked(await setSize(store, stack.id, 'aim', typed('.010')));
  worked(await setChoice(store, stack.id, 'want', 'float'));
  worked(await setChoice(store, stack.id, 'cutPart', 'a'));
  const part = { name: 'spacer', order: 1, count: 2, adjustable: true, size: typed('1-1/2') };
  worked(await setPart(store, stack.id, 'a', part));
  worked(await setSize(store, stack.id, 'aim', undefined));
  worked(await setChoice(store, stack.id, 'cutPart', undefined));
  const kept = await getWorksheet(store, stack.id);
  expect(kept?.sizes).toEqual({ fixed: { from: 'feature', featureId: sleeve.id } });
  expect(kept?.choices).toEqual({ want: 'float' });
  expect(kept?.parts['a']).toMatchObject({ name: 'spacer', count: 2, size: { typed: '1-1/2' } });
  worked(await setPart(store, stack.id, 'a', undefined));
  expect((await getWorksheet(store, stack.id))?.parts).toEqual({});
});

test('a size typed with a tool keeps the error limit that was in force', async () => {
  const store = await openForTest();
  const { stack } = await stackIn(store);
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  worked(await setSize(store, stack.id, 'aim', { ...typed('.010'), tool }));
  const kept = (await getWorksheet(store, stack.id))?.sizes['aim'];
  const mpe = kept?.from === 'typed' ? kept.tool?.mpe : undefined;
  expect(mpe && sameLength(mpe, lengthOf('.001 in'))).toBe(true);
});

test('setting a size clears the draft it was typed in', async () => {
  const store = await openForTest();
  const { stack } = await stackIn(store);
  worked(await putDraft(store, '#/aim', { typed: '.01', unit: 'in' }));
  worked(await setSize(store, stack.id, 'aim', typed('.010'), '#/aim'));
  expect(await getDraft(store, '#/aim')).toBeUndefined();
});

test('the worksheets a feature goes into are found, as a size and inside a part', async () => {
  const store = await openForTest();
  const { job, sleeve, stack } = await stackIn(store);
  const from = { from: 'feature', featureId: sleeve.id } as const;
  worked(
    await createWorksheet(store, { jobId: job.id, kind: 'hole-and-pin', title: 'A', sizes: { bore: from } }),
  );
  worked(await createWorksheet(store, { jobId: job.id, kind: 'hole-and-pin', title: 'B' }));
  worked(
    await setPart(store, stack.id, 'p', {
      name: 'x',
      order: 1,
      count: 1,
      adjustable: false,
      leastLength: from,
    }),
  );
  const using = await worksheetsUsing(store, job.id, sleeve.id);
  expect(using.map(({ title }) => title)).toEqual(['Left side', 'A']);
});

test('a worksheet keeps its size from a feature that was removed, and takes none from one that never was', async () => {
  const store = await openForTest();
  const { sleeve, stack } = await stackIn(store);
  worked(await setSize(store, stack.id, 'fixed', { from: 'feature', featureId: sleeve.id }));
  worked(await removeFeature(store, sleeve.id));
  worked(await setChoice(store, stack.id, 'want', 'float'));
  const result = await setSize(store, stack.id, 'aim', { from: 'feature', featureId: 'never' });
  expect(refused(result)).toEqual({ code: 'gone', store: 'features' });
});

test('a worksheet of a kind this Slipfit doesn’t know is listed with its kind', async () => {
  const store = await openForTest();
  const { job } = await stackIn(store);
  worked(await createWorksheet(store, { jobId: job.id, kind: 'chain-line', title: 'newer' }));
  expect((await worksheetsOf(store, job.id)).map(({ kind }) => kind)).toEqual(['spacer-stack', 'chain-line']);
});

test('a removed worksheet is gone, and a renamed one has its new name', async () => {
  const store = await openForTest();
  const { job, stack } = await stackIn(store);
  worked(await renameWorksheet(store, stack.id, 'Right side'));
  expect((await worksheetsOf(store, job.id)).map(({ title }) => title)).toEqual(['Right side']);
  worked(await removeWorksheet(store, stack.id));
  expect(await getWorksheet(store, stack.id)).toBeUndefined();
  expect(refused(await setChoice(store, stack.id, 'want', 'float'))).toEqual({
    code: 'gone',
    store: 'worksheets',
  });
});

test.each(['__proto__', 'constructor', 'prototype'])('a size can’t be called %s', async (name) => {
  const store = await openForTest();
  const { stack } = await stackIn(store);
  await setSize(store, stack.id, name, typed('.010'));
  expect((await getWorksheet(store, stack.id))?.sizes).toEqual({});
});

test('a choice and the fields it answers besides are one act: one undo takes all of it back', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const made = worked(
    await createWorksheet(store, { jobId: job.id, kind: 'hole-and-pin', title: 'Link pivot' }),
  );
  const besides = { pin: typed('.4375'), joint: 'located' };
  const given = worked(await setChoice(store, made.id, 'thread', '7/16-20 UNF', besides));
  expect(given.choices).toEqual({ thread: '7/16-20 UNF', joint: 'located' });
  expect(given.sizes['pin']).toMatchObject({ typed: '.4375' });
  const newest = await latestUndo(store, job.id);
  worked(await undoLast(store, newest?.id ?? ''));
  expect(await getWorksheet(store, made.id)).toMatchObject({ choices: {}, sizes: {} });
});
