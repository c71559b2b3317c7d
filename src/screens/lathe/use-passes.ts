import { minus, sum, type Length } from '../../engine/length/length.ts';
import { worked } from '../../engine/length/refusal.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { setCutState } from '../../store/kept/cuts.ts';
import { dialledKey, dialledText } from '../../store/kept/dialled.ts';
import { clearDraft, putDraft } from '../../store/kept/drafts.ts';
import { useStore } from '../common/store-context.ts';
import type { LatheCut } from './use-lathe-cut.ts';

/** What the next pass takes off the size from where the dial stands now. */
export function nextTake({ progress: { plan, next }, dialled }: LatheCut): Length | undefined {
  if (!plan?.ok || !next || next.dial.slide === 'to-choose') return undefined;
  const upTo = plan.value.passes.slice(0, plan.value.passes.indexOf(next) + 1);
  return minus(sum(upTo.map(({ asked }) => asked)), sum(dialled));
}

/** Passes that are cut without measuring: the plan goes on, and can be taken back. */
export function usePasses(at: LatheCut) {
  const store = useStore();
  const key = dialledKey(at.cut.id, at.last?.[0]);
  const keep = (amounts: readonly Length[]) =>
    amounts.length === 0
      ? clearDraft(store, key)
      : putDraft(store, key, { typed: dialledText(amounts), unit: 'mm' });
  return {
    /** The pass on the screen was cut; gives what it took, nothing where none is left. */
    cutIt: async (): Promise<StoreResult<Length | undefined>> => {
      const take = nextTake(at);
      if (!take) return worked(undefined);
      // The state first: a pass that could not be counted leaves nothing to take back.
      const begun = at.cut.state === 'to-cut' ? await setCutState(store, at.cut.id, 'cutting') : undefined;
      if (begun?.ok === false) return begun;
      const kept = await keep([...at.dialled, take]);
      return kept.ok ? worked(take) : kept;
    },
    /** The last one was not cut after all. */
    takeBack: () => keep(at.dialled.slice(0, -1)),
  };
}
