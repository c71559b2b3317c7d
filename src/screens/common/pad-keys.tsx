import { decimalMark } from '../../engine/length/decimal-mark.ts';
import { markWord } from '../../engine/length/decimal-text.ts';
import type { ComponentChildren } from 'preact';
import type { Unit } from '../../engine/length/length.ts';
import { canTakeSpace, type HalfTyped, type PadKey } from './pad-text.ts';
import './size-pad-keys.css';

const DIGIT_ROWS: readonly (readonly PadKey[])[] = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
  ['.', '0'],
];

/** A number that is no length: no unit keys and no fractions. */
export type PlainNumber = {
  /** The word behind the figure. */
  readonly unit: string;
  /** A count: no point key. */
  readonly whole?: boolean | undefined;
  /** It may lie below zero: it gets a minus key. */
  readonly belowZero?: boolean | undefined;
};

type PadKeysProps = {
  readonly half: HalfTyped;
  /** The unit the figure counts in now. */
  readonly unit: Unit;
  readonly number: PlainNumber | undefined;
  readonly onPress: (key: PadKey) => void;
  readonly onUnit: (unit: Unit) => void;
};

/** The keys under the thumb: digits and point, then what a size needs besides. */
export function PadKeys({ half, unit, number, onPress, onUnit }: PadKeysProps) {
  return (
    <div class="size-pad-keys" data-plain={number !== undefined} role="group" aria-label="Keypad">
      {DIGIT_ROWS.flat()
        .filter((key) => !(number?.whole && key === '.'))
        .map((key) => (
          <KeyButton
            key={key}
            class={`size-pad-key size-pad-at-${key === '.' ? 'point' : key}`}
            {...(key === '.' && { label: `decimal ${markWord()}` })}
            onPress={() => onPress(key)}
          >
            {key === '.' ? decimalMark() : key}
          </KeyButton>
        ))}
      {number?.belowZero && (
        <KeyButton
          class="size-pad-key size-pad-soft size-pad-at-bar"
          label="minus"
          onPress={() => onPress('-')}
        >
          −
        </KeyButton>
      )}
      {!number && <SizeKeys half={half} unit={unit} onPress={onPress} onUnit={onUnit} />}
    </div>
  );
}

/** What only a size has: a whole number with a fraction behind it, the fraction's bar, and the units. */
function SizeKeys({ half, unit, onPress, onUnit }: Omit<PadKeysProps, 'number'>) {
  return (
    <>
      <KeyButton
        class="size-pad-key size-pad-soft size-pad-at-space"
        label="1 a/b: space, for a fraction after a whole number"
        disabled={!canTakeSpace(half.typed)}
        onPress={() => onPress(' ')}
      >
        1 a/b
      </KeyButton>
      <KeyButton
        class="size-pad-key size-pad-soft size-pad-at-bar"
        label="a/b: fraction bar"
        onPress={() => onPress('/')}
      >
        a/b
      </KeyButton>
      {(['in', 'thou', 'mm'] satisfies Unit[]).map((name) => (
        <KeyButton
          key={name}
          class={`size-pad-key size-pad-soft size-pad-at-${name}`}
          chosen={name === unit}
          onPress={() => onUnit(name)}
        >
          {name}
        </KeyButton>
      ))}
    </>
  );
}

type KeyButtonProps = {
  readonly class: string;
  readonly label?: string;
  readonly chosen?: boolean;
  readonly disabled?: boolean;
  readonly onPress: () => void;
  readonly children: ComponentChildren;
};

export function KeyButton({
  class: className,
  label,
  chosen,
  disabled = false,
  onPress,
  children,
}: KeyButtonProps) {
  return (
    <button
      type="button"
      class={className}
      aria-label={label}
      aria-pressed={chosen}
      aria-disabled={disabled}
      // The field keeps the focus, so that a gauge can type straight after a finger did.
      onPointerDown={(event) => event.preventDefault()}
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => !disabled && onPress()}
    >
      {children}
    </button>
  );
}
