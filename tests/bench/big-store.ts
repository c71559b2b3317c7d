import type { Page } from 'playwright-core';
import { openPhone, startServer } from '../browser/launch.ts';
import { openStorePage } from '../trials/store-in-browser.ts';
import { median, type Figure, type Part } from './figures.ts';
import { slowed } from './slowed.ts';

const SLOWER = 4;
const RUNS = 9;
const SMALL = { jobs: 10, readings: 100, photos: 20 };
const BIG = { jobs: 1000, readings: 100_000, photos: 2000 };
// As many bytes as a small photo has; 2,000 of a usual size would be a gigabyte on the machine that measures.
const PHOTO_BYTES = 60_000;

export type Amount = typeof BIG & {
  /** Of one photo; a small one's unless told. */
  readonly photoBytes?: number;
};

/** The job list and a job, opened with little and with ten years' work in the database. */
export async function bigStore(folder: string): Promise<Part> {
  const server = await startServer({ folder });
  const figures: Figure[] = [];
  for (const amount of [SMALL, BIG]) {
    const phone = await openPhone({ timed: true });
    const { page } = phone;
    await page.goto(server.url);
    await page.locator('.button-main').first().waitFor();
    await fill(page, amount);
    await page.goto(`${server.url}#/shop`);
    await page.reload();
    await page.getByRole('heading', { name: 'Shop' }).waitFor();
    await slowed(page, SLOWER);
    const list: number[] = [];
    const job: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      list.push(await timeTo(page, '#/jobs', 'main li a'));
      job.push(await timeTo(page, '#/job/bench-0/readings', 'main li a'));
      await timeTo(page, '#/shop', 'h2');
    }
    const held = `${amount.jobs.toLocaleString('en')} jobs, ${amount.readings.toLocaleString('en')} readings, ${amount.photos.toLocaleString('en')} photos`;
    figures.push(
      { name: `job list opened, ${held}`, unit: 'ms', value: median(list), runs: RUNS, aim: 100 },
      { name: `a job opened, ${held}`, unit: 'ms', value: median(job), runs: RUNS, aim: 100 },
    );
    await phone.close();
  }
  await server.stop();
  return { title: `Opening, processor ${SLOWER}× slower`, figures };
}

/** A backup of ten years' work written and read again, and the most memory the page took. */
export async function bigBackup(amount: Amount = BIG): Promise<Part> {
  const { phone, close } = await openStorePage();
  const { page } = phone;
  await page.evaluate(async () => {
    const opened = await window.slipfitStore.openStore();
    if (opened.ok) window.slipfitStore.closeStore(opened.value);
  });
  await fill(page, amount);
  const session = await page.context().newCDPSession(page);
  let mostMb = 0;
  const watching = setInterval(() => {
    session.send('Runtime.getHeapUsage').then(
      ({ usedSize }) => (mostMb = Math.max(mostMb, usedSize / 1e6)),
      () => undefined,
    );
  }, 100);
  const times = await page.evaluate(async () => {
    const store = window.slipfitStore;
    const opened = await store.openStore();
    const other = await store.openStore({ name: 'restored' });
    if (!opened.ok || !other.ok) throw new Error('the database would not open');
    const began = performance.now();
    const pieces: Blob[] = [];
    let held: string[] = [];
    let bytes = 0;
    for await (const line of store.backupLines(opened.value)) {
      held.push(line);
      bytes += line.length;
      if (held.length === 500) pieces.push(new Blob(held.splice(0)));
    }
    pieces.push(new Blob(held));
    const written = performance.now();
    const result = await store.restoreBackup(other.value, new Blob(pieces));
    const read = performance.now();
    held = [];
    return {
      write: written - began,
      read: read - written,
      bytes,
      ok: result.ok ? '' : store.sayBackup(result.refusal),
    };
  });
  clearInterval(watching);
  await close();
  if (times.ok !== '') throw new Error(times.ok);
  return {
    title: `Backup of ${amount.jobs} jobs, ${amount.readings} readings, ${amount.photos} photos, full speed`,
    figures: [
      { name: 'size of the file', unit: 'MB', value: times.bytes / 1e6, runs: 1 },
      { name: 'written', unit: 'ms', value: times.write, runs: 1 },
      { name: 'read, checked and put in', unit: 'ms', value: times.read, runs: 1 },
      { name: 'most JavaScript memory meanwhile', unit: 'MB', value: mostMb, runs: 1, aim: 200 },
    ],
  };
}

