import type { BushingAnswer } from '../../engine/press/bushing.ts';
import { ratioOf } from '../../engine/length/length.ts';
import { limitFigure, sayLimits } from '../../engine/fit/say-fit.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import '../common/drawing.css';

const AXIS = 150;
const REAMED_RADIUS = 74;
const LEFT = 24;
const RIGHT = 206;
const MOST_WALL = 52;
const LEAST_WALL = 9;

/** The bushing in its part, cut along the axis: part hatched, bushing in brass, diameters to scale. */
export function BushingDrawing({ answer, unit }: { answer: BushingAnswer; unit: ShownUnit }) {
  const { ream, inside, partWall } = answer;
  const trueInner = REAMED_RADIUS * ratioOf(inside.upper, ream.size);
  const inner = Math.min(trueInner, REAMED_RADIUS - LEAST_WALL);
  const trueWall = partWall ? 2 * REAMED_RADIUS * ratioOf(partWall, ream.size) : MOST_WALL;
  const wall = Math.min(MOST_WALL, Math.max(LEAST_WALL, trueWall));
  const notes = [
    inner < trueInner || wall > trueWall ? 'thin walls drawn thicker' : '',
    partWall && trueWall > MOST_WALL ? 'the part goes on' : '',
  ].filter((note) => note !== '');
  return (
    <svg class="drawing" viewBox="0 0 390 306" role="img" aria-label={spoken(answer, unit)}>
      <Section
        y={AXIS - REAMED_RADIUS - wall}
        height={wall}
        edge={trueWall > MOST_WALL ? undefined : AXIS - REAMED_RADIUS - wall}
      />
      <Section
        y={AXIS + REAMED_RADIUS}
        height={wall}
        edge={trueWall > MOST_WALL ? undefined : AXIS + REAMED_RADIUS + wall}
      />
      <BushingWall y={AXIS - REAMED_RADIUS} height={REAMED_RADIUS - inner} />
      <BushingWall y={AXIS + inner} height={REAMED_RADIUS - inner} />
      <path d={`M${LEFT} ${AXIS - inner}V${AXIS + inner} M${RIGHT} ${AXIS - inner}V${AXIS + inner}`} />
      <path class="drawing-centre" d={`M8 ${AXIS}h${RIGHT}`} />
      <Dimension y={44} name="ream" size={figure(ream.size, unit)} />
      <Dimension
        y={104}
        name="turn outside"
        size={limitFigure(answer.turn.upper, unit)}
        under={limitFigure(answer.turn.lower, unit)}
        changes
      />
      <Dimension
        y={190}
        name="bore, pressed in"
        size={limitFigure(inside.upper, unit)}
        under={limitFigure(inside.lower, unit)}
        changes
      />
      {partWall && <Dimension y={270} name="wall left" size={figure(partWall, unit)} />}
      {notes.length > 0 && (
        <text class="drawing-note" x="8" y="297" style={{ fontWeight: 400 }}>
          {notes.join(', ')}
        </text>
      )}
    </svg>
  );
}

/** Part of the part: without an edge it goes on beyond the drawing. */
function Section({ y, height, edge }: { y: number; height: number; edge: number | undefined }) {
  const lines = Array.from({ length: 12 }, (_, index) => LEFT - height + 6 + index * 18)
    .map((x) => {
      const from = Math.max(LEFT, x);
      const to = Math.min(RIGHT, x + height);
      return to > from ? `M${from} ${y + height - (from - x)}L${to} ${y + height - (to - x)}` : '';
    })
    .join(' ');
  return (
    <>
      <path class="drawing-hatch" d={lines} />
      <path
        d={`M${LEFT} ${y}v${height} M${RIGHT} ${y}v${height}${edge === undefined ? '' : ` M${LEFT} ${edge}h${RIGHT - LEFT}`}`}
      />
    </>
  );
}

function BushingWall({ y, height }: { y: number; height: number }) {
  return <rect class="drawing-part drawing-changes" x={LEFT} y={y} width={RIGHT - LEFT} height={height} />;
}

type DimensionProps = {
  readonly y: number;
  readonly name: string;
  readonly size: string;
  readonly under?: string;
  readonly changes?: boolean;
};

function Dimension({ y, name, size, under, changes = false }: DimensionProps) {
  const colour = changes ? 'drawing-changes-text' : undefined;
  return (
    <>
      <text class={colour} x="222" y={y - 20} style={{ fontWeight: 400 }}>
        {name}
      </text>
      <text class={colour} x="222" y={y + 4} style={{ fontSize: '23px' }}>
        {size}
      </text>
      {under !== undefined && (
        <text class={colour} x="222" y={y + 30} style={{ fontSize: '23px' }}>
          {under}
        </text>
      )}
    </>
  );
}

function spoken({ ream, turn, inside, partWall, bushingWall }: BushingAnswer, unit: ShownUnit): string {
  const wall = partWall ? `, ${show(partWall, unit)} of wall left in the part` : '';
  return `Bushing in section: ream to ${show(ream.size, unit)}, turn the outside to ${sayLimits(turn, unit)}, bore pressed in ${sayLimits(inside, unit)}, bushing wall ${show(bushingWall, unit)}${wall}.`;
}
