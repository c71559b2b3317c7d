import type { KeptMill } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { changeSetting } from '../../store/kept/settings.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { usualMills } from './mill-slides.ts';
import { useSetting, useShownUnit } from './use-settings.ts';

export function useMill(): KeptMill {
  const unit = useShownUnit();
  return useSetting('mill') ?? usualMills[unit];
}

/** Changed from what is kept now, which a press just before this one may have changed. */
export async function changeMill(
  store: Store,
  shown: KeptMill,
  change: (now: KeptMill) => KeptMill,
): Promise<StoreResult<void>> {
  return changeSetting(store, 'mill', (kept) => change(kept ?? shown));
}
