import type { Page } from 'playwright-core';

const LOOKED_EVERY_MS = 50;

export type MemoryWatch = {
  /** Nothing counts from here on: what the trial itself takes to look at what came of it. */
  readonly pause: () => Promise<void>;
  /** What was left lying about until now is cleared away, then all counts again. */
  readonly resume: () => Promise<void>;
  /** The most it was, MB. */
  readonly end: () => Promise<number>;
};

/** The most JavaScript memory that a page takes from now on, MB, what nobody cleared away yet included. */
export async function watchMemory(page: Page): Promise<MemoryWatch> {
  const session = await page.context().newCDPSession(page);
  let most = 0;
  let counts = true;
  const look = async () => {
    if (!counts) return;
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    if (counts) most = Math.max(most, usedSize / 1e6);
  };
  const timer = setInterval(() => void look().catch(() => undefined), LOOKED_EVERY_MS);
  return {
    async pause() {
      await look();
      counts = false;
    },
    async resume() {
      await session.send('HeapProfiler.collectGarbage');
      counts = true;
    },
    async end() {
      clearInterval(timer);
      await look();
      await session.detach();
      return most;
    },
  };
}
