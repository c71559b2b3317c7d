import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
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
        <SizeInDrawing
          key={size.field}
          size={size}
          box={box}
          asked={size.field === asked}
          hrefFor={hrefFor}
        />
      ))}
      {drawn.running && (
        <text
          class="drawing-changes-text form-drawing-running"
          x={drawn.running.x}
          y={drawn.running.y}
          text-anchor="end"
        >
          {drawn.running.name !== undefined && (
            <tspan x={drawn.running.x} dy="-21">
              {`${drawn.running.name} `}
            </tspan>
          )}
          <tspan x={drawn.running.x} {...(drawn.running.name !== undefined && { dy: 21 })}>
            {drawn.running.text}
          </tspan>
        </text>
      )}
    </svg>
  );
}

type SizeInDrawingProps = {
  readonly size: DrawnSize;
  readonly box: DrawingBox;
  readonly asked: boolean;
  readonly hrefFor: FormDrawingProps['hrefFor'];
};

function SizeInDrawing({ size, box, asked, hrefFor }: SizeInDrawingProps) {
  const words = <SizeWords size={size} box={box} asked={asked} />;
  if (!hrefFor) return words;
  return (
    <a
      class="form-drawing-size"
      href={hrefFor(size.field)}
      aria-label={
        size.said ??
        `${size.name}${size.figure === undefined ? ', not given yet' : ` ${size.figure}`}: type or measure it`
      }
      {...(asked && { 'aria-current': 'step' as const })}
    >
      {words}
    </a>
  );
}

// Half a figure's width at 19 px bold, and the room a finger needs round the words.
const DIGIT_WIDTH = 11.2;
const LETTER_WIDTH = 9.2;
const FINGER = 44;
// Half of the outline, and the paper beside it.
const EDGE = 3;

function SizeWords({ size, box, asked }: Omit<SizeInDrawingProps, 'hrefFor'>) {
  const { x, y, anchor = 'middle', beside } = size;
  const { figure = asked ? '?' : '' } = size;
  const name = size.unnamed ? '' : size.name;
  const width = Math.max(
    FINGER,
    beside
      ? name.length * LETTER_WIDTH + (figure.length + 1) * DIGIT_WIDTH
      : Math.max(name.length * LETTER_WIDTH, figure.length * DIGIT_WIDTH),
  );
  const from = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  // Its outline is whole at the drawing's edge too.
  const left = Math.max(EDGE, from - 5);
  const right = Math.min(box.width - EDGE, from + width + 5);
  const top = Math.max(EDGE, y - 18);
  const bottom = Math.min(box.height - EDGE, y - 18 + (beside ? 30 : 46));
  const colour = size.changes || asked ? 'drawing-changes-text' : undefined;
  return (
    <>
      <rect
        class="form-drawing-press"
        data-asked={asked}
        x={left}
        y={top}
        width={right - left}
        height={bottom - top}
        rx="7"
      />
      {beside ? (
        <text class={colour} x={x} y={y} text-anchor={anchor}>
          {`${name} ${figure}`.trim()}
        </text>
      ) : (
        <>
          <text class={colour} x={x} y={y} text-anchor={anchor}>
            {/* The space keeps a name apart from its figure for whoever reads both in one go: "spacer 1.145". */}
            {`${name} `}
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
const CROWDED: DrawingBox = { width: 390, height: 130 };
const WIDE: DrawingBox = { width: 380, height: 226 };
const BESIDE_THE_PAD: DrawingBox = { width: 380, height: 118 };
const ON_ITS_SIDE = '(min-width: 700px) and (max-height: 500px)';
const ON_A_DESK = '(min-width: 1000px) and (min-height: 501px)';
const SHORT = '(max-height: 700px), (max-width: 359px)';

// Under this its letters run into each other; then the page scrolls.
const LEAST_HEIGHT = 114;

/**
 * Gives up as much of the drawing's height as the page is too high for its screen: while a size is typed nothing scrolls,
 * however many lines heading, question and keys take. `form` goes on what holds the whole page.
 */
export function useGivingWay(box: DrawingBox, hasPad: boolean) {
  const form = useRef<HTMLDivElement>(null);
  const [given, give] = useState(0);
  useLayoutEffect(() => {
    const place = form.current?.closest('.app-place');
    if (!hasPad || !place || !form.current) return undefined;
    const look = () => {
      const over = place.scrollHeight - place.clientHeight;
      if (over > 0) give((before) => before + over);
    };
    look();
    // In a frame of its own: what it changes is the height that is observed.
    let frame = 0;
    const watch = new ResizeObserver(() => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(look);
    });
    watch.observe(form.current);
    return () => {
      cancelAnimationFrame(frame);
      watch.disconnect();
    };
  }, [hasPad, box.width]);
  // The answer takes the pad's place: it opens at its top.
  const hadPad = useRef(hasPad);
  useLayoutEffect(() => {
    if (hadPad.current && !hasPad) form.current?.closest('.app-place')?.scrollTo(0, 0);
    hadPad.current = hasPad;
  }, [hasPad]);
  return { form, box: { ...box, height: Math.min(box.height, Math.max(leastOf(box), box.height - given)) } };
}

function leastOf(box: DrawingBox): number {
  return box === USUAL || box === CROWDED || box === SMALL ? LEAST_HEIGHT : box.height;
}

/** The room there is for the drawing on this screen, as it is turned and made wider; a pad on a phone's side leaves little. */
export function useDrawingBox(hasPad: boolean, isCrowded = false): DrawingBox {
  const [, drawAgain] = useState(0);
  useEffect(() => {
    const watched = [ON_A_DESK, ON_ITS_SIDE, SHORT].map((query) => matchMedia(query));
    const again = () => drawAgain((times) => times + 1);
    watched.forEach((query) => query.addEventListener('change', again));
    return () => watched.forEach((query) => query.removeEventListener('change', again));
  }, []);
  if (matchMedia(ON_A_DESK).matches) return WIDE;
  if (matchMedia(ON_ITS_SIDE).matches) return hasPad ? BESIDE_THE_PAD : WIDE;
  if (matchMedia(SHORT).matches) return SMALL;
  return isCrowded ? CROWDED : USUAL;
}
