import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { mergeTrial } from '../../trials/merge.ts';
import { trialSize } from '../../trials/seeded.ts';

test('whatever two or three phones do, they come to the same, no reading is lost, and what they wrote apart is asked about once', async () => {
  const size = trialSize({ short: 8, long: 2000 });
  const figures = await mergeTrial({ ...size, say: (line) => console.log(line) });
  expect(figures).toMatchObject({
    histories: size.count,
    lost: 0,
    differing: 0,
    hidden: 0,
    needless: 0,
    again: 0,
    unsaid: 0,
  });
  expect(figures.asked).toBeGreaterThan(0);
}, 3_600_000);
