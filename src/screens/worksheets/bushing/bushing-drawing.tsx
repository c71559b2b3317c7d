import type { BushingAnswer } from '../../../engine/press/bushing.ts';
import { ratioOf } from '../../../engine/length/length.ts';
import { sayLimits } from '../../../engine/fit/say-fit.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { bushingWorksheet } from '../../../engine/worksheets/bushing/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';

const LEFT = 152;
const EDGE = 12;
const RUNNING = 30;
const LEAST_WALL = 6;

/** The bushing in its part, cut along the axis; diameters to scale once they are known. */
export function drawBushing(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = bushingWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const at = placed(answer, box);
  return {
    shapes: (
      <>
        <Cut at={at} />
        {box.width >= 380 && at.isThicker && (
          <text class="form-drawing-note" x={LEFT} y={box.height - 34}>
            thin walls drawn thicker
          </text>
        )}
      </>
    ),
    sizes: labels(given, answer, box),
    running: answer && { text: runningWords(answer, unit), x: box.width - EDGE, y: box.height - 8 },
    words: answer ? spoken(answer, unit) : 'A bushing in a worn bore, cut along its axis.',
  };
}

/** First what there is; once it is reamed, the bore and the bushing that go together. */
function labels(given: AnyGiven, answer: BushingAnswer | undefined, { height }: DrawingBox): DrawnSize[] {
  const isReamed = given.has('reamed') || answer?.next === 'turn' || answer?.next === 'press';
  const names = isReamed
    ? (['reamed', 'outside', 'pin', 'wall'] as const)
    : (['bore', 'pin', 'wall', ...(answer ? (['reamed'] as const) : [])] as const);
  const between = Math.min(36, (height - 34) / 3);
  return names.map((field, index): DrawnSize => {
    const size = given.size(field)?.tightest;
    return {
      field,
      name: NAMES[field],
      figure: size && sizeFigure(size, given.unit),
      x: 12,
      y: 22 + index * between,
      anchor: 'start',
      beside: true,
    };
  });
}

const NAMES = { bore: 'bore', pin: 'pin', wall: 'wall', reamed: 'reamed', outside: 'outside' } as const;

function runningWords({ next, ream, turnTo, insideTo, measured }: BushingAnswer, unit: ShownUnit): string {
  if (next === 'ream') return `ream ${figure(ream.size, unit)}`;
  const isTurned = next === 'turn' || measured?.verdict.kind === 'no-good';
  return isTurned ? `turn ${figure(turnTo, unit)}` : `bore ${figure(insideTo, unit)}`;
}

type Places = {
  readonly right: number;
  readonly axis: number;
  readonly outside: number;
  readonly inside: number;
  readonly wall: number;
  readonly isThicker: boolean;
};

function placed(answer: BushingAnswer | undefined, box: DrawingBox): Places {
  const room = (box.height - RUNNING - 8) / 2;
  const outside = room * 0.66;
  const most = room - outside;
  const trueInside = answer ? outside * ratioOf(answer.inside.upper, answer.ream.size) : outside * 0.72;
  const inside = Math.min(trueInside, outside - LEAST_WALL);
  const trueWall = answer?.partWall ? 2 * outside * ratioOf(answer.partWall, answer.ream.size) : most;
  const wall = Math.min(most, Math.max(LEAST_WALL, trueWall));
  return {
    right: box.width - EDGE,
    axis: 8 + room,
    outside,
    inside,
    wall,
    isThicker: inside < trueInside || wall > trueWall,
  };
}

function Cut({ at: { right, axis, outside, inside, wall } }: { at: Places }) {
  const width = right - LEFT;
  return (
    <>
      <rect class="drawing-solid" x={LEFT} y={axis - outside - wall} width={width} height={wall} />
      <rect class="drawing-solid" x={LEFT} y={axis + outside} width={width} height={wall} />
      <rect
        class="drawing-part drawing-changes"
        x={LEFT}
        y={axis - outside}
        width={width}
        height={outside - inside}
      />
      <rect
        class="drawing-part drawing-changes"
        x={LEFT}
        y={axis + inside}
        width={width}
        height={outside - inside}
      />
      <path class="drawing-centre" d={`M${LEFT - 8} ${axis}H${right + 8}`} />
    </>
  );
}

function spoken({ ream, turn, inside, partWall, bushingWall }: BushingAnswer, unit: ShownUnit): string {
  const wall = partWall ? `, ${show(partWall, unit)} of wall left in the part` : '';
  return `Bushing in section: ream to ${show(ream.size, unit)}, turn the outside to ${sayLimits(turn, unit)}, bore pressed in ${sayLimits(inside, unit)}, bushing wall ${show(bushingWall, unit)}${wall}.`;
}
