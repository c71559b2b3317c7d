import { useState } from 'preact/hooks';
import { sayFinding } from '../../engine/job/say-sign-off.ts';
import { isReason, mayBeReasoned, type Blocker, type SignOffAnswer } from '../../engine/job/sign-off.ts';
import type { Job } from '../../store/base/records.ts';
import { writeReason } from '../../store/kept/reasons.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useSetting } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import type { SignOffData } from './sign-off-data.ts';

type ReasonScreenProps = { readonly data: SignOffData; readonly about: string };

/** Why one thing that stops the signing may stand, in the fitter's words. It is printed on the sheet. */
export function ReasonScreen({ data, about }: ReasonScreenProps) {
  const { job, answer } = data;
  const standing = answer.standing.find(({ key }) => key === about);
  const found = standing ?? answer.blockers.find(({ key }) => key === about);
  if (!found || !mayBeReasoned(found))
    return (
      <Page title="Why it may stand" back={backTo(job.id)}>
        <p class="assembly-note">This doesn’t stop the signing any more.</p>
      </Page>
    );
  return <Reason key={found.key} job={job} found={found} standing={standing} />;
}

const placeOf = (jobId: string) => ({ at: 'sign-off', jobId }) as const;
const backTo = (jobId: string) => ({ href: hrefOf(placeOf(jobId)), to: 'the sign-off' });

type ReasonProps = {
  readonly job: Job;
  readonly found: Blocker;
  /** It stands by a reason already. */
  readonly standing: SignOffAnswer['standing'][number] | undefined;
};

function Reason({ job, found, standing }: ReasonProps) {
  const { trouble, text, type, keep } = useReason(job, found, standing?.why);
  const { what, todo } = sayFinding(found);
  return (
    <Page
      title="Why it may stand"
      subtitle={job.name}
      back={backTo(job.id)}
      foot={
        <Button kind="main" onPress={() => keep(text.trim())}>
          Keep this reason
        </Button>
      }
    >
      <Caution heading={`${what}.`}>{todo}</Caution>
      <TextField label="Reason" hint="What proves it, or who said so" long text={text} onText={type} />
      <p class="assembly-note">It is printed on the sheet. If the figure changes, it is asked for again.</p>
      <Trouble>{trouble}</Trouble>
      {standing && (
        <div class="assembly-keys">
          <Button onPress={() => keep(undefined)}>Take the reason back</Button>
        </div>
      )}
    </Page>
  );
}

/** The reason as it is typed, from the one that stands; `undefined` takes that one back. */
function useReason(job: Job, { key, as }: Blocker, before = '') {
  const store = useStore();
  const by = useSetting('fitter');
  const draftKey = `reason/${job.id}/${key}`;
  const draft = useTextDraft(draftKey);
  const [touched, setTouched] = useState(false);
  const { trouble, told, say } = useTold();
  const keep = async (why: string | undefined) => {
    if (why !== undefined && !isReason(why))
      return say('Write the reason in words: who or what says that it may stand?');
    const reason = why === undefined ? undefined : { why, as, ...(by && { by }) };
    return told(writeReason(store, job.id, key, reason, draftKey), () => {
      draft.clear();
      announce(why === undefined ? 'The reason is taken back.' : 'The reason is written down.');
      goInstead(placeOf(job.id));
    });
  };
  const type = (words: string) => {
    setTouched(true);
    say('');
    draft.change(words);
  };
  return { trouble, text: touched || draft.text !== '' ? draft.text : before, type, keep };
}
