import type { ComponentChildren } from 'preact';
import { PLACE_NAMES } from '../../engine/job/say-route.ts';
import type { RoutePlace } from '../../engine/job/route.ts';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import type { Job } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';

type JobPageProps = {
  readonly job: Job;
  readonly here: RoutePlace;
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
};

/** A place on a job's route: its heading is one line and leads back to the route. */
export function JobPage({ job, here, foot, children }: JobPageProps) {
  return (
    <Page
      title={PLACE_NAMES[here]}
      subtitle={[job.name, isSafetyCritical(job) ? 'safety-critical' : '', job.demo ? 'demo data' : '']
        .filter((part) => part !== '')
        .join(' · ')}
      back={{ href: hrefOf({ at: 'route', jobId: job.id }), to: 'the job' }}
      foot={foot}
    >
      {children}
    </Page>
  );
}
