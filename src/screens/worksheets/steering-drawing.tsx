import { floatMm } from '../../engine/length/length.ts';
import { sayDegrees, steeringFigure } from '../../engine/worksheets/steering-geometry/say-steering.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type {
  SteeringAnswer,
  SteeringState,
} from '../../engine/worksheets/steering-geometry/steering-geometry.ts';
import '../common/drawing.css';

type SteeringDrawingProps = {
  readonly answer: SteeringAnswer;
  readonly frontRadiusMm: number;
  readonly unit: ShownUnit;
};

const GROUND = 214;
const RADIUS = 84;
const AXLE_X = 150;

/** The front wheel from its side, to scale, riding to the right: steering axis, offset, and the trail on the ground in brass. */
export function SteeringDrawing({ answer, frontRadiusMm, unit }: SteeringDrawingProps) {
  const { after, before } = answer;
  const scale = RADIUS / frontRadiusMm;
  const axleY = GROUND - RADIUS;
  const now = axisOf(after, scale);
  const was = axisOf(before, scale);
  const trail = `trail ${steeringFigure(after.trail, unit)} ${unit}`;
  const ends = [AXLE_X, now.groundX].toSorted((a, b) => a - b);
  return (
    <svg class="drawing" viewBox="0 0 390 266" role="img" aria-label={spoken(answer, unit)}>
      <path d={`M8 ${GROUND}h374`} />
      <circle class="drawing-solid" cx={AXLE_X} cy={axleY} r={RADIUS} />
      <circle cx={AXLE_X} cy={axleY} r="7" />
      <path class="drawing-centre" d={`M${AXLE_X} ${axleY - 100}V${GROUND + 8}`} />
      {after !== before && was.groundX !== now.groundX && (
        <path class="drawing-hatch" stroke-dasharray="3 6" d={was.line} />
      )}
      <path d={now.line} />
      <path class="drawing-centre" d={`M${AXLE_X} ${axleY}L${now.footX} ${now.footY}`} />
      <path
        class="drawing-changes"
        d={`M${AXLE_X} ${GROUND + 4}v16M${now.groundX} ${GROUND + 4}v16M${ends[0] ?? 0} ${GROUND + 12}H${ends[1] ?? 0}`}
      />
      <text
        class="drawing-changes-text"
        x={Math.max(AXLE_X, Math.min(300, now.groundX))}
        y="256"
        text-anchor="middle"
      >
        {trail}
      </text>
      <text x="376" y="66" text-anchor="end">
        {`rake ${sayDegrees(after.rakeDegrees)}`}
      </text>
      <text x="376" y="120" text-anchor="end">
        {`offset ${steeringFigure(after.offset, unit)}`}
      </text>
      <text x="376" y="90" text-anchor="end" style={{ fontWeight: 400 }}>
        {`was ${sayDegrees(before.rakeDegrees)}`}
      </text>
    </svg>
  );
}

/** The steering axis as a line from above the wheel to the ground; the machine rides to the right, so it leans to the left. */
function axisOf(state: SteeringState, scale: number) {
  const rake = (state.rakeDegrees * Math.PI) / 180;
  const groundX = AXLE_X + floatMm(state.trail) * scale;
  const heightY = GROUND - 18;
  const topX = groundX - heightY * Math.tan(rake);
  const offset = floatMm(state.offset) * scale;
  // The axle stands ahead of the axis by the offset, square to it.
  const footX = AXLE_X - offset * Math.cos(rake);
  const footY = GROUND - RADIUS - offset * Math.sin(rake);
  return { groundX, line: `M${topX} ${GROUND - heightY}L${groundX} ${GROUND}`, footX, footY };
}

function spoken({ before, after }: SteeringAnswer, unit: ShownUnit): string {
  const state = ({ rakeDegrees, trail, offset }: SteeringState) =>
    `rake ${sayDegrees(rakeDegrees)}, offset ${steeringFigure(offset, unit)} ${unit}, trail ${steeringFigure(trail, unit)} ${unit}`;
  return `The front wheel from its side. Before: ${state(before)}. After: ${state(after)}. The steering axis meets the ground ahead of where the tyre touches it by the trail.`;
}
