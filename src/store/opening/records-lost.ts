import type { Store } from './open-store.ts';

// The browser's other storage: a database that is lost to a damaged disk or a fault of the browser's leaves it behind.
const MARK = 'slipfit-records';

/**
 * Found out at the start: that there were jobs here when the app was last opened, and that the database is a new one now.
 * Milliseconds since 1970 of that last time; nothing in the usual case. It is told once.
 */
export async function recordsLostSince(store: Store): Promise<number | undefined> {
  const [jobs, acts] = await Promise.all([store.db.count('jobs'), store.db.count('device')]).catch(() => []);
  if (jobs === undefined || acts === undefined) return undefined;
  const last = readMark();
  if (jobs > 0) writeMark(store.now());
  else if (acts === 0) dropMark();
  return acts === 0 ? last : undefined;
}

// A browser may forbid it at the very word: then a loss goes unnoticed, as without it.
function readMark(): number | undefined {
  try {
    const text = localStorage.getItem(MARK);
    return text === null || !/^\d{1,15}$/.test(text) ? undefined : Number.parseInt(text, 10);
  } catch {
    return undefined;
  }
}

function writeMark(now: number): void {
  try {
    localStorage.setItem(MARK, String(now));
  } catch {
    // as above
  }
}

function dropMark(): void {
  try {
    localStorage.removeItem(MARK);
  } catch {
    // as above
  }
}
