import { useLayoutEffect, useRef } from 'preact/hooks';
import { readEntry } from '../../engine/length/entry.ts';
import { keyMeaning, readBurst, type Burst, type KeyPress } from '../../engine/reading/gauge-burst.ts';
import { drawnAtOnce } from './drawn-at-once.ts';
import { retyped, type HalfTyped } from './pad-text.ts';

/** Who typed what stands in a field: a finger on the pad, a person at a keyboard, or a gauge that types and sends Enter. */
export type TypedBy = 'finger' | 'keys' | 'gauge';

// Chosen, not published: a gauge that ends with two Enters, or a foot switch that bounces, means one.
const SAME_PRESS_MS = 500;

type KeyEntry = {
  readonly field: { readonly current: HTMLInputElement | null };
  readonly half: HalfTyped;
  /** What stands there was refused, or is asked about. */
  readonly isRefused: boolean;
  readonly onTyped: (half: HalfTyped) => void;
  /** Enter, or a gauge's Tab, behind what keys typed. Left out where nothing is logged. */
  readonly onLog?: ((by: TypedBy) => void) | undefined;
  /** Enter or page down with nothing typed: a foot switch or a presenter's key. */
  readonly onNext?: (() => void) | undefined;
  /** The same with something half typed by a finger, which it must never log. */
  readonly onHeld: () => void;
};

/**
 * What keys do in a field for a size: a keyboard, a gauge that types its number and Enter, a foot switch. Enter logs what
 * keys have typed, never what a finger has: a foot switch sends Enter too.
 */
export function useKeyEntry({ field, half, isRefused, onTyped, onLog, onNext, onHeld }: KeyEntry) {
  const keys = useTypedKeys(isRefused);
  const type = (typed: HalfTyped) => {
    keys.left(typed.typed);
    onTyped(typed);
  };
  // A gauge sent its number behind something half typed: that gives way, and the number is logged as soon as it stands there.
  const sent = useRef<string | undefined>(undefined);
  useLayoutEffect(() => {
    if (sent.current === undefined || sent.current !== half.typed) return;
    sent.current = undefined;
    onLog?.('gauge');
  });
  const end = (event: KeyboardEvent) => {
    const burst = keys.burst();
    const alone = sentAlone(burst, keys.before(), half);
    // A person's Tab goes on to the next key of the pad.
    if (event.key === 'Tab' && burst.by === 'person' && alone === undefined) return;
    event.preventDefault();
    if (event.repeat) return;
    noteEnter(event);
    if (alone !== undefined) {
      sent.current = alone;
      type(retyped(alone, half));
    } else if (keys.made(half.typed)) onLog?.(burst.by === 'gauge' ? 'gauge' : 'keys');
    else onHeld();
  };
  useKeysFromAnywhere({
    field,
    half,
    isByKeys: () => keys.made(half.typed),
    onKey: (typed, key) => {
      keys.note(key, half.typed);
      type(typed);
    },
    onNext,
    onHeld,
  });
  return {
    onInput: ({ currentTarget }: { readonly currentTarget: HTMLInputElement }) =>
      drawnAtOnce(() => type(retyped(currentTarget.value, half))),
    onKeyDown: (event: KeyboardEvent) => {
      // A key that lies under something, or that a keyboard never let go of, is one press.
      if (event.repeat && event.key.length === 1) return event.preventDefault();
      // It ends a word that is being put together, not the size.
      if (event.isComposing) return undefined;
      keys.note(event, half.typed);
      const ends = event.key === 'Enter' || (event.key === 'Tab' && onLog !== undefined);
      return ends && half.typed !== '' ? drawnAtOnce(() => end(event)) : undefined;
    },
  };
}

// Chosen, not published: a last digit and Enter in quick succession are a hand's.
const LEAST_SENT = 3;
// Behind a size that was refused nobody goes on typing so fast.
const LEAST_BEHIND_REFUSED = 2;

/** What stood in the field before the keys, and whether it had been refused. */
type Before = { readonly text: string; readonly wasRefused: boolean };

/**
 * The number that a gauge sent behind something half typed; undefined where all that stands there is meant. Only keys that
 * account for every character of the field are trusted: a paste, or a key the phone gives no name to, is taken as it stands.
 * What keys typed with a pause in it is taken whole where it is one number or reads as a size: a phone that falters
 * between two digits of a gauge must not lose the ones before. Behind a size that was refused the keys stand for
 * themselves, also a slow gauge's, unless they make a size of what stood there.
 */
function sentAlone(
  { by, text, sent }: Burst,
  { text: behind, wasRefused }: Before,
  { typed, unit }: HalfTyped,
): string | undefined {
  if (behind + text !== typed) return undefined;
  const least = wasRefused ? LEAST_BEHIND_REFUSED : LEAST_SENT;
  if (by === 'gauge') return behind !== '' && text.length >= least ? text : undefined;
  const reads = (size: string) => readEntry(size, { unit, signed: true }).ok;
  if (wasRefused && behind !== '' && reads(text) && !reads(typed)) return text;
  if (sent === undefined || sent === typed) return undefined;
  const isAllKeys = sent === text;
  return !isAllKeys && reads(typed) ? undefined : sent;
}

