import { signedStores } from '../../store/base/stores.ts';
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { listJobs } from '../../store/kept/job-list.ts';
import { hasConflicts, hasOpenWork } from '../../store/kept/open-work.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Job } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { UnitChoice } from '../common/choice.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble } from '../common/told.tsx';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useLater } from '../common/use-later.ts';
import { dayWords } from '../common/day-words.ts';
import { touchWords } from '../common/system-names.ts';
import { AT_ONCE, takeFirstList } from './first-list.ts';
import { dropPainted } from './painted-mark.ts';
import './jobs-screen.css';

const PAGE = 30;

/** All jobs, the one last worked on first. */
export function JobsScreen() {
  const [shown, setShown] = useState(AT_ONCE);
  const list = useLive(`jobs/${shown}`, ['jobs'], (store) => listJobs(store, { limit: shown }));
  const [before, setBefore] = useState(takeFirstList);
  // Behind the first drawing: however many there are, a screenful is there at once.
  const goesOn = shown === AT_ONCE && list?.more === true;
  useEffect(() => {
    if (goesOn) setShown(PAGE);
  }, [goesOn]);
  if (list !== undefined && list !== before) setBefore(list);
  const jobs = list ?? before;
  const isEmpty = jobs !== undefined && jobs.jobs.length === 0;
  const hasJobs = (jobs?.jobs.length ?? 0) > 0;
  const changed = useChanged(jobs?.jobs ?? []);
  useKeptPainted(jobs?.jobs, changed);
  const LinesAbove = useLater(useLive('left-open', LEFT_OPEN, isLeftOpen) === true, loadLinesAbove);
  const Cover = useLater(hasJobs, loadCover);
  const BackupLine = useLater(hasJobs, loadBackupLine);
  return (
    <Page
      title="Jobs"
      subtitle={isEmpty ? 'Slipfit makes parts fit' : 'Last worked on first'}
      foot={
        <>
          {hasJobs && <LinkButton href={hrefOf({ at: 'find' })}>Find</LinkButton>}
          <LinkButton kind="main" href={hrefOf({ at: 'new-job' })}>
            New job
          </LinkButton>
        </>
      }
    >
      {LinesAbove && <LinesAbove />}
      {BackupLine && <BackupLine />}
      {isEmpty && <NoJobs />}
      {jobs && jobs.unreadable > 0 && (
        <p class="jobs-unreadable">
          {jobs.unreadable === 1 ? 'One job' : `${jobs.unreadable} jobs`} can't be read by this version.
          Nothing was deleted.
        </p>
      )}
      <ul>
        {jobs?.jobs.map((job) => (
          <li key={job.id}>
            <JobRow job={job} isChanged={changed.has(job.id)} mark={Cover && <Cover jobId={job.id} />} />
          </li>
        ))}
      </ul>
      {jobs?.jobs.some((job) => job.demo) === true && <RemoveDemo />}
      {jobs?.more === true && shown >= PAGE && (
        <div class="jobs-more">
          <Button onPress={() => setShown(shown + PAGE)}>Show older jobs</Button>
        </div>
      )}
    </Page>
  );
}

/** The list as it stands on the screen is what the next start begins with; an empty one, or another place, is not. */
function useKeptPainted(jobs: readonly Job[] | undefined, changed: ReadonlySet<string>): void {
  // The layout's effect, as its undo must come before another place stands there.
  useLayoutEffect(() => {
    let isHere = true;
    if (jobs?.length === 0) dropPainted();
    else if (jobs) void loadKeepPainted().then((keep) => isHere && keep(), noMatter);
    return () => {
      isHere = false;
    };
  }, [jobs, changed]);
  useLayoutEffect(() => dropPainted, []);
}

// Behind the painting of the list, and without it the next start is as it was before.
const loadKeepPainted = async () => (await import('./painted-list.ts')).keepPainted;
const noMatter = () => undefined;

