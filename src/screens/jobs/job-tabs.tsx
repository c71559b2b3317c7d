import { hrefOf } from '../address.ts';
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
  return (
    <nav class="job-tabs" aria-label="In this job">
      {places.map(({ name, at }) => (
        <a key={at} href={hrefOf({ at, jobId })} aria-current={at === here ? 'page' : undefined}>
          {name}
        </a>
      ))}
    </nav>
  );
}
