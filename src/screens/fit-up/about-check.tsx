import { changeCheck, removeCheck, type CheckChanges } from '../../store/kept/checks.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import type { KnownCheck } from './check-data.ts';

/** What a check is called, how it is done, where its limits come from, and the way to remove it. */
export function AboutCheck({ known: { check, state } }: { readonly known: KnownCheck }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = { at: 'check', jobId: check.jobId, checkId: check.id } as const;
  const change = (changes: CheckChanges) => told(changeCheck(store, check.id, changes));
  const remove = () => told(removeCheck(store, check.id), () => go({ at: 'fit-up', jobId: check.jobId }));
  return (
    <Page title="About this check" subtitle={check.name} back={{ href: hrefOf(here), to: 'the check' }}>
      <KeptField label="Name" kept={check.name} onWords={async (name) => name !== '' && change({ name })} />
      <KeptField label="How to do it" kept={check.how} long onWords={(how) => change({ how })} />
      {state.last.kind === 'seen' && (
        <p class="one-check-how">
          It was looked at as it stands here. Change it, and it has to be looked at again.
        </p>
      )}
      {check.by !== 'by-eye' && (
        <KeptField
          label="Where the limits come from"
          kept={check.limitsFrom}
          onWords={(limitsFrom) => change({ limitsFrom })}
        />
      )}
      <Trouble>{trouble}</Trouble>
      <div class="check-keys">
        <Button onPress={() => remove()}>Remove {check.name}</Button>
      </div>
    </Page>
  );
}
