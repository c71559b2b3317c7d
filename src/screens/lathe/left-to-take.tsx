import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useKeyEntry, type TypedBy } from '../common/hands-free.ts';
import type { HalfTyped } from '../common/pad-text.ts';
import { lightAhead } from '../common/two-places.ts';
import './left-to-take.css';

type LeftToTakeProps = {
  /** What the figure is: "left to take on Ø". */
  readonly label: string;
  readonly figure: string;
  readonly unit: string;
  /** Its name for a screen reader, with the figure and what touching it does. */
  readonly spoken: string;
  /** It was touched a moment ago, and the keys below take a press. */
  readonly isLit: boolean;
  /** What a gauge or a keyboard has typed so far: the size just measured. */
  readonly half: HalfTyped;
  /** It was refused, or is asked about. */
  readonly isRefused: boolean;
  /** The pad for the size just measured; left out where its key stands among others. */
  readonly measuredHref?: string;
  /** Measuring is what comes next; once the cut is to size another key is the main one. */
  readonly isNext?: boolean;
  readonly onTouch: () => void;
  readonly onTyped: (half: HalfTyped) => void;
  readonly onLog: (by: TypedBy) => void;
  readonly onNext?: (() => void) | undefined;
  readonly onHeld: () => void;
};

/**
 * The one number that matters, to be read from the lathe. Touching it lights the keys; a gauge types the size just
 * measured straight into it. The key to the pad is part of it, far from where the pad's own key will lie: a sleeve that
 * brushes twice over one place logs nothing.
 */
export function LeftToTake({
  label,
  figure,
  unit,
  spoken,
  isLit,
  half,
  measuredHref,
  isNext = true,
  ...on
}: LeftToTakeProps) {
  const field = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => field.current?.focus({ preventScroll: true }), []);
  const keys = useKeyEntry({ ...on, field, half });
  const isTyped = half.typed !== '';
  useEffect(() => {
    if (isTyped) field.current?.closest('.left-to-take')?.scrollIntoView({ block: 'nearest' });
  }, [isTyped]);
  const shown = isTyped ? half.typed : figure;
  return (
    <>
      <label class="left-to-take" data-lit={isLit} data-typed={isTyped}>
        <span class="unseen">{spoken}</span>
        <span class="left-to-take-label" aria-hidden="true">
          {isTyped ? 'measured, Enter logs' : label}
        </span>
        <span class="left-to-take-line" data-long={Math.min(8, roomOf(shown, isTyped ? half.unit : unit))}>
          <input
            id="size"
            ref={field}
            class="left-to-take-field"
            style={{ width: widthOf(shown) }}
            type="text"
            inputMode="none"
            autocomplete="off"
            spellcheck={false}
            enterkeyhint="done"
            placeholder={figure}
            value={half.typed}
            onClick={on.onTouch}
            onInput={keys.onInput}
            onKeyDown={keys.onKeyDown}
          />
          <span class="left-to-take-unit" aria-hidden="true">
            {isTyped ? half.unit : unit}
          </span>
        </span>
      </label>
      {measuredHref !== undefined && (
        <a
          class={`${isNext ? 'lathe-keys-main' : 'lathe-keys-key'} left-to-take-measured`}
          href={measuredHref}
          onClick={lightAhead}
        >
          I measured…
        </a>
      )}
    </>
  );
}

/** In characters. Five of them leave no room for "mm" behind them. */
function roomOf(shown: string, unit: string): number {
  return shown.length === 5 && unit !== 'in' ? 6 : shown.length;
}

// Tabular digits are one `ch` wide, the point little more than half; the caret needs some room behind them.
function widthOf(text: string): string {
  const points = text.replace(/[^.,]/g, '').length;
  return `${text.length - points * 0.42 + 0.3}ch`;
}
