import { useState } from 'preact/hooks';
import { isSafetyCritical, isTouchSaid, type Touched } from '../../engine/job/safety.ts';
import { canBeNow } from '../../store/base/clock.ts';
import { createJob } from '../../store/kept/jobs.ts';
import { askAtFirstJob } from '../../store/opening/persistence.ts';
import { dayAndMonthWords } from '../common/day-words.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { useTextDraft } from '../common/use-draft.ts';
import { HomeScreenFirst, NotPromised } from './before-first-job.tsx';
import { SystemsChoice } from './systems-choice.tsx';
import { TextField } from '../common/text-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';

/** A new job: a name can be given later, but what it touches has to be said: nothing is chosen beforehand. */
export function NewJobScreen() {
  const store = useStore();
  const name = useTextDraft('new-job/name');
  const what = useTextDraft('new-job/what');
  const [touched, setTouched] = useState<Touched>({ systems: [] });
  const { trouble, told, say } = useTold();
  const make = () => {
    if (!isTouchSaid(touched)) return say('Say what it touches first. “None of these” is an answer too.');
    const job = {
      name: name.text.trim() || nameOfToday(),
      what: what.text.trim(),
      systems: touched.systems,
    };
    return told(createJob(store, job), ({ id }) => {
      name.clear();
      what.clear();
      void askAtFirstJob();
      goInstead({ at: 'route', jobId: id });
    });
  };
  return (
    <Page
      title="New job"
      back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}
      foot={
        <Button kind="main" onPress={() => make()}>
          Make the job
        </Button>
      }
    >
      <HomeScreenFirst />
      <TextField label="Name" hint={nameOfToday()} text={name.text} onText={name.change} />
      <TextField label="What it is" hint="Left-hand trailer hub, say" text={what.text} onText={what.change} />
      <SystemsChoice
        touched={touched}
        onChange={(to) => {
          say('');
          setTouched(to);
        }}
      />
      <Trouble>{trouble}</Trouble>
      <NotPromised />
      {isTouchSaid(touched) && isSafetyCritical(touched) && <SafetyCaution />}
    </Page>
  );
}

function nameOfToday(): string {
  const now = Date.now();
  return canBeNow(now) ? `Job of ${dayAndMonthWords(now)}` : 'New job';
}
