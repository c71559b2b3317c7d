import { sayAfter, sayRecheckDue } from '../../engine/job/say-recheck.ts';
import type { Job, Recheck } from '../../store/base/records.ts';
import { changeRecheck } from '../../store/kept/rechecks.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { VerdictMark } from '../common/verdict-band.tsx';
import { dayWords, timeWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { againWords } from './step-words.ts';
import { dueNow, isDue, recheckedNow, unitOf } from './recheck-data.ts';
import { useNow, type Assembly } from './use-assembly.ts';

/** What is looked at again after so many days or miles, with its own key once it is due. */
export function RechecksList({ assembly }: { assembly: Assembly }) {
  const store = useStore();
  const now = useNow();
  const { trouble, told } = useTold();
  const { job, rechecks, fitter } = assembly;
  const done = (recheck: Recheck) =>
    fitter === undefined
      ? go({ at: 'assembly', jobId: job.id, field: `fitter/recheck/${recheck.id}` })
      : void told(recheckedNow(store, job, recheck, fitter), () =>
          announce(`Re-checked by ${fitter}: ${recheck.what}`),
        );
  const undone = (recheck: Recheck) =>
    told(changeRecheck(store, recheck.id, { done: undefined }), () =>
      announce(`${recheck.what}: to be done again`),
    );
  return (
    <section class="assembly-section" aria-label="Re-checks">
      <h2>Re-checks</h2>
      <Trouble>{trouble}</Trouble>
      {rechecks.length === 0 && (
        <EmptyLine>What has to be looked at again after the first days or miles.</EmptyLine>
      )}
      <ul>
        {rechecks.map((recheck) => (
          <li key={recheck.id}>
            <RecheckRow recheck={recheck} job={job} now={now} />
            <div class="assembly-keys">
              <RecheckKey recheck={recheck} onDone={() => done(recheck)} onUndone={() => undone(recheck)} />
            </div>
          </li>
        ))}
      </ul>
      <ul>
        <li>
          <Row
            href={hrefOf({ at: 'assembly', jobId: job.id, field: 'odometer' })}
            title="Odometer"
            detail={job.odometer ? `read ${dayWords(job.odometer.at)}` : 'not typed yet'}
            {...(job.odometer && { figure: `${job.odometer.reading} ${job.odometer.unit}` })}
          />
        </li>
      </ul>
      <div class="assembly-keys">
        <LinkButton href={hrefOf({ at: 'assembly', jobId: job.id, field: 'rechecks/new' })}>
          Add a re-check
        </LinkButton>
      </div>
    </section>
  );
}

type RecheckKeyProps = {
  readonly recheck: Recheck;
  readonly onDone: () => unknown;
  readonly onUndone: () => unknown;
};

function RecheckKey({ recheck: { what, done }, onDone, onUndone }: RecheckKeyProps) {
  if (done)
    return (
      <Button kind="quiet" onPress={onUndone}>
        {`Not done after all: ${what}`}
      </Button>
    );
  return (
    <Button label={`Re-check done: ${what}`} onPress={onDone}>
      Re-check done
    </Button>
  );
}

function RecheckRow({ recheck, job, now }: { recheck: Recheck; job: Job; now: number }) {
  const due = dueNow(recheck, job, now);
  const { afterDays, afterDistance, done } = recheck;
  const after = sayAfter({
    unit: unitOf(recheck, job),
    ...(afterDays !== undefined && { days: afterDays }),
    ...(afterDistance !== undefined && { distance: afterDistance }),
  });
  return (
    <Row
      href={hrefOf({ at: 'assembly', jobId: job.id, field: `rechecks/${recheck.id}` })}
      title={recheck.what}
      detail={
        done
          ? `Done by ${done.by}, ${timeWords(done.at)}`
          : [againWords(recheck), sayRecheckDue(due), `Set for ${after}.`].filter(Boolean).join(' ')
      }
      mark={done ? <VerdictMark kind="good" /> : isDue(due) ? <VerdictMark kind="no-good" /> : undefined}
    />
  );
}
