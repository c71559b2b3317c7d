import { openStorePage } from './store-in-browser.ts';
import { watchMemory } from './watch-memory.ts';
import type { FuzzTally } from './fuzz-in-page.ts';

export type FuzzFigures = FuzzTally & { readonly mostMb: number; readonly saidByBrowser: readonly string[] };

declare global {
  interface Window {
    fuzz: Awaited<ReturnType<Window['slipfitStore']['startFuzz']>>;
    /** From here on the memory is the app's: that of the looking around it is cleared away. */
    startWeighing: () => Promise<void>;
    stopWeighing: () => Promise<void>;
  }
}

// So many before the next word of how far it is.
const FILES_AT_ONCE = 25;

/** Hands a phone one spoiled backup after another, and looks after each whether all is as it was, or all of it came. */
export async function fuzz({
  files,
  seed,
  say = () => undefined,
}: {
  files: number;
  seed: number;
  say?: (line: string) => void;
}): Promise<FuzzFigures> {
  const { phone, close } = await openStorePage();
  const { page } = phone;
  await page.evaluate(async () => {
    window.fuzz = await window.slipfitStore.startFuzz();
  });
  const watching = await watchMemory(page);
  await watching.pause();
  await page.exposeBinding('startWeighing', watching.resume);
  await page.exposeBinding('stopWeighing', watching.pause);
  const all: FuzzTally = {
    files: 0,
    refused: 0,
    imported: 0,
    halfApplied: 0,
    harmed: 0,
    thrown: 0,
    misjudged: 0,
    troubles: [],
  };
  while (all.files < files) {
    const count = Math.min(FILES_AT_ONCE, files - all.files);
    // oxlint-disable-next-line no-await-in-loop
    const tally = await page.evaluate(([with_, from, many]) => window.fuzz.run(with_, from, many), [
      seed,
      all.files,
      count,
    ] as const);
    for (const name of [
      'files',
      'refused',
      'imported',
      'halfApplied',
      'harmed',
      'thrown',
      'misjudged',
    ] as const)
      all[name] += tally[name];
    all.troubles.push(...tally.troubles);
    for (const trouble of tally.troubles) say(trouble);
    if (all.files % 500 === 0) say(`${all.files} of ${files}`);
  }
  const mostMb = await watching.end();
  const figures = { ...all, mostMb, saidByBrowser: [...phone.trouble.said] };
  await close();
  say(sentence(figures, seed));
  return figures;
}

function sentence(
  { files, refused, imported, halfApplied, harmed, thrown, misjudged, mostMb }: FuzzFigures,
  seed: number,
): string {
  return `seed ${seed}: ${files} files, ${refused} refused, ${imported} imported; half-applied: ${halfApplied}, harmed: ${harmed}, thrown: ${thrown}, misjudged: ${misjudged}; most memory: ${mostMb.toFixed(0)} MB`;
}
