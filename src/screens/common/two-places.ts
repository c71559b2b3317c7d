import { useEffect, useRef, useState } from 'preact/hooks';

// Chosen, not published: time for a gloved hand to move from the figure to the key, and no more.
const LIT_MS = 6000;
// A page opens well within it; what was pressed longer ago belongs to another one.
const OPENS_MS = 2000;

let pressedAt = Number.NEGATIVE_INFINITY;

/** The key that opens a pad is the first place of the two: the pad opens with its commit key lit. */
export function lightAhead(): void {
  pressedAt = performance.now();
}

function wasLitAhead(): boolean {
  const isFresh = performance.now() - pressedAt < OPENS_MS;
  pressedAt = Number.NEGATIVE_INFINITY;
  return isFresh;
}

/**
 * A wet sleeve brushes over one place, a hand means two: the key takes a press only for a moment after the figure was
 * touched, or the key that opened the pad. A key of a keyboard can't be brushed, so it needs no second place.
 */
export function useTwoPlaces({ opensLit = false } = {}) {
  const [isLit, setLit] = useState(() => opensLit && wasLitAhead());
  const timer = useRef(0);
  const stop = () => clearTimeout(timer.current);
  const light = () => {
    stop();
    setLit(true);
    timer.current = window.setTimeout(() => setLit(false), LIT_MS);
  };
  useEffect(() => {
    if (isLit) light();
    return stop;
  }, []);
  return {
    isLit,
    light,
    /** Digits are typed: the moment begins anew with each, where it isn't over. */
    stayLit: () => isLit && light(),
    dim: () => {
      stop();
      setLit(false);
    },
    /** Whether this press counts. */
    takes: (event: MouseEvent) => isLit || isByKey(event),
  };
}

/** A press that a keyboard or a screen reader made has no place on the glass. */
function isByKey(event: MouseEvent): boolean {
  return event.detail === 0;
}
