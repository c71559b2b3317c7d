import { signedStores } from '../../store/signed-stores.ts';
import { hrefOf } from '../address.ts';
import { useLive } from '../common/store-context.ts';
import './job-tabs.css';

/** The places inside a job, in the order of the work. */
const places = [
  { at: 'readings', name: 'Readings' },
  { at: 'worksheets', name: 'Worksheets' },
  { at: 'cuts', name: 'Cuts' },
  { at: 'fit-up', name: 'Fit-up' },
  { at: 'assembly', name: 'Assembly' },
  { at: 'sheet', name: 'Sheet' },
] as const;

export type JobPlace = (typeof places)[number]['at'];

type JobTabsProps = { readonly jobId: string; readonly here: JobPlace };

export function JobTabs({ jobId, here }: JobTabsProps) {
  const older = useOlderPlaces(jobId);
  return (
    <nav class="job-tabs" aria-label="In this job">
      {places.map(({ name, at }) => (
        <a key={at} href={hrefOf({ at, jobId })} aria-current={at === here ? 'page' : undefined}>
          <span class="job-tabs-name">
            {name}
            {older.has(at) && <TabMark />}
          </span>
        </a>
      ))}
    </nav>
  );
}

/** The places in which a figure is older than its sizes. The code for it comes behind the page. */
function useOlderPlaces(jobId: string): ReadonlySet<JobPlace> {
  const found = useLive(`older-places/${jobId}`, signedStores, async (store) => {
    const { olderPlaces } = await import('../older/older-places.ts');
    return olderPlaces(store, jobId);
  });
  return found ?? new Set();
}

/** The same mark as beside the figure itself. */
function TabMark() {
  return (
    <svg
      class="job-tabs-older"
      viewBox="0 0 32 32"
      width="18"
      height="18"
      role="img"
      aria-label="older than its sizes"
    >
      <circle cx="16" cy="16" r="12" fill="none" stroke="currentColor" stroke-width="4" />
      <path d="M16 8v9l6 4" fill="none" stroke="currentColor" stroke-width="4" />
    </svg>
  );
}
