import { isSafetyCritical } from '../../engine/job/safety.ts';
import type { AssemblyStep, Job } from '../../store/base/records.ts';
import { markDone, markUndone } from '../../store/kept/steps.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { LinkButton } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { useSignedSince } from '../sheet/use-signed-since.ts';
import { JobPage } from '../jobs/job-page.tsx';
import { timeWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { FitterScreen } from './fitter-screen.tsx';
import { NewStepScreen } from './new-step-screen.tsx';
import { OdometerScreen } from './odometer-screen.tsx';
import { NewPartScreen, PartScreen } from './part-screen.tsx';
import { PartsList } from './parts-list.tsx';
import { NewRecheckScreen, RecheckScreen } from './recheck-screen.tsx';
import { RechecksList } from './rechecks-list.tsx';
import { StepCard } from './step-card.tsx';
import { dueNow, isDue } from './recheck-data.ts';
import { useStanding } from './use-standing.ts';
import { useAssembly, useNow, type Assembly } from './use-assembly.ts';
import './assembly-screen.css';

type AssemblyScreenProps = { readonly jobId: string; readonly field?: string };

/** How a job goes together: its steps in order, its parts, and what is looked at again after the first miles. */
export function AssemblyScreen({ jobId, field = '' }: AssemblyScreenProps) {
  const { assembly, missing } = useAssembly(jobId);
  if (missing) return <NotHere what="job" />;
  if (!assembly) return <Page title=" ">{null}</Page>;
  const [place, id = '', ...asked] = field.split('/');
  switch (place) {
    case 'steps':
      return <NewStepScreen assembly={assembly} />;
    case 'parts':
      return id === 'new' ? (
        <NewPartScreen assembly={assembly} featureId={asked[0]} />
      ) : (
        <PartScreen assembly={assembly} partId={id} />
      );
    case 'rechecks':
      return id === 'new' ? (
        <NewRecheckScreen assembly={assembly} />
      ) : (
        <RecheckScreen assembly={assembly} recheckId={id} asked={asked.join('/')} />
      );
    case 'odometer':
      return <OdometerScreen job={assembly.job} />;
    case 'fitter':
      return <FitterScreen assembly={assembly} then={[id, ...asked].join('/')} />;
    default:
      return <WholeAssembly assembly={assembly} />;
  }
}

function WholeAssembly({ assembly }: { assembly: Assembly }) {
  const { job, rechecks } = assembly;
  const now = useNow();
  // Once the job is on the road they are what it is opened for.
  const areDue = rechecks.some((recheck) => !recheck.done && isDue(dueNow(recheck, job, now)));
  return (
    <JobPage job={job} here="put-together">
      <SignedLine job={job} />
      {areDue && <RechecksList assembly={assembly} />}
      <Steps assembly={assembly} />
      <StepKeys assembly={assembly} />
      <PartsList assembly={assembly} />
      {!areDue && <RechecksList assembly={assembly} />}
      {isSafetyCritical(job) && <SafetyCaution />}
    </JobPage>
  );
}

/** In the flow of the page: a foot that stays would lie over the keys of the steps. */
function StepKeys({ assembly: { job, steps } }: { assembly: Assembly }) {
  const allDone = steps.length > 0 && steps.every(({ done }) => done !== undefined);
  return (
    <div class="assembly-keys">
      <LinkButton
        kind={steps.length === 0 ? 'main' : 'plain'}
        href={hrefOf({ at: 'assembly', jobId: job.id, field: 'steps' })}
      >
        Add steps
      </LinkButton>
      <LinkButton kind={allDone ? 'main' : 'plain'} href={hrefOf({ at: 'sign-off', jobId: job.id })}>
        Sign-off
      </LinkButton>
    </div>
  );
}

/** When it was signed and by whom; once it stands otherwise, what was changed, and the way to sign it again. */
function SignedLine({ job: { id, signedOff } }: { job: Job }) {
  const since = useSignedSince(id);
  const stands = useStanding(id, since !== undefined);
  if (!signedOff) return null;
  return (
    <>
      <a
        class="assembly-signed"
        data-changed={since !== undefined}
        href={hrefOf({ at: 'sheet', jobId: id, field: `signed/${signedOff.sheetId}` })}
      >
        {`Signed off ${timeWords(signedOff.at)} by ${signedOff.by}`}
      </a>
      {since !== undefined && (
        <>
          <p class="assembly-note assembly-again">
            {[`Changed since: ${since}.`, stands].filter(Boolean).join(' ')}
          </p>
          <div class="assembly-keys">
            <LinkButton href={hrefOf({ at: 'sign-off', jobId: id })}>Sign again</LinkButton>
          </div>
        </>
      )}
    </>
  );
}

function Steps({ assembly }: { assembly: Assembly }) {
  const store = useStore();
  const now = useNow();
  const { trouble, told } = useTold();
  const { job, steps, older, parts, fitter } = assembly;
  const done = (step: AssemblyStep, number: number) =>
    fitter === undefined
      ? go({ at: 'assembly', jobId: job.id, field: `fitter/step/${step.id}` })
      : void told(markDone(store, step.id, fitter), () => announce(`Step ${number} done by ${fitter}`));
  if (steps.length === 0)
    return (
      <EmptyLine>
        The steps of putting it together go here, in their order: what goes where and which way round, grease,
        thread locker, torque.
      </EmptyLine>
    );
  const next = steps.find((step) => step.done === undefined);
  return (
    <section class="assembly-section" aria-label="Steps">
      <h2>{sayProgress(steps)}</h2>
      <Trouble>{trouble}</Trouble>
      <ol>
        {steps.map((step, index) => (
          <StepCard
            key={step.id}
            step={step}
            number={index + 1}
            isNext={step === next}
            partNames={parts.filter(({ id }) => step.partIds.includes(id)).map(({ name }) => name)}
            now={now}
            older={older.has(step.id)}
            onDone={() => done(step, index + 1)}
            onUndone={() =>
              void told(markUndone(store, step.id), () => announce(`Step ${index + 1} is not done`))
            }
          />
        ))}
      </ol>
      {fitter !== undefined && (
        <div class="assembly-keys">
          <LinkButton href={hrefOf({ at: 'assembly', jobId: job.id, field: 'fitter' })}>
            {`Done by ${fitter}; someone else works now`}
          </LinkButton>
        </div>
      )}
    </section>
  );
}

function sayProgress(steps: readonly AssemblyStep[]): string {
  const done = steps.filter((step) => step.done !== undefined).length;
  return done === steps.length
    ? steps.length === 1
      ? 'The one step is done'
      : `All ${done} steps done`
    : `Steps: ${done} of ${steps.length} done`;
}
