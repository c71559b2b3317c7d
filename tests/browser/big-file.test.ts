import { afterAll, expect, test } from 'vitest';
import { bigFile } from '../trials/big-file.ts';
import { trialSize } from '../trials/seeded.ts';
import { removeTemporaryFolders } from './launch.ts';

afterAll(removeTemporaryFolders);

const { count: readings } = trialSize({ short: 5000, long: 100_000 });
// Chosen, not published: about what a photo of 1600 by 1200 comes to.
const PHOTO_BYTES = 400_000;
const amount = {
  jobs: Math.ceil(readings / 100),
  readings,
  photos: Math.ceil(readings / 200),
  photoBytes: PHOTO_BYTES,
};

test(
  `a backup of ${readings} readings is written, shown, put in, undone and put in again, in under 200 MB of memory`,
  { timeout: 600_000 },
  async () => {
    const { mostMb, lost, leftBehind } = await bigFile({ amount, say: (line) => console.info(line) });
    expect(lost).toBe(0);
    expect(leftBehind).toBe(0);
    expect(Math.max(...Object.values(mostMb))).toBeLessThan(200);
  },
);
