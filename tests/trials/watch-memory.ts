import type { Page } from 'playwright-core';

const LOOKED_EVERY_MS = 50;

/** The most JavaScript memory that a page takes from now on, MB, what nobody cleared away yet included. */
export async function watchMemory(page: Page): Promise<{ readonly end: () => Promise<number> }> {
  const session = await page.context().newCDPSession(page);
  let most = 0;
  const look = async () => {
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    most = Math.max(most, usedSize / 1e6);
  };
  const timer = setInterval(() => void look().catch(() => undefined), LOOKED_EVERY_MS);
  return {
    async end() {
      clearInterval(timer);
      await look();
      await session.detach();
      return most;
    },
  };
}
