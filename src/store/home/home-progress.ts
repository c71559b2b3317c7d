import { read } from '../opening/read.ts';
import { comingRange } from './home-rows.ts';
import type { Home } from './home-context.ts';
import { changeState } from './home-state-row.ts';

/** How much of what was listed is still to come, for the screen. */
export async function fetchProgress(home: Home): Promise<void> {
  const left = await read(home.store, ['home'], (tx) => tx.objectStore('home').count(comingRange()));
  const rows = left * home.sizes.page;
  await changeState(home.store, ({ progress: _before, of: known, ...state }) => {
    const of = Math.max(known ?? 0, rows);
    return left === 0 ? state : { ...state, of, progress: { way: 'here', done: of - rows, of } };
  });
}
