import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { mean } from '../../../src/engine/reading/estimate.ts';
import { stackQuestion } from '../../../src/engine/worksheets/spacer-stack/question.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import {
  missingWords,
  readBefore,
  type WorksheetData,
} from '../../../src/screens/worksheets/worksheet-data.ts';
import type { StackPartInput } from '../../../src/store/base/records.ts';
import { createFeature, featuresOf } from '../../../src/store/kept/features.ts';
import { giveCutSize } from '../../../src/store/kept/give-cut-size.ts';
import { getJob } from '../../../src/store/kept/jobs.ts';
import { readingsOfJob } from '../../../src/store/kept/readings.ts';
import { createWorksheet, getWorksheet, setPart, setSize } from '../../../src/store/kept/worksheets.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, worked } from '../../store/open-for-test.ts';
import { everythingIn, exchange, log, twoPhonesWithABore } from '../../store/two-phones-for-test.ts';
import { is } from './worksheet-for-test.ts';

/** A gap read on one phone of parts that the other phone has changed, before either has seen the other's file. */

afterEach(closeAll);

const typed = (text: string) => ({ from: 'typed', ...worked(readEntry(text, { unit: 'in' })) }) as const;
const washer: StackPartInput = { name: 'washer', order: 1, count: 1, adjustable: true, size: typed('.062') };
const thicker = { ...washer, size: typed('.063') };
const spacer: StackPartInput = { ...washer, name: 'spacer', order: 2, size: typed('.900') };

async function stackOnTwoPhones() {
  const { owner, helper, job } = await twoPhonesWithABore();
  const gap = worked(await createFeature(owner, { jobId: job.id, kind: 'gap', name: 'gap' }));
  const { id } = worked(
    await createWorksheet(owner, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes: { fixed: typed('.970'), direct: { from: 'feature', featureId: gap.id } },
      parts: { a: washer, b: spacer },
    }),
  );
  await exchange(owner, helper);
  const read = async (phone: Store, size: string) => worked(await log(phone, gap.id, job.id, size));
  return { owner, helper, jobId: job.id, id, read };
}

async function dataOf(phone: Store, jobId: string, id: string): Promise<WorksheetData> {
  const [job, worksheet] = await Promise.all([getJob(phone, jobId), getWorksheet(phone, id)]);
  if (!job || !worksheet) throw new Error('not there');
  const [features, readings] = await Promise.all([featuresOf(phone, jobId), readingsOfJob(phone, jobId)]);
  const graduation = worked(readEntry('.001', { unit: 'in' }));
  const dial = { graduation, reads: 'diameter' } as const;
  return { job, worksheet, features, readings, tools: [], drawer: [], unit: 'in', dial };
}

async function gapOn(phone: Store, jobId: string, id: string) {
  const data = await dataOf(phone, jobId, id);
  const direct = stackQuestion(givenOf(data))?.direct;
  return { gap: direct && mean(direct), why: missingWords(data, data.worksheet.sizes['direct']), data };
}

test('a gap that the helper read after a change he had not seen is set aside on both phones, with what was changed', async () => {
  const { owner, helper, jobId, id, read } = await stackOnTwoPhones();
  worked(await setPart(owner, id, 'a', thicker));
  await read(helper, '.008');
  expect((await gapOn(helper, jobId, id)).gap).toBeDefined();
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    const { gap, why } = await gapOn(phone, jobId, id);
    expect(gap).toBeUndefined();
    expect(why).toBe('read before this: washer of another size');
  }
  expect(await everythingIn(helper)).toBe(await everythingIn(owner));
});

test('also where he had changed another part himself, later by his clock, and read the gap of that', async () => {
  const { owner, helper, jobId, id, read } = await stackOnTwoPhones();
  worked(await setPart(owner, id, 'a', thicker));
  worked(await setPart(helper, id, 'b', { ...spacer, size: typed('.901') }));
  await read(helper, '.007');
  await exchange(owner, helper);
  for (const phone of [owner, helper]) expect((await gapOn(phone, jobId, id)).gap).toBeUndefined();
});

test('also where it was typed, of the worksheet of the kind hole and pin its slop', async () => {
  const { owner, helper, jobId, id } = await stackOnTwoPhones();
  worked(await setPart(owner, id, 'a', thicker));
  worked(await setSize(helper, id, 'direct', typed('.008')));
  const sizes = { bore: typed('.4380'), pin: typed('.4375') };
  const pinned = worked(await createWorksheet(owner, { jobId, kind: 'hole-and-pin', title: 'Pivot', sizes }));
  await exchange(owner, helper);
  worked(await setSize(owner, pinned.id, 'pin', typed('.4340')));
  worked(await setSize(helper, pinned.id, 'slop', typed('.0005')));
  expect(givenOf(await dataOf(helper, jobId, pinned.id)).size('slop')).toBeDefined();
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    expect((await gapOn(phone, jobId, id)).gap).toBeUndefined();
    expect(givenOf(await dataOf(phone, jobId, pinned.id)).size('slop')).toBeUndefined();
  }
});

test('a cut that the gap had asked for, unseen when it was read again: it is to be read again, and no sum stands in', async () => {
  const { owner, helper, jobId, id, read } = await stackOnTwoPhones();
  await read(owner, '.003');
  await exchange(owner, helper);
  const basis = { readings: [], worksheet: '' };
  const cut = { worksheetId: id, place: { partId: 'a' }, size: typed('.057'), cutIds: [], basis };
  worked(await giveCutSize(owner, cut));
  await read(helper, '.008');
  await exchange(owner, helper);
  const { gap, data } = await gapOn(helper, jobId, id);
  expect(gap).toBeUndefined();
  expect(readBefore(data, 'direct')).toEqual({ why: 'washer of another size', byItsAnswer: true });
});

test('a gap read once the change was seen counts', async () => {
  const { owner, helper, jobId, id, read } = await stackOnTwoPhones();
  worked(await setPart(owner, id, 'a', thicker));
  await exchange(owner, helper);
  await read(helper, '.007');
  await exchange(owner, helper);
  for (const phone of [owner, helper]) expect(is((await gapOn(phone, jobId, id)).gap, '.007 in')).toBe(true);
});

test('a change that says nothing of a part sets nothing aside: its name, and the bore given for the first time', async () => {
  const { owner, helper, jobId, id, read } = await stackOnTwoPhones();
  worked(await setPart(owner, id, 'a', { ...washer, name: 'thin washer', adjustable: false }));
  await read(helper, '.008');
  const pinned = worked(
    await createWorksheet(owner, { jobId, kind: 'fit', title: 'Fit', sizes: { pin: typed('.4375') } }),
  );
  await exchange(owner, helper);
  worked(await setSize(helper, pinned.id, 'slop', typed('.0005')));
  worked(await setSize(owner, pinned.id, 'bore', typed('.4380')));
  await exchange(owner, helper);
  expect(is((await gapOn(owner, jobId, id)).gap, '.008 in')).toBe(true);
  expect(givenOf(await dataOf(owner, jobId, pinned.id)).size('slop')).toBeDefined();
});

test('on one phone a gap of parts that were put in and taken back by undo is set aside', async () => {
  const { owner, jobId, id, read } = await stackOnTwoPhones();
  worked(await setPart(owner, id, 'a', thicker));
  const change = await latestUndo(owner, jobId);
  await read(owner, '.007');
  worked(await undoLast(owner, change?.id ?? ''));
  expect((await gapOn(owner, jobId, id)).gap).toBeUndefined();
});
