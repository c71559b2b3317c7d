import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { checkFromOffer } from '../../../src/screens/fit-up/check-from-offer.ts';
import {
  loadChecks,
  loadFitUp,
  uncheckedWorksheets,
  worksheetData,
} from '../../../src/screens/fit-up/check-data.ts';
import { checkNote } from '../../../src/screens/fit-up/check-note.ts';
import { offersOf } from '../../../src/screens/fit-up/offers.ts';
import { changeCheck, createCheck, lastTake, retake } from '../../../src/store/kept/checks.ts';
import { createFeature, getFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, strikeOut } from '../../../src/store/kept/readings.ts';
import type { Check, Id, SizeInput, Worksheet } from '../../../src/store/base/records.ts';
import { createWorksheet, removeWorksheet, setPart, setSize } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, worked } from '../../store/open-for-test.ts';
import { partOf, typedSize } from '../worksheets/worksheet-for-test.ts';

let store: Store;
let jobId: Id;
let worksheet: Worksheet;
let spacerId: Id;

const tool = (id: string) => {
  const found = usualTools.find((one) => one.id === id);
  if (!found) throw new Error(`no tool ${id}`);
  return found;
};

async function log(featureId: Id, typed: string, toolId = 'test-indicator') {
  const entry = readEntry(typed, { unit: 'in' });
  if (!entry.ok) throw new Error(typed);
  return worked(
    await logReading(store, { featureId, jobId, entry: entry.value, tool: tool(toolId), zeroChecked: false }),
  );
}

const ofFeature = (featureId: Id): SizeInput => ({ from: 'feature', featureId });

/** The stack's first offer, its float, as a check. */
async function floatCheck(unit: 'in' | 'mm' = 'in'): Promise<Check> {
  const data = await loadFitUp(store, jobId);
  const stack = data?.worksheets.find(({ id }) => id === worksheet.id);
  const [offer] = data && stack ? offersOf(worksheetData(data, stack, unit)) : [];
  if (!data || !stack || !offer) throw new Error('the stack offers its float');
  return worked(await createCheck(store, checkFromOffer(offer, { ...data, worksheet: stack, unit })));
}

const only = async () => {
  const [known] = await loadChecks(store, jobId);
  if (!known) throw new Error('one check');
  return known;
};

const featureOf = (check: Check) => lastTake(check)?.featureId ?? '';

beforeEach(async () => {
  store = await openForTest();
  jobId = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] })).id;
  spacerId = worked(await createFeature(store, { jobId, kind: 'length', name: 'Spacer' })).id;
  await log(spacerId, '.9600', 'micrometer-0-1');
  worksheet = worked(
    await createWorksheet(store, {
      jobId,
      kind: 'spacer-stack',
      title: 'Bracket float',
      sizes: { fixed: typedSize('.970') },
      choices: { want: 'float' },
      parts: { a: partOf(1, ofFeature(spacerId)) },
    }),
  );
});
afterEach(closeAll);

