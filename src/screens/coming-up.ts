import type { KeptMark } from '../store/opening/kept-mark.ts';

/**
 * Whether a place came up, noted where it outlives a page that hangs or dies: before it is drawn there is a mark, and once
 * it has stood for a while, or the page is left in the usual way, there is none. A page that hangs does neither.
 * `localStorage` is written at once and reaches the disk only seconds later (Chromium: about five), so that it outlives a
 * tab and not a browser that the phone ends for its memory; the database outlives both.
 */

/** Its name in both places. */
export const COMING_UP = 'slipfit coming up';
// Chosen, not published: longer than the slowest place takes on a slow phone, shorter than a fitter stays at one.
const STANDS_AFTER_MS = 5000;
const MOST_TRIES = 2;
type Mark = { readonly place: string; readonly tries: number };

const NOWHERE: KeptMark = { found: undefined, keep: () => undefined, clear: () => undefined };

/** False for a place that did not come up twice: the start doesn't go back to it. Else it is marked as coming up. */
export function mayComeUp(place: string, kept: KeptMark = NOWHERE): boolean {
  // The database is told at once that a place stood; what localStorage was told may not have reached the disk.
  const mark = kept.found === undefined ? readMark() : markIn(kept.found);
  const tries = mark?.place === place ? mark.tries : 0;
  if (tries >= MOST_TRIES) {
    clearMark(kept);
    return false;
  }
  writeMark({ place, tries: tries + 1 }, kept);
  return true;
}

/** From the start on: what stands is marked no longer, and each place that is gone to is marked as coming up. */
export function watchComingUp(placeNow: () => string, kept: KeptMark = NOWHERE): void {
  const clear = () => clearMark(kept);
  let timer = setTimeout(clear, STANDS_AFTER_MS);
  addEventListener('hashchange', () => {
    clearTimeout(timer);
    writeMark({ place: placeNow(), tries: 1 }, kept);
    timer = setTimeout(clear, STANDS_AFTER_MS);
  });
  // A press that is answered shows that the place stands.
  for (const press of ['keydown', 'pointerup'] as const)
    addEventListener(press, () => {
      clearTimeout(timer);
      timer = setTimeout(clear);
    });
  addEventListener('pagehide', clear);
  document.addEventListener('visibilitychange', () => document.hidden && clear());
}

function readMark(): Mark | undefined {
  try {
    return markIn(localStorage.getItem(COMING_UP) ?? '');
  } catch {
    // A browser that keeps nothing here may still have it in the database.
    return undefined;
  }
}

function markIn(text: string): Mark | undefined {
  const [tries = '', ...place] = text.split(' ');
  return /^\d$/.test(tries) ? { tries: Number(tries), place: place.join(' ') } : undefined;
}

function writeMark({ place, tries }: Mark, kept: KeptMark): void {
  const text = `${tries} ${place}`;
  kept.keep(text);
  try {
    localStorage.setItem(COMING_UP, text);
  } catch {
    // As above, or it is full: then the start goes where it always went.
  }
}

function clearMark(kept: KeptMark): void {
  kept.clear();
  try {
    localStorage.removeItem(COMING_UP);
  } catch {
    // As above.
  }
}
