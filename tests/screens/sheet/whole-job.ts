import { Buffer } from 'node:buffer';
import { readEntry, type Entry } from '../../../src/engine/length/entry.ts';
import type { Unit } from '../../../src/engine/length/length.ts';
import { usualTools, type ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import { createCheck, lastTake, retake, sayCheckSeen } from '../../../src/store/kept/checks.ts';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { logPass, strikeOutPass } from '../../../src/store/kept/cut-passes.ts';
import { addDemo } from '../../store/add-demo.ts';
import { addMoney, moneyOf, removeMoney } from '../../../src/store/kept/money.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { createPart } from '../../../src/store/kept/parts.ts';
import { addPhoto } from '../../../src/store/kept/photos.ts';
import { inForce, logReading } from '../../../src/store/kept/readings.ts';
import { addRecheck, setOdometer } from '../../../src/store/kept/rechecks.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { addSteps, markDone } from '../../../src/store/kept/steps.ts';
import { worked } from '../../store/open-for-test.ts';

export const wholeJobId = 'demo-outfit-7';

/** The demo's first job with something in every place: what a sheet has to hold. */
export async function makeWholeJob(store: Store): Promise<void> {
  worked(await addDemo(store));
  await putSetting(store, 'currency', '$');
  worked(await setOdometer(store, wholeJobId, { reading: 12_480, unit: 'mi' }));
  worked(await createPart(store, { jobId: wholeJobId, name: 'Stand-in axle bar', origin: 'mock-up' }));
  await addPhotoOfIt(store);
  await cutIt(store);
  await checkIt(store);
  await assembleIt(store);
  worked(
    await addRecheck(store, {
      jobId: wholeJobId,
      what: 'Bracket bolts, their torque',
      afterDays: 7,
      afterDistance: 50,
    }),
  );
  // The total is this test's own.
  for (const { id } of await moneyOf(store, wholeJobId)) {
    // oxlint-disable-next-line no-await-in-loop
    worked(await removeMoney(store, id));
  }
  worked(await addMoney(store, { jobId: wholeJobId, what: 'Bearings, two', amount: '41.90' }));
  worked(await addMoney(store, { jobId: wholeJobId, what: 'Lathe work', hours: '2.5', rate: '65' }));
}

// A plain grey picture, 240 × 180, made for this test.
const PICTURE =
  'iVBORw0KGgoAAAANSUhEUgAAAPAAAAC0BAAAAABKBxM1AAAABGdBTUEAALGPC/xhBQAAAAJiS0dEAA86Mj6jAAAAB3RJTUUH6gsZ' +
  'CxUbkE97WQAAAGVJREFUeNrtzTEBAAAMAiD7N7CtMXYMCpAeiVgsFovFYrFYLBaLxWKxWCwWi8VisVgsFovFYrFYLBaLxWKxWCwW' +
  'i8VisVgsFovFYrFYLBaLxWKxWCwWi8VisVgsFovFYrFYLP4YD8MWcE/nOfS1AAAAJXRFWHRkYXRlOmNyZWF0ZQAyMDI2LTExLTI1' +
  'VDExOjIxOjI3KzAwOjAwEjgZQgAAACV0RVh0ZGF0ZTptb2RpZnkAMjAyNi0xMS0yNVQxMToyMToyNyswMDowMGNlof4AAAAASUVO' +
  'RK5CYII=';

async function addPhotoOfIt(store: Store): Promise<void> {
  const bytes = Uint8Array.from(Buffer.from(PICTURE, 'base64')).buffer;
  const owner = { store: 'jobs', id: wholeJobId } as const;
  const picture = { mime: 'image/png', width: 240, height: 180, preview: bytes, bytes };
  worked(await addPhoto(store, { owner, jobId: wholeJobId, note: 'Brake side', ...picture }));
}

async function cutIt(store: Store): Promise<void> {
  const common = { jobId: wholeJobId, cuttingTool: 'hss', machine: 'lathe' } as const;
  const [spacer] = worked(
    await createCuts(store, [
      {
        ...common,
        worksheetId: 'demo-bracket-float',
        name: 'Lathe spacer, face to length',
        part: 'lathe spacer',
        operation: 'face',
        of: 'length',
        blank: entry('1.1452'),
        target: entry('1.1380'),
        lower: entry('1.1366'),
        upper: entry('1.1394'),
        limitsFrom: 'bracket float worksheet',
        material: 'alloy-steel',
      },
      {
        ...common,
        name: 'Lathe bushing, turn outside',
        part: 'bushing',
        operation: 'turn',
        of: 'outside',
        target: entry('.5010'),
        lower: entry('.5008'),
        upper: entry('.5012'),
        limitsFrom: 'FN2 of ANSI B4.1',
      },
    ]),
  );
  if (!spacer) throw new Error('no cut was made');
  const pass = async (measured: string, asked?: string) =>
    worked(
      await logPass(
        store,
        spacer.id,
        { measured: entry(measured), tool: tool('micrometer-1-2'), ...(asked && { asked: entry(asked) }) },
        'cutting',
      ),
    );
  await pass('1.1452');
  const slipped = await pass('1.1254', '.0050');
  const [slippedId] =
    Object.entries(slipped.passes).find(([, { measured }]) => measured.typed === '1.1254') ?? [];
  worked(await strikeOutPass(store, spacer.id, slippedId ?? '', 'chip under the anvil'));
  await pass('1.1404', '.0050');
  worked(
    await logPass(
      store,
      spacer.id,
      { measured: entry('1.1381'), tool: tool('micrometer-1-2'), asked: entry('.0024') },
      'to-size',
    ),
  );
}

async function checkIt(store: Store): Promise<void> {
  const float = worked(
    await createCheck(store, {
      jobId: wholeJobId,
      worksheetId: 'demo-bracket-float',
      name: 'Bracket float, far side',
      by: 'gap',
      lower: entry('.008'),
      upper: entry('.012'),
      limitsFrom: 'bracket float worksheet',
      how: 'Push the bracket to one side, feel the gap at the other.',
    }),
  );
  await read(store, lastTake(float)?.featureId, '.0035');
  const again = worked(await retake(store, float.id));
  for (const typed of ['.0102', '.0101', '.0102']) {
    // oxlint-disable-next-line no-await-in-loop
    await read(store, lastTake(again)?.featureId, typed);
  }
  const hose = worked(
    await createCheck(store, {
      jobId: wholeJobId,
      name: 'Brake hose at full lock and travel',
      by: 'by-eye',
      limitsFrom: 'common practice, no source',
      how: 'Turn to both stops, push the arm up and down.',
    }),
  );
  worked(await sayCheckSeen(store, hose.id, lastTake(hose)?.id ?? '', 'holds', '12 mm clear of the tyre'));
}

async function read(store: Store, featureId: string | undefined, typed: string): Promise<void> {
  if (featureId === undefined) throw new Error('the check has no feature');
  worked(
    await logReading(store, {
      featureId,
      jobId: wholeJobId,
      entry: entry(typed),
      tool: tool('test-indicator'),
      zeroChecked: true,
    }),
  );
}

async function assembleIt(store: Store): Promise<void> {
  const [first] = worked(
    await addSteps(store, [
      {
        jobId: wholeJobId,
        text: 'Sleeve through the bracket, outer spacer behind it',
        orientation: 'chamfer to the hub',
        grease: 'bearing grease, thin',
        worksheetId: 'demo-bracket-float',
      },
      {
        jobId: wholeJobId,
        text: 'Nut of the axle',
        torque: { typed: '85', unit: 'lbf-ft', source: 'service manual, section 9, page 4' },
        locker: 'medium',
        cureHours: '24',
        cotterPin: true,
      },
    ]),
  );
  worked(await markDone(store, first?.id ?? '', 'R. Marsh'));
}

function entry(typed: string, unit: Unit = 'in'): Entry {
  const read = readEntry(typed, { unit });
  if (!read.ok) throw new Error(`${typed} can't be typed`);
  return read.value;
}

function tool(id: string): ToolInForce {
  const found = usualTools.find((one) => one.id === id);
  if (!found) throw new Error(`no tool ${id}; there are ${usualTools.map((one) => one.id).join(', ')}`);
  return inForce(found);
}
