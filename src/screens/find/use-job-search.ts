import { useEffect, useState } from 'preact/hooks';
import { readJobSearch, searchedStores, type JobSearch } from '../../store/search/job-search.ts';
import { watch } from '../../store/opening/watch.ts';
import { useStore } from '../common/store-context.ts';

/** The words of all jobs, as far as they were gone through; all of it again where a job is changed meanwhile. */
export function useJobSearch(): JobSearch | undefined {
  const store = useStore();
  const [search, setSearch] = useState<JobSearch>();
  const [fault, setFault] = useState<{ readonly error: unknown }>();
  useEffect(() => {
    let round = 0;
    const begin = async () => {
      round += 1;
      const own = round;
      const steps = readJobSearch(store, () => own === round);
      for await (const step of steps) setSearch(step);
    };
    const start = () => void begin().catch((error: unknown) => setFault({ error }));
    start();
    const stop = watch(store, searchedStores, start);
    return () => {
      round += 1;
      stop();
    };
  }, [store]);
  // What can't be read must not be taken for what isn't there: the boundary around the screens says it.
  if (fault) throw fault.error;
  return search;
}
