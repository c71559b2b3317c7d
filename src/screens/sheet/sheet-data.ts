import { checksOf } from '../../store/kept/checks.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import { drawerPieces } from '../../store/kept/drawer.ts';
import { drawnMark, drawnStores } from '../../store/kept/drawn-mark.ts';
import { featuresOf } from '../../store/kept/features.ts';
import { getJob } from '../../store/kept/jobs.ts';
import { moneyOf } from '../../store/kept/money.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { partsOf } from '../../store/kept/parts.ts';
import { photosOf } from '../../store/kept/photos.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import { rechecksOf } from '../../store/kept/rechecks.ts';
import type { Id } from '../../store/base/records.ts';
import { getSetting } from '../../store/kept/settings.ts';
import { stepsOf } from '../../store/kept/steps.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { worksheetsOf } from '../../store/kept/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { usualDial } from '../common/use-dial.ts';
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
  const [unit = 'in', dial = usualDial, currency, shopName = ''] = await Promise.all([
    getSetting(store, 'shownUnit'),
    getSetting(store, 'dial'),
    readCurrency(store),
    getSetting(store, 'shopName'),
  ]);
  const work = { worksheets, cuts, checks, steps, rechecks };
  return {
    job,
    parts,
    features,
    readings,
    ...work,
    photos,
    money,
    drawer,
    tools,
    unit,
    dial,
    currency,
    shopName,
  };
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
