import { cutName } from '../../engine/thread/tap-name.ts';
import { changeCut } from '../../store/kept/cuts.ts';
import type { Cut } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';

/** What a cut and its part are called. */
export function CutNameScreen({ cut }: { cut: Cut }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const keep = (changes: { readonly name?: string; readonly part?: string }) =>
    told(changeCut(store, cut.id, { name: cut.name, part: cut.part, ...changes }));
  return (
    <Page
      title="What it is called"
      subtitle={cutName(cut)}
      back={{ href: hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id }), to: 'the cut' }}
    >
      <KeptField label="Cut" kept={cutName(cut)} onWords={async (name) => name !== '' && keep({ name })} />
      <KeptField label="Part" kept={cut.part} onWords={async (part) => part !== '' && keep({ part })} />
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}
