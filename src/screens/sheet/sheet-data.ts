import { checksOf } from '../../store/checks.ts';
import { cutsOf } from '../../store/cuts.ts';
import { drawerPieces } from '../../store/drawer.ts';
import { drawnMark, drawnStores } from '../../store/drawn-mark.ts';
import { featuresOf } from '../../store/features.ts';
import { getJob } from '../../store/jobs.ts';
import { moneyOf } from '../../store/money.ts';
import type { Store } from '../../store/open-store.ts';
import { partsOf } from '../../store/parts.ts';
import { photosOf } from '../../store/photos.ts';
import { readingsOfJob } from '../../store/readings.ts';
import { rechecksOf } from '../../store/rechecks.ts';
import type { Id } from '../../store/records.ts';
import { getSetting } from '../../store/settings.ts';
import { stepsOf } from '../../store/steps.ts';
import { measuringTools } from '../../store/tools.ts';
import { worksheetsOf } from '../../store/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { usualDial } from '../common/use-settings.ts';
import { readCurrency } from '../money/use-currency.ts';

/** All that a job's sheet is drawn from. */
export type SheetData = NonNullable<Awaited<ReturnType<typeof readSheet>>>;

/** A job read whole; undefined where it is not there. */
export async function readSheet(store: Store, jobId: Id) {
  const job = await getJob(store, jobId);
  if (!job) return undefined;
  const [parts, features, readings, worksheets] = await Promise.all([
    partsOf(store, jobId),
    featuresOf(store, jobId),
    readingsOfJob(store, jobId),
    worksheetsOf(store, jobId),
  ]);
  const [cuts, checks, steps, rechecks] = await Promise.all([
    cutsOf(store, jobId),
    checksOf(store, jobId),
    stepsOf(store, jobId),
    rechecksOf(store, jobId),
  ]);
  const [photos, money, drawer, tools] = await Promise.all([
    photosOf(store, { store: 'jobs', id: jobId }),
    moneyOf(store, jobId),
    drawerPieces(store),
    measuringTools(store),
  ]);
  const [unit = 'in', dial = usualDial, currency] = await Promise.all([
    getSetting(store, 'shownUnit'),
    getSetting(store, 'dial'),
    readCurrency(store),
  ]);
  const work = { worksheets, cuts, checks, steps, rechecks };
  return { job, parts, features, readings, ...work, photos, money, drawer, tools, unit, dial, currency };
}

/** The same, kept up with every change. `missing` once the job is known not to be there. */
export function useSheetData(jobId: Id): { readonly data: SheetData | undefined; readonly missing: boolean } {
  const found = useLive(`sheet/${jobId}`, drawnStores, async (store) => ({
    data: await readSheet(store, jobId),
  }));
  return { data: found?.data, missing: found !== undefined && found.data === undefined };
}

/** A sheet to sign, with the mark of what it is drawn from, taken before it was read: at worst it is refused once too often. */
export function useSheetToSign(
  jobId: Id,
): { readonly data: SheetData | undefined; readonly drawnFrom: string } | undefined {
  return useLive(`sheet-to-sign/${jobId}`, drawnStores, async (store) => {
    // The first look at the tools puts the usual ones there, which is no change of anybody's.
    await measuringTools(store);
    const drawnFrom = await drawnMark(store, jobId);
    return { drawnFrom, data: await readSheet(store, jobId) };
  });
}
