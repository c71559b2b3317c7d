import { useEffect, useState } from 'preact/hooks';
import type { DecimalMark } from '../../engine/length/decimal-mark.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { knownSettings, type KnownSettings } from '../../store/kept/known-settings.ts';
import type { KeptLathe, SettingKey, SettingValues } from '../../store/base/records.ts';
import { useStoreIfAny } from './store-context.ts';

/** A setting as it stands, and drawn again when it changes. Nothing while none was read, or where it was never set. */
export function useSetting<Key extends SettingKey>(key: Key): SettingValues[Key] | undefined {
  return readable(useKnown(key))?.get(key);
}

/** The boundary around the screens says why they could not be read. */
function readable(known: KnownSettings | undefined): KnownSettings | undefined {
  const fault = known?.fault();
  if (fault === undefined) return known;
  // Asked again already, for whoever presses "Try again".
  void known?.ready();
  throw fault;
}

function useKnown(key: SettingKey): KnownSettings | undefined {
  const store = useStoreIfAny();
  const known = store && knownSettings(store);
  const drawn = known?.get(key);
  const [, drawAgain] = useState(0);
  useEffect(() => {
    const again = () => drawAgain((times) => times + 1);
    // It may have changed between this drawing and now.
    if (known && known.get(key) !== drawn) again();
    return known?.follow(key, again);
  }, [known, key]);
  return known;
}

/** What the shop writes before its decimals; a point where it counts in inches, and until it says otherwise. */
export function decimalMarkOf(known: Pick<KnownSettings, 'get'>): DecimalMark {
  return (known.get('shownUnit') === 'mm' && known.get('decimalMark')) || '.';
}

/** The unit figures are shown in; inches until the shop says otherwise. */
export function useShownUnit(): ShownUnit {
  return useSetting('shownUnit') ?? 'in';
}

export function usePadSize(): 'standard' | 'glove' {
  return useSetting('padSize') ?? 'standard';
}

/** Where the phone is read, which the page's colours go by. It stands outside of any boundary, so it never throws. */
export function useLight(): 'shop' | 'sun' {
  return useKnown('light')?.get('light') ?? 'shop';
}

/** The chart looked at last. It stands outside of any boundary too. */
export function useLastChart(): string | undefined {
  return useKnown('lastChart')?.get('lastChart');
}

// A lathe nobody has described yet: any speed.
const anyLathe: KeptLathe = { speedsRpm: [] };

/** The speeds the lathe has; `undefined` until they are read. */
export function useLathe(): KeptLathe | undefined {
  const known = readable(useKnown('lathe'));
  return known?.isRead() ? (known.get('lathe') ?? anyLathe) : undefined;
}
