import { checkState, type CheckFound, type CheckState, type GoResult } from '../../engine/reading/check.ts';
import type { CheckOffer } from '../../engine/reading/check-offer.ts';
import { isOneSided } from '../../engine/worksheets/axle-line-up/checks-of-line-up.ts';
import { CENTRE_READ } from '../../engine/worksheets/axle-line-up/line-up-read.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { checksOf, takesOf } from '../../store/kept/checks.ts';
import { featuresOf } from '../../store/kept/features.ts';
import { getJob } from '../../store/kept/jobs.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import type {
  Basis,
  Check,
  CheckTake,
  Feature,
  Id,
  Job,
  ReadingRecord,
  Worksheet,
} from '../../store/base/records.ts';
import { worksheetsOf } from '../../store/kept/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { usualDial } from '../common/use-dial.ts';
import { engineReadings } from '../readings/engine-readings.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import { checkBasis, limitsOf, offerFor, sameLimits } from './check-from-offer.ts';
import { insteadOfKept, offersOf } from './offers.ts';

/** One go at a check, with what it proves. */
export type KnownTake = CheckTake & {
  readonly id: Id;
  /** Struck-out ones too, in order of time. */
  readonly readings: readonly ReadingRecord[];
  readonly result: GoResult;
};

/** A check with all that is known of it. */
export type KnownCheck = {
  readonly check: Check;
  readonly limits: Limits;
  readonly state: CheckState;
  /** In order of time; the last one counts. */
  readonly takes: readonly KnownTake[];
  /** The one it was made from, while it is there. */
  readonly worksheet?: Worksheet;
  /** Its limits were worked out from readings or sizes that have changed since, and come out differently now. */
  readonly older: boolean;
  /** The go that counts was read or seen before a size behind the check changed: it proves what is there no longer. */
  readonly readBefore: boolean;
  /** Its limits prove too little: the worksheet's check that stands in its place. */
  readonly instead?: CheckOffer;
  /** What they come out as; left out where the worksheet doesn't ask for this check any more. */
  readonly newLimits?: Limits;
  /** What those stand on. */
  readonly newBasis?: Basis;
};

/** All of a job that its checks hang on. */
export type FitUpData = {
  readonly job: Job;
  readonly checks: readonly Check[];
  readonly features: readonly Feature[];
  readonly readings: readonly ReadingRecord[];
  readonly worksheets: readonly Worksheet[];
};

const STORES = ['jobs', 'checks', 'features', 'readings', 'worksheets'] as const;

/** Every check of a job with its state, in the order in which they were made. */
export async function loadChecks(store: Store, jobId: Id): Promise<readonly KnownCheck[]> {
  const data = await loadFitUp(store, jobId);
  return data ? knownChecks(data) : [];
}

/** Worksheets that could be checked on the machine, and of which no check was made. */
export async function uncheckedWorksheets(store: Store, jobId: Id): Promise<readonly Worksheet[]> {
  const data = await loadFitUp(store, jobId);
  return data ? withoutCheck(data) : [];
}

export function withoutCheck(data: FitUpData): readonly Worksheet[] {
  return data.worksheets.filter(
    (worksheet) =>
      !data.checks.some((check) => check.worksheetId === worksheet.id) &&
      offersOf(worksheetData(data, worksheet, 'in')).length > 0,
  );
}

export async function loadFitUp(store: Store, jobId: Id): Promise<FitUpData | undefined> {
  const [job, checks, features, readings, worksheets] = await Promise.all([
    getJob(store, jobId),
    checksOf(store, jobId),
    featuresOf(store, jobId),
    readingsOfJob(store, jobId),
    worksheetsOf(store, jobId),
  ]);
  return job && { job, checks, features, readings, worksheets };
}

/** A job's checks, kept up with every change. `missing` once the job is known not to be there. */
export function useFitUp(jobId: Id): { data: FitUpData | undefined; missing: boolean } {
  const found = useLive(`fit-up/${jobId}`, STORES, async (store) => ({
    data: await loadFitUp(store, jobId),
  }));
  return { data: found?.data, missing: found !== undefined && !found.data };
}

export function knownChecks(data: FitUpData): readonly KnownCheck[] {
  return data.checks.map((check) => knownCheck(data, check));
}

export function knownCheck(data: FitUpData, check: Check): KnownCheck {
  const limits = limitsOf(check);
  const takes = takesOf(check).map(([id, take]) => ({
    ...take,
    id,
    readings: data.readings.filter(
      ({ featureId }) => take.featureId !== undefined && featureId === take.featureId,
    ),
  }));
  const { by } = check;
  const goes = takes.map(({ readings, seen }) => ({
    readings: by === 'by-eye' ? [] : (engineReadings(by, readings) ?? []),
    ...(seen !== undefined && { seen }),
  }));
  const state = checkState({ by, limits, goes });
  const worksheet = data.worksheets.find(({ id }) => id === check.worksheetId);
  return {
    check,
    limits,
    state,
    takes: takes.map((take, index) => ({ ...take, result: state.goes[index] ?? { kind: 'nothing-yet' } })),
    ...(worksheet && { worksheet }),
    readBefore: isReadBefore(data, check, takes.at(-1)),
    ...(worksheet ? sinceMade(data, check, worksheet) : { older: isCentreOfOneSide(check) }),
  };
}

function isReadBefore(data: FitUpData, check: Check, last: Omit<KnownTake, 'result'> | undefined): boolean {
  return last !== undefined && isOlderThanSizes({ of: 'go', check, take: last }, data);
}

/** What a worksheet is worked out from, as far as its checks hang on it: no limit hangs on tools, dial or drawer. */
export function worksheetData(data: FitUpData, worksheet: Worksheet, unit: ShownUnit): WorksheetData {
  const { job, features, readings } = data;
  return { job, worksheet, features, readings, tools: [], drawer: [], unit, dial: usualDial };
}

/**
 * Whether the worksheet would give other limits now. Only where what it stands on has changed: usual limits are others in
 * inches than in millimetres, and a change of the shown unit is no change of the worksheet.
 */
function sinceMade(
  data: FitUpData,
  check: Check,
  worksheet: Worksheet,
): Pick<KnownCheck, 'older' | 'instead' | 'newLimits' | 'newBasis'> {
  const unit = (check.upper ?? check.lower)?.unit === 'mm' ? 'mm' : 'in';
  const known = worksheetData(data, worksheet, unit);
  const { sizeName } = check;
  const instead =
    sizeName === undefined ? undefined : insteadOfKept({ sizeName, limits: limitsOf(check) }, known);
  if (!instead && !isOlderThanSizes({ of: 'limits', check }, data)) return { older: false };
  const offer = offerFor(check, offersOf(known));
  if (!offer) return { older: true, ...(instead && { instead }) };
  return sameLimits(offer.limits, limitsOf(check))
    ? { older: false }
    : { older: true, newLimits: offer.limits, newBasis: checkBasis(check, worksheet, data) };
}

/** A difference of a wheel's two sides that has a least says nothing as long as it isn't known of which side. */
function isCentreOfOneSide(check: Check): boolean {
  return check.sizeName === CENTRE_READ.either && isOneSided(limitsOf(check));
}

/** What a check counts as: one that is good by limits or a reading from before a size changed is to be done again. */
export function foundNow({ state, older, readBefore }: KnownCheck): CheckFound {
  return state.found === 'good' && (older || readBefore) ? 'not-done' : state.found;
}
