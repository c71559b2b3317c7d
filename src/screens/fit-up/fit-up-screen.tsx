import { isSafetyCritical } from '../../engine/job/safety.ts';
import { sayCheckState, sayHowMany } from '../../engine/reading/say-check.ts';
import type { CheckFound } from '../../engine/reading/check.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { JobPage } from '../jobs/job-page.tsx';
import { foundNow, knownChecks, useFitUp, withoutCheck, type KnownCheck } from './check-data.ts';
import { OlderMark } from '../older/older-mark.tsx';
import { CheckMark } from './check-mark.tsx';
import './fit-up-screen.css';

/** Every check of a job, what is still to do first. */
export function FitUpScreen({ jobId }: { readonly jobId: string }) {
  const unit = useShownUnit();
  const { data, missing } = useFitUp(jobId);
  if (missing) return <NotHere what="job" />;
  if (!data) return <Page title=" ">{null}</Page>;
  const { job } = data;
  const checks = knownChecks(data);
  const isGood = (known: KnownCheck) => foundNow(known) === 'good';
  const open = checks.filter((known) => !isGood(known)).toSorted(byUrgency);
  const unmade = withoutCheck(data).length;
  const sum = sayHowMany(checks.map(foundNow), unmade);
  const good = checks.filter(isGood);
  return (
    <JobPage
      job={job}
      here="prove"
      foot={
        <LinkButton kind="main" href={hrefOf({ at: 'check', jobId, checkId: 'new' })}>
          New check
        </LinkButton>
      }
    >
      {checks.length === 0 && (
        <EmptyLine>
          What has to be proved on the machine goes here: float, rock, runout, clearance at the stops, each
          with its limits.
        </EmptyLine>
      )}
      {checks.length === 0 && unmade > 0 && <p class="fit-up-unmade">{sum}</p>}
      <CheckRows title={sum} checks={open} unit={unit} />
      <CheckRows title={open.length === 0 ? sum : 'Done and good'} checks={good} unit={unit} />
      {isSafetyCritical(job) && <SafetyCaution />}
    </JobPage>
  );
}

const URGENCY: Readonly<Record<CheckFound, number>> = {
  'no-good': 0,
  'too-close': 1,
  'not-done': 2,
  good: 3,
};

function byUrgency(a: KnownCheck, b: KnownCheck): number {
  return URGENCY[foundNow(a)] - URGENCY[foundNow(b)];
}

type CheckRowsProps = {
  readonly title: string;
  readonly checks: readonly KnownCheck[];
  readonly unit: ShownUnit;
};

function CheckRows({ title, checks, unit }: CheckRowsProps) {
  if (checks.length === 0) return null;
  return (
    <section class="fit-up-checks">
      <h2>{title}</h2>
      <ul>
        {checks.map((known) => (
          <li key={known.check.id}>
            <CheckRow known={known} unit={unit} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** One check with its verdict in words and as a mark. */
export function CheckRow({
  known,
  unit,
  onWorksheet = false,
}: {
  readonly known: KnownCheck;
  readonly unit: ShownUnit;
  /** Listed on its own worksheet, which need not be named. */
  readonly onWorksheet?: boolean;
}) {
  const { check, state, limits, worksheet, older, readBefore } = known;
  const { id, jobId, name, by } = check;
  return (
    <Row
      href={hrefOf({ at: 'check', jobId, checkId: id })}
      title={name}
      detail={
        <>
          <span class="fit-up-found" data-found={foundNow(known)}>
            {sayCheckState(state, { name, by, limits, unit })}
          </span>
          {worksheet && !onWorksheet && <span class="row-detail">{worksheet.title}</span>}
          {(older || readBefore) && (
            <span class="row-detail">
              <OlderMark />
            </span>
          )}
        </>
      }
      mark={<CheckMark found={foundNow(known)} />}
    />
  );
}
