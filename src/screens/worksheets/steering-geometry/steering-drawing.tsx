import { mean } from '../../../engine/reading/estimate.ts';
import { floatMm, type Length } from '../../../engine/length/length.ts';
import type { ShownUnit } from '../../../engine/length/show.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { sayDegrees, steeringFigure } from '../../../engine/worksheets/steering-geometry/say-steering.ts';
import type {
  SteeringAnswer,
  SteeringState,
} from '../../../engine/worksheets/steering-geometry/steering-geometry.ts';
import { steeringWorksheet } from '../../../engine/worksheets/steering-geometry/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';

// What a machine usually has, to draw by until its own sizes are given: only proportions.
const USUAL_MM = { front: 310, rear: 305, wheelbase: 1440, offset: 45, trail: 100 };
const USUAL_RAKE_DEGREES = 27;

/** The machine from its side, riding to the right: both wheels, the steering axis, and the trail on the ground in brass. */
export function drawSteering(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = steeringWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  return {
    shapes: <Machine at={placed(given, box)} answer={answer} />,
    sizes: sizesOf(given, box),
    running: answer && {
      text: `trail ${steeringFigure(answer.after.trail, unit)}`,
      x: box.width - 12,
      y: box.height - 10,
    },
    words: answer ? spoken(answer, unit) : 'The machine from its side: both wheels and the steering axis.',
  };
}

function sizesOf(given: AnyGiven, { width, height }: DrawingBox): readonly DrawnSize[] {
  const { unit } = given;
  const step = Math.min(40, height * 0.26);
  const said = (name: string) => {
    const known = given.size(name);
    return known && steeringFigure(mean(known.loosest), unit);
  };
  const rake = given.number('rake');
  const right = (field: string, name: string, row: number, figure = said(field)): DrawnSize => ({
    field,
    name,
    figure,
    x: width - 12,
    y: 24 + row * step,
    anchor: 'end',
    beside: true,
  });
  const left = (field: string, name: string, y: number): DrawnSize => ({
    field,
    name,
    figure: said(field),
    x: 12,
    y,
    anchor: 'start',
    beside: true,
  });
  return [
    right('rake', 'rake', 0, rake === undefined ? undefined : sayDegrees(rake)),
    right('clampOffset', 'offset', 1),
    right('frontRadius', 'front', 2),
    left('rearRadius', 'rear', 24),
    left('wheelbase', 'wheelbase', height - 10),
    {
      field: 'forkLonger',
      name: 'fork',
      figure: forkWords(said('forkLonger')),
      x: width * 0.5,
      y: 24,
      anchor: 'middle',
      beside: true,
      changes: given.has('forkLonger'),
    },
  ];
}

/** `+1.00`, `−.50`: longer or shorter than before. */
function forkWords(figure: string | undefined): string {
  if (figure === undefined) return 'as is';
  return figure.startsWith('−') ? figure : `+${figure}`;
}

type Places = {
  readonly ground: number;
  readonly frontX: number;
  readonly rearX: number;
  readonly radius: number;
  readonly rearRadius: number;
  /** Pixels a millimetre. */
  readonly scale: number;
  readonly rakeDegrees: number;
};

/** To scale by the front wheel; what isn't given yet as it usually is. */
function placed(given: AnyGiven, { width, height }: DrawingBox): Places {
  const sizeMm = (name: string, usual: number) => {
    const known = given.size(name);
    return known ? floatMm(mean(known.loosest)) : usual;
  };
  const radius = Math.min(height * 0.25, width * 0.095);
  const scale = radius / Math.max(1, sizeMm('frontRadius', USUAL_MM.front));
  const frontX = width * 0.56;
  const apart = sizeMm('wheelbase', USUAL_MM.wheelbase) * scale;
  const rearRadius = Math.min(radius * 1.4, sizeMm('rearRadius', USUAL_MM.rear) * scale);
  return {
    ground: height - 34,
    frontX,
    rearX: Math.max(rearRadius + 4, frontX - apart),
    radius,
    rearRadius,
    scale,
    rakeDegrees: given.number('rake') ?? USUAL_RAKE_DEGREES,
  };
}

function Machine({ at, answer }: { at: Places; answer: SteeringAnswer | undefined }) {
  const { ground, frontX, rearX, radius, rearRadius } = at;
  const now = axisOf(at, answer?.after);
  const was = axisOf(at, answer?.before);
  const axleY = ground - radius;
  const [from, to] = [frontX, now.groundX].toSorted((a, b) => a - b);
  return (
    <>
      <path d={`M4 ${ground}H${frontX + radius + 20}`} />
      <circle class="drawing-solid" cx={rearX} cy={ground - rearRadius} r={rearRadius} />
      <circle class="drawing-solid" cx={frontX} cy={axleY} r={radius} />
      <circle cx={frontX} cy={axleY} r="4" />
      <circle cx={rearX} cy={ground - rearRadius} r="4" />
      <path d={`M${rearX} ${ground - rearRadius}L${now.topX} ${now.topY}`} />
      {was.line !== now.line && <path class="drawing-hatch" stroke-dasharray="3 6" d={was.line} />}
      <path class="drawing-centre" d={now.line} />
      <path d={`M${now.topX} ${now.topY}L${frontX} ${axleY}`} />
      {answer && (
        <path
          class="drawing-changes"
          d={`M${frontX} ${ground + 2}v12M${now.groundX} ${ground + 2}v12M${from ?? 0} ${ground + 8}H${to ?? 0}`}
        />
      )}
    </>
  );
}

type Axis = Pick<SteeringState, 'rakeDegrees' | 'trail'>;

/** The steering axis from above the wheel to the ground; the machine rides to the right, so it leans to the left. */
function axisOf({ frontX, ground, scale, radius, rakeDegrees }: Places, state: Axis | undefined) {
  const rake = ((state?.rakeDegrees ?? rakeDegrees) * Math.PI) / 180;
  const trailMm = (trail: Length | undefined) => (trail ? floatMm(trail) : USUAL_MM.trail);
  const groundX = frontX + trailMm(state?.trail) * scale;
  const topY = Math.max(36, ground - radius * 2.4);
  const topX = groundX - (ground - topY) * Math.tan(rake);
  return { groundX, topX, topY, line: `M${topX} ${topY}L${groundX} ${ground}` };
}

function spoken({ before, after }: SteeringAnswer, unit: ShownUnit): string {
  const state = ({ rakeDegrees, trail, offset }: SteeringState) =>
    `rake ${sayDegrees(rakeDegrees)}, offset ${steeringFigure(offset, unit)} ${unit}, trail ${steeringFigure(trail, unit)} ${unit}`;
  return `The front wheel from its side. Before: ${state(before)}. After: ${state(after)}. The steering axis meets the ground ahead of where the tyre touches it by the trail.`;
}
