import { timeToKeep } from '../../store/base/clock.ts';
import { openCuts } from '../../store/kept/cuts.ts';
import { hasOpenWork } from '../../store/kept/open-work.ts';
import { hrefOf } from '../address.ts';
import { dueRechecks } from '../assembly/due-rechecks.ts';
import { BothLine } from '../both/both-line.tsx';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import { useToday } from '../common/use-today.ts';

/** What stands before all jobs. Fetched only where something is left open: an empty phone has nothing to say here. */
export function LinesAboveJobs() {
  return (
    <>
      <DueLines />
      <BothLine />
      <CutsLine />
    </>
  );
}

/** What is due to be looked at again, in any job, before all else. */
function DueLines() {
  const due = useLive(`due-rechecks/${useToday()}`, ['rechecks', 'jobs'], async (store) => {
    if (!(await hasOpenWork(store, 'rechecks'))) return [];
    return dueRechecks(store, timeToKeep());
  });
  if (!due || due.length === 0) return null;
  return (
    <ul class="jobs-due" aria-label="Re-checks that are due">
      {due.map(({ id, jobId, what, when }) => (
        <li key={id}>
          <Row href={hrefOf({ at: 'assembly', jobId })} title={what} detail={when} />
        </li>
      ))}
    </ul>
  );
}

/** The way to all that is left to cut, with how many; only while there is any. */
function CutsLine() {
  const open = useLive('open-cuts', ['cuts', 'jobs'], async (store) => {
    if (!(await hasOpenWork(store, 'cuts'))) return 0;
    return (await openCuts(store)).length;
  });
  if (!open) return null;
  return (
    <Row
      href={hrefOf({ at: 'all-cuts' })}
      title="All I have to cut"
      detail={open === 1 ? '1 cut' : `${open} cuts`}
    />
  );
}