describe('a check of a worksheet', () => {
  test('has the worksheet’s limits and is not done; the worksheet is no longer without a check', async () => {
    expect((await uncheckedWorksheets(store, jobId)).map(({ title }) => title)).toEqual(['Bracket float']);
    await floatCheck();
    const known = await only();
    expect(known.check.lower?.typed).toBe('.008 in');
    expect(known).toMatchObject({
      state: { found: 'not-done' },
      older: false,
      worksheet: { title: 'Bracket float' },
    });
    expect(await uncheckedWorksheets(store, jobId)).toEqual([]);
  });

  test('is found to be what its readings prove, without those struck out', async () => {
    const check = await floatCheck();
    const wrong = await log(featureOf(check), '.0040');
    expect((await only()).state.found).toBe('no-good');
    worked(await strikeOut(store, wrong.id, 'burr'));
    expect((await only()).state.found).toBe('not-done');
    await log(featureOf(check), '.0100');
    const known = await only();
    expect(known.state.found).toBe('good');
    expect(known.takes[0]?.readings).toHaveLength(2);
  });

  test('keeps an earlier go with its verdict when it is taken again', async () => {
    const check = await floatCheck();
    await log(featureOf(check), '.0040');
    const again = worked(await retake(store, check.id));
    expect((await only()).state).toMatchObject({ found: 'not-done', wants: 'retake' });
    await log(featureOf(again), '.0100');
    const known = await only();
    expect(known.state.found).toBe('good');
    expect(known.takes.map(({ result }) => result.kind === 'judged' && result.verdict.kind)).toEqual([
      'no-good',
      'good',
    ]);
  });

  test('is not out of date because the worksheet was given its own reading', async () => {
    const check = await floatCheck();
    await log(featureOf(check), '.0040');
    worked(await setSize(store, worksheet.id, 'direct', ofFeature(featureOf(check))));
    expect((await only()).older).toBe(false);
  });

  test('is not out of date while the worksheet gives the same limits, whatever was measured again', async () => {
    await floatCheck();
    await log(spacerId, '.9610', 'micrometer-0-1');
    worked(await setPart(store, worksheet.id, 'a', { ...partOf(1, ofFeature(spacerId)), adjustable: false }));
    expect((await only()).older).toBe(false);
  });

  test('is out of date once the worksheet gives other limits, and knows which', async () => {
    const check = await floatCheck();
    worked(await setSize(store, worksheet.id, 'lower', typedSize('.006')));
    const known = await only();
    expect(known.older).toBe(true);
    expect(known.newLimits?.source).toBe('your own limits');
    worked(
      await changeCheck(store, check.id, {
        lower: typedSize('.006'),
        limitsFrom: 'your own limits',
        ...(known.newBasis && { basis: known.newBasis }),
      }),
    );
    expect((await only()).older).toBe(false);
  });

  test('made in millimetres has the metric usual limits, and stays so when inches are shown', async () => {
    await floatCheck('mm');
    const known = await only();
    expect(known.check.lower?.typed).toBe('0.20 mm');
    await log(spacerId, '.9610', 'micrometer-0-1');
    expect((await only()).older).toBe(false);
  });

  test('whose worksheet no longer asks for it says so; of a removed worksheet it stands alone', async () => {
    await floatCheck();
    worked(await setSize(store, worksheet.id, 'fixed', undefined));
    const known = await only();
    expect(known.older).toBe(true);
    expect(known).not.toHaveProperty('newLimits');
    worked(await removeWorksheet(store, worksheet.id));
    const alone = await only();
    expect(alone.older).toBe(false);
    expect(alone).not.toHaveProperty('worksheet');
  });

  test('is nobody’s in a job that isn’t there', async () => {
    expect(await loadChecks(store, 'nowhere')).toEqual([]);
    expect(await uncheckedWorksheets(store, 'nowhere')).toEqual([]);
  });
});

describe('the pad while a check is read', () => {
  const noteFor = async (check: Check, toolId: string) => {
    const feature = await getFeature(store, featureOf(check));
    return feature && checkNote(store, feature, tool(toolId), 'in');
  };

  test('says before the first reading what is wanted, or that this tool can’t prove it', async () => {
    const check = await floatCheck();
    expect(await noteFor(check, 'test-indicator')).toEqual({ said: 'Want .008 to .012.' });
    expect((await noteFor(check, 'digital-caliper-inside'))?.said).toMatch(
      /^The digital caliper, inside jaws can't prove this: .* The .* can\.$/,
    );
  });

  test('says after it what was found', async () => {
    const check = await floatCheck();
    await log(featureOf(check), '.0040');
    expect(await noteFor(check, 'test-indicator')).toEqual({
      said: 'Too tight: float .004, want .008 to .012.',
      verdict: { kind: 'no-good', word: 'too tight' },
    });
  });

  test('says of an earlier go that a later one counts', async () => {
    const check = await floatCheck();
    worked(await retake(store, check.id));
    expect(await noteFor(check, 'test-indicator')).toEqual({
      said: 'An earlier go at this check; a later one counts.',
    });
  });
});
