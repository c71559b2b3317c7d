import type { Page } from './hands/hands.ts';

const entry = (typed: string, exact: string) => ({ typed, unit: 'in', exact });

/** What a merge with another phone leaves to be settled in the demo job, as the app itself would have kept it. */
const left = [
  {
    id: 'both-aim',
    of: { store: 'worksheets', id: 'demo-bracket-float' },
    fields: [{ path: 'sizes.aim', value: { from: 'typed', ...entry('.0095', '0.2413') } }],
  },
  {
    id: 'both-cut',
    of: { store: 'cuts', id: 'demo-cut-spacer' },
    fields: [
      { path: 'target', value: entry('1.2365', '31.4071') },
      { path: 'lower', value: entry('1.2360', '31.3944') },
      { path: 'upper', value: entry('1.2370', '31.4198') },
    ],
  },
  {
    id: 'both-name',
    of: { store: 'jobs', id: 'demo-outfit-7' },
    fields: [{ path: 'customerNote', value: 'Wants it back before the week of the fair, whatever it takes' }],
  },
] as const;

export async function putTwoValues(page: Page): Promise<void> {
  await page.evaluate(async (conflicts) => {
    const opened = indexedDB.open('slipfit');
    await new Promise((done) => opened.addEventListener('success', done));
    const database = opened.result;
    const tx = database.transaction('conflicts', 'readwrite');
    const at = Date.now();
    const stamp = (ms: number, phone: string) => `${String(ms).padStart(15, '0')}-0000-${phone}`;
    for (const [index, one] of conflicts.entries())
      tx.objectStore('conflicts').put({
        ...one,
        along: [],
        jobId: 'demo-outfit-7',
        foundAt: at + index,
        from: { phone: 'helper', fitter: 'R. Tiller' },
        lostStamp: stamp(at - 3_600_000, 'helper'),
        wonStamp: stamp(at, 'owner'),
      });
    await new Promise((done) => tx.addEventListener('complete', done));
    database.close();
  }, left);
}
