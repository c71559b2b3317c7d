import { useState } from 'preact/hooks';
import { isSafetyCritical, isTouchSaid, type Touched } from '../../engine/job/safety.ts';
import { createJob } from '../../store/jobs.ts';

import { dayAndMonthWords } from '../common/day-words.ts';
import { sayStore } from '../../store/say-store.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { useTextDraft } from '../common/use-draft.ts';
import { HomeScreenFirst, NotPromised } from './before-first-job.tsx';
import { SystemsChoice } from './systems-choice.tsx';
import { TextField } from '../common/text-field.tsx';

/** A new job: a name can be given later, but what it touches has to be said: nothing is chosen beforehand. */
export function NewJobScreen() {
  const store = useStore();
  const name = useTextDraft('new-job/name');
  const what = useTextDraft('new-job/what');
  const [touched, setTouched] = useState<Touched>({ systems: [] });
  const [trouble, setTrouble] = useState('');
  const make = async () => {
    if (!isTouchSaid(touched))
      return setTrouble('Say what it touches first. “None of these” is an answer too.');
    const made = await createJob(store, {
      name: name.text.trim() || nameOfToday(),
      what: what.text.trim(),
      systems: touched.systems,
    });
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    name.clear();
    what.clear();
    return goInstead({ at: 'readings', jobId: made.value.id });
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
          setTrouble('');
          setTouched(to);
        }}
      />
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      <NotPromised />
      {isTouchSaid(touched) && isSafetyCritical(touched) && <SafetyCaution />}
    </Page>
  );
}

function nameOfToday(): string {
  return `Job of ${dayAndMonthWords(Date.now())}`;
}
