/**
 * A glove bounces: the second of two presses at one place within a moment of a commit is the same press, also when the
 * first one has already led to another screen and something else lies under the finger now.
 */
// Chosen, not published.
const MOMENT_MS = 350;
const PLACE_PX = 40;

let last = { at: -MOMENT_MS, x: 0, y: 0 };

export function noteCommit(event: MouseEvent): void {
  // A key that presses a button has no place: it can't bounce onto another one.
  if (event.detail > 0) last = { at: performance.now(), x: event.clientX, y: event.clientY };
}

/** Swallows the bounce before any button hears it, and what a held Enter repeats. Returns its undo. */
export function swallowBounces(): () => void {
  const listen = (event: MouseEvent) => {
    const near = Math.hypot(event.clientX - last.x, event.clientY - last.y) < PLACE_PX;
    if (event.detail === 0 || !near || performance.now() - last.at > MOMENT_MS) return;
    event.preventDefault();
    event.stopPropagation();
  };
  addEventListener('click', listen, { capture: true });
  addEventListener('keydown', holdOnce);
  return () => {
    removeEventListener('click', listen, { capture: true });
    removeEventListener('keydown', holdOnce);
  };
}

/** A key that is held is one press: the browser presses a button anew at each of its repeats. */
function holdOnce(event: KeyboardEvent): void {
  if (event.repeat && event.key === 'Enter' && !(event.target instanceof HTMLTextAreaElement))
    event.preventDefault();
}
