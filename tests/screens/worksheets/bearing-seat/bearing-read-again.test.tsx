import { screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { worksheets } from '../../../../src/engine/worksheets/all-worksheets.ts';
import { hrefOf } from '../../../../src/screens/address.ts';
import { App } from '../../../../src/screens/app.tsx';
import { basisNow } from '../../../../src/screens/worksheets/new-cuts.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { cutSince } from '../../../../src/screens/worksheets/cut-since.ts';
import type { WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import { worksheetVerdict } from '../../../../src/screens/worksheets/worksheet-verdict.ts';
import { giveCutSize } from '../../../../src/store/kept/give-cut-size.ts';
import { createJob } from '../../../../src/store/kept/jobs.ts';
import type { Cut } from '../../../../src/store/base/records.ts';
import { createWorksheet, setSize } from '../../../../src/store/kept/worksheets.ts';
import { facing, inches } from '../../../store/cut-for-test.ts';
import { openForTest, worked } from '../../../store/open-for-test.ts';
import { clearAway, onScreen } from '../../on-screen.tsx';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

const at = (typed: string, time: number) => ({ ...typedSize(typed), at: time });

/** What was read at 5; a cut by its answer was given at 6. */
function cutBy(
  choices: Readonly<Record<string, string>>,
  sizes: WorksheetData['worksheet']['sizes'],
): WorksheetData {
  const data = worksheetOf('bearing-seat', { choices, sizes });
  const partsChanged = { at: 6, why: 'a part of another size', otherwiseAt: 0 };
  return { ...data, worksheet: { ...data.worksheet, partsChanged } };
}

// Recess .500, bearing .505: .005 proud by the sum, .009 as it was read. Cut .007 deeper for .002 proud, it stands so; the
// sum would have it .002 below the face, and ask for a shim.
const recess = cutBy(
  { bearing: 'seat' },
  {
    depth: typedSize('.507'),
    width: typedSize('.505'),
    lower: typedSize('.001'),
    upper: typedSize('.003'),
    directProud: at('.009', 5),
  },
);

describe('after a cut by what was read in place, the reading is asked again, and the sum is not called', () => {
  test.each([
    { of: 'stands proud', data: recess, field: 'directProud', sum: 'it lies .002 in below the face' },
    {
      of: 'lies below',
      // .004 below as read, .010 by the sum of .500 in .510; wanted .006 to .008 below; cut to .513
      data: cutBy(
        { bearing: 'seat' },
        {
          depth: typedSize('.513'),
          width: typedSize('.500'),
          lower: typedSize('-.008'),
          upper: typedSize('-.006'),
          directBelow: at('.004', 5),
        },
      ),
      field: 'directBelow',
      sum: 'it lies .013 in below the face',
    },
    {
      of: 'longer by',
      // .011 longer as read, by its sizes .006: faced .009 to be .002 longer, its sizes say .003 short
      data: cutBy(
        { bearing: 'ball' },
        { between: typedSize('2.450'), sleeve: typedSize('2.447'), direct: at('.011', 5) },
      ),
      field: 'direct',
      sum: 'the sleeve is .003 in short',
    },
  ])('$of', ({ data, field, sum }) => {
    const given = givenOf(data);
    const account = worksheets['bearing-seat'].account(given);
    expect(worksheetVerdict(data).found).toBe('too-close');
    expect(blocksOf(account, 'verdict')[0]?.headline).toMatch(/^Read it again/);
    expect(blocksOf(account, 'ask')[0]).toMatchObject({ field, key: 'Read it again' });
    expect(blocksOf(account, 'said').map(({ sentence }) => sentence)).toContain(`By the sizes alone ${sum}.`);
    expect(blocksOf(account, 'lead')).toEqual([]);
    expect(worksheets['bearing-seat'].cuts(given)).toEqual([]);
    expect(worksheets['bearing-seat'].makes(given)).toEqual([]);
  });

  test('read again it counts, whatever the sum says', () => {
    const { worksheet } = recess;
    const again = { ...worksheet, sizes: { ...worksheet.sizes, directProud: at('.0021', 7) } };
    expect(worksheetVerdict({ ...recess, worksheet: again })).toMatchObject({ found: 'good' });
  });

  test('left out, the sum counts', () => {
    const { directProud: _left, ...sizes } = recess.worksheet.sizes;
    const without = { ...recess, worksheet: { ...recess.worksheet, sizes } };
    // .505 − .507
    expect(worksheetVerdict(without).found).toBe('no-good');
  });

  test('also where the new size was typed by hand', async () => {
    const store = await openForTest();
    const job = worked(await createJob(store, { name: 'Hub', systems: [] }));
    const made = worked(
      await createWorksheet(store, {
        jobId: job.id,
        kind: 'bearing-seat',
        title: 'Hub',
        choices: { bearing: 'seat' },
        sizes: {
          depth: typedSize('.500'),
          width: typedSize('.505'),
          lower: typedSize('.001'),
          upper: typedSize('.003'),
        },
      }),
    );
    worked(await setSize(store, made.id, 'directProud', typedSize('.009')));
    const worksheet = worked(await setSize(store, made.id, 'depth', typedSize('.507')));
    expect(worksheetVerdict({ ...recess, worksheet }).found).toBe('too-close');
  });
});

test('a cut that is to size is worked in by one press, and then the reading is asked for', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Hub', systems: [] }));
  const made = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'bearing-seat',
      title: 'Hub',
      choices: { bearing: 'seat', mockUp: 'no' },
      sizes: {
        depth: typedSize('.500'),
        width: typedSize('.505'),
        lower: typedSize('.001'),
        upper: typedSize('.003'),
      },
    }),
  );
  worked(await setSize(store, made.id, 'directProud', typedSize('.009')));
  worked(
    await giveCutSize(store, {
      worksheetId: made.id,
      place: { sizeName: 'depth' },
      size: typedSize('.507'),
      cutIds: [],
      basis: { readings: [], worksheet: '' },
    }),
  );
  location.hash = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: made.id });
  onScreen(store, <App store={store} />);
  await screen.findByText(/^Read it again: a part was changed since/, {}, PATIENCE);
  const key = screen.getByRole('link', { name: 'Read it again' });
  expect(key.getAttribute('href')).toContain('/directProud');
});

test('a recess cut deeper at the lathe stands there with its new depth to be worked with', () => {
  const depth = typedSize('.500');
  const data = worksheetOf('bearing-seat', {
    choices: { bearing: 'seat' },
    sizes: { depth, width: typedSize('.505'), lower: typedSize('.001'), upper: typedSize('.003') },
  });
  const cut: Cut = {
    ...facing('job', { part: 'recess', worksheetId: 'sheet', of: 'recess-depth', basis: basisNow(data) }),
    id: 'cut',
    state: 'to-size',
    passes: { p: { at: 9, measured: inches('.503') } },
    createdAt: 0,
    touchedAt: 0,
  };
  const [first] = cutSince(data, [cut]).notGiven;
  expect(first).toMatchObject({ place: { sizeName: 'depth' }, name: 'recess' });
});
