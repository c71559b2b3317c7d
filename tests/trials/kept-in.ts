import type { Page } from '../browser/hands/hands.ts';

export type KeptIn = {
  readonly version: number;
  readonly stores: Readonly<
    Record<string, readonly { readonly id: string; readonly [field: string]: unknown }[]>
  >;
};

/** What the database holds, read past the app, in whatever version it is: nothing is dressed up, nothing is moved. */
export async function keptIn(page: Page): Promise<KeptIn> {
  return page.evaluate(
    () =>
      new Promise<KeptIn>((done, failed) => {
        const opening = indexedDB.open('slipfit');
        opening.addEventListener('error', () => failed(new Error('the database would not open')));
        opening.addEventListener('success', () => {
          const db = opening.result;
          const { version } = db;
          const names = [...db.objectStoreNames];
          const stores: Record<string, []> = {};
          const reading = db.transaction(names);
          for (const name of names) {
            const all = reading.objectStore(name).getAll();
            all.addEventListener(
              'success',
              () =>
                // The mark of a place that is coming up is nothing that is kept.
                (stores[name] = JSON.parse(
                  JSON.stringify(all.result.filter(({ id }) => id !== 'slipfit coming up')),
                )),
            );
          }
          reading.addEventListener('complete', () => {
            db.close();
            done({ version, stores });
          });
        });
      }),
  );
}

/** The records that were there before and are not any more, as `store/id`; half-typed sizes come and go. */
export function lostSince(before: KeptIn, after: KeptIn): string[] {
  return Object.entries(before.stores).flatMap(([store, records]) => {
    if (store === 'drafts') return [];
    const still = new Set(after.stores[store]?.map(({ id }) => id));
    return records.filter(({ id }) => !still.has(id)).map(({ id }) => `${store}/${id}`);
  });
}
