import type { Page } from 'playwright-core';
import { fill } from '../bench/big-store.ts';
import type { Phone } from '../browser/launch.ts';
import { chanceFrom } from './seeded.ts';
import { openStorePage } from './store-in-browser.ts';

export type FileKillCounts = {
  readonly kills: number;
  /** Kills while the file was read aside, and while it was put in. */
  readonly whileReading: number;
  readonly whilePutting: number;
  /** After which the file was in whole. */
  readonly foundIn: number;
  /** After which it was neither in whole nor out whole, or a file called in wasn't. */
  readonly halfThere: number;
  /** Records or bytes that a start with its sweep, or the undo, left behind. */
  readonly leftBehind: number;
};

// Chosen: long enough on its way for a kill to meet it in every part, short enough for many.
const amount = { jobs: 10, readings: 1000, photos: 10 };

/**
 * Reads a file aside and puts it in, kills the browser's whole process group with SIGKILL on the way, switches it on again
 * and looks: what is here is as it was before the file, or as it is with all of it. Then the file is put in and undone.
 */
export async function killOverFile({
  kills,
  seed,
  say = () => undefined,
}: {
  kills: number;
  seed: number;
  say?: (line: string) => void;
}): Promise<FileKillCounts> {
  const chance = chanceFrom(seed);
  const { phone: first, again, close } = await openStorePage();
  let phone: Phone = first;
  const counts = { kills: 0, whileReading: 0, whilePutting: 0, foundIn: 0, halfThere: 0, leftBehind: 0 };
  await makeFile(phone.page);
  const out = await digest(phone.page);
  await phone.page.evaluate(() => window.fileTrial.preview());
  const whole = await timed(() => phone.page.evaluate(() => window.fileTrial.apply()));
  const all = await digest(phone.page);
  await phone.page.evaluate(() => window.fileTrial.undo());
  if ((await digest(phone.page)) !== out) counts.leftBehind += 1;
  while (counts.kills < kills) {
    const whilePutting = chance() < 2 / 3;
    const told = await begin(phone, whilePutting);
    // A little longer than it takes, so that the very end is met too.
    await pause(chance() * whole * (whilePutting ? 1.2 : 0.9));
    await phone.kill();
    counts.kills += 1;
    counts[whilePutting ? 'whilePutting' : 'whileReading'] += 1;
    phone = await again(phone);
    await openTrial(phone.page);
    const found = await digest(phone.page);
    const isIn = found === all;
    if (isIn) counts.foundIn += 1;
    const isHalf = (!isIn && found !== out) || (told.in && !isIn) || (isIn && !whilePutting);
    if (isHalf) {
      counts.halfThere += 1;
      say(`kill ${counts.kills}: neither as before nor with the whole file`);
    }
    const left = await phone.page.evaluate(() => window.fileTrial.leftovers());
    if (!isIn) {
      await phone.page.evaluate(() => window.fileTrial.preview());
      await phone.page.evaluate(() => window.fileTrial.apply());
    }
    if ((await digest(phone.page)) !== all) counts.halfThere += 1;
    await phone.page.evaluate(() => window.fileTrial.undo());
    const back = await digest(phone.page);
    counts.leftBehind += left + (back === out ? 0 : 1);
  }
  await close();
  say(sentence(counts, seed));
  return counts;
}

function sentence(counts: FileKillCounts, seed: number): string {
  const { kills, whileReading, whilePutting, foundIn, halfThere, leftBehind } = counts;
  return `seed ${seed}: ${kills} kills, ${whileReading} while a file was read, ${whilePutting} while it was put in (${foundIn} found it in); half there: ${halfThere}, left behind: ${leftBehind}, lost: ${halfThere}`;
}

declare global {
  interface Window {
    fileTrial: {
      readonly preview: () => Promise<void>;
      readonly apply: () => Promise<void>;
      readonly undo: () => Promise<void>;
      /** After the sweep of a start: bytes without a photo, and what was read aside by halves. */
      readonly leftovers: () => Promise<number>;
      readonly digest: () => Promise<string>;
    };
  }
}

/** The giver's records, a phone that has something of its own, and the file, kept in a database so that it outlives a kill. */
async function makeFile(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const opened = await window.slipfitStore.openStore();
    if (opened.ok) window.slipfitStore.closeStore(opened.value);
  });
  await fill(page, amount);
  await openTrial(page);
}

async function openTrial(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const app = window.slipfitStore;
    const [from, to] = [await app.openStore(), await app.openStore({ name: 'other-phone' })];
    if (!from.ok || !to.ok) throw new Error('the database would not open');
    const pieces: Blob[] = [];
    for await (const piece of app.backupPieces(from.value)) pieces.push(piece);
    const file = new Blob(pieces);
    const must = (result: { ok: true } | { ok: false; refusal: { code: string } }): void => {
      if (!result.ok) throw new Error(result.refusal.code);
    };
    window.fileTrial = {
      preview: async () => must(await app.previewBackup(to.value, file)),
      apply: async () => must(await app.applyPreviewed(to.value)),
      async undo() {
        const last = await app.latestUndo(to.value);
        must(await app.undoLast(to.value, last?.id ?? ''));
      },
      async leftovers() {
        await app.sweepStaged(to.value);
        const { db } = to.value;
        const photos = new Set(await db.getAllKeys('photos'));
        const waiting = await db.get('staging', 'file');
        const bytes = (await db.getAllKeys('photoBytes')).filter((id) => !photos.has(id)).length;
        // A file that was read to its end waits, with the bytes that came with it.
        return waiting === undefined ? bytes + (await db.count('staging')) : 0;
      },
      // Photos' bytes are in their place before their file is: what counts is what is shown, and they are counted with it.
      async digest() {
        const { db } = to.value;
        const names = app.backupStores.filter((name) => name !== 'photoBytes' && name !== 'settings');
        const all = await Promise.all(names.map((name) => db.getAll(name)));
        const photos = await db.getAllKeys('photos');
        const bytes = await Promise.all(photos.map((id) => db.getKey('photoBytes', id)));
        const text = JSON.stringify([all, bytes.filter((id) => id !== undefined).length]);
        const sum = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
        return Array.from(new Uint8Array(sum), (byte) => byte.toString(16)).join('.');
      },
    };
  });
}

const digest = (page: Page): Promise<string> => page.evaluate(() => window.fileTrial.digest());

/** Starts on the file and doesn't wait for it; hears when it is called in. */
async function begin(phone: Phone, putting: boolean): Promise<{ in: boolean }> {
  const told = { in: false };
  if (putting) await phone.page.evaluate(() => window.fileTrial.preview());
  await phone.page.exposeFunction('tellIn', () => {
    told.in = true;
  });
  await phone.page.evaluate((isPutting) => {
    const tell = () => {
      const wire = Reflect.get(globalThis, 'tellIn');
      if (typeof wire === 'function') wire();
    };
    if (isPutting) void window.fileTrial.apply().then(tell);
    else void window.fileTrial.preview();
  }, putting);
  return told;
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

async function pause(ms: number): Promise<void> {
  await new Promise((done) => setTimeout(done, ms));
}
