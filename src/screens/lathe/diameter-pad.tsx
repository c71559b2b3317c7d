import { useState } from 'preact/hooks';
import { readEntry } from '../../engine/length/entry.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { putDraft } from '../../store/drafts.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import { workDiameterKey } from './work-diameter.ts';

/** How big around the work is where it is faced: its speed hangs on that, and the cut doesn't say. */
export function DiameterPad({ at: { cut, job } }: { at: LatheCut }) {
  const store = useStore();
  const draft = useSizeDraft(`lathe/${cut.id}/diameter`, useShownUnit());
  const padSize = usePadSize();
  const [trouble, setTrouble] = useState<string>();
  const lathe = { at: 'lathe', jobId: job.id, cutId: cut.id } as const;
  const commit = async () => {
    const { half } = draft;
    const entry = readEntry(half.typed, { unit: half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    const kept = await putDraft(store, workDiameterKey(cut.id), half);
    if (!kept.ok) return setTrouble(sayStore(kept.refusal));
    draft.clear();
    return go(lathe);
  };
  return (
    <div class="pad-screen">
      <Page
        title="How big around is it?"
        subtitle="for the speed only; the largest the tool passes over"
        back={{ href: hrefOf(lathe), to: 'the lathe' }}
      >
        <SizePad
          label="Diameter of the work"
          half={draft.half}
          padSize={padSize}
          onChange={(half) => {
            setTrouble(undefined);
            draft.change(half);
          }}
          commit={{ text: 'Use it', onPress: () => commit() }}
          {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
        />
      </Page>
    </div>
  );
}
