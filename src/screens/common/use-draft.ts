import { useEffect, useRef, useState } from 'preact/hooks';
import type { Unit } from '../../engine/length/length.ts';
import { clearDraft, getDraft, putDraft } from '../../store/drafts.ts';
import type { Store } from '../../store/open-store.ts';
import { tellUnwritten, unwritten, writing } from './drafts-unwritten.ts';
import { nothingTyped, type HalfTyped } from './pad-text.ts';
import { useStoreIfAny } from './store-context.ts';

/** What each field last gave to be written, until it is; nothing once the field was emptied, so that it can't come back. */
const latest = new Map<string, HalfTyped>();

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
    return tellUnwritten(kept.refusal);
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
  if (unwritten.delete(key) && unwritten.size === 0) tellUnwritten(undefined);
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
