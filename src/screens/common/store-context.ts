import type { StoreName } from '../../store/base/stores.ts';
import { createContext } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import type { Store } from '../../store/opening/open-store.ts';
import { watch } from '../../store/opening/watch.ts';
import { isMissingPart } from './missing-part.ts';
import { useWaitedFor } from './together.tsx';

// `none`: the data could not be opened, and what is drawn can do without it, as the charts can.
const StoreContext = createContext<Store | 'none' | undefined>(undefined);
export const StoreProvider = StoreContext.Provider;

export function useStore(): Store {
  const store = useStoreIfAny();
  if (!store) throw new Error('a screen that keeps something was drawn without the store');
  return store;
}

/** For the few things that also work where nothing can be kept. */
export function useStoreIfAny(): Store | undefined {
  const store = useContext(StoreContext);
  if (!store) throw new Error('a screen was drawn before the store was open');
  return store === 'none' ? undefined : store;
}

/**
 * What a read gives now, and again after every change to the named stores, in this tab or another. Undefined until the
 * first answer is there, and where there is no store. `key` names the question: a new key drops the old answer.
 */
export function useLive<T>(
  key: string,
  stores: readonly StoreName[],
  read: (store: Store) => Promise<T>,
): T | undefined {
  const store = useStoreIfAny();
  const answered = useRef('');
  const [answer, setAnswer] = useState<{ readonly key: string; readonly value: T }>();
  const [fault, setFault] = useState<{ readonly key: string; readonly error: unknown }>();
  useWaitedFor(answer?.key === key);
  useEffect(() => {
    if (!store) return undefined;
    let wanted = true;
    let asked = 0;
    let heard = 0;
    const ask = () => {
      asked += 1;
      const number = asked;
      // Answers may come in another order than they were asked for: an older one tells of what is no longer so.
      const isNews = () => {
        if (!wanted || number < heard) return false;
        heard = number;
        return true;
      };
      read(store).then(
        (value) => {
          if (!isNews()) return;
          answered.current = key;
          setAnswer({ key, value });
        },
        (error: unknown) => {
          // The rest of the screen is as good without what hangs on it.
          if (isMissingPart(error)) return;
          // A store that is closed for good stays drawn as it was, with what is half typed; the line above says why.
          const isStanding = store.closed !== undefined && answered.current === key;
          if (!isStanding && isNews()) setFault({ key, error });
        },
      );
    };
    ask();
    const stop = watch(store, stores, ask);
    return () => {
      wanted = false;
      stop();
    };
  }, [store, key]);
  // "The line to the database was lost" must never be drawn as "nothing is here": the boundary around the screens says it.
  if (fault?.key === key) throw fault.error;
  return answer?.key === key ? answer.value : undefined;
}
