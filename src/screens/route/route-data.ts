import { cutName } from '../../engine/thread/tap-name.ts';
import type { RouteQuestion } from '../../engine/job/route.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { jobsChangedSinceSigning } from '../../store/kept/signed-since.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Id, Worksheet } from '../../store/base/records.ts';
import { signOffOf } from '../assembly/sign-off-data.ts';
import { dueNow, isDue } from '../assembly/recheck-data.ts';
import { isStepChanged } from '../assembly/step-standing.ts';
import { countsStill } from '../cuts/cut-words.ts';
import { knownChecks, withoutCheck } from '../fit-up/check-data.ts';
import { getLines } from '../get/get-data.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import { isElsewhere } from '../readings/elsewhere.ts';
import { readSheet, type SheetData } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import { givenOf } from '../worksheets/given-of.ts';
import { provedVerdict } from '../worksheets/proved-verdict.ts';
import { doubtsOf } from '../worksheets/worksheet-data.ts';

/** A job read whole, and what its route asks of it. */
export type RouteData = { readonly data: SheetData; readonly question: RouteQuestion };

export async function readRoute(store: Store, jobId: Id, now: number): Promise<RouteData | undefined> {
  const data = await readSheet(store, jobId);
  if (!data) return undefined;
  const changed = data.job.signedOff && (await jobsChangedSinceSigning(store, [jobId]));
  return { data, question: questionOf(data, now, changed?.has(jobId)) };
}

function questionOf(data: SheetData, now: number, changed: boolean | undefined): RouteQuestion {
  const { job, cuts, steps, rechecks } = data;
  const checks = knownChecks(data);
  return {
    sizes: sizesOf(data),
    worksheets: data.worksheets.map((worksheet) => {
      const known = worksheetDataOf(worksheet, data);
      const { found } = provedVerdict(known, { checks, cuts });
      return {
        id: worksheet.id,
        name: worksheet.title,
        found,
        asksForCut: found !== 'good' && found !== 'no-answer' && asksForCut(worksheet, data),
      };
    }),
    cuts: cuts.map((cut) => ({
      id: cut.id,
      name: cutName(cut),
      state: cut.state,
      made: cut.made,
      older: countsStill(cut) && isOlderThanSizes({ of: 'cut', cut }, data),
    })),
    gets: getLines(data).map(({ what, isThere }) => ({ what, isThere })),
    checks: checks.map(({ check, state, older, readBefore }) => ({
      id: check.id,
      name: check.name,
      found: state.found,
      older: older || (readBefore && state.found !== 'not-done'),
    })),
    unchecked: withoutCheck(data).map(({ id, title }) => ({ id, name: title })),
    steps: steps.map((step) => ({
      id: step.id,
      name: step.text,
      done: step.done !== undefined,
      changed: isStepChanged(step, data),
    })),
    blockers: signOffOf(data, { now, unreadable: 0 }).blockers.length,
    ...(job.signedOff && { signed: { changed: changed === true } }),
    rechecksDue: rechecks
      .filter((recheck) => !recheck.done && isDue(dueNow(recheck, job, now)))
      .map(({ id, what }) => ({ id, name: what })),
  };
}

/** The job's own sizes; what was read for a check stands with the check. */
function sizesOf(data: SheetData): RouteQuestion['sizes'] {
  const doubted = new Set(
    data.worksheets.flatMap((worksheet) =>
      doubtsOf(worksheetDataOf(worksheet, data)).map(({ feature }) => feature.id),
    ),
  );
  return data.features
    .filter(({ checkId }) => checkId === undefined)
    .map((feature) => {
      const { id, name } = feature;
      const own = data.readings.filter(({ featureId }) => featureId === id);
      return { id, name, doubted: doubted.has(id), ...(isElsewhere(feature, own) && { ofAnother: true }) };
    });
}

/** Its answer asks for metal to be taken, and no cut of it is on the list. */
function asksForCut(worksheet: Worksheet, data: SheetData): boolean {
  const isListed = data.cuts.some((cut) => cut.worksheetId === worksheet.id && countsStill(cut));
  const kind = worksheetOf(worksheet.kind);
  return !isListed && kind !== undefined && kind.cuts(givenOf(worksheetDataOf(worksheet, data))).length > 0;
}
