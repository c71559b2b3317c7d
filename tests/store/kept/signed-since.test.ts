import { afterEach, describe, expect, test } from 'vitest';
import { changeCheck, createCheck, lastTake, removeCheck, retake } from '../../../src/store/kept/checks.ts';
import { createCuts, setCutState } from '../../../src/store/kept/cuts.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { addMoney } from '../../../src/store/kept/money.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { createPart, removePart } from '../../../src/store/kept/parts.ts';
import { addPhoto } from '../../../src/store/kept/photos.ts';
import { strikeOut } from '../../../src/store/kept/readings.ts';
import { addRecheck, markRechecked, setOdometer } from '../../../src/store/kept/rechecks.ts';
import { signSheet } from '../../../src/store/kept/sheets.ts';
import { changedSinceSigning, jobsChangedSinceSigning } from '../../../src/store/kept/signed-since.ts';
import type { StoreResult } from '../../../src/store/base/store-refusal.ts';
import { addSteps, changeStep, markDone, moveStep } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, setChoice } from '../../../src/store/kept/worksheets.ts';
import { facing, inches } from '../cut-for-test.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';
import { carry, exchange, log, twoPhonesWithABore } from '../two-phones-for-test.ts';

afterEach(closeAll);

/** A job with one of everything that is signed for. */
async function built() {
  const store = await openForTest();
  const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: ['axle'] }));
  const part = worked(await createPart(store, { jobId, name: 'Spacer', origin: 'made' }));
  const bore = worked(await createFeature(store, { jobId, kind: 'bore', name: 'Left bore' }));
  const reading = worked(await log(store, bore.id, jobId, '.4487'));
  const sheet = worked(await createWorksheet(store, { jobId, kind: 'fit', title: 'Axle in its bore' }));
  const [cut] = worked(await createCuts(store, [facing(jobId)]));
  const check = worked(
    await createCheck(store, {
      jobId,
      name: 'Side play',
      by: 'gap',
      upper: inches('.006'),
      limitsFrom: 'the manual',
      how: '',
    }),
  );
  const torque = { typed: '25', unit: 'Nm', source: 'manual' } as const;
  const [nut, cover] = worked(
    await addSteps(store, [
      { jobId, text: 'Tighten the nut', torque },
      { jobId, text: 'Fit the cover' },
    ]),
  );
  worked(await markDone(store, nut?.id ?? '', 'Jo B.'));
  const recheck = worked(await addRecheck(store, { jobId, what: 'Nuts', afterDays: 7 }));
  await sign(store, jobId);
  const ids = { nut: nut?.id ?? '', cover: cover?.id ?? '', cut: cut?.id ?? '' };
  return { store, jobId, part, bore, reading, sheet, check, recheck, ids };
}

type Built = Awaited<ReturnType<typeof built>>;

async function sign(store: Store, jobId: string) {
  const content = [{ tag: 'p', attributes: {}, children: ['as it stands'] }];
  const by = { signedBy: 'Jo B.', engineVersion: '0.1.0', readingsCsv: '', cutsCsv: '' };
  return worked(await signSheet(store, { jobId, content, ...by }));
}

async function undoNewest(store: Store): Promise<void> {
  const newest = await latestUndo(store);
  worked(await undoLast(store, newest?.id ?? ''));
}

/** As said inside the job, and as said on the list of jobs. */
async function since(store: Store, jobId: string) {
  const things = await changedSinceSigning(store, jobId);
  return { things, onList: (await jobsChangedSinceSigning(store, [jobId])).has(jobId) };
}

const AS_SIGNED = { things: [], onList: false };

test('a job that was never signed is no other than it was signed', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  expect(await since(store, job.id)).toEqual(AS_SIGNED);
});

const harmless: readonly (readonly [string, (job: Built) => Promise<StoreResult<unknown>>])[] = [
  ['closing it', async ({ store, jobId }) => changeJob(store, jobId, { state: 'closed' })],
  ['a line of money', async ({ store, jobId }) => addMoney(store, { jobId, what: 'Bearings', amount: '12' })],
  ['its odometer', async ({ store, jobId }) => setOdometer(store, jobId, { reading: 41_250, unit: 'mi' })],
  [
    'a re-check done on the road',
    async ({ store, recheck }) => markRechecked(store, recheck.id, { by: 'Jo B.' }),
  ],
  [
    'a photo',
    async ({ store, jobId }) =>
      addPhoto(store, {
        owner: { store: 'jobs', id: jobId },
        jobId,
        note: '',
        mime: 'image/jpeg',
        width: 4,
        height: 3,
        preview: new ArrayBuffer(4),
        bytes: new ArrayBuffer(8),
      }),
  ],
  [
    'a step moved there and back',
    async ({ store, ids }) => {
      worked(await moveStep(store, ids.nut, 'down'));
      return moveStep(store, ids.nut, 'up');
    },
  ],
];

test.each(harmless)('%s changes nothing that was signed', async (_what, act) => {
  const job = await built();
  worked(await act(job));
  expect(await since(job.store, job.jobId)).toEqual(AS_SIGNED);
});

type Change = readonly [string, (job: Built) => Promise<StoreResult<unknown>>, object];
const torque = { typed: '52', unit: 'Nm', source: 'manual' } as const;

