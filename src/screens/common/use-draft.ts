import { useEffect, useRef, useState } from 'preact/hooks';
import type { Unit } from '../../engine/length.ts';
import { clearDraft, getDraft, putDraft } from '../../store/drafts.ts';
import type { StoreRefusal, StoreResult } from '../../store/store-refusal.ts';
import { nothingTyped, type HalfTyped } from './pad-text.ts';
import { useStoreIfAny } from './store-context.ts';

const writing = new Set<Promise<unknown>>();
/** What stands on the screen only, as its last write failed: by the field's key. */
const unwritten = new Map<string, StoreRefusal>();
let onUnwritten: (why: StoreRefusal | undefined) => void = () => undefined;

function keep(key: string, write: Promise<StoreResult<void>>): void {
  const written = write.then((kept) => {
    if (kept.ok) return forget(key);
    unwritten.set(key, kept.refusal);
    return onUnwritten(kept.refusal);
  });
  writing.add(written);
  void written.finally(() => writing.delete(written));
}

function forget(key: string): void {
  if (unwritten.delete(key) && unwritten.size === 0) onUnwritten(undefined);
}

/** Calls back when what is half typed could not be written down, and with nothing when that is over: the app says so above every screen. */
export function watchUnwritten(say: typeof onUnwritten): void {
  onUnwritten = say;
}

/** Waits until every half-typed size is written, before the page gives way to a new version; rejects when one can't be. */
export async function draftsWritten(): Promise<void> {
  await Promise.allSettled(writing);
  if (unwritten.size > 0) throw new Error('something half typed is not written down');
}

/** A half-typed size that outlives the screen, the tab and the phone: written at every key. */
export function useSizeDraft(key: string, unit: Unit) {
  const store = useStoreIfAny();
  const [held, setHeld] = useState<{ readonly key: string; readonly half: HalfTyped }>();
  const touched = useRef('');
  useEffect(() => {
    if (!store) return;
    getDraft(store, key).then(
      // What was typed before the draft came back counts.
      (draft) => draft && touched.current !== key && setHeld({ key, half: draft }),
      () => undefined,
    );
  }, [store, key]);
  return {
    half: held?.key === key ? held.half : nothingTyped(unit),
    change: (half: HalfTyped) => {
      touched.current = key;
      setHeld({ key, half });
      if (store) keep(key, putDraft(store, key, half));
    },
    /** Empties the field and leaves the stored draft to the write that takes it over. */
    lift: () => {
      touched.current = key;
      forget(key);
      setHeld({ key, half: nothingTyped(unit) });
    },
    /** Back into the field after that write failed, unless something else was typed meanwhile. */
    putBack: (half: HalfTyped) =>
      setHeld((now) => (now?.key === key && now.half.typed !== '' ? now : { key, half })),
    clear: () => {
      touched.current = key;
      setHeld(undefined);
      forget(key);
      // One that stays by mistake loses nothing, so nobody is told.
      if (store) void clearDraft(store, key);
    },
  };
}

/** Half-typed words, kept the same way. */
export function useTextDraft(key: string) {
  const { half, change, clear } = useSizeDraft(key, 'in');
  return { text: half.typed, change: (text: string) => change({ typed: text, unit: 'in' }), clear };
}
