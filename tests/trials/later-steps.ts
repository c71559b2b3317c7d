import type { Step } from '../../src/store/opening/steps/step.ts';

/**
 * Steps of the database as later releases might bring them, for trials only. `moves` does what a real one does: a new
 * store, and every reading read and written again, one after the other.
 */
const kinds = {
  moves: (number) => async (db, transaction) => {
    db.createObjectStore(`later-${number}`, { keyPath: 'id' });
    let cursor = await transaction.objectStore('readings').openCursor();
    while (cursor) {
      const moved: unknown = { ...cursor.value, [`later${number}`]: true };
      // One by one, so that the way from the old form to the new is long enough to be interrupted.
      // oxlint-disable-next-line no-await-in-loop
      await cursor.update?.(moved);
      // oxlint-disable-next-line no-await-in-loop
      cursor = await cursor.continue();
    }
  },
  'fails-at-once': () => () => {
    throw new Error('this step fails');
  },
  'fails-half-way': () => async (db, transaction) => {
    db.createObjectStore('half-made', { keyPath: 'id' });
    await transaction.objectStore('readings').clear?.();
    throw new Error('this step fails when it has emptied a store');
  },
} as const satisfies Record<string, (number: number) => Step>;

export type LaterStep = keyof typeof kinds;

export function laterSteps(names: readonly LaterStep[]): Step[] {
  return names.map((name, index) => kinds[name](index + 1));
}
