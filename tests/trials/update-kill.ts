import type { Page } from 'playwright-core';
import { openPhone, startServer, type Phone } from '../browser/launch.ts';
import { keptIn, type KeptIn } from './kept-in.ts';
import { chanceFrom } from './seeded.ts';
import { release } from './update.ts';

export type UpgradeKillCounts = {
  readonly kills: number;
  /** Kills that came while the data was being moved. */
  readonly insideMove: number;
  /** Starts after a kill that found the data in the old form; the others found it in the new one. */
  readonly stillOld: number;
  readonly recordsLost: number;
  /** Starts that found it neither wholly old nor wholly new. */
  readonly mixed: number;
};

// Enough for the move to take a while: chosen, not published.
const READINGS = 1500;
const MOST_INTO_IT_MS = 200;

/** Kills the browser with SIGKILL while a new version moves the data to its form, and looks at what is there after it. */
export async function killWhileMoving({
  kills,
  seed,
  say = () => undefined,
}: {
  kills: number;
  seed: number;
  say?: (line: string) => void;
}): Promise<UpgradeKillCounts> {
  const chance = chanceFrom(seed);
  const counts = { kills: 0, insideMove: 0, stillOld: 0, recordsLost: 0, mixed: 0 };
  const server = await startServer(); // today's build
  let phone = await withoutWorker();
  await fill(phone.page, server.url);
  const usual = await keptIn(phone.page);
  let number = 1;
  server.serve(await release(number));
  while (counts.kills < kills) {
    const move = await listenIn(phone.page);
    void phone.page.goto(server.url).catch(() => undefined);
    await move.begun;
    // Two in three while it goes on, the others the moment it is done.
    const inside = chance() < 2 / 3;
    await Promise.race([inside ? pause(chance() * MOST_INTO_IT_MS) : move.ended, move.ended]);
    counts.insideMove += move.isOpen() ? 1 : 0;
    await phone.kill();
    counts.kills += 1;
    phone = await withoutWorker(phone.userDataDir);
    await phone.page.goto(`${server.url}not/the-app`);
    const after = await keptIn(phone.page);
    const moved = after.version - usual.version;
    counts.stillOld += moved < number ? 1 : 0;
    counts.recordsLost += usual.stores['readings']?.filter(({ id }) => !idsOf(after).has(id)).length ?? 0;
    counts.mixed += isWhole(after, moved) && moved >= number - 1 && moved <= number ? 0 : 1;
    if (moved === number && counts.kills < kills) {
      number += 1;
      server.serve(await release(number));
    }
  }
  await phone.page.goto(server.url);
  await phone.page.getByRole('heading', { name: 'Jobs' }).waitFor();
  await phone.close();
  await server.stop();
  say(sentence(counts, seed));
  return counts;
}

function sentence(
  { kills, insideMove, stillOld, recordsLost, mixed }: UpgradeKillCounts,
  seed: number,
): string {
  return `seed ${seed}: ${kills} kills on starting a new version, ${insideMove} while ${READINGS} readings were moved; ${stillOld} found the old form, ${kills - stillOld - mixed} the new; neither: ${mixed}, records lost: ${recordsLost}`;
}

/** Each start fetches the release that is served: what is tried here is the data, not the taking of a version. */
async function withoutWorker(userDataDir?: string): Promise<Phone> {
  return openPhone({ ...(userDataDir && { userDataDir }), context: { serviceWorkers: 'block' } });
}

/** Makes the database by opening the app, and fills it with readings as the first release wrote them. */
async function fill(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByRole('heading', { name: 'Jobs' }).waitFor();
  await page.evaluate(
    (count) =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('slipfit');
        opening.addEventListener('success', () => {
          const writing = opening.result.transaction('readings', 'readwrite');
          for (let index = 0; index < count; index += 1)
            writing
              .objectStore('readings')
              .put({ id: `reading-${index}`, jobId: 'job', featureId: 'bore', at: index });
          writing.addEventListener('complete', () => {
            opening.result.close();
            done();
          });
        });
      }),
    READINGS,
  );
}

/** Hears when a move of the data begins and ends, over the browser's own wire. */
async function listenIn(
  page: Page,
): Promise<{ begun: Promise<void>; ended: Promise<void>; isOpen: () => boolean }> {
  let isOpen = false;
  const heard: Record<string, () => void> = {};
  const begun = new Promise<void>((done) => (heard['begun'] = done));
  const ended = new Promise<void>((done) => (heard['ended'] = done));
  await page.exposeFunction('tellMove', (what: 'begun' | 'ended') => {
    isOpen = what === 'begun';
    heard[what]?.();
  });
  await page.addInitScript(() => {
    const tell = (what: string) => {
      const wire = Reflect.get(globalThis, 'tellMove');
      if (typeof wire === 'function') wire(what);
    };
    // Called with its own factory below.
    // oxlint-disable-next-line typescript/unbound-method
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function opened(name, version) {
      const request = version === undefined ? open.call(this, name) : open.call(this, name, version);
      request.addEventListener('upgradeneeded', () => tell('begun'));
      request.addEventListener('success', () => tell('ended'));
      return request;
    };
  });
  return { begun, ended, isOpen: () => isOpen };
}

function idsOf(kept: KeptIn): ReadonlySet<string> {
  return new Set(kept.stores['readings']?.map(({ id }) => id));
}

/** Every reading has been through exactly the steps of the version the database says it has. */
function isWhole({ stores }: KeptIn, moved: number): boolean {
  const readings = stores['readings'] ?? [];
  return (
    readings.length === READINGS &&
    readings.every(
      (reading) => (moved === 0 || reading[`later${moved}`] === true) && !(`later${moved + 1}` in reading),
    ) &&
    !(`later-${moved + 1}` in stores)
  );
}

async function pause(ms: number): Promise<void> {
  await new Promise((done) => setTimeout(done, ms));
}
