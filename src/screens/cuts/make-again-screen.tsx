import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { cutName } from '../../engine/thread/tap-name.ts';
import { useState } from 'preact/hooks';
import { makeAgain } from '../../store/kept/make-cut-again.ts';
import { listJobs } from '../../store/kept/job-list.ts';
import type { Cut } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useCutOlder } from '../older/job-ground.ts';
import { OlderMark } from '../older/older-mark.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';

const PAGE = 30;

/** The job a cut is made again in: its own first, then the others, the one last worked on first. */
export function MakeAgainScreen({ cut }: { cut: Cut }) {
  const store = useStore();
  const [shown, setShown] = useState(PAGE);
  const { trouble, told } = useTold();
  const older = useCutOlder(cut);
  const list = useLive(`jobs/${shown}`, ['jobs'], (from) => listJobs(from, { limit: shown }));
  const jobs = (list?.jobs ?? []).toSorted((a, b) => Number(b.id === cut.jobId) - Number(a.id === cut.jobId));
  const make = (jobId: string, name: string) =>
    told(makeAgain(store, [cut.id], jobId), () => {
      announce(`${cutName(cut)} is on the cut list of ${name} again.`);
      goInstead({ at: 'cuts', jobId });
    });
  return (
    <Page
      title="Make it again: in which job?"
      subtitle={cutName(cut)}
      back={{ href: hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id }), to: 'the cut' }}
    >
      {older === true && (
        <div class="cut-form-older">
          <OlderMark />
          <p>A copy would carry the old figures on: take the new ones first.</p>
        </div>
      )}
      {sayStrengthOfCut(cut) !== '' && <p class="cut-form-strength">{sayStrengthOfCut(cut)}</p>}
      <Trouble>{trouble}</Trouble>
      <ul>
        {jobs.map((job) => (
          <li key={job.id}>
            <Row
              title={job.name}
              {...(job.id === cut.jobId ? { detail: 'this job' } : job.what !== '' && { detail: job.what })}
              onPress={() => make(job.id, job.name)}
            />
          </li>
        ))}
      </ul>
      {list?.more === true && (
        <div class="cuts-own">
          <Button onPress={() => setShown(shown + PAGE)}>Show older jobs</Button>
        </div>
      )}
    </Page>
  );
}
