import type { Page } from 'playwright-core';
import { openPhone, startServer, untilReadyOffline, type Phone } from '../browser/launch.ts';
import { thumbOn } from '../browser/thumb.ts';
import { keptIn } from './kept-in.ts';
import { chanceFrom } from './seeded.ts';

export type KillCounts = {
  readonly kills: number;
  /** Kills that came while a strict write had begun and had not completed. */
  readonly insideWrite: number;
  /** Readings the screen had called logged before the phone died. */
  readonly logged: number;
  readonly lost: number;
  /** Records of readings in the database that are not what was typed, whole. */
  readonly broken: number;
  readonly draftsLost: number;
};

/** What the page has told so far; each line comes over the browser's own wire, so a kill can only cut the end off. */
type Told = { typed: string; logged: string[]; open: number; dead: boolean };

type Round = { feature: string; address: string; sizes: string[]; told: Told };

// A feature with thousands of readings would make the round slow to draw; a new one is begun before that.
const READINGS_IN_A_FEATURE = 150;

/**
 * Logs readings through the real pad as fast as the browser takes keys, kills the browser's whole process group with
 * SIGKILL, switches it on again and compares with what the screen had called logged. Two kills in three wait for a
 * write to have begun, the others come at any moment.
 */
export async function killWhileLogging({
  kills,
  seed,
  say = () => undefined,
}: {
  kills: number;
  seed: number;
  say?: (line: string) => void;
}): Promise<KillCounts> {
  const chance = chanceFrom(seed);
  const server = await startServer();
  let phone = await openPhone();
  const counts = { kills: 0, insideWrite: 0, logged: 0, lost: 0, broken: 0, draftsLost: 0 };
  await phone.page.goto(server.url);
  await untilReadyOffline(phone.page);
  await server.stop(); // from here on nothing answers: the phone has no signal
  let round: Round | undefined;
  let size = 1000;
  while (counts.kills < kills) {
    if (!round || round.sizes.length > READINGS_IN_A_FEATURE)
      round = await newFeature(phone.page, server.url);
    const { told } = round;
    const begun = told.logged.length;
    const wait = { inWrite: chance() < 2 / 3, ms: chance() * 900, into: chance() * 4 };
    const listening = await listenIn(phone, told);
    const typing = logOn(phone.page, round, () => (size += 1));
    if (wait.inWrite) {
      await pause(wait.ms);
      await listening.nextWrite();
      await pause(wait.into);
    } else await pause(300 + wait.ms);
    counts.insideWrite += told.open > 0 ? 1 : 0;
    const draft = told.typed;
    await phone.kill();
    told.dead = true;
    await typing;
    counts.kills += 1;

    phone = await openPhone({ userDataDir: phone.userDataDir });
    await phone.page.goto(round.address);
    await padIsThere(phone.page, (shows) => say(`kill ${counts.kills}: no pad after it, but: ${shows}`));
    const kept = await keptSizes(phone.page, round.feature);
    const lost = told.logged.filter((typed) => !kept.includes(typed));
    const broken = kept.filter((typed) => !round?.sizes.includes(typed));
    const field = await fieldAfterStart(phone.page);
    const draftThere = isThere({ draft, field, kept });
    counts.logged += told.logged.length - begun;
    counts.lost += lost.length;
    counts.broken += broken.length;
    counts.draftsLost += draftThere ? 0 : 1;
    if (lost.length + broken.length > 0 || !draftThere)
      say(
        `kill ${counts.kills}: lost ${lost.join(' ')} broken ${broken.join(' ')} draft “${draft}” → “${field}”`,
      );
    await emptied(phone.page);
    Object.assign(told, { typed: '', open: 0, dead: false });
  }
  await phone.close();
  say(sentence(counts, seed));
  return counts;
}

async function padIsThere(page: Page, otherwise: (shows: string) => void): Promise<void> {
  try {
    await page.getByLabel(/reading \d+$/).waitFor();
  } catch (error) {
    const { stores } = await keptIn(page);
    const counts = Object.entries(stores).map(([name, records]) => `${name} ${records.length}`);
    otherwise(`${page.url()} ${await page.locator('body').innerText()} (${counts.join(', ')})`);
    throw error;
  }
}

export function sentence(counts: KillCounts, seed: number): string {
  const { kills, insideWrite, logged, lost, broken, draftsLost } = counts;
  return `seed ${seed}: ${kills} kills, ${insideWrite} inside a write; ${logged} readings called logged; lost: ${lost}, half there: ${broken}, drafts lost: ${draftsLost}`;
}

