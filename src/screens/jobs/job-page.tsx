import type { ComponentChildren } from 'preact';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import type { Job } from '../../store/records.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { UnreadableLine } from './unreadable-line.tsx';
import { JobTabs, type JobPlace } from './job-tabs.tsx';

type JobPageProps = {
  readonly job: Job;
  readonly here: JobPlace;
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
};

/** A place inside a job: the heading, the way to what the job is, and the tabs are the same on each of them. */
export function JobPage({ job, here, foot, children }: JobPageProps) {
  return (
    <Page
      title={job.name}
      subtitle={jobSubtitle(job)}
      back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}
      aside={<LinkButton href={hrefOf({ at: 'job', jobId: job.id })}>About</LinkButton>}
      tabs={<JobTabs jobId={job.id} here={here} />}
      foot={foot}
    >
      {here === 'readings' && <UnreadableLine jobId={job.id} />}
      {children}
    </Page>
  );
}

function jobSubtitle(job: Job): string {
  return [
    isSafetyCritical(job) ? 'safety-critical' : '',
    job.demo ? 'demo data' : '',
    isSafetyCritical(job) || job.demo ? '' : job.what,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
