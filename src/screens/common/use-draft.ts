import { useEffect, useRef, useState } from 'preact/hooks';
import type { Unit } from '../../engine/length/length.ts';
import { clearDraft, getDraft, putDraft } from '../../store/kept/drafts.ts';
import type { Store } from '../../store/opening/open-store.ts';
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
  const place = location.hash;
  const [held, setHeld] = useState<{ readonly key: string; readonly half: HalfTyped }>();
  // The field that was touched last and what stands in it: at once, where it is drawn only afterwards.
  const touched = useRef({ key: '', typed: '' });
  const show = (half: HalfTyped | undefined) => {
    setHeld(half && { key, half });
    stand(place, half?.typed ?? '');
  };
  const put = (half: HalfTyped | undefined) => {
    touched.current = { key, typed: half?.typed ?? '' };
    show(half);
  };
  // What was typed before the draft came back counts.
  const isTouched = () => touched.current.key === key;
  useEffect(() => store && bringBack(store, key, (half) => isTouched() || show(half)), [store, key]);
  return {
    half: held?.key === key ? held.half : nothingTyped(unit),
    change: (half: HalfTyped) => {
      put(half);
      if (store) keep(store, key, half);
    },
    /** Empties the field and leaves the stored draft to the write that takes it over. */
    lift: () => {
      put(nothingTyped(unit));
      forget(key);
    },
    /** Back into the field after that write failed, unless something else was typed meanwhile; and written down again. */
    putBack: (half: HalfTyped) => {
      if (isTouched() && touched.current.typed !== '') return;
      if (isTouched()) put(half);
      if (store) keep(store, key, half);
    },
    clear: () => {
      put(undefined);
      forget(key);
      // One that stays by mistake loses nothing, so nobody is told.
      if (store) void clearDraft(store, key);
    },
  };
}

/** What was half typed in a field before: what could not be written yet, else what is stored. Undone where it comes too late. */
function bringBack(store: Store, key: string, onFound: (half: HalfTyped) => unknown): () => void {
  let wanted = true;
  const here = unwritten.get(key);
  if (here) onFound(here.half);
  else
    getDraft(store, key).then(
      (draft) => draft && wanted && onFound(draft),
      () => undefined,
    );
  return () => {
    wanted = false;
  };
}

export type SizeDraft = ReturnType<typeof useSizeDraft>;

/** Half-typed words, kept the same way. */
export function useTextDraft(key: string) {
  const { half, change, clear } = useSizeDraft(key, 'in');
  return { text: half.typed, change: (text: string) => change({ typed: text, unit: 'in' }), clear };
}
