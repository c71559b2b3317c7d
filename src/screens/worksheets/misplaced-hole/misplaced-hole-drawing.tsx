import { floatMm, type Length } from '../../../engine/length/length.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { MisplacedHoleAnswer } from '../../../engine/worksheets/misplaced-hole/misplaced-hole.ts';
import { placeOf, type Place } from '../../../engine/worksheets/misplaced-hole/place.ts';
import { foundBy, whereAsked } from '../../../engine/worksheets/misplaced-hole/question.ts';
import { sayToward } from '../../../engine/worksheets/misplaced-hole/say-misplaced-hole.ts';
import { misplacedHoleWorksheet } from '../../../engine/worksheets/misplaced-hole/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';

const LEFT = 152;
const EDGE = 12;
const RUNNING = 26;

/** The boss with its old hole, the opened one, and the bushing with its bore where it belongs, seen along the axis. */
export function drawMisplacedHole(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const where = whereAsked(given);
  const place = where && placeOf(where);
  const worked = misplacedHoleWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const at = placed(given, { place, answer }, box);
  return {
    shapes: (
      <>
        <Boss at={at} isAnswered={answer !== undefined} />
        {place && foundBy(given) !== 'offset' && (
          <text x={EDGE} y={22}>
            {`off by ${figure(place.offBy, unit)}`}
          </text>
        )}
        {box.height >= 150 && at.isLarger && (
          <text class="form-drawing-note" x={EDGE} y={box.height - 8}>
            offset drawn larger
          </text>
        )}
      </>
    ),
    sizes: labels(given, place, box),
    running: answer && {
      text: `${answer.off ? 'thin' : 'wall'} ${figure(answer.thin.lower, unit)}`,
      x: box.width - EDGE,
      y: box.height - 8,
    },
    words: answer ? spoken(answer, unit) : 'A hole in the wrong place of its boss, seen along its axis.',
  };
}

/** First where it belongs; once that is known, the hole, its pin and the wall beside it. */
function labels(given: AnyGiven, place: Place | undefined, { height }: DrawingBox): readonly DrawnSize[] {
  const by = foundBy(given);
  const asked = by === 'offset' || !place ? ASKED[by] : ['', ...SIZES];
  const between = Math.min(36, (height - 34) / 3);
  return asked.flatMap((field, row): DrawnSize[] => {
    const size = given.size(field)?.[field === 'wall' ? 'least' : 'tightest'];
    return field === ''
      ? []
      : [
          {
            field,
            name: NAMES[field] ?? field,
            figure: size && sizeFigure(size, given.unit),
            x: EDGE,
            y: 22 + row * between,
            anchor: 'start',
            beside: true,
          },
        ];
  });
}

const SIZES = ['bore', 'pin', 'wall'];
const ASKED = {
  offset: ['offBy', ...SIZES],
  apart: ['apart', 'apartWanted', 'bore', 'pin'],
  edges: ['nowX', 'wantX', 'nowY', 'wantY'],
} as const;
const NAMES: Readonly<Record<string, string>> = {
  offBy: 'off by',
  bore: 'hole',
  apart: 'apart',
  apartWanted: 'wanted',
  nowX: 'x now',
  wantX: 'x want',
  nowY: 'y now',
  wantY: 'y want',
};

type Places = {
  readonly x: number;
  readonly y: number;
  readonly boss: number;
  readonly hole: number;
  readonly opened: number;
  readonly bore: number;
  /** From the old middle to the right one. */
  readonly right: readonly [x: number, y: number];
  /** The middle of the opened hole. */
  readonly middle: readonly [x: number, y: number];
  readonly isLarger: boolean;
};

// As drawn while nothing is given: a hole of half an inch with as much wall.
const USUAL_MM = { bore: 12.7, wall: 12.7, off: 1.6 };
const LEAST_OFF = 8;

