import { putSetting } from '../../store/kept/settings.ts';
import { markDone } from '../../store/kept/steps.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { recheckedNow } from './recheck-data.ts';
import type { Assembly } from './use-assembly.ts';

type FitterScreenProps = {
  readonly assembly: Assembly;
  /** `step/<id>` or `recheck/<id>`: what the name was asked for, and is marked done with it. */
  readonly then: string;
};

/** Who does the work: asked once, then written beside every step that is done. */
export function FitterScreen({ assembly, then }: FitterScreenProps) {
  const store = useStore();
  const draft = useTextDraft('fitter/name');
  const { trouble, told, say } = useTold();
  const here = { at: 'assembly', jobId: assembly.job.id } as const;
  const [what, id = ''] = then.split('/');
  const step = what === 'step' ? assembly.steps.find((one) => one.id === id) : undefined;
  const recheck = what === 'recheck' ? assembly.rechecks.find((one) => one.id === id) : undefined;
  const take = async () => {
    const name = draft.text.trim();
    if (name === '') return say('Type a name or initials first.');
    if (!(await told(putSetting(store, 'fitter', name)))) return;
    if (step && !(await told(markDone(store, step.id, name)))) return;
    if (recheck && !(await told(recheckedNow(store, assembly.job, recheck, name)))) return;
    draft.clear();
    goInstead(here);
  };
  return (
    <Page
      title="Who does the work?"
      subtitle={step?.text ?? recheck?.what ?? assembly.job.name}
      back={{ href: hrefOf(here), to: 'the assembly' }}
      foot={
        <Button kind="main" onPress={() => take()}>
          {step ? 'Use this name, step done' : 'Use this name'}
        </Button>
      }
    >
      <TextField
        label="Name or initials"
        hint={assembly.fitter ?? 'As it should stand on the sheet'}
        text={draft.text}
        onText={draft.change}
      />
      <p class="assembly-note">
        Asked once. It is written beside each step that is done from now on, and on the signed sheet.
      </p>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}
