import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { readEntry } from '../../engine/length/entry.ts';
import { announce, tick } from './announce.ts';
import { useKeyEntry, type TypedBy } from './hands-free.ts';
import { useOnePress } from './one-press.ts';
import { KeyButton, PadKeys } from './pad-keys.tsx';
import { afterKey, inUnit, type HalfTyped, type PadKey } from './pad-text.ts';
import { noteCommit } from './same-press.ts';
import { sizeEcho } from './size-echo.ts';
import { useTwoPlaces } from './two-places.ts';
import './pad-screen.css';
import './size-pad.css';

type SizePadProps = {
  /** Names the field for a screen reader: "Link pivot bore, reading". */
  readonly label: string;
  /** With what it is read: it stays beside the figure where the heading is out of sight. */
  readonly readWith?: string | undefined;
  readonly half: HalfTyped;
  readonly onChange: (half: HalfTyped) => void;
  /** The commit key's words, and what it does; a promise while it does. Left out on charts, where the answer is there at every key. */
  readonly commit?: { readonly text: string; readonly onPress: (by: TypedBy) => unknown };
  /** Where Enter or a foot switch leads while nothing is typed: the next feature, the next question. */
  readonly onNext?: (() => void) | undefined;
  /** At the lathe: the commit key takes a finger only after the figure was touched. */
  readonly twoPlaces?: boolean;
  /** What is shown while nothing is typed: the last reading, say. */
  readonly resting?: { readonly figure: string; readonly unit: string; readonly note: string };
  /** Why the typed text can't be taken, or a question about it. */
  readonly message?: ComponentChildren;
  /** A number that is no length: no unit keys and no fractions, this word behind the figure. */
  readonly plain?: string;
  /** A plain number that is a count: no point key. */
  readonly whole?: boolean;
  /** A plain number that may lie below zero: it gets a minus key. */
  readonly belowZero?: boolean;
  readonly padSize?: 'standard' | 'glove';
  /** The size in the other unit and as a fraction; charts show it themselves. */
  readonly echo?: boolean;
  readonly children?: ComponentChildren;
};

