import { useEffect, useState } from 'preact/hooks';
import { getJob } from '../../store/jobs.ts';
import { partsOf } from '../../store/parts.ts';
import { rechecksOf } from '../../store/rechecks.ts';
import type { AssemblyStep, Job, Part, Recheck, Worksheet } from '../../store/records.ts';
import { getSetting } from '../../store/settings.ts';
import { stepsOf } from '../../store/steps.ts';
import { worksheetsOf } from '../../store/worksheets.ts';
import { useLive } from '../common/store-context.ts';

/** All that the assembly of a job is made of. */
export type Assembly = {
  readonly job: Job;
  readonly steps: readonly AssemblyStep[];
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
    ['jobs', 'steps', 'parts', 'rechecks', 'worksheets', 'settings'],
    async (store) => {
      const [job, steps, parts, rechecks, worksheets, fitter] = await Promise.all([
        getJob(store, jobId),
        stepsOf(store, jobId),
        partsOf(store, jobId),
        rechecksOf(store, jobId),
        worksheetsOf(store, jobId),
        getSetting(store, 'fitter'),
      ]);
      return { job, steps, parts, rechecks, worksheets, fitter: fitter === '' ? undefined : fitter };
    },
  );
  if (!found) return { assembly: undefined, missing: false };
  const { job } = found;
  return job ? { assembly: { ...found, job }, missing: false } : { assembly: undefined, missing: true };
}

const HALF_A_MINUTE_MS = 30_000;

/** The time, for what cures or comes due while the screen stands open. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), HALF_A_MINUTE_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}
