import { afterEach, expect, test } from 'vitest';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { previewBackup } from '../../../src/store/file/backup-preview.ts';
import { applyPreviewed } from '../../../src/store/file/backup-restore.ts';
import { openConflicts } from '../../../src/store/phones/conflicts-open.ts';
import { settleConflict } from '../../../src/store/phones/conflicts-settle.ts';
import { createFeature, changeFeature, featuresOf, removeFeature } from '../../../src/store/kept/features.ts';
import { changeJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { readingsOf, strikeOut } from '../../../src/store/kept/readings.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { addSteps, changeStep, getStep, markDone } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet, setSize } from '../../../src/store/kept/worksheets.ts';
import { inches } from '../cut-for-test.ts';
import { backupOf, carry, everythingIn, exchange, log, twoPhonesWithABore } from '../two-phones-for-test.ts';
import { closeAll, openForTest, refused, tickingClock, worked } from '../open-for-test.ts';
import { linesOf, sealed } from '../sealed-backup.ts';

afterEach(closeAll);

const typed = (text: string) => ({ from: 'typed', ...inches(text) }) as const;

/** Two phones with one worksheet, and its aim typed differently on each. */
async function twoAims() {
  const phones = await twoPhonesWithABore();
  const { owner, helper, job } = phones;
  const sheet = worked(
    await createWorksheet(owner, { jobId: job.id, kind: 'spacer-stack', title: 'Brake side' }),
  );
  await exchange(owner, helper);
  worked(await setSize(owner, sheet.id, 'aim', typed('.010')));
  worked(await setSize(helper, sheet.id, 'aim', typed('.012')));
  return { ...phones, sheet };
}

async function aimOn(phone: Store, id: string): Promise<string | undefined> {
  const aim = (await getWorksheet(phone, id))?.sizes['aim'];
  return aim?.from === 'typed' ? aim.typed : undefined;
}

async function asked(phone: Store) {
  return (await openConflicts(phone)).map(({ fields, now, lost }) => ({
    paths: fields.map(({ path }) => path),
    now: now.phone,
    lost: lost.phone,
  }));
}

async function settle(phone: Store, take: 'now' | 'lost') {
  const [first] = await openConflicts(phone);
  return settleConflict(phone, { id: first?.conflict.id ?? '', take, label: 'Took it' });
}

test('one size typed differently on two phones is asked about, with both values', async () => {
  const { owner, helper, sheet } = await twoAims();
  worked(await putSetting(helper, 'fitter', 'R. Tiller'));
  await carry(helper, owner);
  const [conflict] = await openConflicts(owner);
  expect(conflict).toMatchObject({
    conflict: { of: { store: 'worksheets', id: sheet.id } },
    fields: [{ path: 'sizes.aim', now: { typed: '.012' }, lost: { typed: '.010' } }], // the helper's clock is ahead
    now: { phone: 'other', fitter: 'R. Tiller' },
    lost: { phone: 'this' },
  });
  expect(await openConflicts(owner)).toHaveLength(1);
});

test('the preview says how many things will be asked about, also where the own value stays', async () => {
  const { owner, helper } = await twoAims();
  const ahead = worked(await previewBackup(owner, await backupOf(helper)));
  expect([ahead.apart, ahead.jobs.map(({ apart }) => apart)]).toEqual([1, [1]]);
  // On the helper's phone its own, later value stays: nothing would change, and it is asked all the same.
  const other = worked(await previewBackup(helper, await backupOf(owner)));
  expect([other.apart, other.total]).toEqual([1, expect.objectContaining({ added: 0, changed: 0 })]);
  worked(await applyPreviewed(helper));
  expect(await openConflicts(helper)).toHaveLength(1);
  expect(worked(await previewBackup(helper, await backupOf(owner))).apart).toBe(0);
});

test('it is asked on the phone that put the two together, not on the other as well', async () => {
  const { owner, helper } = await twoAims();
  await exchange(helper, owner);
  expect([await asked(owner), await asked(helper)]).toEqual([
    [{ paths: ['sizes.aim'], now: 'other', lost: 'this' }],
    [],
  ]);
});

test('a change made with the other’s in view is none', async () => {
  const { owner, helper, sheet } = await twoAims();
  await exchange(helper, owner);
  worked(await settle(owner, 'lost'));
  await exchange(owner, helper);
  worked(await setSize(helper, sheet.id, 'aim', typed('.015')));
  await exchange(owner, helper);
  expect([await asked(owner), await asked(helper)]).toEqual([[], []]);
  expect(await aimOn(owner, sheet.id)).toBe('.015');
});

test('two fields of one record are none, and two phones that typed the same neither', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  worked(await changeJob(owner, job.id, { name: 'Outfit 7', what: 'same words' }));
  worked(await changeJob(helper, job.id, { customerNote: 'in a hurry', what: 'same words' }));
  await exchange(owner, helper);
  expect([await asked(owner), await asked(helper)]).toEqual([[], []]);
});

