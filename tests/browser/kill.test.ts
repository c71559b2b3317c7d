import { afterAll, expect, test } from 'vitest';
import { killWhileLogging } from '../trials/kill.ts';
import { trialSize } from '../trials/seeded.ts';
import { removeTemporaryFolders } from './launch.ts';

afterAll(removeTemporaryFolders);

const { count: kills, seed } = trialSize({ short: 10, long: 200 });

test(
  `a phone that dies while readings are logged, ${kills} times: all that was called logged is there`,
  { timeout: 60_000 + kills * 10_000 },
  async () => {
    const counts = await killWhileLogging({ kills, seed, say: (line) => console.info(line) });
    expect(counts).toMatchObject({ kills, lost: 0, broken: 0, draftsLost: 0 });
    expect(counts.logged).toBeGreaterThan(kills);
    expect(counts.insideWrite).toBeGreaterThanOrEqual(kills / 2);
  },
);
