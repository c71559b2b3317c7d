import { getSetting } from '../../store/settings.ts';
import { useLive } from '../common/store-context.ts';

// Chosen, not published: a shop that works in inches counts in dollars more often than not.
export const USUAL_SIGN = '$';

/** The sign before an amount; the shop may have none. Undefined until it is read. */
export function useCurrency(): string | undefined {
  const found = useLive('settings/currency', ['settings'], async (store) => ({
    sign: await getSetting(store, 'currency'),
  }));
  return found && (found.sign ?? USUAL_SIGN);
}
