import { hasAnyJob } from '../../store/kept/job-list.ts';
import { asksAPerson } from '../../store/opening/persistence.ts';
import { Caution } from '../common/caution.tsx';
import { isTabOnIphone } from '../common/home-screen.ts';
import { useLive } from '../common/store-context.ts';
import { usePersistence } from '../common/use-persistence.ts';

/** Above the first job in a tab on an iPhone: what is made there isn't in the Home Screen app, and may be thrown away. */
export function HomeScreenFirst() {
  const isFirst = useIsFirst();
  if (!isFirst || !isTabOnIphone()) return null;
  return (
    <Caution heading="Add Slipfit to the Home Screen first.">
      This browser throws away what a tab keeps after seven days without a visit. Press the share key, then
      “Add to Home Screen”, and make the job there: the two keep separate records.
    </Caution>
  );
}

/** Under the first job, in a browser that would not promise to keep anything. */
export function NotPromised() {
  const isFirst = useIsFirst();
  const persistence = usePersistence();
  if (!isFirst || persistence !== 'refused' || isTabOnIphone()) return null;
  if (asksAPerson())
    return (
      <Caution heading="The browser will ask whether Slipfit may keep its records: let it.">
        Otherwise it may throw them away when the phone runs full.
      </Caution>
    );
  return (
    <Caution heading="This browser has not promised to keep the records.">
      Put Slipfit on the home screen, or save a backup often (Shop). In a private window all of it goes when
      the window is closed.
    </Caution>
  );
}

function useIsFirst(): boolean {
  return useLive('any-job', ['jobs'], hasAnyJob) === false;
}
