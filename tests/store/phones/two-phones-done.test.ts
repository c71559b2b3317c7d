import { afterEach, expect, test } from 'vitest';
import {
  changeCheck,
  createCheck,
  getCheck,
  lastTake,
  sayCheckSeen,
} from '../../../src/store/kept/checks.ts';
import { openConflicts } from '../../../src/store/phones/conflicts-open.ts';
import { settleConflict } from '../../../src/store/phones/conflicts-settle.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import {
  addRecheck,
  changeRecheck,
  markRechecked,
  openRechecks,
  rechecksOf,
} from '../../../src/store/kept/rechecks.ts';
import { addSteps, changeStep, getStep, markDone } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { carry, everythingIn, exchange, twoPhonesWithABore } from '../two-phones-for-test.ts';
import { closeAll, openForTest, tickingClock, worked } from '../open-for-test.ts';

afterEach(closeAll);

const nm = (typed: string, source = '') => ({ typed, unit: 'Nm', source }) as const;

async function withStep() {
  const phones = await twoPhonesWithABore();
  const { owner, helper, job } = phones;
  const [step] = worked(await addSteps(owner, [{ jobId: job.id, text: 'Axle nut', torque: nm('60') }]));
  await exchange(owner, helper);
  return { owner, helper, job, id: step?.id ?? '' };
}

async function withEyeCheck() {
  const phones = await twoPhonesWithABore();
  const { owner, helper, job } = phones;
  const check = worked(
    await createCheck(owner, {
      jobId: job.id,
      name: 'Hose',
      by: 'by-eye',
      limitsFrom: '',
      how: 'straight ahead',
    }),
  );
  await exchange(owner, helper);
  return { owner, helper, id: check.id };
}

async function saySeen(phone: Store, id: string, seen: 'holds' | 'fails'): Promise<void> {
  const check = await getCheck(phone, id);
  worked(await sayCheckSeen(phone, id, (check && lastTake(check)?.id) ?? '', seen, ''));
}

async function lastOf(phone: Store, id: string) {
  const check = await getCheck(phone, id);
  return check && lastTake(check);
}

async function undoNewest(phone: Store): Promise<string> {
  return worked(await undoLast(phone, (await latestUndo(phone))?.id ?? ''));
}

async function expectAlike(...phones: readonly Store[]): Promise<void> {
  const all = await Promise.all(phones.map(everythingIn));
  for (const one of all) expect(one).toBe(all[0]);
}

// Whoever is first: the helper's clock is ahead of the owner's.
test.each(['owner', 'helper'] as const)(
  'a step that the %s did before seeing its new words is to be done again, on both phones',
  async (name) => {
    const { owner, helper, id } = await withStep();
    const [doer, other] = name === 'owner' ? [owner, helper] : [helper, owner];
    worked(await markDone(doer, id, 'R. Tiller'));
    worked(await changeStep(other, id, { text: 'Axle nut, with locker', torque: nm('90') }));
    await exchange(owner, helper);
    for (const phone of [owner, helper]) {
      const step = await getStep(phone, id);
      expect(step).toMatchObject({ text: 'Axle nut, with locker', wasDone: { by: 'R. Tiller' } });
      expect(step).not.toHaveProperty('done');
      expect(await openConflicts(phone)).toEqual([]);
    }
    expect(await carry(owner, helper)).toMatchObject({ changed: 0 });
    await expectAlike(owner, helper);
  },
);

test('a step done anew at its old torque, on a phone that had not seen the new one, is to be done again', async () => {
  const { owner, helper, id } = await withStep();
  worked(await markDone(owner, id, 'R. Tiller'));
  await exchange(owner, helper);
  worked(await changeStep(owner, id, { torque: nm('90') }));
  worked(await markDone(helper, id, 'Jo B.'));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    const step = await getStep(phone, id);
    expect(step).toMatchObject({ torque: nm('90'), wasDone: { by: 'Jo B.' } });
    expect(step).not.toHaveProperty('done');
    expect(await openConflicts(phone)).toEqual([]);
  }
  worked(await markDone(owner, id, 'Jo B.'));
  await exchange(owner, helper);
  expect((await getStep(helper, id))?.done?.by).toBe('Jo B.');
  expect(await getStep(helper, id)).not.toHaveProperty('wasDone');
});

