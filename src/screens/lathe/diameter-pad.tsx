import { putDraft } from '../../store/kept/drafts.ts';
import { go, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { useStore } from '../common/store-context.ts';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import type { LatheCut } from './use-lathe-cut.ts';
import { workDiameterKey } from './work-diameter.ts';

/** How big around the work is where it is faced: its speed hangs on that, and the cut doesn't say. */
export function DiameterPad({ at: { cut, job } }: { at: LatheCut }) {
  const store = useStore();
  const draft = useSizeDraft(`lathe/${cut.id}/diameter`, useShownUnit());
  const answer = useTold();
  const lathe = { at: 'lathe', jobId: job.id, cutId: cut.id } as const;
  const take = () =>
    answer.told(putDraft(store, workDiameterKey(cut.id), draft.half), () => {
      draft.clear();
      go(lathe);
    });
  return (
    <PadScreen
      title="How big around is it?"
      subtitle="for the speed only; the largest the tool passes over"
      back={{ href: hrefOf(lathe), to: 'the lathe' }}
    >
      <AskedSize label="Diameter of the work" draft={draft} answer={answer} onSize={take} />
    </PadScreen>
  );
}
