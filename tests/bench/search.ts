import type { Page } from 'playwright-core';
import { openPhone, startServer } from '../browser/launch.ts';
import { fill } from './big-store.ts';
import { median, quantile, type Part } from './figures.ts';
import { slowed } from './slowed.ts';

const SLOWER = 4;
const BIG = { jobs: 1000, readings: 100_000, photos: 0 };
/** Typed letter by letter, and taken out again: each key is a search of its own. */
const LOOKED_FOR = ['7/16', '1.113', 'moehring', '.4487', 'bench job 77', '1', 'hub axle 12'];
const WANTED: Readonly<Record<string, string>> = {
  '7/16': 'Bench job 123',
  '1.113': 'Bench job 456',
  moehring: 'Bench job 789',
};

/** A key of the search among ten years' work, from the event to the frame behind it; and what stands before the first one. */
export async function search(folder: string): Promise<Part> {
  const server = await startServer({ folder });
  const phone = await openPhone({ timed: true });
  const { page } = phone;
  await page.goto(server.url);
  await page.locator('.button-main').first().waitFor();
  await fill(page, BIG);
  await putWhatIsLookedFor(page);
  await page.goto(`${server.url}#/shop`);
  await page.reload();
  await page.getByRole('heading', { name: 'Shop' }).waitFor();
  await slowed(page, SLOWER);
  const opened = performance.now();
  const gone = await timeToFound(page, 'job 999');
  const keysMeanwhile = await keys(page, LOOKED_FOR.slice(0, 2));
  await page.waitForFunction(
    () => !document.querySelector('.find-line')?.textContent.includes('Still going'),
    undefined,
    { timeout: 600_000 },
  );
  const wholeMs = performance.now() - opened;
  const keysAfter = await keys(page, LOOKED_FOR);
  for (const [words, job] of Object.entries(WANTED)) {
    await page.locator('.find-line').waitFor();
    await page.locator('main input').fill(words);
    await page.getByText(job, { exact: true }).waitFor({ timeout: 5000 });
  }
  await page.goto(`${server.url}#/shop`);
  await page.locator('main input').first().waitFor();
  const again = await timeToFound(page, 'job 123');
  await phone.close();
  await server.stop();
  const ms = (name: string, value: number, runs: number, aim?: number) => ({
    name,
    unit: 'ms' as const,
    value,
    runs,
    ...(aim !== undefined && { aim }),
  });
  return {
    title: `Search of ${BIG.jobs} jobs with ${BIG.readings} readings, processor ${SLOWER}× slower`,
    figures: [
      ms('a key to its answer painted, p50', median(keysAfter), keysAfter.length),
      ms('a key to its answer painted, p95', quantile(keysAfter, 0.95), keysAfter.length, 100),
      ms('a key to its answer painted, worst', quantile(keysAfter, 1), keysAfter.length),
      ms(
        'the same while jobs are still gone through, p95',
        quantile(keysMeanwhile, 0.95),
        keysMeanwhile.length,
      ),
      ms('the first search of all: opened, to the first answer', gone, 1),
      ms('the first search of all: until every job is gone through', wholeMs, 1),
      ms('every later one: opened, to its answer', again, 1),
    ],
  };
}

/** Past the app, as the rest of it: three sizes and names that stand in one job each. */
async function putWhatIsLookedFor(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((done) => {
      const opening = indexedDB.open('slipfit');
      opening.addEventListener('success', () => done(opening.result));
    });
    const tx = database.transaction(['jobs', 'readings'], 'readwrite');
    const change = (store: string, id: string, fields: object) => {
      const asked = tx.objectStore(store).get(id);
      asked.addEventListener('success', () => tx.objectStore(store).put({ ...asked.result, ...fields }));
    };
    // A reading stands in the job of its feature, five to a job.
    change('readings', `bench-r-${123 * 5}`, { typed: '7/16', exact: '11.1125' });
    change('readings', `bench-r-${456 * 5}`, { typed: '1.113', exact: '28.2702' });
    change('jobs', 'bench-789', { customer: 'Ilse Moehring' });
    await new Promise((done) => {
      tx.addEventListener('complete', done);
    });
    database.close();
  });
}

/** The page opened with words half typed there before, to the first job that is found. */
async function timeToFound(page: Page, words: string): Promise<number> {
  await page.evaluate(() => (location.hash = '#/find'));
  const field = page.locator('main input[type=text]');
  await page.getByRole('heading', { name: 'Find' }).waitFor();
  await field.waitFor();
  const began = performance.now();
  await field.fill(words);
  await page.locator('main li a').first().waitFor({ timeout: 120_000 });
  return performance.now() - began;
}

async function keys(page: Page, texts: readonly string[]): Promise<number[]> {
  await page.evaluate(() => {
    const times: number[] = [];
    Reflect.set(globalThis, 'keyTimes', times);
    addEventListener(
      'input',
      (event) => {
        const at = event.timeStamp;
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.addEventListener('message', () => times.push(performance.now() - at));
          port1.start();
          port2.postMessage('');
        });
      },
      { capture: true },
    );
  });
  const field = page.locator('main input[type=text]');
  for (const text of texts) {
    await field.fill('');
    await page.waitForTimeout(300);
    await field.pressSequentially(text, { delay: 150 });
    for (let at = 0; at < text.length; at += 1) await page.keyboard.press('Backspace', { delay: 60 });
  }
  await page.waitForTimeout(500);
  const times: unknown = await page.evaluate(() => Reflect.get(globalThis, 'keyTimes'));
  return Array.isArray(times) ? times.map(Number) : [];
}
