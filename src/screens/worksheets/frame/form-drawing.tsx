import { useEffect, useState } from 'preact/hooks';
import type { Drawn, DrawingBox, DrawnSize } from './drawn.ts';
import '../../common/drawing.css';
import './form-drawing.css';

type FormDrawingProps = {
  readonly drawn: Drawn;
  readonly box: DrawingBox;
  /** The size that is asked for now: it stands outlined in brass. */
  readonly asked?: string | undefined;
  /** Where a size is pressed to be typed or measured again; nowhere on paper. */
  readonly hrefFor?: ((field: string) => string) | undefined;
};

/** A worksheet's drawing with its sizes in it: what is asked for is outlined, and any size can be pressed. */
export function FormDrawing({ drawn, box, asked, hrefFor }: FormDrawingProps) {
  return (
    <svg
      class="drawing form-drawing"
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="group"
      aria-label={drawn.words}
    >
      <g aria-hidden="true">{drawn.shapes}</g>
      {drawn.sizes.map((size) => (
        <SizeInDrawing key={size.field} size={size} asked={size.field === asked} hrefFor={hrefFor} />
      ))}
      {drawn.running && (
        <text
          class="drawing-changes-text form-drawing-running"
          x={drawn.running.x}
          y={drawn.running.y}
          text-anchor="end"
        >
          {drawn.running.text}
        </text>
      )}
    </svg>
  );
}

type SizeInDrawingProps = {
  readonly size: DrawnSize;
  readonly asked: boolean;
  readonly hrefFor: FormDrawingProps['hrefFor'];
};

function SizeInDrawing({ size, asked, hrefFor }: SizeInDrawingProps) {
  const words = <SizeWords size={size} asked={asked} />;
  if (!hrefFor) return words;
  return (
    <a
      class="form-drawing-size"
      href={hrefFor(size.field)}
      aria-label={`${size.name}${size.figure === undefined ? ', not given yet' : ` ${size.figure}`}: type or measure it`}
      {...(asked && { 'aria-current': 'step' as const })}
    >
      {words}
    </a>
  );
}

// Half a figure's width at 19 px bold, and the room a finger needs round the words.
const DIGIT_WIDTH = 10.6;
const LETTER_WIDTH = 8.4;
const FINGER = 44;

function SizeWords({ size, asked }: { size: DrawnSize; asked: boolean }) {
  const { x, y, anchor = 'middle', beside } = size;
  const { name, figure = asked ? '?' : '' } = size;
  const width = Math.max(
    FINGER,
    beside
      ? name.length * LETTER_WIDTH + (figure.length + 1) * DIGIT_WIDTH
      : Math.max(name.length * LETTER_WIDTH, figure.length * DIGIT_WIDTH),
  );
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  const height = beside ? 30 : 46;
  const colour = size.changes || asked ? 'drawing-changes-text' : undefined;
  return (
    <>
      <rect
        class="form-drawing-press"
        data-asked={asked}
        x={left - 5}
        y={y - 18}
        width={width + 10}
        height={height}
        rx="7"
      />
      {beside ? (
        <text class={colour} x={x} y={y} text-anchor={anchor}>
          {`${name} ${figure}`.trim()}
        </text>
      ) : (
        <>
          <text class={colour} x={x} y={y} text-anchor={anchor}>
            {name}
          </text>
          <text class={`form-drawing-figure ${colour ?? ''}`} x={x} y={y + 21} text-anchor={anchor}>
            {figure}
          </text>
        </>
      )}
    </>
  );
}

const SMALL: DrawingBox = { width: 320, height: 130 };
const USUAL: DrawingBox = { width: 390, height: 184 };
const WIDE: DrawingBox = { width: 380, height: 226 };
const BESIDE_THE_PAD: DrawingBox = { width: 380, height: 118 };
const ON_ITS_SIDE = '(min-width: 700px) and (max-height: 500px)';
const ON_A_DESK = '(min-width: 1000px) and (min-height: 501px)';
const SHORT = '(max-height: 700px), (max-width: 359px)';

/** The room there is for the drawing on this screen, as it is turned and made wider; a pad on a phone's side leaves little. */
export function useDrawingBox(hasPad: boolean): DrawingBox {
  const [, drawAgain] = useState(0);
  useEffect(() => {
    const watched = [ON_A_DESK, ON_ITS_SIDE, SHORT].map((query) => matchMedia(query));
    const again = () => drawAgain((times) => times + 1);
    watched.forEach((query) => query.addEventListener('change', again));
    return () => watched.forEach((query) => query.removeEventListener('change', again));
  }, []);
  if (matchMedia(ON_A_DESK).matches) return WIDE;
  if (matchMedia(ON_ITS_SIDE).matches) return hasPad ? BESIDE_THE_PAD : WIDE;
  return matchMedia(SHORT).matches ? SMALL : USUAL;
}
