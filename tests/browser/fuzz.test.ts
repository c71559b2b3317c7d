import { afterAll, expect, test } from 'vitest';
import { fuzz } from '../trials/fuzz.ts';
import { trialSize } from '../trials/seeded.ts';
import { removeTemporaryFolders } from './launch.ts';

afterAll(removeTemporaryFolders);

const { count: files, seed } = trialSize({ short: 36, long: 10_000 });

test(
  `${files} spoiled backups: each is refused in a sentence or comes in whole, and what is here stays as it is`,
  { timeout: 120_000 + files * 1000 },
  async () => {
    const figures = await fuzz({ files, seed, say: (line) => console.info(line) });
    expect(figures.troubles).toEqual([]);
    expect(figures).toMatchObject({
      files,
      halfApplied: 0,
      harmed: 0,
      thrown: 0,
      misjudged: 0,
      saidByBrowser: [],
    });
    expect(figures.refused).toBeGreaterThan(files / 3);
    expect(figures.imported).toBeGreaterThan(files / 10);
    expect(figures.mostMb).toBeLessThan(200);
  },
);
