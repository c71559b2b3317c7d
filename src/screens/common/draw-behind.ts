import { options } from 'preact';

/**
 * Draws behind the frame. What a press changes at once, a digit in its field, is written there by the press itself; the
 * rest of the screen follows when that is painted, or before whatever a hand does next: no press ever meets a screen that
 * is older than itself. What the press has to keep is kept at once.
 */
let waiting: (() => void) | undefined;

export function drawBehind(press: () => void): void {
  // Somebody else decides when it is drawn, a test for one.
  if (options.debounceRendering !== undefined) return press();
  options.debounceRendering = (draw) => {
    waiting = draw;
    behindTheFrame();
  };
  try {
    press();
  } finally {
    delete options.debounceRendering;
  }
}

// A frame that is never painted, of a page behind another one, is not waited for.
const NO_FRAME_MS = 100;

function behindTheFrame(): void {
  requestAnimationFrame(() => {
    // A message comes right behind the painting, a timer up to four milliseconds later.
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', drawNow, { once: true });
    port1.start();
    port2.postMessage('');
  });
  setTimeout(drawNow, NO_FRAME_MS);
}

/** What waits is drawn there and then. */
function drawNow(): void {
  const draw = waiting;
  waiting = undefined;
  draw?.();
}

const HANDS = ['pointerdown', 'keydown', 'beforeinput', 'input', 'focusin', 'click', 'submit'] as const;
for (const kind of HANDS) addEventListener(kind, drawNow, { capture: true, passive: true });
