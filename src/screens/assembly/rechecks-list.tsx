import { useState } from 'preact/hooks';
import { sayAfter, sayRecheckDue } from '../../engine/job/say-recheck.ts';
import type { Job, Recheck } from '../../store/records.ts';
import { changeRecheck } from '../../store/rechecks.ts';
import { sayStore } from '../../store/say-store.ts';
import type { StoreResult } from '../../store/store-refusal.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { VerdictMark } from '../common/verdict-band.tsx';
import { dayWords, timeWords } from '../common/day-words.ts';
import { againWords } from './step-words.ts';
import { dueNow, isDue, recheckedNow, unitOf } from './recheck-data.ts';
import { useNow, type Assembly } from './use-assembly.ts';

/** What is looked at again after so many days or miles, with its own key once it is due. */
export function RechecksList({ assembly }: { assembly: Assembly }) {
  const store = useStore();
  const now = useNow();
  const [trouble, setTrouble] = useState('');
  const { job, rechecks, fitter } = assembly;
  const told = async (act: Promise<StoreResult<Recheck>>, said: string) => {
    const result = await act;
    setTrouble(result.ok ? '' : sayStore(result.refusal));
    if (result.ok) announce(said);
  };
  const done = (recheck: Recheck) =>
    fitter === undefined
      ? go({ at: 'assembly', jobId: job.id, field: `fitter/recheck/${recheck.id}` })
      : void told(recheckedNow(store, job, recheck, fitter), `Re-checked by ${fitter}: ${recheck.what}`);
  return (
    <section class="assembly-section" aria-label="Re-checks">
      <h2>Re-checks</h2>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      {rechecks.length === 0 && (
        <EmptyLine>What has to be looked at again after the first days or miles.</EmptyLine>
      )}
      <ul>
        {rechecks.map((recheck) => (
          <li key={recheck.id}>
            <RecheckRow recheck={recheck} job={job} now={now} />
            {recheck.done ? (
              <div class="assembly-keys">
                <Button
                  kind="quiet"
                  onPress={() =>
                    told(
                      changeRecheck(store, recheck.id, { done: undefined }),
                      `${recheck.what}: to be done again`,
                    )
                  }
                >
                  {`Not done after all: ${recheck.what}`}
                </Button>
              </div>
            ) : (
              <div class="assembly-keys">
                <Button
                  kind={isDue(dueNow(recheck, job, now)) ? 'main' : 'plain'}
                  label={`Re-check done: ${recheck.what}`}
                  onPress={() => done(recheck)}
                >
                  Re-check done
                </Button>
              </div>
            )}
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
