import { cutName } from '../../engine/thread/tap-name.ts';
import { getJob } from '../../store/kept/jobs.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import type { Cut } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { JobPage } from '../jobs/job-page.tsx';
import { groundStores, olderCuts } from '../older/job-ground.ts';
import { CutRow } from './cut-row.tsx';
import { countsStill, CUT_STATES, hasItsOwnSize, MACHINE_WORDS, STATE_WORDS } from './cut-words.ts';

type CutsScreenProps = { readonly jobId: string };

/** A job's cuts by the state of the work, and the way to the machine with the next one. */
export function CutsScreen({ jobId }: CutsScreenProps) {
  const unit = useShownUnit();
  const found = useLive(`cuts/${jobId}`, ['cuts', 'jobs', ...groundStores], async (store) => {
    const [job, cuts] = await Promise.all([getJob(store, jobId), cutsOf(store, jobId)]);
    return { job, cuts, older: await olderCuts(store, cuts.filter(countsStill)) };
  });
  if (!found) return <Page title=" ">{null}</Page>;
  const { job, cuts, older } = found;
  if (!job) return <NotHere what="job" />;
  const next = nextCut(cuts);
  return (
    <JobPage
      job={job}
      here="cut"
      foot={
        next ? (
          <LinkButton kind="main" href={machineHref(next)}>
            <span>
              {`${machineAction(next)} `}
              <small class="cuts-next">{cutName(next)}</small>
            </span>
          </LinkButton>
        ) : (
          <LinkButton kind="main" href={hrefOf({ at: 'worksheets', jobId })}>
            To the worksheets
          </LinkButton>
        )
      }
    >
      {cuts.length === 0 && (
        <EmptyLine>
          What a worksheet asks to be cut comes here with its target and limits: press “Cut it” there.
        </EmptyLine>
      )}
      {CUT_STATES.map((state) => {
        const inState = cuts.filter((cut) => cut.state === state);
        if (inState.length === 0) return null;
        return (
          <section key={state} class="cuts-group">
            <h2>{`${STATE_WORDS[state]} · ${inState.length}`}</h2>
            <ul>
              {inState.map((cut) => (
                <li key={cut.id}>
                  <CutRow cut={cut} unit={unit} stateIsSaid older={older.has(cut.id)} />
                </li>
              ))}
            </ul>
          </section>
        );
      })}
      <div class="cuts-own">
        <LinkButton href={hrefOf({ at: 'cut', jobId, cutId: 'new' })}>A cut of your own</LinkButton>
      </div>
    </JobPage>
  );
}

/** What is on the machine comes first, then what was put down first. */
export function nextCut(cuts: readonly Cut[]): Cut | undefined {
  const isOpen = (state: Cut['state']) => (cut: Cut) => cut.state === state && !cut.made;
  return (
    cuts.find(isOpen('cutting')) ??
    cuts.find(isOpen('to-cut')) ??
    cuts.find(({ state }) => state === 'cutting')
  );
}

/** To the machine: passes are cut on the lathe's screen, a drill, reamer or tap is run through and measured. */
export function machineHref(cut: Cut): string {
  const at = { jobId: cut.jobId, cutId: cut.id };
  return hrefOf(hasItsOwnSize(cut) && !cut.stands ? { at: 'cut', ...at } : { at: 'lathe', ...at });
}

export function machineAction(cut: Cut): string {
  return `To the ${MACHINE_WORDS[cut.machine]}`;
}
