import { useState } from 'preact/hooks';
import { sayStore } from '../../store/base/say-store.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import './told.css';

/**
 * Runs acts of the store for a screen and holds the sentence why the last one could not be kept; the next one that is kept
 * clears it. `say` is for what the screen itself has to ask first.
 */
export function useTold() {
  const [trouble, say] = useState('');
  /** Whether it was kept; `then` comes only after that. */
  const told = async <T,>(act: Promise<StoreResult<T>>, then?: (value: T) => unknown): Promise<boolean> => {
    const done = await act;
    say(done.ok ? '' : sayStore(done.refusal));
    if (done.ok) await then?.(done.value);
    return done.ok;
  };
  return { trouble, told, say };
}

export type Answer = ReturnType<typeof useTold>;

type TroubleProps = {
  readonly children: string;
  /** In a box that has its own edge. */
  readonly bare?: boolean;
};

/** Why something could not be kept, spoken as it appears; nothing while there is nothing to say. */
export function Trouble({ children, bare = false }: TroubleProps) {
  if (children === '') return null;
  return (
    <p role="alert" class={bare ? undefined : 'told-trouble'}>
      {children}
    </p>
  );
}

/** The same for the place over a pad, which is there only while something stands in it. */
export function troubleLine(words: string) {
  return words === '' ? undefined : <Trouble bare>{words}</Trouble>;
}
