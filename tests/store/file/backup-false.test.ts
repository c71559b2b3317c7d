import { afterEach, describe, expect, test } from 'vitest';
import { withBase64 } from '../../../src/store/file/backup-bytes.ts';
import { applyPreviewed } from '../../../src/store/file/backup-restore.ts';
import { previewBackup } from '../../../src/store/file/backup-preview.ts';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { openConflicts } from '../../../src/store/phones/conflicts-open.ts';
import { createCheck, getCheck, lastTake } from '../../../src/store/kept/checks.ts';
import { changeJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { isPlainObject } from '../../../src/store/base/paths.ts';
import { sayBackup } from '../../../src/store/file/say-backup.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { measuringTools } from '../../../src/store/kept/tools.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { oddWords, settingsWords } from '../../../src/screens/shop/restore-words.ts';
import { fillWithEveryKind } from '../../trials/every-kind.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';
import { jpeg, png } from '../pictures-for-test.ts';
import { linesOf, recordsOf, sealed, type Line, type Lines } from '../sealed-backup.ts';
import { carry, log, twoPhonesWithABore } from '../two-phones-for-test.ts';

/** Files with right form, counts and checksum, whose figures are not. */

afterEach(closeAll);

async function wholeShop(): Promise<Store> {
  const store = await openForTest();
  await fillWithEveryKind(store, jpeg(24, 16));
  await measuringTools(store);
  const graduation = worked(readEntry('.001', { unit: 'in' }));
  worked(await putSetting(store, 'dial', { reads: 'diameter', graduation }));
  return store;
}

async function refusalOf(lines: Lines, phone?: Store) {
  return refused(await restoreBackup(phone ?? (await openForTest()), await sealed(lines)));
}

const textOf = (bytes: ArrayBuffer) => withBase64('photoBytes', { bytes })['bytes'];

type Place = { readonly owner: Line; readonly path: string };

function sizesIn(value: unknown, path = ''): Place[] {
  if (!isPlainObject(value)) return [];
  const owner: Line = value;
  const own =
    typeof owner['typed'] === 'string' && typeof owner['exact'] === 'string' ? [{ owner, path }] : [];
  return [...own, ...Object.entries(owner).flatMap(([name, one]) => sizesIn(one, `${path}/${name}`))];
}

test('the shop as it is comes in, and nothing of it is asked about', async () => {
  const preview = worked(
    await previewBackup(await openForTest(), await sealed(await linesOf(await wholeShop()))),
  );
  expect(oddWords(preview)).toEqual([]);
});

describe('what was typed and what is kept', () => {
  test.each(['readings', 'cuts', 'checks', 'worksheets', 'drawer', 'settings'])(
    'every size of %s whose text says another one is refused',
    async (store) => {
      const whole = await linesOf(await wholeShop());
      const count = recordsOf(whole, store).flatMap((record) => sizesIn(record)).length;
      expect(count).toBeGreaterThan(0);
      for (let at = 0; at < count; at += 1) {
        const lines = structuredClone(whole);
        const place = recordsOf(lines, store).flatMap((record) => sizesIn(record))[at];
        Object.assign(place?.owner ?? {}, { typed: '10 mm', unit: 'mm', exact: '25.4' });
        const refusal = await refusalOf(lines);
        expect([place?.path, refusal]).toEqual([
          place?.path,
          expect.objectContaining({ code: 'typed-differs' }),
        ]);
        expect(sayBackup(refusal)).toMatch(
          /says “10 mm” and holds another size\. Nothing was changed here\./,
        );
      }
    },
    60_000,
  );

  test.each([
    { typed: '10 mm', unit: 'mm', exact: '10.0001' },
    { typed: '10', unit: 'mm', exact: '254' },
    { typed: '10', unit: 'in', exact: '10' },
    { typed: '10 mm', unit: 'in', exact: '254' }, // the text names its own unit
    { typed: '29/64', unit: 'in', exact: '11.509375001' },
    { typed: '.4487', unit: 'in', exact: '11.39699' }, // .4487 × 25.4 = 11.39698
    { typed: '.4487', unit: 'in', exact: '-11.39698' },
    { typed: '4487', unit: 'thou', exact: '11.39698' },
    { typed: 'about ten', unit: 'mm', exact: '10' },
    { typed: '', unit: 'mm', exact: '10' },
  ])('a reading of “$typed” $unit kept as $exact mm is refused', async (change) => {
    const lines = await linesOf(await wholeShop());
    Object.assign(recordsOf(lines, 'readings')[3] ?? {}, change);
    expect(await refusalOf(lines)).toMatchObject({ code: 'typed-differs' });
  });

  test.each([
    ['readings', (record: Line) => record],
    ['drawer', (record: Line) => record['thickness']],
    ['cuts', (record: Line) => record['target']],
    ['worksheets', (record: Line) => Object(record['sizes'])['bore'] ?? Object(record['sizes'])['pin']],
    ['worksheets', (record: Line) => Object(Object.values(Object(record['parts']))[0])['size']],
  ] as const)('a size of %s below zero, where no pad takes one in, is refused', async (store, sizeIn) => {
    // Also as it would be shown, which is what a rounded one of an earlier Slipfit is let in by.
    for (const typed of ['-.4487', '−.4487 in']) {
      const lines = await linesOf(await wholeShop());
      const size = recordsOf(lines, store)
        .map((record) => sizeIn(record))
        .find((one) => isPlainObject(one));
      Object.assign(Object(size), { from: 'typed', typed, unit: 'in', exact: '-11.39698' });
      const refusal = await refusalOf(lines);
      expect(refusal).toMatchObject({ code: 'below-zero' });
      expect(sayBackup(refusal)).toMatch(/ holds “.\.4487(?: in)?”, and no such size can lie below zero\. /);
    }
  });

  test.each([
    { typed: '10 mm', unit: 'mm', exact: '10' },
    { typed: '0,4487', unit: 'in', exact: '11.39698' },
    { typed: '29/64 in', unit: 'in', exact: '11.509375' }, // 29 × 25.4 / 64
    { typed: '448.7', unit: 'thou', exact: '11.39698' },
    { typed: '10 mm', unit: 'in', exact: '10' },
    { typed: '10.0', unit: 'mm', exact: '10.000' },
  ])('a reading of “$typed” $unit kept as $exact mm comes in', async (change) => {
    const lines = await linesOf(await wholeShop());
    Object.assign(recordsOf(lines, 'readings')[3] ?? {}, change);
    const preview = worked(await previewBackup(await openForTest(), await sealed(lines)));
    expect(oddWords(preview)).toEqual([]);
  });

  test('a reading that an earlier Slipfit wrote rounded is asked about', async () => {
    const lines = await linesOf(await wholeShop());
    // 11.4 mm meant where 11.4 in was typed: 11.4 / 25.4 = .44882 in, which was written as .4488 in.
    Object.assign(recordsOf(lines, 'readings')[3] ?? {}, { typed: '.4488 in', unit: 'in', exact: '11.4' });
    const preview = worked(await previewBackup(await openForTest(), await sealed(lines)));
    expect(oddWords(preview)).toEqual([
      '1 size is written with fewer digits than kept. What is kept counts.',
    ]);
  });
});

describe('what belongs to another job', () => {
  const other = 'demo-trailer-hub';
  test.each<{ what: string; store: string; change: (record: Line, lines: Lines) => unknown }>([
    { what: 'a reading', store: 'readings', change: (one) => (one['jobId'] = swapped(one['jobId'])) },
    { what: 'a cut', store: 'cuts', change: (one) => (one['jobId'] = swapped(one['jobId'])) },
    { what: 'a photo', store: 'photos', change: (one) => (one['jobId'] = swapped(one['jobId'])) },
    {
      what: 'a worksheet',
      store: 'worksheets',
      change: (one, lines) => {
        const foreign = recordsOf(lines, 'features').find(({ jobId }) => jobId !== one['jobId']);
        one['sizes'] = { bore: { from: 'feature', featureId: foreign?.['id'] } };
      },
    },
    {
      what: 'a step',
      store: 'steps',
      change: (one, lines) =>
        (one['partIds'] = [
          recordsOf(lines, 'parts').find(({ jobId }) => jobId !== one['jobId'])?.['id'] ??
            moved(lines, 'parts', one['jobId']),
        ]),
    },
    {
      what: 'a check',
      store: 'checks',
      change: (one, lines) => {
        const foreign = recordsOf(lines, 'features').find(({ jobId }) => jobId !== one['jobId']);
        one['takes'] = { take: { at: 1_700_000_000_000, featureId: foreign?.['id'] } };
      },
    },
    {
      what: 'a sign-off',
      store: 'jobs',
      change: (_one, lines) => {
        const sheet = recordsOf(lines, 'sheets')[0];
        const job = recordsOf(lines, 'jobs').find(({ id }) => id !== sheet?.['jobId']);
        Object.assign(job ?? {}, {
          signedOff: { at: 1_700_000_000_000, by: 'Jo B.', sheetId: sheet?.['id'] },
        });
      },
    },
  ])('$what that does is refused', async ({ store, change }) => {
    const lines = await linesOf(await wholeShop());
    const [record] = recordsOf(lines, store);
    change(record ?? {}, lines);
    const refusal = await refusalOf(lines);
    expect(refusal.code).toBe('belongs-to-another-job');
    expect(sayBackup(refusal)).toMatch(/belongs to an? .+ of another job\. Nothing was changed here\.$/);
  });

  test('a bore that is here in one job and in the file in another is refused', async () => {
    const phone = await wholeShop();
    const lines = await linesOf(phone);
    const features = recordsOf(lines, 'features');
    const used = new Set(recordsOf(lines, 'readings').map(({ featureId }) => featureId));
    const named = JSON.stringify(recordsOf(lines, 'worksheets')) + JSON.stringify(recordsOf(lines, 'checks'));
    const free = features.find(({ id }) => !used.has(id) && !named.includes(String(id)));
    if (!free) return; // the demo has none to spare: the case above holds it
    free['jobId'] = swapped(free['jobId']);
    delete free['partId'];
    expect((await refusalOf(lines, phone)).code).toBe('is-of-another-job');
  });

  function swapped(jobId: unknown): string {
    return jobId === other ? 'demo-outfit-7' : other;
  }

  function moved(lines: Lines, store: string, notOf: unknown): unknown {
    const [first] = recordsOf(lines, store);
    Object.assign(first ?? {}, { jobId: swapped(notOf) });
    return first?.['id'];
  }
});

describe('pictures', () => {
  test.each([
    { what: 'a preview of 12000 by 12000', store: 'photos', field: 'preview', bytes: png(12_000, 12_000) },
    { what: 'a preview of 513 by 20', store: 'photos', field: 'preview', bytes: jpeg(513, 20) },
    {
      what: 'a picture of another size than it says',
      store: 'photoBytes',
      field: 'bytes',
      bytes: png(100, 100),
    },
    { what: 'one point more', store: 'photoBytes', field: 'bytes', bytes: jpeg(24, 17) },
  ])('$what is refused', async ({ store, field, bytes }) => {
    const lines = await linesOf(await wholeShop());
    Object.assign(recordsOf(lines, store)[0] ?? {}, { [field]: textOf(bytes) });
    const refusal = await refusalOf(lines);
    expect(refusal.code).toBe('picture-differs');
    expect(sayBackup(refusal)).toContain('is not as large as it says, or too large for a phone.');
  });

  test('a picture that says truly that it is 12000 by 12000 is refused too, whichever line comes first', async () => {
    for (const turned of [false, true]) {
      // oxlint-disable-next-line no-await-in-loop
      const lines = await linesOf(await wholeShop());
      Object.assign(recordsOf(lines, 'photos')[0] ?? {}, { width: 12_000, height: 12_000 });
      const id = recordsOf(lines, 'photos')[0]?.['id'];
      const bytes = recordsOf(lines, 'photoBytes').find((one) => one['id'] === id);
      Object.assign(bytes ?? {}, { bytes: textOf(png(12_000, 12_000)) });
      const body = lines.slice(1, -1);
      const all = [lines[0] ?? {}, ...(turned ? body.toReversed() : body), lines.at(-1) ?? {}];
      // oxlint-disable-next-line no-await-in-loop
      expect((await refusalOf(all)).code).toBe('picture-differs');
    }
  });
});

describe('times', () => {
  test.each(['007999999999999-ffff-zzzz', '007258118400000-0000-b', '001700100000000-0000-b'])(
    'a change stamped %s wins over nothing that is done later, and the phone’s clock does not follow it',
    async (stamp) => {
      const { owner, helper, job } = await twoPhonesWithABore();
      const lines = await linesOf(helper);
      Object.assign(recordsOf(lines, 'jobs')[0] ?? {}, {
        name: 'taken over',
        stamps: { '*': recordStamp(lines), name: stamp },
      });
      const preview = worked(await previewBackup(owner, await sealed(lines)));
      expect(oddWords(preview)).toEqual(['1 change claims a time after tomorrow. Here it counts as older.']);
      worked(await applyPreviewed(owner));
      worked(await changeJob(owner, job.id, { name: 'Outfit 7' }));
      worked(await restoreBackup(owner, await sealed(lines)));
      expect((await getJob(owner, job.id))?.name).toBe('Outfit 7');
      const { last } = await owner.db.get('device', 'clock');
      expect(Number(last.slice(0, 15))).toBeLessThan(1_700_003_600_000);
      const again = worked(await previewBackup(owner, await sealed(lines)));
      expect(again.total).toMatchObject({ added: 0, changed: 0 });
    },
  );

  test('a time of tomorrow is believed, as two phones’ clocks differ', async () => {
    const { owner, helper } = await twoPhonesWithABore();
    const lines = await linesOf(helper);
    // Twenty hours behind the test's beginning.
    Object.assign(recordsOf(lines, 'jobs')[0] ?? {}, { stamps: { '*': '001700072000000-0000-b' } });
    expect(oddWords(worked(await previewBackup(owner, await sealed(lines))))).toEqual([]);
  });

  test.each([7_258_118_399_000, 4_102_444_800_000])(
    'a reading dated %i, 2100 or later, is refused',
    async (at) => {
      const lines = await linesOf(await wholeShop());
      Object.assign(recordsOf(lines, 'readings')[2] ?? {}, { at });
      expect(await refusalOf(lines)).toMatchObject({ code: 'wrong-field', field: 'at' });
    },
  );

  test.each([1_700_200_000_000, 4_102_444_799_999, 0, 1_577_836_799_999])(
    'a date of %i, after tomorrow or before 2020, is asked about',
    async (at) => {
      const lines = await linesOf(await wholeShop());
      Object.assign(recordsOf(lines, 'readings')[2] ?? {}, { at });
      const preview = worked(await previewBackup(await openForTest(), await sealed(lines)));
      expect(oddWords(preview).join(' ')).toMatch(/^1 date can’t be right: a phone’s clock was wrong/);
    },
  );

  function recordStamp(lines: Lines): string {
    const stamps = recordsOf(lines, 'jobs')[0]?.['stamps'];
    return isPlainObject(stamps) ? String(stamps['*']) : '';
  }
});

test.each(['007999999999999-ffff', '001700050000000-0000'])(
  'a file that claims to have seen what this phone is still to do (%s) hides no difference',
  async (claimed) => {
    const { owner, helper, job } = await twoPhonesWithABore();
    worked(await changeJob(owner, job.id, { what: 'as the owner says' }));
    worked(await changeJob(helper, job.id, { what: 'as the helper says' }));
    const { deviceId } = await owner.db.get('device', 'clock');
    const lines = await linesOf(helper);
    Object.assign(lines[0] ?? {}, { seen: { '*': [`${claimed}-${deviceId}`] } });
    const preview = worked(await previewBackup(owner, await sealed(lines)));
    expect(preview.apart).toBe(1);
    worked(await applyPreviewed(owner));
    expect(await openConflicts(owner)).toHaveLength(1);
  },
);

test('a change that bears this phone’s own name and that it never made is asked about', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  worked(await changeJob(owner, job.id, { what: 'as the owner says' }));
  worked(await changeJob(owner, job.id, { name: 'Outfit 7' }));
  worked(await changeJob(helper, job.id, { what: 'as the helper says' }));
  // Behind the owner's own change of it, before the last thing that the owner did.
  const mine = (await owner.db.get('jobs', job.id)).stamps.what;
  const lines = await linesOf(helper);
  const [record] = recordsOf(lines, 'jobs');
  Object.assign(Object(record?.['stamps']), { what: mine.replace('-0000-', '-0001-') });
  expect(worked(await previewBackup(owner, await sealed(lines))).apart).toBe(1);
  worked(await applyPreviewed(owner));
  expect(await openConflicts(owner)).toHaveLength(1);
});

