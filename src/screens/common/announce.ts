// Chosen, not published: long enough for a short sentence to be spoken.
const SPOKEN_MS = 2500;
let lastSaidAt = -SPOKEN_MS;

/** What a screen reader says without the focus moving: "logged .4487 in". The region stands in the page from the start. */
export function announce(sentence: string): void {
  const region = document.getElementById('said');
  if (!region) return;
  lastSaidAt = performance.now();
  // The same sentence twice running is only spoken again if the text changes: a no-break space makes the difference.
  region.textContent = region.textContent === sentence ? `${sentence}\u00a0` : sentence;
  // "Stop" is answered by whatever comes after it: nobody should come upon it again later.
  document.getElementById('past-limit')?.replaceChildren();
}

/** The same for what can wait: it never takes the place of an answer to the fitter's own press. */
export function announceQuietly(sentence: string): void {
  const wait = lastSaidAt + SPOKEN_MS - performance.now();
  if (wait <= 0) announce(sentence);
  else setTimeout(announceQuietly, wait, sentence);
}

/** Breaks in on whatever is being spoken: only for a size that has gone past its limit. */
export function announceAtOnce(sentence: string): void {
  const region = document.getElementById('past-limit');
  if (!region) return;
  lastSaidAt = performance.now();
  region.textContent = region.textContent === sentence ? `${sentence}\u00a0` : sentence;
}

/** A short tick under the thumb where the phone has it; never the only answer to a press. */
export function tick(): void {
  if (typeof navigator.vibrate === 'function') navigator.vibrate(12);
}

/** A buzz that is felt through the bench; the screen says the same where the phone has none. */
export function buzz(): void {
  if (typeof navigator.vibrate === 'function') navigator.vibrate([300, 120, 300, 120, 600]);
}
