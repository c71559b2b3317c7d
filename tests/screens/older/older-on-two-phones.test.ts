import { afterEach, describe, expect, test } from 'vitest';
import { groundOf } from '../../../src/screens/older/job-ground.ts';
import { isOlderThanSizes, type Figures } from '../../../src/screens/older/older-than-sizes.ts';
import { basisOf } from '../../../src/store/kept/basis.ts';
import { createCheck, getCheck, lastTake, sayCheckSeen } from '../../../src/store/kept/checks.ts';
import { createCuts, getCut } from '../../../src/store/kept/cuts.ts';
import { getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { readingsOf } from '../../../src/store/kept/readings.ts';
import { writeReason } from '../../../src/store/kept/reasons.ts';
import { addSteps, getStep, markDone } from '../../../src/store/kept/steps.ts';
import { createWorksheet, setSize } from '../../../src/store/kept/worksheets.ts';
import { closeAll, worked } from '../../store/open-for-test.ts';
import { carry, everythingIn, exchange, log, twoPhonesWithABore } from '../../store/two-phones-for-test.ts';
import { typedSize } from '../worksheets/worksheet-for-test.ts';

afterEach(closeAll);

async function twoPhones() {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  const worksheet = worked(
    await createWorksheet(owner, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket float',
      sizes: { fixed: typedSize('.970') },
    }),
  );
  const made = { jobId: job.id, worksheetId: worksheet.id };
  const [step] = worked(await addSteps(owner, [{ ...made, text: 'Stack it' }]));
  const seen = worked(
    await createCheck(owner, { ...made, name: 'Slides', by: 'by-eye', limitsFrom: '', how: '' }),
  );
  const read = worked(
    await createCheck(owner, { ...made, name: 'Float', by: 'gap', limitsFrom: '', how: '' }),
  );
  const [cut] = worked(
    await createCuts(owner, [
      {
        ...made,
        name: 'Spacer',
        part: 'spacer',
        operation: 'face',
        of: 'length',
        target: typedSize('.960'),
        lower: typedSize('.958'),
        upper: typedSize('.962'),
        limitsFrom: '',
        cuttingTool: 'hss',
        machine: 'lathe',
        basis: basisOf(worksheet, []),
      },
    ]),
  );
  await exchange(owner, helper);
  const ids = { step: step?.id ?? '', seen: seen.id, read: read.id, cut: cut?.id ?? '' };
  return { owner, helper, job, bore, worksheet, ids };
}

type Ids = Awaited<ReturnType<typeof twoPhones>>['ids'];

/** The helper puts it together and checks it, by the sizes that he knows. */
async function workOn(helper: Store, ids: Ids): Promise<void> {
  worked(await markDone(helper, ids.step, 'Sam'));
  const seen = await getCheck(helper, ids.seen);
  worked(await sayCheckSeen(helper, ids.seen, (seen && lastTake(seen)?.id) ?? '', 'holds', ''));
  const read = await getCheck(helper, ids.read);
  const featureId = (read && lastTake(read)?.featureId) ?? '';
  worked(await log(helper, featureId, read?.jobId ?? '', '.010'));
}

async function olderOn(phone: Store, jobId: string, ids: Ids): Promise<readonly string[]> {
  const ground = await groundOf(phone, [jobId]);
  const [step, seen, read, cut] = [
    await getStep(phone, ids.step),
    await getCheck(phone, ids.seen),
    await getCheck(phone, ids.read),
    await getCut(phone, ids.cut),
  ];
  const lastSeen = seen && lastTake(seen);
  const lastRead = read && lastTake(read);
  const figures: readonly (readonly [string, Figures | undefined])[] = [
    ['step', step && { of: 'done', step }],
    ['seen', seen && lastSeen && { of: 'go', check: seen, take: { ...lastSeen, readings: [] } }],
    [
      'read',
      read &&
        lastRead && {
          of: 'go',
          check: read,
          take: { ...lastRead, readings: await readingsOf(phone, lastRead.featureId ?? '') },
        },
    ],
    ['cut', cut && { of: 'cut', cut }],
  ];
  return figures.flatMap(([name, one]) => (one && isOlderThanSizes(one, ground) ? [name] : []));
}

const ALL = ['step', 'seen', 'read', 'cut'];

describe('a size that one phone changed while the other put it together and checked it by the old one', () => {
  test.each(['owner first', 'helper first'])('makes all of that older on both phones, %s', async (order) => {
    const { owner, helper, job, worksheet, ids } = await twoPhones();
    worked(await setSize(owner, worksheet.id, 'fixed', typedSize('.967')));
    await workOn(helper, ids);
    expect(await olderOn(helper, job.id, ids)).toEqual([]);
    if (order === 'owner first') await exchange(owner, helper);
    else await exchange(helper, owner);
    expect(await olderOn(owner, job.id, ids)).toEqual(ALL);
    expect(await olderOn(helper, job.id, ids)).toEqual(ALL);
    await carry(owner, helper);
    expect(await everythingIn(owner)).toBe(await everythingIn(helper));
  });

  test('leaves nothing older where he knew it', async () => {
    const { owner, helper, job, worksheet, ids } = await twoPhones();
    worked(await setSize(owner, worksheet.id, 'fixed', typedSize('.967')));
    await exchange(owner, helper);
    await workOn(helper, ids);
    await exchange(owner, helper);
    // The cut was put down before, by the old size.
    expect(await olderOn(owner, job.id, ids)).toEqual(['cut']);
  });
});

test('a reading that is for no check keeps nothing of a worksheet', async () => {
  const { owner, job, bore } = await twoPhones();
  worked(await log(owner, bore.id, job.id, '.500'));
  const [reading] = await readingsOf(owner, bore.id);
  expect(reading?.basis).toBeUndefined();
});

test('reasons that two phones wrote for two things are both there, whichever file comes first', async () => {
  const { owner, helper, job } = await twoPhones();
  worked(await writeReason(owner, job.id, 'no-check', { why: 'Checked on the bench', as: '' }));
  worked(await writeReason(helper, job.id, 'mock-up-in p1', { why: 'It is the real one', as: 'x' }));
  await exchange(owner, helper);
  const [one, other] = [await getJob(owner, job.id), await getJob(helper, job.id)];
  expect(Object.keys(one?.reasons ?? {}).toSorted()).toEqual(['mock-up-in p1', 'no-check']);
  expect(other?.reasons).toEqual(one?.reasons);
});
