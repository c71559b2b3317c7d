import type { Page } from 'playwright-core';
import { fill, type Amount } from '../bench/big-store.ts';
import { openStorePage } from './store-in-browser.ts';
import { watchMemory } from './watch-memory.ts';

export type BigFileFigures = {
  readonly megabytes: number;
  /** The most JavaScript memory in each part of the way, MB. */
  readonly mostMb: Readonly<Record<Part, number>>;
  readonly seconds: Readonly<Record<Part, number>>;
  readonly records: number;
  readonly lost: number;
  /** Records still here after the undo. */
  readonly leftBehind: number;
};

const parts = ['written', 'previewed', 'put in', 'undone', 'put in again'] as const;
type Part = (typeof parts)[number];

/**
 * A backup of many years' work on its way from one phone to another and out again, in a real browser: written, shown,
 * put in, undone, put in once more; and the most memory each of them took.
 */
export async function bigFile({
  amount,
  say = () => undefined,
}: {
  amount: Amount;
  say?: (line: string) => void;
}): Promise<BigFileFigures> {
  const { phone, close } = await openStorePage();
  const { page } = phone;
  await page.evaluate(async () => {
    const opened = await window.slipfitStore.openStore();
    if (opened.ok) window.slipfitStore.closeStore(opened.value);
  });
  await fill(page, amount);
  await openBoth(page);
  const mostMb = zeros();
  const seconds = zeros();
  for (const part of parts) {
    const watching = await watchMemory(page);
    const began = performance.now();
    await steps[part](page);
    seconds[part] = (performance.now() - began) / 1000;
    mostMb[part] = await watching.end();
    say(`${part}: ${seconds[part].toFixed(1)} s, at most ${mostMb[part].toFixed(0)} MB of JavaScript memory`);
  }
  const { records, lost, leftBehind, megabytes } = await page.evaluate(async () => {
    const { kept, file, counts } = window.bigFile;
    const { from, afterUndo } = counts;
    return {
      records: from,
      lost: from - (await kept()),
      leftBehind: afterUndo,
      megabytes: file().size / 1e6,
    };
  });
  await close();
  const figures = { records, lost, leftBehind, megabytes, mostMb, seconds };
  say(sentence(figures, amount));
  return figures;
}

function sentence({ records, lost, leftBehind, megabytes, mostMb }: BigFileFigures, amount: Amount): string {
  const most = Math.max(...Object.values(mostMb)).toFixed(0);
  return `${amount.readings} readings, ${amount.photos} photos, ${megabytes.toFixed(0)} MB, ${records} records; most memory: ${most} MB; left behind by the undo: ${leftBehind}; lost: ${lost}`;
}

function zeros(): Record<Part, number> {
  return { written: 0, previewed: 0, 'put in': 0, undone: 0, 'put in again': 0 };
}

declare global {
  interface Window {
    bigFile: {
      readonly file: () => Blob;
      readonly write: () => Promise<void>;
      readonly preview: () => Promise<void>;
      readonly apply: () => Promise<void>;
      readonly undo: () => Promise<void>;
      readonly kept: () => Promise<number>;
      readonly counts: { readonly from: number; afterUndo: number };
    };
  }
}

async function openBoth(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const app = window.slipfitStore;
    const [from, to] = [await app.openStore(), await app.openStore({ name: 'other-phone' })];
    if (!from.ok || !to.ok) throw new Error('the database would not open');
    let file = new Blob();
    const stores = app.backupStores.filter((name) => name !== 'settings' && name !== 'tools');
    const recordsIn = async (store: typeof from.value) => {
      const counts = await Promise.all(stores.map((name) => store.db.count(name)));
      return counts.reduce((sum, count) => sum + count, 0);
    };
    const must = <T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T => {
      if (!result.ok) throw new Error(result.refusal.code);
      return result.value;
    };
    const counts = { from: await recordsIn(from.value), afterUndo: -1 };
    window.bigFile = {
      counts,
      file: () => file,
      kept: () => recordsIn(to.value),
      async write() {
        const pieces: Blob[] = [];
        for await (const piece of app.backupPieces(from.value)) pieces.push(piece);
        file = new Blob(pieces);
      },
      async preview() {
        must(await app.previewBackup(to.value, file));
      },
      async apply() {
        must(await app.applyPreviewed(to.value));
      },
      async undo() {
        const last = await app.latestUndo(to.value);
        must(await app.undoLast(to.value, last?.id ?? ''));
        counts.afterUndo = await recordsIn(to.value);
      },
    };
  });
}

const steps: Readonly<Record<Part, (page: Page) => Promise<void>>> = {
  written: (page) => page.evaluate(() => window.bigFile.write()),
  previewed: (page) => page.evaluate(() => window.bigFile.preview()),
  'put in': (page) => page.evaluate(() => window.bigFile.apply()),
  undone: (page) => page.evaluate(() => window.bigFile.undo()),
  'put in again': (page) =>
    page.evaluate(async () => {
      await window.bigFile.preview();
      await window.bigFile.apply();
    }),
};
