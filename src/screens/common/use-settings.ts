import { lengthOf } from '../../engine/length.ts';
import type { ShownUnit } from '../../engine/show.ts';
import { getSetting } from '../../store/settings.ts';
import type { KeptDial, KeptLathe } from '../../store/records.ts';
import { useLive } from './store-context.ts';

/** The unit figures are shown in; inches until the shop says otherwise. */
export function useShownUnit(): ShownUnit {
  return useLive('settings/shownUnit', ['settings'], (store) => getSetting(store, 'shownUnit')) ?? 'in';
}

export function usePadSize(): 'standard' | 'glove' {
  return useLive('settings/padSize', ['settings'], (store) => getSetting(store, 'padSize')) ?? 'standard';
}

/** Where the phone is read, which the page's colours go by. */
export function useLight(): 'shop' | 'sun' {
  return useLive('settings/light', ['settings'], (store) => getSetting(store, 'light')) ?? 'shop';
}

/** Usual dials, reading the diameter. Common practice, no source. */
export const usualDials: Readonly<Record<ShownUnit, KeptDial>> = {
  in: { reads: 'diameter', graduation: { exact: lengthOf('0.001 in'), typed: '.001', unit: 'in' } },
  mm: { reads: 'diameter', graduation: { exact: lengthOf('0.02 mm'), typed: '0.02', unit: 'mm' } },
};

/** Until the shop says otherwise. */
export const usualDial: KeptDial = usualDials.in;

export function useDial(): KeptDial {
  return useLive('settings/dial', ['settings'], (store) => getSetting(store, 'dial')) ?? usualDial;
}

// A lathe nobody has described yet: any speed.
const anyLathe: KeptLathe = { speedsRpm: [] };

/** The speeds the lathe has; `undefined` until they are read. */
export function useLathe(): KeptLathe | undefined {
  return useLive(
    'settings/lathe',
    ['settings'],
    async (store) => (await getSetting(store, 'lathe')) ?? anyLathe,
  );
}
