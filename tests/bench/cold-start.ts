import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openPhone, startServer, temporaryFolder, untilReadyOffline } from '../browser/launch.ts';
import { median, type Part } from './figures.ts';
import { noteWhenUsable, slowed, usableAt } from './slowed.ts';

const RUNS = 9;
const SLOWER = 4;

/**
 * The phone switched on without signal: to the first paint, to the first press that can be made (a place in the frame,
 * which stands before any script has run), and to the job list with its key; beside an empty page kept the same way that
 * opens one database and then shows one button. In turns, so that both meet the same machine.
 */
export async function coldStart(folder: string): Promise<Part> {
  const app = await keptOffline({ folder });
  // Its worker is registered in one line, which our policy's trusted types would refuse.
  const empty = await keptOffline({ folder: emptyPage(), plain: true });
  const times = {
    painted: [] as number[],
    place: [] as number[],
    usable: [] as number[],
    empty: [] as number[],
  };
  for (let run = 0; run < RUNS; run += 1) {
    const ours = await startOnce(app);
    times.painted.push(ours.painted);
    times.place.push(ours.place);
    times.usable.push(ours.usable);
    times.empty.push((await startOnce(empty)).usable);
  }
  // Run by run, one straight after the other: what else the machine does meanwhile slows both.
  const ratio = (of: readonly number[]) => median(of.map((ms, run) => ms / (times.empty[run] ?? Number.NaN)));
  const ms = (name: string, value: number) => ({ name, unit: 'ms' as const, value, runs: RUNS });
  return {
    title: `Cold start without signal, processor ${SLOWER}× slower`,
    figures: [
      ms('to the first paint', median(times.painted)),
      ms('to the first press that can be made: a place', median(times.place)),
      ms('to the job list with its key', median(times.usable)),
      ms('an empty kept page that opens one database', median(times.empty)),
      {
        name: 'the first press beside that page',
        unit: '×',
        value: ratio(times.place),
        runs: RUNS,
        aim: 1.25,
      },
      { name: 'the job list beside that page', unit: '×', value: ratio(times.usable), runs: RUNS, aim: 1.25 },
    ],
  };
}

type KeptPage = { readonly userDataDir: string; readonly url: string };

async function keptOffline(from: { folder: string; plain?: boolean }): Promise<KeptPage> {
  const server = await startServer(from);
  const phone = await openPhone({ timed: true });
  await phone.page.goto(server.url);
  await untilReadyOffline(phone.page);
  await phone.close();
  await server.stop();
  return { userDataDir: phone.userDataDir, url: server.url };
}

async function startOnce({ userDataDir, url }: KeptPage) {
  const phone = await openPhone({ userDataDir, timed: true });
  await noteWhenUsable(phone.page, { place: '.bottom-bar-place, .button-main', usable: '.button-main' });
  await slowed(phone.page, SLOWER);
  await phone.page.goto(url);
  const times = await usableAt(phone.page);
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
