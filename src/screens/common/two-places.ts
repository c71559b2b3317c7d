import { useEffect, useRef, useState } from 'preact/hooks';

// Chosen, not published: time for a gloved hand to move from the figure to the key, and no more.
const LIT_MS = 6000;

/**
 * A wet sleeve brushes over one place, a hand means two: the key takes a press only for a moment after the figure was
 * touched. A key of a keyboard can't be brushed, so it needs no second place.
 */
export function useTwoPlaces() {
  const [isLit, setLit] = useState(false);
  const timer = useRef(0);
  const stop = () => clearTimeout(timer.current);
  useEffect(() => stop, []);
  return {
    isLit,
    light: () => {
      stop();
      setLit(true);
      timer.current = window.setTimeout(() => setLit(false), LIT_MS);
    },
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
