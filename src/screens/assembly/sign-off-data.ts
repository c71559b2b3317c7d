import { cutName } from '../../engine/tap-name.ts';
import { signOff, type Finding, type FindingCode, type SignOffAnswer } from '../../engine/sign-off.ts';
import { cutsOf } from '../../store/cuts.ts';
import { featuresOf } from '../../store/features.ts';
import { getJob } from '../../store/jobs.ts';
import type { Store } from '../../store/open-store.ts';
import { partsOf } from '../../store/parts.ts';
import { readingsOfJob } from '../../store/readings.ts';
import { rechecksOf, withoutStart } from '../../store/rechecks.ts';
import type { Id, Job, Recheck } from '../../store/records.ts';
import { stepsOf } from '../../store/steps.ts';
import { unlistedReadings, unreadableOfJob } from '../../store/unreadable.ts';
import { worksheetsOf } from '../../store/worksheets.ts';
import type { Address } from '../address.ts';
import { isCutOlder } from '../cuts/cut-older.ts';
import { loadChecks, uncheckedWorksheets } from '../fit-up/check-data.ts';
import { isMockUpIn } from './parts-list.tsx';
import { engineStep } from './step-words.ts';

export type SignOffData = {
  readonly job: Job;
  readonly rechecks: readonly Recheck[];
  readonly answer: SignOffAnswer;
};

/** What stands in the way of signing a job off, as all that is kept of it says now. */
export async function loadSignOff(store: Store, jobId: Id, now: number): Promise<SignOffData | undefined> {
  const job = await getJob(store, jobId);
  if (!job) return undefined;
  const [steps, parts, rechecks, cuts, worksheets, features, readings] = await Promise.all([
    stepsOf(store, jobId),
    partsOf(store, jobId),
    rechecksOf(store, jobId),
    cutsOf(store, jobId),
    worksheetsOf(store, jobId),
    featuresOf(store, jobId),
    readingsOfJob(store, jobId),
  ]);
  const [checks, unchecked] = await Promise.all([
    loadChecks(store, jobId),
    uncheckedWorksheets(store, jobId),
  ]);
  const answer = signOff({
    systems: job.systems,
    now,
    steps: steps.map(engineStep),
    parts: parts.map((part) => ({ id: part.id, name: part.name, isMockUp: isMockUpIn(part) })),
    checks: checks.map(({ check, state, older }) => ({
      id: check.id,
      name: check.name,
      found: state.found,
      older,
    })),
    unchecked: unchecked.map(({ id, title }) => ({
      title,
      used: [...cuts, ...steps].some(({ worksheetId }) => worksheetId === id),
    })),
    cuts: cuts.map((cut) => ({
      id: cut.id,
      name: cutName(cut),
      state: cut.state,
      older: isCutOlder(cut, {
        worksheet: worksheets.find(({ id }) => id === cut.worksheetId),
        features,
        readings,
      }),
    })),
    unreadable: (await unreadableOfJob(store, jobId)) + (await unlistedReadings(store, jobId)),
    lacksOdometer: job.odometer === undefined && withoutStart(rechecks).length > 0,
  });
  return { job, rechecks, answer };
}

const STEP_FIELDS: Partial<Record<FindingCode, string>> = {
  'no-torque-figure': 'torque',
  'no-torque-source': 'torque/source',
  'no-cure-time': 'cure',
};

/** Where a finding is put right. */
export function placeOf({ code, place }: Finding, jobId: Id): Address {
  switch (place.at) {
    case 'step': {
      const field = STEP_FIELDS[code];
      // What only has to be done, or to cure, is done on the list itself.
      return field === undefined ? { at: 'assembly', jobId } : { at: 'step', jobId, stepId: place.id, field };
    }
    case 'part':
      return { at: 'assembly', jobId, field: `parts/${place.id}` };
    case 'check':
      return { at: 'check', jobId, checkId: place.id };
    case 'cut':
      return { at: 'cut', jobId, cutId: place.id };
    case 'fit-up':
      // A worksheet's check that was never made is made there.
      return code === 'check-missing' || code === 'check-offered'
        ? { at: 'check', jobId, checkId: 'new' }
        : { at: 'fit-up', jobId };
    case 'assembly':
      return { at: 'assembly', jobId, field: 'steps' };
    case 'odometer':
      return { at: 'assembly', jobId, field: 'odometer' };
    case 'job':
      return { at: 'job', jobId };
    default:
      return place satisfies never;
  }
}
