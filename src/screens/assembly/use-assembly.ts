import { useEffect, useState } from 'preact/hooks';
import { timeToKeep } from '../../store/base/clock.ts';
import { getJob } from '../../store/kept/jobs.ts';
import { partsOf } from '../../store/kept/parts.ts';
import { rechecksOf } from '../../store/kept/rechecks.ts';
import type { AssemblyStep, Id, Job, Part, Recheck, Worksheet } from '../../store/base/records.ts';
import { getSetting } from '../../store/kept/settings.ts';
import { stepsOf } from '../../store/kept/steps.ts';
import { useLive } from '../common/store-context.ts';
import { groundOf, groundStores } from '../older/job-ground.ts';
import { asItStands, isStepOlder } from './step-standing.ts';

/** All that the assembly of a job is made of. */
export type Assembly = {
  readonly job: Job;
  /** As they stand: one that was done before a size behind it changed is to be done again. */
  readonly steps: readonly AssemblyStep[];
  /** Steps that were done, or are worded, by sizes that are others by now. */
  readonly older: ReadonlySet<Id>;
  readonly parts: readonly Part[];
  readonly rechecks: readonly Recheck[];
  readonly worksheets: readonly Worksheet[];
  /** Who does the work; not known until it was asked once. */
  readonly fitter: string | undefined;
};

/** The assembly of a job, kept up with every change. `missing` once the job is known not to be there. */
export function useAssembly(jobId: string): {
  readonly assembly: Assembly | undefined;
  readonly missing: boolean;
} {
  const found = useLive(
    `assembly/${jobId}`,
    ['jobs', 'steps', 'parts', 'rechecks', 'settings', ...groundStores],
    async (store) => {
      const [job, kept, parts, rechecks, ground, fitter] = await Promise.all([
        getJob(store, jobId),
        stepsOf(store, jobId),
        partsOf(store, jobId),
        rechecksOf(store, jobId),
        groundOf(store, [jobId]),
        getSetting(store, 'fitter'),
      ]);
      const steps = kept.map((step) => asItStands(step, ground));
      const older = new Set(kept.filter((step) => isStepOlder(step, ground)).map(({ id }) => id));
      const { worksheets } = ground;
      return { job, steps, older, parts, rechecks, worksheets, fitter: fitter === '' ? undefined : fitter };
    },
  );
  if (!found) return { assembly: undefined, missing: false };
  const { job } = found;
  return job ? { assembly: { ...found, job }, missing: false } : { assembly: undefined, missing: true };
}

const HALF_A_MINUTE_MS = 30_000;

/** The time, for what cures or comes due while the screen stands open. */
export function useNow(): number {
  const [now, setNow] = useState(() => timeToKeep());
  useEffect(() => {
    const timer = setInterval(() => setNow(timeToKeep()), HALF_A_MINUTE_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}