test('a size set on one phone and taken out on the other is asked about', async () => {
  const { owner, helper, sheet } = await twoAims();
  await exchange(owner, helper);
  worked(await settle(helper, 'now'));
  await exchange(owner, helper);
  worked(await setSize(owner, sheet.id, 'aim', undefined));
  worked(await setSize(helper, sheet.id, 'aim', typed('.014')));
  await carry(owner, helper);
  const [conflict] = await openConflicts(helper);
  expect(conflict?.fields.map(({ now, lost }) => [now, lost])).toMatchObject([
    expect.arrayContaining([undefined]),
  ]);
});

test.each([
  ['now', '.012'],
  ['lost', '.010'],
] as const)(
  'the value that is chosen (%s) stands on both phones, and nobody is asked again',
  async (take, aim) => {
    const { owner, helper, sheet } = await twoAims();
    await carry(helper, owner);
    worked(await settle(owner, take));
    expect(await openConflicts(owner)).toEqual([]);
    await exchange(owner, helper);
    await exchange(helper, owner);
    for (const phone of [owner, helper]) {
      expect(await aimOn(phone, sheet.id)).toBe(aim);
      expect(await openConflicts(phone)).toEqual([]);
    }
    expect(await everythingIn(owner)).toBe(await everythingIn(helper));
  },
);

test('a choice can be undone, and is asked about again', async () => {
  const { owner, helper, job, sheet } = await twoAims();
  await carry(helper, owner);
  worked(await settle(owner, 'lost'));
  const newest = await latestUndo(owner, job.id);
  expect(worked(await undoLast(owner, newest?.id ?? ''))).toBe('Took it');
  expect(await aimOn(owner, sheet.id)).toBe('.012');
  expect(await openConflicts(owner)).toHaveLength(1);
});

test('a third phone that met both asks too, until it hears how it was settled', async () => {
  const { owner, helper, sheet } = await twoAims();
  const third = await openForTest({ now: tickingClock(1_700_000_900_000) });
  await carry(owner, third);
  await carry(helper, third);
  expect(await openConflicts(third)).toHaveLength(1);
  await carry(helper, owner);
  worked(await settle(owner, 'lost'));
  await carry(owner, third);
  expect(await openConflicts(third)).toEqual([]);
  expect(await aimOn(third, sheet.id)).toBe('.010');
});

test('a third phone that built on one of the two does not hide the other', async () => {
  const { owner, helper, sheet } = await twoAims();
  await carry(helper, owner);
  const third = await openForTest({ now: tickingClock(1_700_000_900_000) });
  await carry(helper, third);
  worked(await setSize(third, sheet.id, 'aim', typed('.020')));
  await carry(third, owner);
  expect(await asked(owner)).toEqual([{ paths: ['sizes.aim'], now: 'other', lost: 'this' }]);
  expect(await aimOn(owner, sheet.id)).toBe('.020');
});

test('whoever lost out and types it again is asked about once, with what he typed last', async () => {
  const { owner, helper, sheet } = await twoAims();
  await carry(helper, owner); // the owner's .010 lost
  await carry(helper, owner);
  worked(await setSize(owner, sheet.id, 'aim', typed('.011')));
  expect(await openConflicts(owner)).toEqual([]); // he has the helper's in view and typed his own
});

test('a reading struck out on both phones for different reasons is struck out, and nobody is asked', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  const reading = worked(await log(owner, bore.id, job.id, '.4487'));
  await exchange(owner, helper);
  worked(await strikeOut(owner, reading.id, 'chip under the anvil'));
  worked(await strikeOut(helper, reading.id, 'wrong bore'));
  await exchange(owner, helper);
  expect([await asked(owner), await asked(helper)]).toEqual([[], []]);
  expect((await readingsOf(owner, bore.id))[0]?.struckOut).toBeDefined();
});

test('a name changed on one phone in what the other removed is not asked about, and is when it comes back', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await changeFeature(owner, bore.id, { name: 'right bore' }));
  worked(await changeFeature(helper, bore.id, { name: 'lower bore' }));
  worked(await removeFeature(helper, bore.id));
  await carry(owner, helper);
  expect(await openConflicts(helper)).toEqual([]);
  const newest = await latestUndo(helper, job.id);
  worked(await undoLast(helper, newest?.id ?? ''));
  expect((await openConflicts(helper)).map(({ fields }) => fields)).toEqual([
    [{ path: 'name', now: 'lower bore', lost: 'right bore' }],
  ]);
  expect(await featuresOf(helper, job.id)).toHaveLength(1);
});