type KeysFromAnywhere = Pick<KeyEntry, 'field' | 'half' | 'onNext' | 'onHeld'> & {
  readonly isByKeys: () => boolean;
  /** A key was typed outside the field: it belongs into it. */
  readonly onKey: (half: HalfTyped, key: KeyboardEvent) => void;
};

/**
 * A gauge types wherever the focus is: a digit typed outside the field brings the focus back and is not lost, and so does
 * backspace: a key of the pad that was pressed with a mouse may have the focus. Page down,
 * or Enter where no button has the focus, means next; never with something half typed, and never twice for one press.
 */
function useKeysFromAnywhere(now: KeysFromAnywhere): void {
  const { field } = now;
  const latest = useRef(now);
  latest.current = now;
  // Before the pad is painted: an effect comes a frame later, and a gauge's first key would be lost in it.
  useLayoutEffect(() => {
    const listen = (event: KeyboardEvent) => drawnAtOnce(() => hear(event));
    const hear = (event: KeyboardEvent) => {
      const inPad = event.target === field.current;
      if (
        event.isComposing ||
        event.ctrlKey ||
        event.metaKey ||
        event.altKey ||
        (!inPad && isWordsField(event.target))
      )
        return;
      if (isOthersEnter(event, inPad)) return;
      const { half, isByKeys, onKey, onNext, onHeld } = latest.current;
      const meaning = keyMeaning({
        key: event.key,
        text: half.typed,
        typedBy: isByKeys() ? 'keys' : 'pad',
        sinceEnterMs: event.timeStamp - lastEnterAt,
      });
      if (meaning === 'swallow') event.preventDefault();
      if (meaning === 'next' && onNext) {
        event.preventDefault();
        if (!event.repeat && !isSamePress(event)) onNext();
        noteEnter(event);
      }
      if (meaning === 'hold' && (onNext || event.key === 'Enter')) {
        event.preventDefault();
        onHeld();
      }
      if (!inPad && event.key === 'Backspace' && half.typed !== '') {
        event.preventDefault();
        field.current?.focus({ preventScroll: true });
        return onKey(retyped(half.typed.slice(0, -1), half), event);
      }
      if (inPad || !/^[0-9.,/+-]$/.test(event.key)) return;
      event.preventDefault();
      if (event.repeat) return;
      field.current?.focus({ preventScroll: true });
      onKey(retyped(half.typed + event.key, half), event);
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, [field]);
}

/** Remembers which keys made what stands in the field, and when each came. */
function useTypedKeys(isRefused: boolean) {
  const typed = useRef<{ keys: readonly KeyPress[]; behind: Before; text: string }>({
    keys: [],
    behind: { text: '', wasRefused: false },
    text: '',
  });
  return {
    /** A key went down; `before` is what stood in the field. Behind an end key, or a finger's change, keys begin anew. */
    note: ({ key, timeStamp, repeat }: KeyboardEvent, before: string) => {
      const { keys, text } = typed.current;
      const last = keys.at(-1)?.key;
      // An end key took it, and it stands there still.
      const isLeft = before !== '' && before === text && (last === 'Enter' || last === 'Tab');
      const goesOn = before !== '' && before === text && !isLeft;
      if (!goesOn) typed.current.behind = { text: before, wasRefused: isRefused || isLeft };
      typed.current.keys = [...(goesOn ? keys : []), { key, atMs: timeStamp, repeat }];
    },
    /** What the keys have left in the field. */
    left: (text: string) => {
      typed.current.text = text;
    },
    /** Whether what stands there came from keys, so that Enter may log it. */
    made: (text: string) => typed.current.text === text,
    /** What stood in the field before the first of them. */
    before: () => typed.current.behind,
    /** The keys so far, read as a gauge's or a person's. */
    burst: (): Burst => readBurst(typed.current.keys),
  };
}

// By the keys' own times: a phone that stalls hears both of one press late, and the second long after the first.
let lastEnterAt = -SAME_PRESS_MS;

/** An Enter was taken: what comes right behind it belongs to it, on the next screen too. */
function noteEnter({ timeStamp }: KeyboardEvent): void {
  lastEnterAt = timeStamp;
}

function isSamePress({ timeStamp }: KeyboardEvent): boolean {
  return timeStamp - lastEnterAt < SAME_PRESS_MS;
}

/** Enter on a button, a link or a choice presses that. */
function isOthersEnter({ key, target }: KeyboardEvent, inPad: boolean): boolean {
  return (
    key === 'Enter' && !inPad && target instanceof Element && target.closest('button, a, summary') !== null
  );
}

function isWordsField(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLInputElement ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement
  );
}
