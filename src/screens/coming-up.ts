/**
 * Whether a place came up, noted where it outlives a page that hangs or dies: before it is drawn there is a mark, and once
 * it has stood for a while, or the page is left in the usual way, there is none. A page that hangs does neither.
 */

const KEY = 'slipfit coming up';
// Chosen, not published: longer than the slowest place takes on a slow phone, shorter than a fitter stays at one.
const STANDS_AFTER_MS = 5000;
const MOST_TRIES = 2;

type Mark = { readonly place: string; readonly tries: number };

/** False for a place that did not come up twice: the start doesn't go back to it. Else it is marked as coming up. */
export function mayComeUp(place: string): boolean {
  const before = readMark();
  const tries = before?.place === place ? before.tries : 0;
  if (tries >= MOST_TRIES) {
    clearMark();
    return false;
  }
  writeMark({ place, tries: tries + 1 });
  return true;
}

/** From the start on: what stands is marked no longer, and each place that is gone to is marked as coming up. */
export function watchComingUp(placeNow: () => string): void {
  let timer = setTimeout(clearMark, STANDS_AFTER_MS);
  addEventListener('hashchange', () => {
    clearTimeout(timer);
    writeMark({ place: placeNow(), tries: 1 });
    timer = setTimeout(clearMark, STANDS_AFTER_MS);
  });
  addEventListener('pagehide', clearMark);
  document.addEventListener('visibilitychange', () => document.hidden && clearMark());
}

function readMark(): Mark | undefined {
  try {
    const [tries = '', ...place] = (localStorage.getItem(KEY) ?? '').split(' ');
    return /^\d$/.test(tries) ? { tries: Number(tries), place: place.join(' ') } : undefined;
  } catch {
    // A browser that keeps nothing here has nothing to go back to either.
    return undefined;
  }
}

function writeMark({ place, tries }: Mark): void {
  try {
    localStorage.setItem(KEY, `${tries} ${place}`);
  } catch {
    // As above, or it is full: then the start goes where it always went.
  }
}

function clearMark(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // As above.
  }
}
