import { readEntry, type Entry } from '../../../src/engine/length/entry.ts';
import { usualTools, type ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { inForce, logReading } from '../../../src/store/kept/readings.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import type { Id } from '../../../src/store/base/records.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { worked } from '../../store/open-for-test.ts';

/** What a small job leaves behind: one worksheet, a few readings, one cut. Invented. */
export async function makeSmallJob(store: Store): Promise<Id> {
  const { id: jobId } = worked(
    await createJob(store, { name: 'Idler pulley', what: 'Spacer between the bearings', systems: [] }),
  );
  const sleeve = await readLength(store, jobId, 'Sleeve', ['2.4120', '2.4125', '2.4115'], 'digital-caliper');
  const spacer = await readLength(store, jobId, 'Spacer', ['1.1550', '1.1549', '1.1551']);
  // Read, and not in the stack any more.
  await readLength(store, jobId, 'Old washer', ['.0615'], 'micrometer-0-1');
  const { id: worksheetId } = worked(
    await createWorksheet(store, {
      jobId,
      kind: 'spacer-stack',
      title: 'Pulley between its cheeks',
      sizes: {
        fixed: { from: 'feature', featureId: sleeve },
        lower: { from: 'typed', ...entry('.008') },
        upper: { from: 'typed', ...entry('.012') },
        aim: { from: 'typed', ...entry('.010') },
      },
      choices: { want: 'float', fixedName: 'sleeve', cutPart: 'spacer' },
      parts: {
        hub: {
          name: 'hub',
          order: 1,
          count: 1,
          adjustable: false,
          size: { from: 'typed', ...entry('1.279') },
        },
        spacer: {
          name: 'spacer',
          order: 2,
          count: 1,
          adjustable: true,
          size: { from: 'feature', featureId: spacer },
        },
      },
    }),
  );
  await cutIt(store, jobId, worksheetId);
  return jobId;
}

// 2.412 − 1.279 − 1.155 = −.022; .010 of float wants 1.123.
async function cutIt(store: Store, jobId: Id, worksheetId: Id): Promise<void> {
  const [cut] = worked(
    await createCuts(store, [
      {
        jobId,
        worksheetId,
        name: 'Spacer, face to length',
        part: 'spacer',
        operation: 'face',
        of: 'length',
        cuttingTool: 'hss',
        machine: 'lathe',
        material: 'stainless-303',
        blank: entry('1.1550'),
        target: entry('1.1230'),
        lower: entry('1.1214'),
        upper: entry('1.1246'),
        limitsFrom: 'pulley worksheet',
      },
    ]),
  );
  if (!cut) throw new Error('no cut was made');
  for (const [measured, asked] of [['1.1550'], ['1.1310', '.0240'], ['1.1262', '.0050']] as const) {
    const pass = {
      measured: entry(measured),
      tool: tool('micrometer-1-2'),
      ...(asked && { asked: entry(asked) }),
    };
    // oxlint-disable-next-line no-await-in-loop
    worked(await logPass(store, cut.id, pass, 'cutting'));
  }
}

async function readLength(
  store: Store,
  jobId: Id,
  name: string,
  sizes: readonly string[],
  toolId = 'micrometer-1-2',
): Promise<Id> {
  const { id: featureId } = worked(await createFeature(store, { jobId, name, kind: 'length' }));
  for (const size of sizes) {
    // oxlint-disable-next-line no-await-in-loop
    worked(
      await logReading(store, {
        featureId,
        jobId,
        entry: entry(size),
        tool: tool(toolId),
        place: 'middle',
        zeroChecked: true,
      }),
    );
  }
  return featureId;
}

function entry(typed: string): Entry {
  return worked(readEntry(typed, { unit: 'in' }));
}

function tool(id: string): ToolInForce {
  const found = usualTools.find((one) => one.id === id);
  if (!found) throw new Error(`the shop has no ${id}`);
  return inForce(found);
}
