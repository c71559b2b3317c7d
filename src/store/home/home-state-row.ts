import type { Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import { act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import type { HomeTrouble, PairedState, PictureChoice } from './home-state.ts';

/** What the last rounds came to, kept so that every window shows it, also after a start without signal. */
export type StateRow = {
  readonly id: 'state';
  readonly wholeAt?: number;
  readonly trouble?: HomeTrouble & { readonly since: number; readonly triesAgain: boolean };
  readonly progress?: PairedState['progress'];
  /** Of how many the progress is. */
  readonly of?: number;
  readonly homePutBackAt?: number;
  readonly phonePutBackAt?: number;
  readonly unreadable?: number;
  /** Pictures whose bytes were not here when that was last looked at. */
  readonly toFetch?: number;
};

export type PicturesRow = { readonly id: 'pictures'; readonly choice: PictureChoice; readonly now?: true };

export function stateIn(row: unknown): StateRow {
  // Written by `changeState` alone.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return isPlainObject(row) ? (row as StateRow) : { id: 'state' };
}

export function picturesIn(row: unknown): PicturesRow {
  const choice = isPlainObject(row) ? row['choice'] : undefined;
  const isKnown = choice === 'always' || choice === 'looked-at';
  const now = isPlainObject(row) && row['now'] === true;
  return { id: 'pictures', choice: isKnown ? choice : 'wifi', ...(now && { now }) };
}

/** Writes down how things stand. Where even that has no room, the last that was written stands: nothing else hangs on it. */
export async function changeState(store: Store, changed: (state: StateRow) => StateRow): Promise<void> {
  const how = { stores: ['home'], durability: 'relaxed', stamped: false } as const;
  await act(store, how, async (a) => {
    const kept: Kept | undefined = await a.kept('home', 'state');
    a.putKept('home', { ...changed(stateIn(kept)) });
  });
}