test('three phones come to the same in any order, also where the words are changed back', async () => {
  const { owner, helper, job, id } = await withStep();
  const third = await openForTest({ now: tickingClock(1_700_001_000_000) });
  await carry(owner, third);
  worked(await markDone(owner, id, 'R. Tiller'));
  worked(await changeStep(helper, id, { text: 'Axle nut, greased' }));
  const fourth = await openForTest();
  const fifth = await openForTest();
  await carry(owner, fourth);
  await carry(helper, fourth);
  expect(await getStep(fourth, id)).not.toHaveProperty('done');
  worked(await changeStep(third, id, { text: 'Axle nut, dry' }));
  worked(await changeStep(third, id, { text: 'Axle nut' }));
  await carry(third, fourth);
  for (const from of [third, owner, helper]) await carry(from, fifth);
  for (const phone of [fourth, fifth])
    expect(await getStep(phone, id)).toMatchObject({
      jobId: job.id,
      text: 'Axle nut',
      done: { by: 'R. Tiller' },
    });
  await expectAlike(fourth, fifth);
});

test('a done step stays done when another phone writes down the page of its torque, in whatever script it is written', async () => {
  const { owner, helper, id } = await withStep();
  worked(await changeStep(owner, id, { text: 'אום הציר' }));
  await exchange(owner, helper);
  worked(await markDone(owner, id, 'R. Tiller'));
  worked(await changeStep(owner, id, { torque: nm('60', 'page 12') }));
  worked(await changeStep(helper, id, { torque: nm('60', 'page 21'), cureHours: '24' }));
  await exchange(owner, helper);
  expect((await getStep(owner, id))?.done?.by).toBe('R. Tiller');
});

test('a step that an earlier Slipfit marked as done is to be done again for what another phone wrote later, not for what its own did', async () => {
  const { owner, helper, id } = await withStep();
  worked(await markDone(owner, id, 'R. Tiller'));
  const kept = await owner.db.get('steps', id);
  const { at, by } = kept.done;
  await owner.db.put('steps', { ...kept, done: { at, by } });
  worked(await changeStep(owner, id, { torque: nm('60', 'page 12') }));
  await exchange(owner, helper);
  expect((await getStep(helper, id))?.done).toEqual({ at, by });
  const third = await openForTest({ now: tickingClock(1_700_001_000_000) });
  await carry(owner, third);
  const there = await third.db.get('steps', id);
  const stamp = '001700001999999-0000-other';
  await third.db.put('steps', { ...there, text: 'Axle nut, dry', stamps: { ...there.stamps, text: stamp } });
  await exchange(owner, third);
  expect(await getStep(owner, id)).toMatchObject({ text: 'Axle nut, dry', wasDone: { at, by } });
  await expectAlike(owner, third);
});

test('a re-check done before its new words were seen comes due again', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const { id } = worked(await addRecheck(owner, { jobId: job.id, what: 'Wheel nuts', afterDays: 1 }));
  await exchange(owner, helper);
  worked(await changeRecheck(owner, id, { what: 'Wheel nuts and hub nut' }));
  worked(await markRechecked(helper, id, { by: 'Jo B.' }));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    expect(await rechecksOf(phone, job.id)).toMatchObject([{ wasDone: { by: 'Jo B.' } }]);
    expect(await openRechecks(phone)).toHaveLength(1);
  }
});

