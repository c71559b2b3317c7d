import { parse } from 'csv-parse/sync';
import { screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { cutsCsv, readingsCsv } from '../../../src/screens/sheet/csv.ts';
import { SheetScreen } from '../../../src/screens/sheet/sheet-screen.tsx';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createCuts, cutsOf, type NewCut } from '../../../src/store/kept/cuts.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { inForce, logReading, readingsOf } from '../../../src/store/kept/readings.ts';
import type { Feature, Job, ReadWarmth } from '../../../src/store/base/records.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { tool } from '../worksheets/worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };
const warmth: ReadWarmth = { degrees: '104', unit: 'F', material: 'aluminium-6061' };

let store: Store;
let job: Job;
let hub: Feature;
beforeEach(async () => {
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Outfit', systems: ['wheel'] }));
  hub = worked(await createFeature(store, { jobId: job.id, kind: 'length', name: 'Hub' }));
});
afterEach(clearAway);

async function read(typed: string, more: { readonly warmth?: ReadWarmth } = {}): Promise<void> {
  worked(
    await logReading(store, {
      featureId: hub.id,
      jobId: job.id,
      entry: inches(typed),
      tool: inForce(tool('digital-caliper')),
      zeroChecked: false,
      ...more,
    }),
  );
}

async function faceWarm(more: Partial<NewCut> = {}): Promise<void> {
  const sizes = { target: inches('5.000'), lower: inches('4.9985'), upper: inches('5.001') };
  const [cut] = worked(await createCuts(store, [facing(job.id, { ...sizes, ...more })]));
  if (cut) worked(await logPass(store, cut.id, { measured: inches('5.0010'), warmth }, 'to-size'));
}

const rows = (text: string): readonly Record<string, string>[] => parse(text, { columns: true, bom: true });

describe('the printed sheet', () => {
  test('says of a reading how warm it was, that it counts at 20 °C, and what it comes to there', async () => {
    await read('5.0000', { warmth });
    onScreen(store, <SheetScreen jobId={job.id} />);
    expect(await screen.findByText(/Caliper.*, at 104 °F, counts at 20 °C/i, {}, PATIENCE)).toBeTruthy();
    // 104 °F is 40 °C: 5 · 20 · 11.9 millionths = .00119, off 5.0000 is 4.9988
    expect(screen.getByText(/^4\.9988/)).toBeTruthy();
    expect(screen.getByText(/104 °F takes \.0012 in off/)).toBeTruthy();
  });

  test('says it of a reading of the same day too that was taken before it was asked', async () => {
    await read('5.0000');
    await read('5.0000', { warmth });
    onScreen(store, <SheetScreen jobId={job.id} />);
    expect(await screen.findAllByText(/, at 104 °F, counts at 20 °C/, {}, PATIENCE)).toHaveLength(2);
  });

  test('says it of a size measured at the machine', async () => {
    await faceWarm();
    onScreen(store, <SheetScreen jobId={job.id} />);
    expect(await screen.findByText(/at 104 °F, counts at 20 °C/, {}, PATIENCE)).toBeTruthy();
  });

  test('says nothing of it where nothing was said', async () => {
    await read('5.0000');
    onScreen(store, <SheetScreen jobId={job.id} />);
    await screen.findAllByText(/5\.0000/, {}, PATIENCE);
    expect(screen.queryByText(/20 °C/)).toBeNull();
  });
});

describe('the file for a spreadsheet', () => {
  test('has of each reading how warm it was, of what metal, and what it counts as', async () => {
    await read('5.0000');
    await read('5.0000', { warmth });
    const found = rows(
      readingsCsv({ features: [hub], parts: [], readings: await readingsOf(store, hub.id) }),
    );
    // 127 mm · (1 − 20 · 11.9 millionths) = 126.969774; the first lay in the same shop that day.
    expect(
      found.map((row) => [row['warmth'], row['metal'], row['counts at 20 °C, mm']?.slice(0, 10), row['mm']]),
    ).toEqual([
      ['104 F', 'aluminium-6061', '126.969774', '127'],
      ['104 F', 'aluminium-6061', '126.969774', '127'],
    ]);
  });

  test('has nothing in its place where nothing was said', async () => {
    await read('5.0000');
    const [row] = rows(
      readingsCsv({ features: [hub], parts: [], readings: await readingsOf(store, hub.id) }),
    );
    expect([row?.['warmth'], row?.['metal'], row?.['counts at 20 °C, mm']]).toEqual(['', '', '']);
  });

  test('has the same of a size measured at the machine', async () => {
    await faceWarm();
    const [row] = rows(cutsCsv(await cutsOf(store, job.id), new Set()));
    // 5.0010 in = 127.0254 mm · (1 − 238 millionths) = 126.99516795
    expect(row?.['warmth']).toBe('104 F');
    expect(Object.entries(row ?? {}).find(([head]) => head.includes('20 °C'))?.[1]).toMatch(/^126\.995167/);
  });
});
