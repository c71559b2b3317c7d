import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Unit } from '../../engine/length/length.ts';
import { announce, tick } from './announce.ts';
import { useKeyEntry, type TypedBy } from './hands-free.ts';
import { useOnePress } from './one-press.ts';
import { afterKey, inUnit, type HalfTyped, type PadKey } from './pad-text.ts';
import { noteCommit } from './same-press.ts';
import { showTyped } from './pad-figure.tsx';
import type { SizePadProps } from './size-pad.tsx';
import { useTwoPlaces } from './two-places.ts';

/** Why a press took nothing, until the next one: Enter behind a finger's digits, or the commit key without the figure. */
export type PadHint = 'by-keys' | 'figure-first';

type OnTaken = (by: TypedBy) => unknown;

/** What the keys of a pad do, and what fingers, a keyboard and a gauge do in its field. */
export function usePad({ label, half, onChange, commit, beside, onNext, message, twoPlaces }: SizePadProps) {
  const [hint, setHint] = useState<PadHint>();
  const [, again] = useState(0);
  const { anew, places, take, takeByFinger } = useTaking({ opensLit: twoPlaces === true });
  const field = usePadField(label, half.typed);
  const type = (next: HalfTyped) => {
    anew();
    onChange(next);
  };
  const change = (next: HalfTyped) => {
    tick();
    type(next);
  };
  const refused = () => {
    setHint('figure-first');
    announce(figureFirst(commit?.text ?? ''));
  };
  const keys = useKeyEntry({
    field,
    half,
    isRefused: message !== undefined,
    onTyped: (typed) => {
      setHint(undefined);
      type(typed);
    },
    onLog: commit && ((by) => take(commit.onPress, by)),
    onNext,
    onHeld: () => commit && setHint('by-keys'),
  });
  return {
    field,
    keys,
    hint: commit && hint,
    /** The commit key takes a finger: nothing else is asked, or the figure was touched. */
    isReady: !twoPlaces || places.isLit,
    isLit: twoPlaces === true && places.isLit,
    press: (key: PadKey) => {
      const next = afterKey(half, key);
      showTyped(field.current, next.typed, () => {
        setHint(undefined);
        places.stayLit();
        change(next);
        // The field is looked at again, should the screen have taken something else.
        again((times) => times + 1);
      });
    },
    turn: (unit: Unit) => change(inUnit(half, unit)),
    touchFigure: () => {
      if (!twoPlaces) return;
      setHint(undefined);
      places.light();
    },
    commit: (event: MouseEvent) =>
      twoPlaces && !places.takes(event) ? refused() : takeByFinger(commit?.onPress, event),
    beside: (event: MouseEvent) => takeByFinger(beside?.onPress, event),
  };
}

/** One press, one write; behind it the figure has to be touched again. */
function useTaking({ opensLit }: { readonly opensLit: boolean }) {
  const onePress = useOnePress();
  const places = useTwoPlaces({ opensLit });
  const take = (onTaken: OnTaken | undefined, by: TypedBy) => {
    const act = () => {
      places.dim();
      tick();
      return onTaken?.(by);
    };
    onePress.take(act, { commits: true });
  };
  const takeByFinger = (onTaken: OnTaken | undefined, event: MouseEvent) => {
    noteCommit(event);
    take(onTaken, 'finger');
  };
  return { anew: onePress.anew, places, take, takeByFinger };
}

/** The field has the focus from the first frame, shows what is half typed, and lies in sight. */
function usePadField(label: string, typed: string) {
  const field = useRef<HTMLInputElement>(null);
  // Before the pad is painted: an effect comes a frame later, and a gauge's first key would be lost in it.
  useLayoutEffect(() => {
    field.current?.focus({ preventScroll: true });
  }, [label]);
  // Last of all: writing into the field that has the focus makes the browser lay out the page there and then.
  useLayoutEffect(() => {
    if (field.current && field.current.value !== typed) field.current.value = typed;
  });
  usePadInView(field, label);
  return field;
}

/** On a short phone the pad counts more than the heading, also after the phone was turned. */
function usePadInView(field: { readonly current: HTMLInputElement | null }, label: string): void {
  useEffect(() => {
    const show = () =>
      field.current?.closest('.size-pad')?.lastElementChild?.scrollIntoView({ block: 'end' });
    show();
    addEventListener('resize', show);
    return () => removeEventListener('resize', show);
  }, [field, label]);
}

export function figureFirst(key: string): string {
  return `Touch the figure first, then “${key}”: a sleeve can’t do both.`;
}