test.each<[what: string, change: Line]>([
  ['the leaf that didn’t go', { stops: { typed: '.011', unit: 'in', exact: '0.2794' } }],
  ['how warm it was', { warmth: { degrees: '80', unit: 'C', material: 'aluminium' } }],
  ['whether zero was checked', { zeroChecked: false }],
])('a file that changes of a reading that is here %s is refused', async (_what, change) => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(owner, bore.id, job.id, '.4487'));
  await carry(owner, helper);
  const lines = await linesOf(helper);
  Object.assign(recordsOf(lines, 'readings')[0] ?? {}, change);
  expect((await refusalOf(lines, owner)).code).toBe('reading-differs');
});

test('a re-check that is to be counted from after tomorrow, and parts changed then, are asked about', async () => {
  const lines = await linesOf(await wholeShop());
  const [worksheet] = recordsOf(lines, 'worksheets');
  Object.assign(worksheet ?? {}, {
    partsChanged: { at: 1_699_000_000_000, why: 'shim put in', otherwiseAt: 1_700_200_000_000 },
  });
  const [job] = recordsOf(lines, 'jobs');
  const recheck = { what: 'Axle nut', afterDays: 3, from: 1_700_200_000_000, createdAt: 1_699_000_000_000 };
  const stamps = { '*': '001699000000000-0000-b' };
  lines.splice(-1, 0, { store: 'rechecks', record: { id: 'r', stamps, jobId: job?.['id'], ...recheck } });
  const preview = worked(await previewBackup(await openForTest(), await sealed(lines)));
  expect(oddWords(preview).join(' ')).toMatch(/^2 dates can’t be right/);
});

