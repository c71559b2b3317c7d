import { hrefOf } from '../address.ts';
import { LinkButton } from './button.tsx';
import { Page } from './page.tsx';

/** An address of something that was removed, or that is on another phone. */
export function NotHere({ what }: { what: string }) {
  return (
    <Page title="Not here" back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}>
      <div class="jobs-more">
        <p>This {what} is not on this phone. It may have been removed.</p>
        <LinkButton kind="main" href={hrefOf({ at: 'jobs' })}>
          To the jobs
        </LinkButton>
      </div>
    </Page>
  );
}