/** Those that stand otherwise than they were signed, looked through behind the drawing of the list. */
function useChanged(jobs: readonly Job[]): ReadonlySet<string> {
  const signed = jobs.filter(({ signedOff }) => signedOff).map(({ id }) => id);
  const changed = useLive(`changed/${signed.toSorted().join()}`, signedStores, async (store) => {
    if (signed.length === 0) return NONE;
    const { jobsChangedSinceSigning } = await import('../../store/kept/signed-since.ts');
    return jobsChangedSinceSigning(store, signed);
  });
  return changed ?? NONE;
}

const NONE: ReadonlySet<string> = new Set();

const LEFT_OPEN = ['rechecks', 'cuts', 'conflicts'] as const;

async function isLeftOpen(store: Store): Promise<boolean> {
  return (
    (await hasOpenWork(store, 'rechecks')) ||
    (await hasOpenWork(store, 'cuts')) ||
    (await hasConflicts(store))
  );
}

const loadLinesAbove = async () => (await import('./lines-above-jobs.tsx')).LinesAboveJobs;
const loadCover = async () => (await import('../photos/job-cover.tsx')).JobCover;
const loadBackupLine = async () => (await import('../shop/backup-line.tsx')).BackupLine;

/** A line ends behind it, never before it. */
const DOT = '\u00a0· ';

type JobRowProps = { readonly job: Job; readonly isChanged: boolean; readonly mark: ComponentChildren };

function JobRow({ job, isChanged, mark }: JobRowProps) {
  const systems = touchWords(job);
  return (
    <Row
      href={hrefOf({ at: 'route', jobId: job.id })}
      title={job.name}
      mark={mark}
      detail={
        <>
          {job.what !== '' && <span class="jobs-what">{job.what}</span>}
          <span class="jobs-systems">
            {isSafetyCritical(job) && (
              <>
                <strong class="jobs-critical">safety-critical</strong>
                {DOT}
              </>
            )}
            {[
              systems,
              job.signedOff &&
                `signed off ${dayWords(job.signedOff.at)}${isChanged ? ', changed since' : ''}`,
              job.state === 'closed' && 'closed',
              job.demo && 'demo data',
            ]
              .filter(Boolean)
              .join(DOT)}
          </span>
        </>
      }
    />
  );
}

function RemoveDemo() {
  const store = useStore();
  const remove = async () => {
    const { removeDemo } = await import('../../store/demo/demo.ts');
    await saidIfRefused(removeDemo(store));
  };
  return (
    <div class="jobs-more">
      <Button onPress={() => remove()}>Remove the demo jobs</Button>
    </div>
  );
}

async function takeDial(store: Store, unit: ShownUnit): Promise<void> {
  const { takeUsualDial } = await import('./usual-dial.ts');
  await takeUsualDial(store, unit);
}

function NoJobs() {
  const store = useStore();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState('');
  const showTheDemo = async () => {
    setBusy(true);
    const { showDemo } = await import('./show-demo.ts');
    setTrouble(await showDemo(store));
    setBusy(false);
  };
  return (
    <div class="jobs-empty">
      <svg
        class="jobs-drawing"
        viewBox="0 0 320 150"
        role="img"
        aria-label="A bore with its pin, drawn to scale"
      >
        <path class="jobs-centre" d="M40 75h240 M160 8v134" />
        <circle cx="160" cy="75" r="56" />
        <circle cx="160" cy="84" r="47" />
        <path class="jobs-changes" d="M160 19v18 M150 19h20 M150 37h20" />
      </svg>
      <p>
        A job holds the readings, worksheets and sheet of one build. Everything stays on this phone, and no
        signal is needed.
      </p>
      <UnitChoice onChosen={(unit) => void takeDial(store, unit)} />
      <div class="jobs-empty-keys">
        <Button disabled={busy} onPress={() => showTheDemo()}>
          Show me with the demo job
        </Button>
        <LinkButton href={hrefOf({ at: 'restore' })}>I have a backup</LinkButton>
      </div>
      <Trouble>{trouble}</Trouble>
    </div>
  );
}