test.each(['constructor', '__proto__', 'prototype'])(
  'a record called “%s” is refused: as the name of an entry it would spoil every backup of this phone',
  async (id) => {
    const lines = await linesOf(await openForTest());
    const stamps = { '*': '001699000000000-0000-b' };
    const tool = recordsOf(await linesOf(await wholeShop()), 'tools')[0]?.['tool'];
    lines.splice(-1, 0, { store: 'tools', record: { id, stamps, tool } });
    expect(await refusalOf(lines)).toMatchObject({ code: 'wrong-field', field: 'id' });
  },
);

test('a go at a check with the longest of names has its next one, which can be read', async () => {
  const { owner, job } = await twoPhonesWithABore();
  const check = worked(
    await createCheck(owner, { jobId: job.id, name: 'Hose', by: 'by-eye', limitsFrom: '', how: 'straight' }),
  );
  const lines = await linesOf(owner);
  const [record] = recordsOf(lines, 'checks');
  const seen = { at: 1_700_000_000_500, seen: 'holds', seenAs: 'something else' };
  Object.assign(record ?? {}, { takes: { ['x'.repeat(100)]: seen } });
  const phone = await openForTest();
  worked(await restoreBackup(phone, await sealed(lines)));
  const kept = await getCheck(phone, check.id);
  expect(Object.values(kept?.takes ?? {})).toHaveLength(2);
  expect(kept && lastTake(kept)?.seen).toBeUndefined();
  worked(await restoreBackup(await openForTest(), await sealed(await linesOf(phone))));
});