/** Our own keypad, one field for fingers, a keyboard and a gauge that types its value and Enter. */
export function SizePad({
  label,
  readWith,
  half,
  onChange,
  commit,
  resting,
  message,
  plain,
  whole = false,
  belowZero = false,
  padSize = 'standard',
  echo = true,
  onNext,
  twoPlaces = false,
  children,
}: SizePadProps) {
  const field = useRef<HTMLInputElement>(null);
  const [hint, setHint] = useState<'by-keys' | 'figure-first'>();
  const one = useOnePress();
  const places = useTwoPlaces();
  const type = (next: HalfTyped) => {
    one.anew();
    onChange(next);
  };
  const change = (next: HalfTyped) => {
    tick();
    type(next);
  };
  const press = (key: PadKey) => {
    setHint(undefined);
    change(afterKey(half, key));
  };
  const log = (by: TypedBy) => {
    const act = () => {
      places.dim();
      tick();
      return commit?.onPress(by);
    };
    one.take(act, { commits: true });
  };
  const refused = () => {
    setHint('figure-first');
    announce(figureFirst(commit?.text ?? ''));
  };
  // Before the pad is painted: an effect comes a frame later, and a gauge's first key would be lost in it.
  useLayoutEffect(() => {
    field.current?.focus({ preventScroll: true });
  }, [label]);
  // Last of all: writing into the field that has the focus makes the browser lay out the page there and then.
  useLayoutEffect(() => {
    if (field.current && field.current.value !== half.typed) field.current.value = half.typed;
  });
  usePadInView(field, label);
  const told = useRef<HTMLDivElement>(null);
  useEffect(() => told.current?.scrollIntoView({ block: 'nearest' }), [message !== undefined]);
  const keys = useKeyEntry({
    field,
    half,
    isRefused: message !== undefined,
    onTyped: (typed) => {
      setHint(undefined);
      type(typed);
    },
    onLog: commit && log,
    onNext,
    onHeld: () => commit && setHint('by-keys'),
  });

  const entry = readEntry(half.typed, { unit: half.unit, signed: true });
  const isResting = half.typed === '' && resting !== undefined;
  const shown = isResting ? resting.figure : half.typed;
  const unitWord = isResting ? resting.unit : (plain ?? (entry.ok ? entry.value.unit : half.unit));
  return (
    <div class="size-pad" data-keys={padSize}>
      {(message !== undefined || (hint && commit)) && (
        <div class="size-pad-message" ref={told}>
          {message ??
            (hint === 'figure-first' ? (
              <p>{figureFirst(commit?.text ?? '')}</p>
            ) : (
              <p role="status">{`Enter takes what a keyboard or a gauge typed. Press “${commit?.text ?? ''}”.`}</p>
            ))}
        </div>
      )}
      <div class="size-pad-figure" data-lit={twoPlaces && places.isLit}>
        <label class="unseen" for="size">
          {label}
        </label>
        <p class="size-pad-asks" aria-hidden="true">
          {readWith === undefined ? label : `${label} · ${readWith}`}
        </p>
        <div
          class="size-pad-line"
          data-unit={unitFits(shown, unitWord) ? 'beside' : 'below'}
          style={{ '--figures': widthInDigits(shown) }}
        >
          <input
            id="size"
            ref={field}
            class="size-pad-field"
            data-resting={isResting}
            type="text"
            inputMode="none"
            autocomplete="off"
            spellcheck={false}
            enterkeyhint="done"
            placeholder={isResting ? resting.figure : '0'}
            onClick={() => {
              if (!twoPlaces) return;
              setHint(undefined);
              places.light();
            }}
            onInput={keys.onInput}
            onKeyDown={keys.onKeyDown}
          />
          <span class="size-pad-unit">{unitWord}</span>
        </div>
        {echo && (
          <p class="size-pad-echo">
            {isResting ? resting.note : plain === undefined ? <Echo text={sizeEcho(half)} /> : ''}
          </p>
        )}
        <KeyButton
          class="size-pad-delete"
          label="delete last digit"
          disabled={half.typed === ''}
          onPress={() => press('delete')}
        >
          <svg viewBox="0 0 32 24" width="34" height="26" aria-hidden="true">
            <path
              d="M10 3h19v18H10L2 12z M15 8l8 8 M23 8l-8 8"
              fill="none"
              stroke="currentColor"
              stroke-width="2.4"
            />
          </svg>
        </KeyButton>
      </div>
      <div class="size-pad-lower">
        {children}
        <PadKeys
          half={half}
          unit={entry.ok ? entry.value.unit : half.unit}
          plain={plain !== undefined}
          whole={whole}
          belowZero={belowZero}
          onPress={press}
          onUnit={(unit) => change(inUnit(half, unit))}
        />
      </div>
      {commit && (
        <button
          type="button"
          class="size-pad-commit"
          data-waits={twoPlaces && !places.isLit}
          onClick={(event) => {
            if (twoPlaces && !places.takes(event)) return refused();
            noteCommit(event);
            return log('finger');
          }}
        >
          {commit.text}
        </button>
      )}
    </div>
  );
}

/** A line ends between the forms of the size, not inside one. */
function Echo({ text }: { text: string }) {
  const [first = '', ...more] = text.split(' · ');
  return (
    <>
      <span>{more.length > 0 ? `${first} · ` : first}</span>
      <span>{more.join(' · ')}</span>
    </>
  );
}

/** Tabular digits are all as wide as one another; a point, a bar or a space little more than half of that. */
function widthInDigits(shown: string): number {
  const digits = shown.replace(/[^0-9]/g, '').length;
  return Math.max(1, digits + (shown.length - digits) * 0.55);
}

// Chosen by eye on a narrow phone: beside four digits and a point stands "in", beside three "mm".
const DIGITS_OF_A_LINE = 5.5;

/** Whether the unit stands behind the figure; else it gives the figure the whole line and stands under the delete key. */
function unitFits(shown: string, unit: string): boolean {
  const unitInDigits = unit === 'in' ? 0.9 : 0.3 + unit.length * 0.6;
  return widthInDigits(shown) + unitInDigits <= DIGITS_OF_A_LINE;
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

function figureFirst(key: string): string {
  return `Touch the figure first, then “${key}”: a sleeve can’t do both.`;
}
