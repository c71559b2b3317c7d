import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { readEntry } from '../../engine/length/entry.ts';
import type { TypedBy } from './hands-free.ts';
import { PadFigure } from './pad-figure.tsx';
import { PadKeys, type PlainNumber } from './pad-keys.tsx';
import type { HalfTyped } from './pad-text.ts';
import type { VerdictKind } from './verdict-band.tsx';
import { figureFirst, usePad, type PadHint } from './use-pad.ts';
import './pad-screen.css';
import './size-pad.css';

export type SizePadProps = {
  /** Names the field for a screen reader: "Link pivot bore, reading". */
  readonly label: string;
  /** Where the heading says the rest: only so much of the label is seen. */
  readonly asks?: string;
  /** With what it is read: it stays beside the figure where the heading is out of sight. */
  readonly readWith?: string | undefined;
  readonly half: HalfTyped;
  readonly onChange: (half: HalfTyped) => void;
  /** The commit key's words, and what it does; a promise while it does. Left out on charts, where the answer is there at every key. */
  readonly commit?: { readonly text: string; readonly onPress: (by: TypedBy) => unknown };
  /** A second key beside it: what is typed counts as the last of its kind, or nothing more follows. */
  readonly beside?: { readonly text: string; readonly onPress: (by: TypedBy) => unknown } | undefined;
  /** Where Enter or a foot switch leads while nothing is typed: the next feature, the next question. */
  readonly onNext?: (() => void) | undefined;
  /** At the lathe: the commit key takes a finger only after the figure was touched. */
  readonly twoPlaces?: boolean;
  /** What is shown while nothing is typed: the last reading, say. */
  readonly resting?: Resting | undefined;
  /** Why the typed text can't be taken, or a question about it. */
  readonly message?: ComponentChildren;
  readonly number?: PlainNumber;
  readonly padSize?: 'standard' | 'glove';
  /** The size in the other unit and as a fraction; charts show it themselves. */
  readonly echo?: boolean;
  readonly children?: ComponentChildren;
};

/** `verdict`: what the last reading comes to with those before it, in a word. */
type Resting = {
  readonly figure: string;
  readonly unit: string;
  readonly note: string;
  readonly verdict?: { readonly kind: VerdictKind; readonly word: string } | undefined;
};

/** Our own keypad, one field for fingers, a keyboard and a gauge that types its value and Enter. */
export function SizePad(props: SizePadProps) {
  const { half, commit, beside, message, number, padSize = 'standard', children } = props;
  const pad = usePad(props);
  const unit = unitOf(half);
  return (
    <div class="size-pad" data-keys={padSize}>
      <PadMessage hint={pad.hint} commit={commit?.text ?? ''}>
        {message}
      </PadMessage>
      <PadFigure {...props} unit={unit} pad={pad} />
      <div class="size-pad-lower">
        {children}
        <PadKeys half={half} unit={unit} number={number} onPress={pad.press} onUnit={pad.turn} />
      </div>
      {beside && (
        <button type="button" class="size-pad-beside" onClick={pad.beside}>
          {beside.text}
        </button>
      )}
      {commit && (
        <button type="button" class="size-pad-commit" data-waits={!pad.isReady} onClick={pad.commit}>
          {commit.text}
        </button>
      )}
    </div>
  );
}

/** The unit the figure counts in now: one typed behind it counts before the key's. */
function unitOf({ typed, unit }: HalfTyped): HalfTyped['unit'] {
  const entry = readEntry(typed, { unit, signed: true });
  return entry.ok ? entry.value.unit : unit;
}

type PadMessageProps = {
  readonly hint: PadHint | undefined;
  readonly commit: string;
  readonly children: ComponentChildren;
};

/** What stands against taking what is typed; else what the last press wanted. */
function PadMessage({ hint, commit, children }: PadMessageProps) {
  const told = useRef<HTMLDivElement>(null);
  const isSaid = children !== undefined;
  useEffect(() => told.current?.scrollIntoView({ block: 'nearest' }), [isSaid]);
  if (!isSaid && hint === undefined) return null;
  return (
    <div class="size-pad-message" ref={told}>
      {children ??
        (hint === 'figure-first' ? (
          <p>{figureFirst(commit)}</p>
        ) : (
          <p role="status">{`Enter takes what a keyboard or a gauge typed. Press “${commit}”.`}</p>
        ))}
    </div>
  );
}
