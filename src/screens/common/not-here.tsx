import { hrefOf } from '../address.ts';
import { LinkButton } from './button.tsx';
import { EmptyLine } from './empty-line.tsx';
import { Page } from './page.tsx';
import { useTypedHere } from './use-draft.ts';

/** An address of something that was removed, or that is on another phone. */
export function NotHere({ what }: { what: string }) {
  const typed = useTypedHere();
  return (
    <Page
      title="Not here"
      back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}
      foot={
        <LinkButton kind="main" href={hrefOf({ at: 'jobs' })}>
          To the jobs
        </LinkButton>
      }
    >
      <EmptyLine>This {what} is not on this phone. It may have been removed.</EmptyLine>
      {typed !== '' && (
        <EmptyLine>
          You had typed “{typed}” here. It is kept, and stands here again should the {what} come back.
        </EmptyLine>
      )}
    </Page>
  );
}
