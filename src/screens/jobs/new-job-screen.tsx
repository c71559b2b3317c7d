import { useState } from 'preact/hooks';
import { isSafetyCritical, type System } from '../../engine/safety.ts';
import { createJob } from '../../store/jobs.ts';

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

/** A new job: nothing here has to be filled in, a name can be given later. */
export function NewJobScreen() {
  const store = useStore();
  const name = useTextDraft('new-job/name');
  const what = useTextDraft('new-job/what');
  const [systems, setSystems] = useState<readonly System[]>([]);
  const [trouble, setTrouble] = useState('');
  const make = async () => {
    const made = await createJob(store, {
      name: name.text.trim() || nameOfToday(),
      what: what.text.trim(),
      systems,
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
      <TextField label="Name" hint={`Left empty: ${nameOfToday()}`} text={name.text} onText={name.change} />
      <TextField label="What it is" hint="Left-hand trailer hub, say" text={what.text} onText={what.change} />
      <SystemsChoice chosen={systems} onChange={setSystems} />
      <NotPromised />
      {isSafetyCritical({ systems }) && <SafetyCaution />}
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
    </Page>
  );
}

function nameOfToday(): string {
  return `Job of ${new Date().toLocaleDateString(undefined, { day: 'numeric', month: 'long' })}`;
}
