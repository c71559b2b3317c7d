import { useEffect, useRef, useState } from 'preact/hooks';
import type { Unit } from '../../engine/length.ts';
import { clearDraft, getDraft, putDraft } from '../../store/drafts.ts';
import type { Store } from '../../store/open-store.ts';
import type { StoreRefusal } from '../../store/store-refusal.ts';
import { nothingTyped, type HalfTyped } from './pad-text.ts';
import { useStoreIfAny } from './store-context.ts';

type Unwritten = { readonly store: Store; readonly half: HalfTyped; readonly why: StoreRefusal };

const writing = new Set<Promise<unknown>>();
/** What each field last gave to be written, until it is; nothing once the field was emptied, so that it can't come back. */
const latest = new Map<string, HalfTyped>();
/** What stands in this window only, as its last write failed: by the field's key. */
const unwritten = new Map<string, Unwritten>();
let onUnwritten: (why: StoreRefusal | undefined) => void = () => undefined;

/** What was typed last and is in no record yet, with the address it was typed at. */
let standing = { place: '', typed: '' };
let onStanding: () => void = () => undefined;

function stand(place: string, typed: string): void {
  standing = { place, typed };
  onStanding();
}

/** What stands half typed at this address, for the screen that says that its record is gone. */
export function useTypedHere(): string {
  const [, drawAgain] = useState(0);
  useEffect(() => {
    onStanding = () => drawAgain((times) => times + 1);
    return () => {
      onStanding = () => undefined;
    };
  }, []);
  return standing.place === location.hash ? standing.typed : '';
}

function keep(store: Store, key: string, half: HalfTyped): void {
  latest.set(key, half);
  const written = putDraft(store, key, half).then((kept) => {
    // More was typed since, whose own write says how it ended; or the field was emptied.
    if (latest.get(key) !== half) return kept.ok && keepTheRest();
    if (kept.ok) {
      forget(key);
      return keepTheRest();
    }
    unwritten.set(key, { store, half, why: kept.refusal });
    return onUnwritten(kept.refusal);
  });
  writing.add(written);
  void written.finally(() => writing.delete(written));
}

/** There is room again: so there is for what was typed on screens that were left since. */
function keepTheRest(): void {
  for (const [key, { store, half }] of unwritten) if (latest.get(key) === half) keep(store, key, half);
}

function forget(key: string): void {
  latest.delete(key);
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
  const typed = useRef('');
  const place = location.hash;
  useEffect(() => {
    if (!store) return undefined;
    const here = unwritten.get(key);
    if (here) {
      typed.current = here.half.typed;
      setHeld({ key, half: here.half });
      stand(place, here.half.typed);
      return undefined;
    }
    let wanted = true;
    getDraft(store, key).then(
      // What was typed before the draft came back counts, and so does the field that stands here by then.
      (draft) => {
        if (!draft || !wanted || touched.current === key) return;
        setHeld({ key, half: draft });
        stand(place, draft.typed);
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [store, key]);
  return {
    half: held?.key === key ? held.half : nothingTyped(unit),
    change: (half: HalfTyped) => {
      touched.current = key;
      typed.current = half.typed;
      setHeld({ key, half });
      stand(place, half.typed);
      if (store) keep(store, key, half);
    },
    /** Empties the field and leaves the stored draft to the write that takes it over. */
    lift: () => {
      touched.current = key;
      typed.current = '';
      stand(place, '');
      forget(key);
      setHeld({ key, half: nothingTyped(unit) });
    },
    /** Back into the field after that write failed, unless something else was typed meanwhile; and written down again. */
    putBack: (half: HalfTyped) => {
      const isHere = touched.current === key;
      if (isHere && typed.current !== '') return;
      if (isHere) {
        typed.current = half.typed;
        setHeld({ key, half });
        stand(place, half.typed);
      }
      if (store) keep(store, key, half);
    },
    clear: () => {
      touched.current = key;
      typed.current = '';
      setHeld(undefined);
      stand(place, '');
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
