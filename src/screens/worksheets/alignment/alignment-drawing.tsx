import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AlignmentAnswer } from '../../../engine/worksheets/alignment/alignment.ts';
import { linedUp } from '../../../engine/worksheets/alignment/question.ts';
import { sayTenths } from '../../../engine/worksheets/alignment/say-alignment.ts';
import { alignmentWorksheet } from '../../../engine/worksheets/alignment/worksheet.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';
import { Outfit, Trailer } from './alignment-plans.tsx';

const LEFT = 152;
const EDGE = 12;

/** The outfit or the trailer from above, running to the right; what is out of line is drawn larger than it is. */
export function drawAlignment(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = alignmentWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const at = { left: LEFT, right: box.width - EDGE, top: 8, bottom: box.height - 30 };
  const isTrailer = linedUp({ choice: (name) => given.choice(name) }) === 'trailer';
  return {
    shapes: (
      <>
        {isTrailer ? <Trailer at={at} turn={turnOf(answer)} /> : <Outfit at={at} turn={turnOf(answer)} />}
        {answer && box.height >= 150 && (
          <text class="form-drawing-note" x={EDGE} y={box.height - 8}>
            drawn larger
          </text>
        )}
      </>
    ),
    sizes: labels(given, isTrailer, box),
    running: answer && { text: runningText(answer, unit), x: box.width - EDGE, y: box.height - 8 },
    words: answer ? spoken(answer, unit) : 'From above: wheels and straight edges, or coupling and axle.',
  };
}

// So that it can be seen, and still looks like a machine.
const LEAST_TURN = 4;
const MOST_TURN = 9;

/** Degrees as drawn: which way is true, how much is not. */
function turnOf(answer: AlignmentAnswer | undefined): number {
  if (!answer) return 0;
  const degrees = answer.of === 'outfit' ? answer.toe.degrees : answer.axle.degrees;
  if (Math.abs(degrees) < 0.005) return 0;
  return Math.sign(degrees) * Math.min(MOST_TURN, Math.max(LEAST_TURN, Math.abs(degrees) * 6));
}

const ASKED = {
  outfit: [
    ['toeFront', 'front'],
    ['toeRear', 'rear'],
    ['apart', 'apart'],
    ['fittings', 'fittings'],
  ],
  trailer: [
    ['left', 'left'],
    ['right', 'right'],
    ['track', 'axle'],
  ],
} as const;

function labels(given: AnyGiven, isTrailer: boolean, { height }: DrawingBox): readonly DrawnSize[] {
  const between = Math.min(34, (height - 34) / 3);
  return ASKED[isTrailer ? 'trailer' : 'outfit'].map(([field, name], row) => {
    const size = given.size(field)?.tightest;
    return {
      field,
      name,
      figure: size && sizeFigure(size, given.unit),
      x: EDGE,
      y: 22 + row * between,
      anchor: 'start',
      beside: true,
    };
  });
}

function runningText(answer: AlignmentAnswer, unit: ShownUnit): string {
  return answer.of === 'outfit'
    ? `toe-in ${figure(answer.toe.judged.value, unit)}`
    : `differ ${figure(answer.axle.judged.value, unit)}`;
}

function spoken(answer: AlignmentAnswer, unit: ShownUnit): string {
  if (answer.of === 'outfit')
    return `An outfit from above: toe-in ${show(answer.toe.judged.value, unit)}, ${sayTenths(answer.toe.degrees)} between both wheels. Drawn larger than it is.`;
  const { judged, degrees, slide } = answer.axle;
  return `A trailer’s axle from above, its ${slide.side} end back by ${sayTenths(Math.abs(degrees))}: the diagonals differ by ${show(judged.value, unit)}. Drawn larger than it is.`;
}
