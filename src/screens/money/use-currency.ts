import type { Store } from '../../store/opening/open-store.ts';
import { getSetting } from '../../store/kept/settings.ts';
import { useLive } from '../common/store-context.ts';

// Chosen, not published: a shop that works in inches counts in dollars more often than not.
const USUAL_SIGN = '$';

/** The sign before an amount, on the screens as on the sheet; the shop may have none. */
export async function readCurrency(store: Store): Promise<string> {
  return (await getSetting(store, 'currency')) ?? USUAL_SIGN;
}

/** Undefined until it is read. */
export function useCurrency(): string | undefined {
  return useLive('settings/currency', ['settings'], readCurrency);
}