/** To scale; an offset that could not be seen is drawn larger. */
function placed(
  given: AnyGiven,
  { place, answer }: { readonly place: Place | undefined; readonly answer: MisplacedHoleAnswer | undefined },
  { width, height }: DrawingBox,
): Places {
  const sizeMm = (known: Length | undefined, usual: number) => Math.max(0.01, known ? floatMm(known) : usual);
  const bore = given.size('bore')?.tightest;
  const wall = given.size('wall')?.least;
  const boreMm = sizeMm(bore && mean(bore), USUAL_MM.bore);
  const boss = Math.min((height - RUNNING) / 2 - 4, (width - LEFT - EDGE) / 2);
  const openedMm = answer ? floatMm(answer.press.hole.lower) : boreMm * 1.5;
  // A wall much thicker than the hole would leave nothing of the bushing to be seen.
  const wallMm = Math.min(
    (openedMm - boreMm) / 2 + boreMm * 0.35,
    sizeMm(wall && mean(wall), Math.min(USUAL_MM.wall, boreMm)),
  );
  const scale = boss / (boreMm / 2 + wallMm);
  const hole = (boreMm / 2) * scale;
  const opened = Math.min(boss - 3, (openedMm / 2) * scale);
  const insideMm = answer ? floatMm(answer.press.inside.lower) : boreMm;
  const trueOff = sizeMm(place?.offBy, USUAL_MM.off) * scale;
  const off = Math.max(trueOff, LEAST_OFF);
  const inside = Math.min((insideMm / 2) * scale, opened - 4);
  const shown = Math.max(0, Math.min(off, (answer?.off ? opened : boss) - inside - 3));
  const turned = ((place?.towardDegrees ?? 90) * Math.PI) / 180;
  const right = [shown * Math.cos(turned), -shown * Math.sin(turned)] as const;
  return {
    x: (LEFT + width - EDGE) / 2,
    y: boss + 4,
    boss,
    hole,
    opened,
    bore: inside,
    right,
    middle: answer && !answer.off ? right : [0, 0],
    isLarger: place !== undefined && shown > trueOff + 0.5,
  };
}

function Boss({ at, isAnswered }: { at: Places; isAnswered: boolean }) {
  const { x, y, boss, hole, opened, bore, right, middle } = at;
  const [toX, toY] = [x + right[0], y + right[1]];
  const long = Math.hypot(...right) || 1;
  const [alongX, alongY] = [right[0] / long, right[1] / long];
  // The arrow points from the old middle out over the thin side.
  const tip = [x + alongX * (boss - 2), y + alongY * (boss - 2)] as const;
  const barb = (side: number) =>
    `M${tip[0]} ${tip[1]}L${tip[0] - 9 * alongX + side * 5 * alongY} ${tip[1] - 9 * alongY - side * 5 * alongX}`;
  return (
    <>
      <circle class="drawing-solid" cx={x} cy={y} r={boss} />
      {isAnswered && (
        <path
          class="drawing-part drawing-changes"
          fill-rule="evenodd"
          d={`${ring(x + middle[0], y + middle[1], opened)}${ring(toX, toY, bore)}`}
        />
      )}
      <circle class="drawing-hatch" stroke-dasharray="4 4" cx={x} cy={y} r={hole} />
      <path class="drawing-centre" d={`M${x - boss} ${y}h${2 * boss}M${x} ${y - boss}v${2 * boss}`} />
      {!isAnswered && <circle class="drawing-changes" stroke-dasharray="4 4" cx={toX} cy={toY} r={hole} />}
      <path class="drawing-changes" d={`M${toX - 6} ${toY}h12M${toX} ${toY - 6}v12`} />
      <path class="drawing-changes" d={`M${x} ${y}L${tip[0]} ${tip[1]}${barb(1)}${barb(-1)}`} />
    </>
  );
}

function ring(x: number, y: number, radius: number): string {
  return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
}

function spoken({ press, off, thin, thick, place, wall }: MisplacedHoleAnswer, unit: ShownUnit): string {
  const size = (length: Length) => show(length, unit);
  const sides = off
    ? `its bore ${size(off.by)} off its middle toward ${sayToward(place.towardDegrees)}, thin side ${size(thin.lower)}, thick side ${size(thick.lower)}`
    : `in its right place, wall ${size(thin.lower)}`;
  return `Hole off its place by ${size(place.offBy)}: opened to ${size(press.ream.size)}, a bushing, ${sides}, ${size(wall.value)} of wall left.`;
}
