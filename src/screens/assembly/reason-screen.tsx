import { useState } from 'preact/hooks';
import { sayFinding } from '../../engine/job/say-sign-off.ts';
import { isReason, mayBeReasoned } from '../../engine/job/sign-off.ts';
import { writeReason } from '../../store/reasons.ts';
import { sayStore } from '../../store/say-store.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useSetting } from '../common/use-settings.ts';
import type { SignOffData } from './sign-off-data.ts';

type ReasonScreenProps = { readonly data: SignOffData; readonly about: string };

/** Why one thing that stops the signing may stand, in the fitter's words. It is printed on the sheet. */
export function ReasonScreen({ data: { job, answer }, about }: ReasonScreenProps) {
  const store = useStore();
  const by = useSetting('fitter');
  const draftKey = `reason/${job.id}/${about}`;
  const draft = useTextDraft(draftKey);
  const [touched, setTouched] = useState(false);
  const [trouble, setTrouble] = useState('');
  const there = { at: 'sign-off', jobId: job.id } as const;
  const standing = answer.standing.find(({ key }) => key === about);
  const found = standing ?? answer.blockers.find(({ key }) => key === about);
  const back = { href: hrefOf(there), to: 'the sign-off' };
  if (!found || !mayBeReasoned(found))
    return (
      <Page title="Why it may stand" back={back}>
        <p class="assembly-note">This doesn’t stop the signing any more.</p>
      </Page>
    );
  const text = touched || draft.text !== '' ? draft.text : (standing?.why ?? '');
  const { what, todo } = sayFinding(found);
  const keep = async (why: string | undefined) => {
    if (why !== undefined && !isReason(why))
      return setTrouble('Write the reason in words: who or what says that it may stand?');
    const reason = why === undefined ? undefined : { why, as: found.as, ...(by && { by }) };
    const kept = await writeReason(store, job.id, about, reason, draftKey);
    if (!kept.ok) return setTrouble(sayStore(kept.refusal));
    draft.clear();
    announce(why === undefined ? 'The reason is taken back.' : 'The reason is written down.');
    return goInstead(there);
  };
  return (
    <Page
      title="Why it may stand"
      subtitle={job.name}
      back={back}
      foot={
        <Button kind="main" onPress={() => keep(text.trim())}>
          Keep this reason
        </Button>
      }
    >
      <Caution heading={`${what}.`}>{todo}</Caution>
      <TextField
        label="Reason"
        hint="What proves it, or who said so"
        long
        text={text}
        onText={(words) => {
          setTouched(true);
          setTrouble('');
          draft.change(words);
        }}
      />
      <p class="assembly-note">It is printed on the sheet. If the figure changes, it is asked for again.</p>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      {standing && (
        <div class="assembly-keys">
          <Button onPress={() => keep(undefined)}>Take the reason back</Button>
        </div>
      )}
    </Page>
  );
}
