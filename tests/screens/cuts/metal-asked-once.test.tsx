import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { hrefOf, type Address } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { cutsOf } from '../../../src/store/kept/cuts.ts';
import { changeFeature, createFeature, getFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { logReading } from '../../../src/store/kept/readings.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { Feature, Job, SizeInput, Worksheet } from '../../../src/store/base/records.ts';
import { inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { partOf, typedSize } from '../worksheets/worksheet-for-test.ts';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
let job: Job;
let spacer: Feature;
beforeEach(async () => {
  location.hash = '';
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  spacer = worked(await createFeature(store, { jobId: job.id, kind: 'length', name: 'Spacer' }));
  worked(
    await logReading(store, {
      featureId: spacer.id,
      jobId: job.id,
      entry: inches('.385'),
      tool: micrometer(),
      zeroChecked: true,
    }),
  );
});
afterEach(clearAway);

function micrometer() {
  const found = usualTools.find(({ id }) => id === 'micrometer-0-1');
  if (!found) throw new Error('the shop has no 0–1 in micrometer');
  return found;
}

/** Sleeve .970 with .583 and the spacer of .385 in it: .002 of float, so the spacer is faced. */
async function tightStack(size: SizeInput): Promise<Worksheet> {
  return worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes: { fixed: typedSize('.970'), lower: typedSize('.008'), upper: typedSize('.012') },
      choices: { want: 'float' },
      parts: {
        a: { ...partOf(1, typedSize('.583')), adjustable: false },
        b: { ...partOf(2, size), name: 'spacer' },
      },
    }),
  );
}

function open(address: Address): void {
  location.hash = hrefOf(address);
  if (document.querySelector('.app') === null) onScreen(store, <App store={store} />);
}

const link = (name: string | RegExp) => screen.findByRole('link', { name }, PATIENCE);
const button = (name: string | RegExp) => screen.findByRole('button', { name }, PATIENCE);

/** Pressed once it may be. */
async function press(found: Promise<HTMLElement>): Promise<void> {
  const target = await found;
  await waitFor(() => expect(target.hasAttribute('disabled')).toBe(false), PATIENCE);
  fireEvent.click(target);
}

const fromReadings = (): SizeInput => ({ from: 'feature', featureId: spacer.id });

async function onTheList(worksheet: Worksheet) {
  await press(button('Put on the cut list'));
  await waitFor(async () => expect(await cutsOf(store, job.id)).toHaveLength(1), PATIENCE);
  const [cut] = await cutsOf(store, job.id);
  if (!cut) throw new Error(`no cut of ${worksheet.title}`);
  return cut;
}

const cuttingIt = ({ id }: Worksheet): Address => ({
  at: 'worksheet',
  jobId: job.id,
  worksheetId: id,
  field: 'cuts',
});
const warmthOfSpacer = (): Address => ({
  at: 'feature',
  jobId: job.id,
  featureId: spacer.id,
  choosing: 'warm',
});

test('said where the cut is taken over, the metal is not asked again for the warmth of its readings', async () => {
  const worksheet = await tightStack(fromReadings());
  open(cuttingIt(worksheet));
  fireEvent.click(await link(/^Material: material not said/));
  await press(button(/^Stainless 303/));
  await link(/^Material: Stainless 303/);
  await onTheList(worksheet);
  expect((await getFeature(store, spacer.id))?.material).toBe('stainless-303');
  open(warmthOfSpacer());
  await screen.findByLabelText('Temperature, °F', {}, PATIENCE);
  expect(await button('Made of: Stainless 303')).toBeTruthy();
});

test('said with the readings, the metal stands at the cut, and is changed there by one press', async () => {
  worked(await changeFeature(store, spacer.id, { material: 'aluminium-6061' }));
  const worksheet = await tightStack(fromReadings());
  open(cuttingIt(worksheet));
  await link(/^Material: Aluminum 6061/);
  const cut = await onTheList(worksheet);
  expect(cut.material).toBe('aluminium-6061');
  open({ at: 'cut', jobId: job.id, cutId: cut.id, field: 'material' });
  await press(button(/^Stainless 303/));
  await waitFor(
    async () => expect((await cutsOf(store, job.id))[0]?.material).toBe('stainless-303'),
    PATIENCE,
  );
  // A part is of one metal, wherever it is asked.
  expect((await getFeature(store, spacer.id))?.material).toBe('stainless-303');
});

test('said after the cut stood on the list, the lathe knows the metal and gives a speed', async () => {
  const worksheet = await tightStack(fromReadings());
  open(cuttingIt(worksheet));
  const cut = await onTheList(worksheet);
  expect(cut.material).toBeUndefined();
  open({ at: 'lathe', jobId: job.id, cutId: cut.id });
  await screen.findByText('which metal?', {}, PATIENCE);
  worked(await changeFeature(store, spacer.id, { material: 'stainless-303' }));
  await waitFor(() => expect(screen.queryByText('which metal?')).toBeNull(), PATIENCE);
});

test('of a typed size that was cut, the warmth is asked without the metal', async () => {
  const typed = { ...typedSize('4.412'), tool: caliper() };
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Hub',
      sizes: { fixed: typedSize('4.970'), lower: typedSize('.008'), upper: typedSize('.012') },
      choices: { want: 'float' },
      parts: {
        a: { ...partOf(1, typedSize('.556')), adjustable: false },
        b: { ...partOf(2, typed), name: 'tube' },
      },
    }),
  );
  open(cuttingIt(worksheet));
  fireEvent.click(await link(/^Material: material not said/));
  await press(button(/^Aluminum 6061/));
  await link(/^Material: Aluminum 6061/);
  await onTheList(worksheet);
  open({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: 'warm' });
  fireEvent.input(await screen.findByLabelText('Temperature, °F', {}, PATIENCE), { target: { value: '95' } });
  await press(button('Use it'));
  await screen.findByRole('heading', { name: 'Warmth is said' }, PATIENCE);
  expect((await getWorksheet(store, worksheet.id))?.parts['b']?.size).toMatchObject({
    warmth: { degrees: '95', unit: 'F', material: 'aluminium-6061' },
  });
});

test('asked by a worksheet, the metal is not asked again with the readings of its bore', async () => {
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'Arm bore' }));
  worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'bushing',
      title: 'Arm',
      sizes: { bore: { from: 'feature', featureId: bore.id } },
      choices: { partMetal: 'aluminium-6061' },
    }),
  );
  open({ at: 'feature', jobId: job.id, featureId: bore.id, choosing: 'warm' });
  await screen.findByLabelText('Temperature, °F', {}, PATIENCE);
  expect(await button('Made of: Aluminum 6061')).toBeTruthy();
});

/** It reads 4.412 in to .001. */
function caliper() {
  const found = usualTools.find(({ id }) => id === 'digital-caliper');
  if (!found) throw new Error('the shop has no caliper');
  return found;
}
