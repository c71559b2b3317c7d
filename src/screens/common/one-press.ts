import { useRef } from 'preact/hooks';

// Chosen, not published: a glove that bounces on a key presses it once.
const SAME_PRESS_MS = 350;
// Chosen, not published: by then the screen that was led to stands there.
const LEADS_ON_MS = 50;

// What is committed next is not what was committed before: whoever types is no glove that bounces.
// Counted, not timed: a browser may hand on all the keys of a gauge in one go.
let typings = 0;
const type = () => (typings += 1);
addEventListener('input', type, { capture: true });

/**
 * One press, one write, whatever pressed: a finger, a mouse, Enter, a gauge. A second press does nothing while what the
 * first one set going (a promise) is on its way, nor in the moment behind a press that commits.
 */
export function useOnePress() {
  const last = useRef({ behind: 0, until: -Infinity });
  return {
    take: (work: () => unknown, { commits }: { readonly commits: boolean }): void => {
      const now = performance.now();
      const { behind, until } = last.current;
      if (until === Infinity || (now < until && behind === typings)) return;
      const press = { behind: typings, until: now + SAME_PRESS_MS };
      const coming = work();
      if (coming instanceof Promise) {
        press.until = Infinity;
        void coming.finally(
          () => (press.until = Math.max(now + SAME_PRESS_MS, performance.now() + LEADS_ON_MS)),
        );
      } else if (!commits) return;
      last.current = press;
    },
    /** Typed on the pad, which no field tells of: the next press is another one, however soon it comes. */
    anew: type,
  };
}
