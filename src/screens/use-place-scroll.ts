import { useLayoutEffect, useRef } from 'preact/hooks';

// Chosen, not published: what a place shows is read from the phone within that time, or the finger has moved on.
const LATE_ROWS_MS = 1500;
const KEY = 'slipfit place';

/**
 * Every place opens at its top, and comes back where it was left when it is gone back to. The browser does that for a page
 * that scrolls as a whole; here only what stands between the notice and the bar scrolls. `place` goes on that.
 */
export function usePlaceScroll(hash: string) {
  const place = useRef<HTMLDivElement>(null);
  const left = useRef(new Map<number, number>());
  const here = useRef(0);
  useLayoutEffect(() => {
    const { current } = place;
    if (!current) return undefined;
    const before = entryOf(history.state);
    // An entry that has been here already is gone back to; a new one gets its number.
    const entry = before ?? Date.now() + Math.random();
    if (before === undefined) history.replaceState({ ...stateNow(), [KEY]: entry }, '');
    here.current = entry;
    const stop = scrollTo(current, (before !== undefined && left.current.get(entry)) || 0);
    const note = () => left.current.set(here.current, current.scrollTop);
    current.addEventListener('scroll', note, { passive: true });
    return () => {
      stop();
      current.removeEventListener('scroll', note);
    };
  }, [hash]);
  return place;
}

/** Rows come late: it is scrolled as far as they reach by now, until all are there or the page is touched. */
function scrollTo(place: HTMLElement, top: number): () => void {
  place.scrollTop = top;
  if (place.scrollTop >= top) return () => undefined;
  const watch = new MutationObserver(() => {
    place.scrollTop = top;
    if (place.scrollTop >= top) stop();
  });
  const timer = setTimeout(() => stop(), LATE_ROWS_MS);
  const stop = () => {
    watch.disconnect();
    clearTimeout(timer);
    for (const kind of TOUCHED) removeEventListener(kind, stop);
  };
  watch.observe(place, { childList: true, subtree: true });
  for (const kind of TOUCHED) addEventListener(kind, stop, { passive: true });
  return stop;
}

const TOUCHED = ['pointerdown', 'wheel', 'keydown'] as const;

function stateNow(): object {
  const state: unknown = history.state;
  return typeof state === 'object' && state !== null ? state : {};
}

function entryOf(state: unknown): number | undefined {
  if (typeof state !== 'object' || state === null || !(KEY in state)) return undefined;
  const entry: unknown = state[KEY];
  return typeof entry === 'number' ? entry : undefined;
}