async function newFeature(page: Page, url: string): Promise<Round> {
  await page.goto(`${url}#/new-job`);
  const thumb = thumbOn(page);
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('New size');
  await thumb.press(/^Length/);
  await page.getByLabel('Length 1, reading 1').waitFor();
  const address = page.url();
  const feature = /readings\/([^/]+)/.exec(address)?.[1] ?? '';
  return { feature, address, sizes: [], told: { typed: '', logged: [], open: 0, dead: false } };
}

// Measured elsewhere: gauges that act as keyboards send a key every 5 to 60 ms, 20 on average.
const KEY_MS = 20;

/** One size after another, typed as a gauge does, the next as soon as the last one is called logged; until the browser is gone. */
async function logOn(page: Page, round: Round, next: () => number): Promise<void> {
  try {
    for (;;) {
      const typed = `.${next()}`;
      round.sizes.push(typed);
      await page.keyboard.type(typed, { delay: KEY_MS });
      await page.keyboard.press('Enter');
      while (!round.told.logged.includes(typed) && !round.told.dead) await pause(1);
    }
  } catch {
    // killed
  }
}

/** Hears what is typed, what is called logged, and when a strict write begins and ends, as it happens. */
async function listenIn(phone: Phone, told: Told): Promise<{ nextWrite: () => Promise<void> }> {
  let onWrite: (() => void) | undefined;
  await phone.page.exposeFunction('tell', (what: string, value: string) => {
    if (what === 'typed') told.typed = value;
    if (what === 'logged') told.logged.push(value);
    if (what === 'begun') {
      told.open += 1;
      onWrite?.();
    }
    if (what === 'ended') told.open -= 1;
  });
  await phone.page.evaluate(() => {
    const tell = (what: string, value = '') => {
      const wire = Reflect.get(globalThis, 'tell');
      if (typeof wire === 'function') wire(what, value);
    };
    const field = document.querySelector<HTMLInputElement>('#size');
    field?.addEventListener('input', () => tell('typed', field.value));
    let last = '';
    // What the pad shows as the last logged reading, with its number: that is the app's word for it.
    const look = () => {
      const note = document.querySelector('.size-pad-echo')?.textContent ?? '';
      if (!note.startsWith('logged, reading') || note === last) return;
      last = note;
      tell('logged', document.querySelector('#size')?.getAttribute('placeholder') ?? '');
      if (field?.value === '') tell('typed', '');
    };
    look();
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
    });
    // Called with its own database below.
    // oxlint-disable-next-line typescript/unbound-method
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function transaction(stores, mode, options) {
      const made = begin.call(this, stores, mode, options);
      if (options?.durability === 'strict') {
        tell('begun');
        made.addEventListener('complete', () => tell('ended'));
        made.addEventListener('abort', () => tell('ended'));
      }
      return made;
    };
  });
  return {
    nextWrite: () =>
      new Promise<void>((done) => {
        onWrite = done;
        setTimeout(done, 3000);
      }),
  };
}

/** What the database holds of the feature's readings, as typed: read past the app, so that nothing is dressed up. */
async function keptSizes(page: Page, feature: string): Promise<string[]> {
  return page.evaluate(
    (featureId) =>
      new Promise<string[]>((done, failed) => {
        const opening = indexedDB.open('slipfit');
        opening.addEventListener('error', () => failed(new Error('the database would not open')));
        opening.addEventListener('success', () => {
          const database = opening.result;
          const all = database
            .transaction('readings')
            .objectStore('readings')
            .index('featureId+at')
            .getAll(IDBKeyRange.bound([featureId], [featureId, []]));
          all.addEventListener('success', () => {
            database.close();
            done(all.result.map((reading: { typed: string }) => reading.typed));
          });
        });
      }),
    feature,
  );
}

/** The draft comes a moment after the pad is drawn. */
async function fieldAfterStart(page: Page): Promise<string> {
  await pause(150);
  return page.locator('#size').inputValue();
}

/** Up to its last key but one, or taken over by the reading it became. */
function isThere({ draft, field, kept }: { draft: string; field: string; kept: readonly string[] }): boolean {
  return draft.length < 2 || kept.includes(draft) || (field !== '' && field.startsWith(draft.slice(0, -1)));
}

async function emptied(page: Page): Promise<void> {
  while ((await page.locator('#size').inputValue()) !== '') await page.keyboard.press('Backspace');
  await pause(100);
}

async function pause(ms: number): Promise<void> {
  await new Promise((done) => setTimeout(done, ms));
}
