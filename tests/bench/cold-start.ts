import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openPhone, startServer, temporaryFolder, untilReadyOffline } from '../browser/launch.ts';
import { median, type Part } from './figures.ts';
import { noteWhenThere, slowed, thereAt, type Wanted } from './slowed.ts';

const RUNS = 5;
const SLOWER = 4;
const ROW = 'main li a.row';

/** In the order in which they come. The frame stands before any script has run, and the list as it was painted last next. */
const start: Wanted = {
  place: '.bottom-bar-place',
  list: [ROW, '.page-foot .button-main'],
  ours: `.app-place:not([data-painted]) ${ROW}`,
};
const worksheet: Wanted = { worksheet: ['.form-drawing', '.account-verdict'] };
const nothing: Wanted = { page: '.button-main' };

/**
 * The phone switched on without signal, with two jobs on it: to the first paint, to the first press that can be made (a
 * place in the frame), and to the job list with its rows and its key; the same for a worksheet's page with its answer.
 * Beside it an empty page kept the same way that opens one database and then shows one button. In turns, so that both
 * meet the same machine.
 */
export async function coldStart(folder: string): Promise<Part> {
  const app = await keptOffline({ folder }, withTheDemo);
  // Its worker is registered in one line, which our policy's trusted types would refuse.
  const empty = await keptOffline({ folder: emptyPage(), plain: true });
  const runs: Readonly<Record<string, number>>[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    // The list comes first: a page left at another place drops what was painted.
    const list = await startOnce(app, '#/jobs', start);
    const nearest = await startOnce(empty, '', nothing);
    const page = await startOnce(app, '#/job/demo-outfit-7/worksheets/demo-bracket-float', worksheet);
    await backToTheList(app);
    runs.push({ ...page, ...list, ...nearest, painted: list['painted'] ?? Number.NaN });
  }
  const of = (name: string) => runs.map((run) => run[name] ?? Number.NaN);
  const ms = (name: string, what: string) => ({
    name,
    unit: 'ms' as const,
    value: median(of(what)),
    runs: RUNS,
  });
  // Run by run, one straight after the other: what else the machine does meanwhile slows both.
  const ratio = (name: string, what: string, aim?: number) => ({
    name: `${name} beside that page`,
    unit: '×' as const,
    value: median(of(what).map((value, run) => value / (of('page')[run] ?? Number.NaN))),
    runs: RUNS,
    ...(aim !== undefined && { aim }),
  });
  return {
    title: `Cold start without signal, processor ${SLOWER}× slower`,
    figures: [
      ms('to the first paint', 'painted'),
      ms('to the first press that can be made: a place', 'place'),
      ms('to the job list with its rows and its key', 'list'),
      ms('to the same list, read from the database', 'ours'),
      ms('to a worksheet’s page with drawing and answer', 'worksheet'),
      ms('an empty kept page that opens one database', 'page'),
      ratio('the first press', 'place', 1.25),
      ratio('the job list', 'list', 1.6),
      ratio('the list read from the database', 'ours'),
      ratio('the worksheet’s page', 'worksheet'),
    ],
  };
}

type KeptPage = { readonly userDataDir: string; readonly url: string };

async function keptOffline(
  from: { folder: string; plain?: boolean },
  ready?: (page: Page) => Promise<void>,
): Promise<KeptPage> {
  const server = await startServer(from);
  const phone = await openPhone({ timed: true });
  await phone.page.goto(server.url);
  await untilReadyOffline(phone.page);
  await ready?.(phone.page);
  await phone.close();
  await server.stop();
  return { userDataDir: phone.userDataDir, url: server.url };
}

async function withTheDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await untilListIsKept(page);
}

async function untilListIsKept(page: Page): Promise<void> {
  await page.locator(`.app-place:not([data-painted]) ${ROW}`).first().waitFor();
  await page.waitForTimeout(500);
}

/** As who puts the phone away with the list on it. */
async function backToTheList({ userDataDir, url }: KeptPage): Promise<void> {
  const phone = await openPhone({ userDataDir, timed: true });
  await phone.page.goto(`${url}#/jobs`);
  await untilListIsKept(phone.page);
  await phone.close();
}

async function startOnce({ userDataDir, url }: KeptPage, place: string, wanted: Wanted) {
  const phone = await openPhone({ userDataDir, timed: true });
  await noteWhenThere(phone.page, wanted);
  await slowed(phone.page, SLOWER);
  await phone.page.goto(`${url}${place}`);
  const times = await thereAt(phone.page, wanted);
  await phone.close();
  return times;
}

/** As little as a kept page with a database can be. */
export function emptyPage(): string {
  const folder = temporaryFolder('empty-page');
  writeFileSync(
    join(folder, 'index.html'),
    '<!doctype html><meta charset="utf-8"><title>empty</title><body><script type="module" src="./page.js"></script>',
  );
  writeFileSync(
    join(folder, 'page.js'),
    `const opening = indexedDB.open('empty', 1);
opening.onupgradeneeded = () => opening.result.createObjectStore('one');
opening.onsuccess = () => {
  const button = document.createElement('button');
  button.className = 'button-main';
  button.textContent = 'Press';
  document.body.append(button);
};
navigator.serviceWorker.register('./sw.js');
`,
  );
  const keep = JSON.stringify(['./', './page.js']);
  writeFileSync(
    join(folder, 'sw.js'),
    `addEventListener('install', (event) => event.waitUntil(caches.open('kept').then((kept) => kept.addAll(${keep}))));
addEventListener('activate', (event) => event.waitUntil(clients.claim()));
addEventListener('fetch', (event) => event.respondWith(caches.match(event.request, { ignoreSearch: true }).then((found) => found ?? fetch(event.request))));
`,
  );
  return folder;
}