test.each(['owner', 'helper'] as const)(
  'a check by eye that the %s saw before it asked for something else is to be looked at again',
  async (name) => {
    const { owner, helper, id } = await withEyeCheck();
    const [seer, other] = name === 'owner' ? [owner, helper] : [helper, owner];
    await saySeen(seer, id, 'holds');
    worked(await changeCheck(other, id, { how: 'whole travel, springs out' }));
    await exchange(owner, helper);
    for (const phone of [owner, helper]) {
      expect(await getCheck(phone, id)).toMatchObject({ how: 'whole travel, springs out' });
      expect(await lastOf(phone, id)).not.toHaveProperty('seen');
    }
    expect(await carry(owner, helper)).toMatchObject({ changed: 0 });
    await expectAlike(owner, helper);
    await saySeen(owner, id, 'fails');
    await exchange(owner, helper);
    expect(await lastOf(helper, id)).toMatchObject({ seen: 'fails' });
    await expectAlike(owner, helper);
  },
);

test('a torque taken back by undo leaves no step done at the one that was taken back', async () => {
  const { owner, helper, id } = await withStep();
  worked(await changeStep(owner, id, { torque: nm('25') }));
  await exchange(owner, helper);
  worked(await markDone(helper, id, 'Jo B.'));
  await carry(helper, owner);
  const mine = (await owner.db.getAll('undo')).find(({ label }) => label === 'Changed Axle nut');
  worked(await undoLast(owner, mine.id));
  const step = await getStep(owner, id);
  expect(step).toMatchObject({ torque: nm('60'), wasDone: { by: 'Jo B.' } });
  expect(step).not.toHaveProperty('done');
  await exchange(owner, helper);
  await expectAlike(owner, helper);
});

test('what a check by eye asks for, taken back by undo, is to be looked at again', async () => {
  const { owner, helper, id } = await withEyeCheck();
  worked(await changeCheck(owner, id, { how: 'whole travel' }));
  await exchange(owner, helper);
  await saySeen(helper, id, 'holds');
  await carry(helper, owner);
  const mine = (await owner.db.getAll('undo')).find(({ label }) => label === 'Changed Hose');
  worked(await undoLast(owner, mine.id));
  expect(await getCheck(owner, id)).toMatchObject({ how: 'straight ahead' });
  expect(await lastOf(owner, id)).not.toHaveProperty('seen');
  await exchange(owner, helper);
  await expectAlike(owner, helper);
});

test('acts on a done step are undone one after the other, down to the step itself', async () => {
  const { owner, id } = await withStep();
  worked(await markDone(owner, id, 'R. Tiller'));
  worked(await changeStep(owner, id, { torque: nm('60', 'page 12') }));
  worked(await changeStep(owner, id, { torque: nm('90', 'page 12') }));
  worked(await markDone(owner, id, 'Jo B.'));
  expect(await undoNewest(owner)).toBe('Done: Axle nut');
  expect(await undoNewest(owner)).toBe('Changed Axle nut');
  expect((await getStep(owner, id))?.done?.by).toBe('R. Tiller');
  expect(await undoNewest(owner)).toBe('Changed Axle nut');
  expect((await getStep(owner, id))?.done?.by).toBe('R. Tiller');
  expect(await undoNewest(owner)).toBe('Done: Axle nut');
});

test('a check by eye seen under the one wording is to be looked at again when the other is taken', async () => {
  const { owner, helper, id } = await withEyeCheck();
  worked(await changeCheck(owner, id, { how: 'AAA' }));
  worked(await changeCheck(helper, id, { how: 'BBB' }));
  await exchange(owner, helper);
  await saySeen(owner, id, 'holds');
  const asked = (await openConflicts(owner))[0] ?? (await openConflicts(helper))[0];
  expect((await getCheck(owner, id))?.how).toBe('BBB');
  const phone = (await openConflicts(owner)).length > 0 ? owner : helper;
  if (phone === helper) await carry(owner, helper);
  worked(await settleConflict(phone, { id: asked?.conflict.id ?? '', take: 'lost', label: 'Took AAA' }));
  expect((await getCheck(phone, id))?.how).toBe('AAA');
  expect(await lastOf(phone, id)).not.toHaveProperty('seen');
  await undoNewest(phone);
  expect(await lastOf(phone, id)).toMatchObject({ seen: 'holds' });
  await exchange(owner, helper);
  await expectAlike(owner, helper);
});