const undoable: readonly Change[] = [
  [
    'the torque of a step',
    async ({ store, ids }) => changeStep(store, ids.nut, { torque }),
    { store: 'steps', name: 'Tighten the nut' },
  ],
  [
    'a check taken again',
    async ({ store, check }) => retake(store, check.id),
    { store: 'checks', name: 'Side play' },
  ],
  [
    'a limit',
    async ({ store, check }) => changeCheck(store, check.id, { upper: inches('.004') }),
    { store: 'checks', name: 'Side play' },
  ],
  [
    'a check removed',
    async ({ store, check }) => removeCheck(store, check.id),
    { store: 'checks', name: 'Side play', removed: true },
  ],
  [
    'a reading struck out',
    async ({ store, reading }) => strikeOut(store, reading.id, 'slip'),
    { store: 'features', name: 'Left bore' },
  ],
  [
    'a part removed',
    async ({ store, part }) => removePart(store, part.id),
    { store: 'parts', name: 'Spacer', removed: true },
  ],
  [
    'a choice of a worksheet',
    async ({ store, sheet }) => setChoice(store, sheet.id, 'class', 'H7'),
    { store: 'worksheets', name: 'Axle in its bore' },
  ],
  [
    'a cut scrapped',
    async ({ store, ids }) => setCutState(store, ids.cut, 'scrapped'),
    { store: 'cuts', name: 'Spacer, face to length' },
  ],
  [
    'what it touches',
    async ({ store, jobId }) => changeJob(store, jobId, { systems: ['brake'] }),
    { store: 'jobs', name: 'Outfit' },
  ],
  [
    'another re-check',
    async ({ store, jobId }) => addRecheck(store, { jobId, what: 'Hose', afterDays: 9 }),
    { store: 'rechecks', name: 'Hose' },
  ],
];

test.each(undoable)('%s is named as changed since, until it is undone', async (what, act, thing) => {
  const job = await built();
  worked(await act(job));
  const onList = what !== 'a reading struck out';
  expect(await since(job.store, job.jobId)).toEqual({ things: [thing], onList });
  await undoNewest(job.store);
  expect(await since(job.store, job.jobId)).toEqual(AS_SIGNED);
});

describe('a signed job', () => {
  test('with steps in another order stands otherwise', async () => {
    const { store, jobId, ids } = await built();
    worked(await moveStep(store, ids.cover, 'up'));
    expect((await since(store, jobId)).onList).toBe(true);
  });

  test('with a reading logged for a check names the check, and is as signed once it is signed again', async () => {
    const { store, jobId, check } = await built();
    worked(await log(store, lastTake(check)?.featureId ?? '', jobId, '.009'));
    expect(await since(store, jobId)).toEqual({
      things: [{ store: 'checks', name: 'Side play' }],
      onList: true,
    });
    await sign(store, jobId);
    expect(await since(store, jobId)).toEqual(AS_SIGNED);
  });

  test('of which an act from before the signing is undone stands otherwise', async () => {
    const { store, jobId } = await built();
    // The re-check set right before the signing counts from there now; the one before that act marked the nut as done.
    await undoNewest(store);
    expect((await since(store, jobId)).onList).toBe(true);
  });

  test('names what was changed in two places', async () => {
    const { store, jobId, bore, ids } = await built();
    worked(await log(store, bore.id, jobId, '.4489'));
    worked(await changeStep(store, ids.nut, { torque }));
    expect((await since(store, jobId)).things).toEqual([
      { store: 'features', name: 'Left bore' },
      { store: 'steps', name: 'Tighten the nut' },
    ]);
  });

  test('stands otherwise when another phone’s reading from before the signing comes in', async () => {
    const { owner, helper, job, bore } = await twoPhonesWithABore();
    worked(await log(helper, bore.id, job.id, '.4489'));
    for (let more = 0; more < 600; more += 1) owner.now();
    await sign(owner, job.id);
    expect(await since(owner, job.id)).toEqual(AS_SIGNED);
    await carry(helper, owner);
    expect(await since(owner, job.id)).toEqual({ things: [{ store: 'readings' }], onList: true });
  });

  test('stands as signed on the other phone too', async () => {
    const { owner, helper, job, bore } = await twoPhonesWithABore();
    worked(await log(owner, bore.id, job.id, '.4487'));
    await sign(owner, job.id);
    await exchange(owner, helper);
    expect(await since(helper, job.id)).toEqual(AS_SIGNED);
    worked(await log(helper, bore.id, job.id, '.4489'));
    expect((await since(helper, job.id)).things).toEqual([{ store: 'features', name: 'left bore' }]);
  });
});

test('a sheet that an earlier Slipfit signed goes by what was written since', async () => {
  const { store, jobId, bore, recheck } = await built();
  const { stood: _none, ...signedOff } = (await getJob(store, jobId))?.signedOff ?? {};
  await store.db.put('jobs', { ...(await store.db.get('jobs', jobId)), signedOff });
  worked(await markRechecked(store, recheck.id, { by: 'Jo B.' }));
  worked(await addMoney(store, { jobId, what: 'Bearings', amount: '12' }));
  expect(await since(store, jobId)).toEqual(AS_SIGNED);
  worked(await log(store, bore.id, jobId, '.4489'));
  expect(await since(store, jobId)).toEqual({
    things: [{ store: 'features', name: 'Left bore' }],
    onList: true,
  });
});
