/** Where the list of jobs is kept as it was painted last. */
export const PAINTED = 'slipfit-painted';

/** The next start begins with nothing. */
export function dropPainted(): void {
  try {
    localStorage.removeItem(PAINTED);
  } catch {
    // A browser may forbid it at the very word: then nothing was kept.
  }
}
