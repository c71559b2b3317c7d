import { useState } from 'preact/hooks';
import { startAgain, type TakenAlong } from '../../store/kept/start-again.ts';
import type { Job } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useJob } from './use-job.ts';
import './again-screen.css';

const ALONG: readonly { readonly what: keyof TakenAlong; readonly words: string }[] = [
  { what: 'worksheets', words: 'Questions and wants' },
  { what: 'checks', words: 'Checks' },
  { what: 'steps', words: 'Steps' },
  { what: 'toGet', words: 'Get list' },
  { what: 'cuts', words: 'Cuts, old figures' },
];
// Figures of cuts were worked out on other parts: they come along only where that is said.
const AT_FIRST: TakenAlong = { worksheets: true, checks: true, steps: true, toGet: true, cuts: false };

/** This job again, for another customer or machine: everything but what was read, done and signed. */
export function AgainScreen({ jobId }: { jobId: string }) {
  const { job, missing } = useJob(jobId);
  if (missing) return <NotHere what="job" />;
  return job ? <Again job={job} /> : <Page title=" ">{null}</Page>;
}

function Again({ job }: { job: Job }) {
  const store = useStore();
  const name = useTextDraft(`again/${job.id}/name`);
  const [take, setTake] = useState(AT_FIRST);
  const { trouble, told } = useTold();
  const usual = `${job.name}, again`;
  const make = () =>
    told(startAgain(store, job.id, { name: name.text.trim() || usual, take }), ({ id }) => {
      name.clear();
      goInstead({ at: 'route', jobId: id });
    });
  return (
    <Page
      title="Begin another from it"
      subtitle={job.name}
      back={{ href: hrefOf({ at: 'job', jobId: job.id }), to: 'about the job' }}
      foot={
        <Button kind="main" onPress={() => make()}>
          Make the job
        </Button>
      }
    >
      <TextField label="Name" hint={usual} text={name.text} onText={name.change} />
      <div class="again-along" role="group" aria-labelledby="again-along">
        <h2 id="again-along">What comes along</h2>
        <div class="again-along-keys">
          {ALONG.map(({ what, words }) => (
            <Button key={what} chosen={take[what]} onPress={() => setTake({ ...take, [what]: !take[what] })}>
              {words}
            </Button>
          ))}
        </div>
      </div>
      <p class="again-note">Readings never do: each size is measured on the new parts.</p>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}