test('another file that was read since one was shown does not go in in its place', async () => {
  const phone = await openForTest();
  const shown = worked(await previewBackup(phone, await sealed(await linesOf(await wholeShop()))));
  const { owner } = await twoPhonesWithABore();
  worked(await previewBackup(phone, await sealed(await linesOf(owner))));
  expect(refused(await applyPreviewed(phone, undefined, shown.file))).toEqual({ code: 'another-file' });
  expect(sayBackup({ code: 'another-file' })).toMatch(/^Another file was read since this one was shown\./);
  expect(await phone.db.getAll('jobs')).toEqual([]);
  const again = worked(await previewBackup(phone, await sealed(await linesOf(owner))));
  worked(await applyPreviewed(phone, undefined, again.file));
});

describe('the lathe and the tools', () => {
  test.each([
    { typed: '0', exact: '0' },
    { typed: '0.000', exact: '0.000' },
    { typed: '-.001', exact: '-0.0254' },
  ])('a dial of $typed in a mark is refused', async (change) => {
    const lines = await linesOf(await wholeShop());
    const dial = recordsOf(lines, 'settings').find(({ id }) => id === 'dial');
    Object.assign(dial ?? {}, { value: { reads: 'diameter', graduation: { unit: 'in', ...change } } });
    expect(await refusalOf(lines)).toMatchObject({ code: 'wrong-field', field: 'value' });
  });

  test.each(['mpe', 'resolution', 'repeatability', 'jawWidth', 'least', 'most'])(
    'a tool with a %s below zero is refused, and a reading taken with it',
    async (field) => {
      for (const store of ['tools', 'readings']) {
        // oxlint-disable-next-line no-await-in-loop
        const lines = await linesOf(await wholeShop());
        Object.assign(Object(recordsOf(lines, store)[0]?.['tool']), { [field]: '-0.02' });
        // oxlint-disable-next-line no-await-in-loop
        expect(await refusalOf(lines)).toMatchObject({ code: 'wrong-field', field: `tool.${field}` });
      }
    },
  );
});

