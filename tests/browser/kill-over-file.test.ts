import { afterAll, expect, test } from 'vitest';
import { killOverFile } from '../trials/kill-over-file.ts';
import { trialSize } from '../trials/seeded.ts';
import { removeTemporaryFolders } from './launch.ts';

afterAll(removeTemporaryFolders);

const { count: kills, seed } = trialSize({ short: 4, long: 60 });

test(
  `a phone that dies over a file, ${kills} times: the file is in whole or not at all, and nothing is left of it`,
  { timeout: 120_000 + kills * 30_000 },
  async () => {
    const counts = await killOverFile({ kills, seed, say: (line) => console.info(line) });
    expect(counts).toMatchObject({ kills, halfThere: 0, leftBehind: 0 });
  },
);
