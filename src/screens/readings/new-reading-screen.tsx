import { useEffect } from 'preact/hooks';
import { listJobs } from '../../store/kept/job-list.ts';
import { leadTo } from '../address.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';

/** Where a long press on the app's icon leads: what is measured, in the job last worked on, or a job to measure it in. */
export function NewReadingScreen() {
  const store = useStore();
  useEffect(() => {
    const lead = async () => {
      const [last] = (await listJobs(store, { limit: 1 })).jobs;
      leadTo(last ? { at: 'new-feature', jobId: last.id } : { at: 'new-job' });
    };
    void lead();
  }, []);
  return <Page title="New reading">{null}</Page>;
}