async function timeTo(page: Page, hash: string, selector: string): Promise<number> {
  await page.waitForTimeout(250);
  return page.evaluate(
    ({ to, wanted }) =>
      new Promise<number>((done) => {
        const began = performance.now();
        const gone = document.querySelector('main');
        location.hash = to;
        const look = () =>
          requestAnimationFrame(() => {
            const main = document.querySelector('main');
            if (main === gone || !document.querySelector(wanted)) look();
            else setTimeout(() => done(performance.now() - began));
          });
        look();
      }),
    { to: hash, wanted: selector },
  );
}

/** Records of the kept form, put in past the app: through its screens this would take a day. */
export async function fill(page: Page, amount: Amount): Promise<void> {
  await page.evaluate(
    async ({ jobs, readings, photos, photoBytes }) => {
      const database = await new Promise<IDBDatabase>((done, failed) => {
        const opening = indexedDB.open('slipfit');
        opening.addEventListener('success', () => done(opening.result));
        opening.addEventListener('error', () => failed(new Error('the database would not open')));
      });
      const stamp = '001795600000000-0000-benchdev';
      const stamps = { '*': stamp };
      const tool = {
        id: 'digital-caliper',
        name: 'digital caliper',
        kind: 'caliper',
        mpe: '0.0254',
        resolution: '0.01',
        resolutionInMpe: true,
        repeatability: '0.01',
      };
      const put = (store: string, make: (index: number) => object, count: number, at = 0) =>
        new Promise<void>((done, failed) => {
          const tx = database.transaction(store, 'readwrite');
          for (let index = at; index < at + count; index += 1) tx.objectStore(store).put(make(index));
          tx.addEventListener('complete', () => done());
          tx.addEventListener('abort', () => failed(new Error(`${store} was not filled`)));
        });
      const job = (index: number) => `bench-${index % jobs}`;
      const now = 1_795_600_000_000;
      // .1000 to .9999 in turn, exact by whole numbers: 25.4 mm are 254 tenths of a thousandth of 100,000.
      const sizeOf = (index: number) => {
        const tenths = 1000 + (index % 9000);
        const mm = String(tenths * 254).padStart(6, '0');
        const exact = `${mm.slice(0, -5)}.${mm.slice(-5)}`.replace(/\.?0+$/, '');
        return { typed: `.${tenths}`, unit: 'in', exact };
      };
      const features = jobs * 5;
      await put(
        'jobs',
        (index) => ({
          id: job(index),
          name: `Bench job ${index}`,
          what: 'measured, not made',
          systems: ['brake'],
          state: 'open',
          customerNote: '',
          demo: false,
          createdAt: now + index,
          touchedAt: now + index,
          listedAt: now + index,
          stamps,
        }),
        jobs,
      );
      await put(
        'features',
        (index) => ({
          id: `bench-f-${index}`,
          jobId: job(Math.floor(index / 5)),
          kind: 'length',
          name: `Length ${index % 5}`,
          createdAt: now + index,
          stamps,
        }),
        features,
      );
      for (let at = 0; at < readings; at += 5000)
        await put(
          'readings',
          (index) => ({
            id: `bench-r-${index}`,
            featureId: `bench-f-${index % features}`,
            jobId: job(Math.floor((index % features) / 5)),
            ...sizeOf(index),
            tool,
            zeroChecked: false,
            at: now + index,
            stamps,
          }),
          Math.min(5000, readings - at),
          at,
        );
      const picture = new Uint8Array(photoBytes);
      // The browser gives so many at a time.
      for (let at = 0; at < photoBytes; at += 60_000)
        crypto.getRandomValues(picture.subarray(at, at + 60_000));
      const bytes = picture.buffer;
      for (let at = 0; at < photos; at += 100) {
        const count = Math.min(100, photos - at);
        await put(
          'photos',
          (index) => ({
            id: `bench-p-${index}`,
            jobId: job(index),
            owner: { store: 'jobs', id: job(index) },
            note: '',
            mime: 'image/jpeg',
            width: 1600,
            height: 1200,
            preview: bytes.slice(0, 4000),
            at: now + index,
            stamps,
          }),
          count,
          at,
        );
        await put(
          'photoBytes',
          (index) => ({ id: `bench-p-${index}`, bytes: bytes.slice(0), stamps }),
          count,
          at,
        );
      }
      database.close();
    },
    { photoBytes: PHOTO_BYTES, ...amount },
  );
}
