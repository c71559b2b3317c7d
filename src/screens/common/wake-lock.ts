import { useEffect, useState } from 'preact/hooks';

/** Whether the phone keeps its screen on: `resting` while the page is hidden, `unknown` until the phone has answered. */
export type ScreenStays = 'on' | 'refused' | 'not-here' | 'resting' | 'unknown';

/**
 * Keeps the screen on while a screen that asks for it is shown. A phone takes the lock back when the page is hidden and
 * may refuse it on a low battery, so it is asked again when the page is seen again and at every press.
 */
export function useWakeLock(): ScreenStays {
  const [stays, setStays] = useState<ScreenStays>(canAsk() ? 'unknown' : 'not-here');
  useEffect(() => (canAsk() ? keepScreenOn(setStays) : undefined), []);
  return stays;
}

function canAsk(): boolean {
  return 'wakeLock' in navigator;
}

function keepScreenOn(onChange: (stays: ScreenStays) => void): () => void {
  let lock: WakeLockSentinel | undefined;
  let isAsking = false;
  let isWanted = true;
  const isSeen = () => document.visibilityState === 'visible';
  const lost = () => {
    lock = undefined;
    if (isWanted) onChange(isSeen() ? 'refused' : 'resting');
  };
  const ask = async () => {
    if (lock || isAsking || !isSeen()) return;
    isAsking = true;
    try {
      const given = await navigator.wakeLock.request('screen');
      if (isWanted) {
        lock = given;
        given.addEventListener('release', lost);
        onChange('on');
      } else await given.release();
    } catch {
      lost();
    } finally {
      isAsking = false;
    }
  };
  const askAgain = () => void ask();
  askAgain();
  document.addEventListener('visibilitychange', askAgain);
  addEventListener('click', askAgain);
  return () => {
    isWanted = false;
    document.removeEventListener('visibilitychange', askAgain);
    removeEventListener('click', askAgain);
    void lock?.release();
  };
}
