import type { Unit } from '../../engine/length/length.ts';
import { drawBehind } from './draw-behind.ts';
import { KeyButton } from './pad-keys.tsx';
import { sizeEcho } from './size-echo.ts';
import type { SizePadProps } from './size-pad.tsx';
import { VerdictMark } from './verdict-band.tsx';
import type { usePad } from './use-pad.ts';
import './pad-figure.css';

type PadFigureProps = Pick<
  SizePadProps,
  'label' | 'asks' | 'readWith' | 'half' | 'number' | 'resting' | 'echo'
> & {
  /** What the figure counts in now. */
  readonly unit: Unit;
  readonly pad: ReturnType<typeof usePad>;
};

/** What is asked, the figure as it is typed, what it is in the other unit, and the key that takes the last digit back. */
export function PadFigure(props: PadFigureProps) {
  const { label, asks = label, readWith, half, unit, number, resting, echo = true, pad } = props;
  const rests = half.typed === '' ? resting : undefined;
  return (
    <div class="size-pad-figure" data-lit={pad.isLit} data-empty={half.typed === '' && !rests}>
      <label class="unseen" for="size">
        {label}
      </label>
      <p class="size-pad-asks" aria-hidden="true">
        {asks}
        {readWith !== undefined && (
          <span class="size-pad-read-with">{asks === '' ? readWith : ` · ${readWith}`}</span>
        )}
      </p>
      <FigureLine
        pad={pad}
        shown={rests?.figure ?? half.typed}
        unit={rests?.unit ?? number?.unit ?? unit}
        isResting={rests !== undefined}
      />
      {echo && (
        <p class="size-pad-echo">
          {rests ? <RestingNote resting={rests} /> : number ? '' : <Echo text={sizeEcho(half)} />}
        </p>
      )}
      <KeyButton
        class="size-pad-delete"
        label="delete last digit"
        disabled={half.typed === ''}
        onPress={() => pad.press('delete')}
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
  );
}

type FigureLineProps = Pick<PadFigureProps, 'pad'> & {
  readonly shown: string;
  readonly unit: string;
  /** Nothing is typed: the figure is that of before. */
  readonly isResting: boolean;
};

function FigureLine({ pad, shown, unit, isResting }: FigureLineProps) {
  return (
    <div
      class="size-pad-line"
      data-unit={unitStands(shown, unit)}
      style={{ '--figures': widthInDigits(shown) }}
    >
      <input
        id="size"
        ref={pad.field}
        class="size-pad-field"
        data-resting={isResting}
        type="text"
        inputMode="none"
        autocomplete="off"
        spellcheck={false}
        enterkeyhint="done"
        placeholder={isResting ? shown : '0'}
        onClick={pad.touchFigure}
        onInput={pad.keys.onInput}
        onKeyDown={pad.keys.onKeyDown}
      />
      <span class="size-pad-unit">{unit}</span>
    </div>
  );
}

/** The digit in its field, as the screen will draw it; `type` is what it means to the screen, which is drawn behind it. */
export function showTyped(field: HTMLInputElement | null, typed: string, type: () => void): void {
  // Where nothing is left, the screen knows what rests there.
  if (!field || typed === '') return type();
  const line = field.parentElement;
  field.value = typed;
  line?.style.setProperty('--figures', String(widthInDigits(typed)));
  line?.setAttribute('data-unit', unitStands(typed, field.nextElementSibling?.textContent ?? ''));
  return drawBehind(type);
}

/** What became of the last reading, and what it comes to: where the rest of the screen is out of sight, the verdict isn't. */
function RestingNote({ resting: { note, verdict } }: { resting: NonNullable<SizePadProps['resting']> }) {
  if (!verdict) return <>{note}</>;
  return (
    <>
      <span>{`${note} · `}</span>
      <strong class={`size-pad-verdict verdict-mark-${verdict.kind}`}>
        <VerdictMark kind={verdict.kind} />
        {verdict.word}
      </strong>
    </>
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

/** The unit stands behind the figure, or gives it the whole line and stands under the delete key. */
function unitStands(shown: string, unit: string): 'beside' | 'below' {
  const unitInDigits = unit === 'in' ? 0.9 : 0.3 + unit.length * 0.6;
  return widthInDigits(shown) + unitInDigits <= DIGITS_OF_A_LINE ? 'beside' : 'below';
}
