import { cutName } from '../../engine/thread/tap-name.ts';
import { useState } from 'preact/hooks';
import { changeCut } from '../../store/cuts.ts';
import type { Cut } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';

/** What a cut and its part are called. */
export function CutNameScreen({ cut }: { cut: Cut }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const keep = async (changes: { readonly name?: string; readonly part?: string }) => {
    const kept = await changeCut(store, cut.id, { name: cut.name, part: cut.part, ...changes });
    setTrouble(kept.ok ? '' : sayStore(kept.refusal));
    return kept.ok;
  };
  return (
    <Page
      title="What it is called"
      subtitle={cutName(cut)}
      back={{ href: hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id }), to: 'the cut' }}
    >
      <KeptField label="Cut" kept={cutName(cut)} onWords={async (name) => name !== '' && keep({ name })} />
      <KeptField label="Part" kept={cut.part} onWords={async (part) => part !== '' && keep({ part })} />
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
    </Page>
  );
}
