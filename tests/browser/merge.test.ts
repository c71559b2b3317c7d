import { expect, test } from 'vitest';
import { mergeTrial } from '../trials/merge.ts';
import { trialSize } from '../trials/seeded.ts';
import { openStorePage } from '../trials/store-in-browser.ts';

test('in a real browser too, phones come to the same, and what they wrote apart is asked about once', async () => {
  const { phone, close } = await openStorePage();
  const size = trialSize({ short: 3, long: 48 });
  const figures = await mergeTrial({
    ...size,
    say: (line) => console.log(`in Chromium: ${line}`),
    play: (seed) => phone.page.evaluate((one) => window.slipfitStore.playHistory(one), seed),
  });
  expect(figures).toMatchObject({
    histories: size.count,
    lost: 0,
    differing: 0,
    hidden: 0,
    needless: 0,
    again: 0,
    unsaid: 0,
  });
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
}, 1_200_000);
