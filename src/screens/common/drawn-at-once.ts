import { options } from 'preact';

/**
 * Does something and draws what came of it before the next line runs. A browser may hand on several keys of a gauge in
 * one go, and each has to find the screen as the one before it left it.
 */
export function drawnAtOnce(act: () => void): void {
  const before = { ...options };
  let draw: (() => void) | undefined;
  options.debounceRendering = (drawing) => {
    draw = drawing;
  };
  try {
    act();
    draw?.();
  } finally {
    delete options.debounceRendering;
    Object.assign(options, before);
  }
}
