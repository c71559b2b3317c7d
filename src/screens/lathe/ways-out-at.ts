import { sizeStep } from '../../engine/length/metal-on.ts';
import { materials } from '../../engine/material/tables/materials.ts';
import { waysOut, type WaysOut, type WaysOutQuestion } from '../../engine/ways-out/ways-out.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { drawerPieces } from '../../store/drawer.ts';
import { featuresOf } from '../../store/features.ts';
import type { Store } from '../../store/open-store.ts';
import { readingsOfJob } from '../../store/readings.ts';
import type { Worksheet } from '../../store/records.ts';
import { getWorksheet } from '../../store/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { usualDial } from '../common/use-settings.ts';
import { isJoint } from '../worksheets/fit-fields.ts';
import { fitQuestion } from '../worksheets/fit-question.ts';
import { shimsOnHand } from '../worksheets/shim-question.ts';
import { exactSize, knownSize, type WorksheetData } from '../worksheets/worksheet-data.ts';
import type { LatheCut } from './use-lathe-cut.ts';

/** The ways out with the figures in hand, and the worksheet the cut came from, where it is still there. */
export type WaysOutHere = { readonly ways: WaysOut; readonly worksheet?: Worksheet };

export function useWaysOut(at: LatheCut, unit: ShownUnit): WaysOutHere | undefined {
  const { worksheetId } = at.cut;
  const data = useLive(
    `ways-out/${at.cut.id}`,
    ['worksheets', 'features', 'readings', 'drawer', 'drawerCounts'],
    (store) => readAround(store, { at, unit, worksheetId }),
  );
  if (!data) return undefined;
  const ways = waysOut(questionFor(at, data));
  const isThere = data.worksheet.id !== '';
  return ways && { ways, ...(isThere && { worksheet: data.worksheet }) };
}

type Around = {
  readonly at: LatheCut;
  readonly unit: ShownUnit;
  readonly worksheetId: string | undefined;
};

async function readAround(store: Store, { at, unit, worksheetId }: Around): Promise<WorksheetData> {
  const { job, question } = at;
  const [worksheet, features, readings, drawer] = await Promise.all([
    worksheetId === undefined ? undefined : getWorksheet(store, worksheetId),
    featuresOf(store, job.id),
    readingsOfJob(store, job.id),
    drawerPieces(store),
  ]);
  return {
    job,
    worksheet: worksheet ?? nothingGiven(job.id),
    features,
    readings,
    drawer,
    tools: question.tools,
    unit,
    dial: usualDial,
  };
}

/** A cut of one's own comes from no worksheet: nothing is known of what it runs with. */
function nothingGiven(jobId: string): Worksheet {
  return {
    id: '',
    jobId,
    kind: '',
    title: '',
    sizes: {},
    choices: {},
    parts: {},
    createdAt: 0,
    touchedAt: 0,
  };
}

function questionFor(at: LatheCut, data: WorksheetData): WaysOutQuestion {
  const { cut, dial, last, progress, question } = at;
  const { sizes, choices, kind } = data.worksheet;
  const mate = knownSize(data, cut.of === 'bore' ? sizes['pin'] : sizes['bore']);
  const wall = exactSize(data, sizes['wall']);
  const depth = exactSize(data, sizes['boreLength'] ?? sizes['length']);
  const fit = kind === 'fit' ? fitQuestion(data) : undefined;
  const metal = materials.find(({ id }) => id === (choices['partMetal'] ?? cut.material));
  return {
    of: cut.of,
    target: question.target,
    lower: question.lower,
    upper: question.upper,
    operation: cut.operation,
    limitsFrom: cut.limitsFrom,
    present: progress.present ?? question.target,
    tools: question.tools,
    step: sizeStep(cut.of, dial),
    finish: progress.takes.finish,
    drawer: shimsOnHand(data),
    ...(last?.[1].tool && { tool: last[1].tool }),
    ...(mate && { mate }),
    ...(isJoint(choices['joint']) && { joint: choices['joint'] }),
    ...(fit && { fitClass: fit.fitClass }),
    ...(wall && { wall }),
    ...(depth && { depth }),
    ...(metal && { partMetal: metal }),
  };
}
