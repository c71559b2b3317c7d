import { sizeStep } from '../../engine/length/metal-on.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { RunsWith } from '../../engine/worksheets/runs-with.ts';
import { waysOut, type WaysOut, type WaysOutQuestion } from '../../engine/ways-out/ways-out.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { drawerPieces } from '../../store/kept/drawer.ts';
import { featuresOf } from '../../store/kept/features.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import type { Worksheet } from '../../store/base/records.ts';
import { getWorksheet } from '../../store/kept/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { usualDial } from '../common/use-dial.ts';
import { givenOf } from '../worksheets/given-of.ts';
import { shimsOnHand } from '../worksheets/shim-question.ts';
import type { LatheCut } from './use-lathe-cut.ts';

/** The ways out with the figures in hand, and the worksheet the cut came from, where it is still there. */
export type WaysOutHere = { readonly ways: WaysOut; readonly worksheet?: Worksheet };

export function useWaysOut(at: LatheCut, unit: ShownUnit): WaysOutHere | undefined {
  const roundCut = useLive(
    `ways-out/${at.cut.id}`,
    ['worksheets', 'features', 'readings', 'drawer', 'drawerCounts'],
    (store) => readRoundCut(store, at, unit),
  );
  if (!roundCut) return undefined;
  const { worksheet } = roundCut;
  const ways = waysOut(questionFor(at, roundCut, unit));
  return ways && { ways, ...(worksheet && { worksheet }) };
}

/** What lies round a cut: the worksheet it came from, what that knows, and the shims there are. */
type RoundCut = {
  readonly worksheet: Worksheet | undefined;
  readonly runsWith: RunsWith;
  readonly drawer: WaysOutQuestion['drawer'];
};

async function readRoundCut(store: Store, at: LatheCut, unit: ShownUnit): Promise<RoundCut> {
  const { job, cut } = at;
  const [worksheet, features, readings, drawer] = await Promise.all([
    cut.worksheetId === undefined ? undefined : getWorksheet(store, cut.worksheetId),
    featuresOf(store, job.id),
    readingsOfJob(store, job.id),
    drawerPieces(store),
  ]);
  const known = { job, features, readings, drawer, tools: at.question.tools, unit, dial: usualDial };
  return {
    worksheet,
    // A cut of one's own comes from no worksheet: nothing is known of what it runs with.
    runsWith: worksheet
      ? (worksheetOf(worksheet.kind)?.runsWith(givenOf({ ...known, worksheet }), cut.of) ?? {})
      : {},
    drawer: shimsOnHand(known),
  };
}

function questionFor(at: LatheCut, { runsWith, drawer }: RoundCut, unit: ShownUnit): WaysOutQuestion {
  const { cut, dial, last, progress, question } = at;
  const metal = materialNamed(cut.material);
  return {
    of: cut.of,
    target: question.target,
    lower: question.lower,
    upper: question.upper,
    operation: cut.operation,
    limitsFrom: cut.limitsFrom,
    present: progress.present ?? question.target,
    tools: question.tools,
    unit,
    step: sizeStep(cut.of, dial),
    finish: progress.takes.finish,
    ...(drawer && { drawer }),
    ...(last?.[1].tool && { tool: last[1].tool }),
    ...(metal && { partMetal: metal }),
    ...runsWith,
  };
}
