import { createContext, type ComponentChildren } from 'preact';
import { useCallback, useContext, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import './together.css';

const Reading = createContext<((by: 1 | -1) => void) | undefined>(undefined);

// Chosen: longer than any read takes; what has no answer by then is not waited for.
const LONGEST_MS = 1000;

/**
 * Several parts that each read something, seen only when all of it is there: one that came late would push the keys below
 * it away under the finger, and not every engine holds on to what is looked at.
 */
export function Together({ children }: { readonly children: ComponentChildren }) {
  const open = useRef(0);
  const [isThere, setThere] = useState(false);
  const count = useCallback((by: 1 | -1) => {
    open.current += by;
    if (open.current === 0) setThere(true);
  }, []);
  useEffect(() => {
    if (open.current === 0) setThere(true);
    const timer = setTimeout(setThere, LONGEST_MS, true);
    return () => clearTimeout(timer);
  }, []);
  return (
    <Reading.Provider value={count}>
      <div class="together" data-there={isThere}>
        {children}
      </div>
    </Reading.Provider>
  );
}

/** For what reads: whether its answer is there. Where it stands among such parts, they wait for it. */
export function useWaitedFor(isThere: boolean): void {
  const count = useContext(Reading);
  useLayoutEffect(() => {
    if (isThere || !count) return undefined;
    count(1);
    return () => count(-1);
  }, [isThere, count]);
}
