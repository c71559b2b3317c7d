import { mean, type Estimate } from '../../../engine/reading/estimate.ts';
import { absolute, isNegative, isZero, minus, ratioOf, type Length } from '../../../engine/length/length.ts';
import { showSize, sizeFigure } from '../../../engine/reading/say-readings.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { holeAndPinWorksheet } from '../../../engine/worksheets/hole-and-pin/worksheet.ts';
import type { Drawn, DrawingBox } from '../frame/drawn.ts';

/** A hole in its part with the pin lying in it, seen along the axis: what isn't given yet is drawn as it usually is. */
export function drawHoleAndPin(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const bore = given.size('bore')?.loosest;
  const pin = given.size('pin')?.loosest;
  const wall = given.exact('wall');
  const worked = holeAndPinWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const clearance = answer?.loosest ?? (bore && pin && minus(mean(bore), mean(pin)));
  const isGood = answer?.verdict.kind === 'good';
  const at = placed({ bore, pin, wall, clearance }, box);
  const side = at.x + at.eye + 12;
  const thread = given.choice('thread');
  const row = Math.max(44, Math.min(54, box.height * 0.28));
  return {
    shapes: (
      <>
        <Section at={at} isGood={isGood} />
        {at.isLarger && box.height >= 150 && (
          <text class="form-drawing-note" x={8} y={box.height - 28}>
            gap drawn{' '}
            <tspan x={8} dy={18}>
              larger
            </tspan>
          </text>
        )}
      </>
    ),
    sizes: [
      { field: 'bore', name: 'hole', figure: bore && sizeFigure(bore, unit), ...column(side, 22) },
      {
        field: 'pin',
        name: thread === undefined ? 'pin' : `bolt ${shortThread(thread)}`,
        figure: pin && sizeFigure(pin, unit),
        ...column(side, 22 + row),
      },
      {
        field: 'wall',
        name: 'wall',
        figure: wall && figure(wall, unit),
        x: 8,
        y: 22,
        anchor: 'start',
        beside: true,
      },
    ],
    running: clearance && {
      text: `${isNegative(clearance) ? 'tight' : 'slop'} ${figure(absolute(clearance), unit)}`,
      x: box.width - 10,
      y: box.height - 10,
    },
    words:
      bore && pin && clearance
        ? spoken({ bore, pin, clearance }, unit)
        : 'A hole in its part, with the pin lying in it.',
  };
}

const column = (x: number, y: number) => ({ x, y, anchor: 'start' }) as const;

/** `7/16-20` of `7/16-20 UNF`, `M8×1.25`. */
function shortThread(thread: string): string {
  return (thread.split(' ')[0] ?? thread).replace('x', '×');
}

type Said = { readonly bore: Estimate; readonly pin: Estimate; readonly clearance: Length };

function spoken({ bore, pin, clearance }: Said, unit: ShownUnit): string {
  return `Bore ${showSize(bore, unit)}, pin ${showSize(pin, unit)}, clearance ${show(clearance, unit)}.`;
}

const LEAST_GAP = 5;
const MOST_OVER = 1.08;
// As drawn while the wall isn't given: half the hole, as much as has to stay (common practice, no source).
const USUAL_WALL = 0.5;

type Places = {
  readonly x: number;
  readonly y: number;
  /** Radii of the hole, the pin and the part round it. */
  readonly hole: number;
  readonly pin: number;
  readonly eye: number;
  readonly gap: number;
  readonly height: number;
  /** A gap too small to see is drawn larger, and says so. */
  readonly isLarger: boolean;
  readonly hasPin: boolean;
};

type Sizes = {
  readonly bore: Estimate | undefined;
  readonly pin: Estimate | undefined;
  readonly wall: Length | undefined;
  readonly clearance: Length | undefined;
};

function placed({ bore, pin, wall, clearance }: Sizes, box: DrawingBox): Places {
  const eye = Math.min(box.height * 0.44, 96);
  // A bore of nothing is a slip of the pad; the drawing stays, so that it can be found and put right.
  const isSized = bore !== undefined && !isZero(mean(bore));
  const share = isSized && wall ? Math.min(2, Math.max(0.12, ratioOf(wall, mean(bore)))) : USUAL_WALL;
  const hole = eye / (1 + 2 * share);
  const ofHole = isSized && pin ? Math.min(MOST_OVER, ratioOf(mean(pin), mean(bore))) : 0.94;
  const trueGap = 2 * (hole - hole * ofHole);
  const touches = clearance !== undefined && (isNegative(clearance) || isZero(clearance));
  const gap = touches ? 0 : Math.max(LEAST_GAP, trueGap);
  return {
    x: box.width * 0.4,
    y: box.height * 0.5,
    hole,
    pin: touches ? hole - 1 : hole - gap / 2,
    eye,
    gap,
    height: box.height,
    isLarger: isSized && pin !== undefined && !touches && gap > trueGap,
    hasPin: pin !== undefined,
  };
}

function Section({ at, isGood }: { at: Places; isGood: boolean }) {
  const { x, y, hole, pin, eye, gap, hasPin } = at;
  const top = y - hole;
  const half = eye * 0.62;
  return (
    <>
      {/* The end of the arm that the hole is in, broken off to the left. */}
      <path
        class="drawing-solid"
        d={`M0 ${y - half}H${x - Math.sqrt(eye * eye - half * half)}A${eye} ${eye} 0 1 1 ${x - Math.sqrt(eye * eye - half * half)} ${y + half}H0z`}
      />
      <circle class="form-drawing-hole" cx={x} cy={y} r={hole} />
      <circle class={hasPin ? 'drawing-solid' : 'drawing-centre'} cx={x} cy={y + hole - pin} r={pin} />
      <path
        class="drawing-centre"
        d={`M${x - eye - 8} ${y}h${2 * eye + 16} M${x} ${y - eye - 4}v${2 * eye + 8}`}
      />
      {gap > 0 && hasPin && (
        <path
          class={isGood ? undefined : 'drawing-changes'}
          d={`M${x} ${top}v${gap} M${x - 12} ${top}h24 M${x - 12} ${top + gap}h24`}
        />
      )}
    </>
  );
}