test('what a file brought takes its questions with it, and brings them again', async () => {
  const { owner, helper, sheet } = await twoAims();
  await carry(helper, owner);
  const newest = await latestUndo(owner);
  worked(await undoLast(owner, newest?.id ?? ''));
  expect(await openConflicts(owner)).toEqual([]);
  expect(await aimOn(owner, sheet.id)).toBe('.010');
  worked(await setSize(owner, sheet.id, 'aim', typed('.011')));
  await carry(helper, owner);
  expect(await openConflicts(owner)).toHaveLength(1);
});

test('a job handed over tells nothing of what was seen in other jobs', async () => {
  const { owner, helper, job, sheet } = await twoAims();
  const { backupLines } = await import('../../../src/store/file/backup.ts');
  const { createJob } = await import('../../../src/store/kept/jobs.ts');
  const second = worked(await createJob(owner, { name: 'Trailer', systems: [] }));
  const pin = worked(await createFeature(owner, { jobId: second.id, kind: 'pin', name: 'pin' }));
  await carry(owner, helper);
  worked(await changeFeature(helper, pin.id, { name: 'pin, left' }));
  const lines: string[] = [];
  for await (const line of backupLines(helper, job.id)) lines.push(line);
  worked(await restoreBackup(owner, lines.join('')));
  worked(await settle(helper, 'now'));
  worked(await changeFeature(owner, pin.id, { name: 'pin, right' }));
  await carry(helper, owner);
  expect((await openConflicts(owner)).map(({ conflict }) => conflict.of.id)).toContain(pin.id);
  expect(await getJob(owner, job.id)).toBeDefined();
  expect(sheet.id).not.toBe(pin.id);
});

test('a file from before phones wrote down what they had seen is judged by its own stamps', async () => {
  const { owner, helper, sheet } = await twoAims();
  const text = await fileWithoutSeen(helper);
  worked(await restoreBackup(owner, text));
  expect(await openConflicts(owner)).toHaveLength(1);
  // The owner's file is older than its answer: nothing in it is news to the helper, who has the owner's stamp by now.
  worked(await settle(owner, 'now'));
  await carry(owner, helper);
  worked(await setSize(helper, sheet.id, 'aim', typed('.030')));
  worked(await restoreBackup(owner, await fileWithoutSeen(helper)));
  expect(await openConflicts(owner)).toEqual([]);
});

test('a question that was settled meanwhile can’t be settled again for something that is gone', async () => {
  const { owner, helper, sheet } = await twoAims();
  await carry(helper, owner);
  const [conflict] = await openConflicts(owner);
  const { removeWorksheet } = await import('../../../src/store/kept/worksheets.ts');
  worked(await removeWorksheet(owner, sheet.id));
  const settled = await settleConflict(owner, {
    id: conflict?.conflict.id ?? '',
    take: 'lost',
    label: 'Took it',
  });
  expect(refused(settled)).toEqual({ code: 'gone', store: 'worksheets' });
});

async function fileWithoutSeen(phone: Store): Promise<string> {
  const [header = {}, ...rest] = await linesOf(phone);
  const { seen: _seen, ...others } = header;
  return sealed([others, ...rest]);
}

test('a step that was done with the one torque is to be done again when the other is taken', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const [step] = worked(await addSteps(owner, [{ jobId: job.id, text: 'nut' }]));
  const id = step?.id ?? '';
  await exchange(owner, helper);
  worked(await changeStep(owner, id, { torque: { typed: '52', unit: 'Nm', source: 'manual' } }));
  worked(await changeStep(helper, id, { torque: { typed: '25', unit: 'Nm', source: 'manual' } }));
  await carry(helper, owner);
  worked(await markDone(owner, id, 'R. Tiller'));
  expect(await getStep(owner, id)).toMatchObject({ torque: { typed: '25' }, done: { by: 'R. Tiller' } });
  worked(await settle(owner, 'lost'));
  const settled = await getStep(owner, id);
  expect(settled).toMatchObject({ torque: { typed: '52' }, wasDone: { by: 'R. Tiller' } });
  expect(settled).not.toHaveProperty('done');
  const newest = await latestUndo(owner);
  worked(await undoLast(owner, newest?.id ?? ''));
  expect(await getStep(owner, id)).toMatchObject({ torque: { typed: '25' }, done: { by: 'R. Tiller' } });
});