test.each<[store: string, change: (record: Line) => unknown, says: RegExp]>([
  ['tools', (one) => Object.assign(Object(one['tool']), { mpe: '-1' }), /: look at the tool’s error limit\./],
  ['readings', (one) => (one['at'] = 7_258_118_399_000), /^Reading 1 of .+: look at its date\./],
  ['sheets', (one) => (one['content'] = [{ tag: 'use' }]), /: look at what is drawn on it\./],
  ['settings', (one) => (one['value'] = 7), /^Setting “.+”.+: look at what it is set to\./],
])('what is wrong in %s is said in words of the trade', async (store, change, says) => {
  const lines = await linesOf(await wholeShop());
  const all = recordsOf(lines, store);
  change((store === 'settings' ? all.find(({ id }) => id === 'dial') : all[0]) ?? {});
  const sentence = sayBackup(await refusalOf(lines));
  expect(sentence).toMatch(says);
  expect(sentence).not.toMatch(/mpe|“at”|content|“value”/);
});

test('the preview names what a file sets on this phone', async () => {
  const phone = await openForTest();
  worked(await putSetting(phone, 'fitter', 'Sam K.'));
  const preview = worked(await previewBackup(phone, await sealed(await linesOf(await wholeShop()))));
  expect(settingsWords(preview)).toBe(
    'What this phone has set stays. From the file it takes the dial of the lathe and the speeds of the lathe.',
  );
});

test('a file carried between two phones of today is never found false', async () => {
  const { owner, helper } = await twoPhonesWithABore();
  expect(lengthOf('.4487 in')).toEqual(lengthOf('11.39698 mm'));
  await carry(owner, helper);
  await carry(helper, owner);
});
