const met = new WeakSet<Error>();

/** From the page's start on: the build's loader asks what to do about a part of the app that didn't come. The line above every screen says so too. */
export function watchMissingParts(): void {
  addEventListener('vite:preloadError', ({ payload }) => met.add(payload));
}

/** Whether it was thrown for a part of the app that didn't come: no fault of the records, nor of the screen that asked. */
export function isMissingPart(error: unknown): boolean {
  return error instanceof Error && met.has(error);
}
