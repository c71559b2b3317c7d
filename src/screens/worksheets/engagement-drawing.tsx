import type { GripAnswer, GripQuestion } from '../../engine/thread/bolt-grip.ts';
import { mean } from '../../engine/reading/estimate.ts';
import { ratioOf, type Length } from '../../engine/length/length.ts';
import { sayEngagement } from '../../engine/worksheets/thread-engagement/say-engagement.ts';
import { sayPlane } from '../../engine/thread/say-grip.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import type { EngagementAnswer } from '../../engine/worksheets/thread-engagement/thread-engagement.ts';
import type { Thread } from '../../engine/thread/threads.ts';
import '../common/drawing.css';

type EngagementDrawingProps = {
  readonly thread: Thread;
  readonly answer: EngagementAnswer;
  readonly grip: GripQuestion | undefined;
  readonly gripAnswer: GripAnswer | undefined;
  readonly unit: ShownUnit;
};

const AXIS = 108;
const HEAD = 18;
const LEFT = 44;
const RIGHT = 372;
const MOST_HALF = 34;
const LEAST_LEG = 26;

/** The bolt along its axis in what it holds: legs, shear planes, plain shank, and the engaged thread in brass. */
export function EngagementDrawing({ thread, answer, grip, gripAnswer, unit }: EngagementDrawingProps) {
  const engaged = answer.engaged?.length ?? answer.least.both;
  const nut = grip?.held === 'nut';
  const stud = grip?.held === 'stud';
  const counted = grip?.legs.map(({ thickness }) => mean(thickness)) ?? [];
  // A stud's legs are counted from its part, which stands on the right.
  const legs = stud ? counted.toReversed() : counted;
  const { widths, hold, half } = layOut(thread, legs, engaged);
  const faces = widths.map((_, index) => LEFT + sumOf(widths.slice(0, index + 1)));
  const face = faces.at(-1) ?? LEFT + 60;
  const starts = [LEFT, ...faces.slice(0, -1)];
  const shank = grip?.shank && shankWidth(mean(grip.shank), legs, widths, face - LEFT);
  const shankEnd = shank === undefined ? undefined : LEFT + shank;
  return (
    <svg
      class="drawing"
      viewBox="0 0 390 242"
      role="img"
      aria-label={spoken(thread, answer, gripAnswer, unit)}
    >
      {legs.length === 0 && <Leg x={LEFT} width={60} half={half} label="" />}
      {widths.map((width, index) => (
        <Leg
          key={starts[index]}
          x={starts[index] ?? LEFT}
          width={width}
          half={half}
          label={String(stud ? widths.length - index : index + 1)}
        />
      ))}
      {nut ? (
        <rect class="drawing-solid" x={face} y={AXIS - half * 1.8} width={hold} height={half * 3.6} />
      ) : (
        <Leg x={face} width={RIGHT - face} half={half} label="part" />
      )}
      <rect class="drawing-solid" x={LEFT - HEAD} y={AXIS - half * 1.7} width={HEAD} height={half * 3.4} />
      <path d={`M${LEFT} ${AXIS - half}H${face + hold}l7 7v${2 * half - 14}l-7 7H${LEFT}`} />
      {stud ? (
        <Threads from={LEFT} to={shank === undefined ? LEFT : face - shank} half={half} />
      ) : (
        <Threads from={shankEnd ?? face} to={face} half={half} />
      )}
      <g class="drawing-changes">
        <rect x={face} y={AXIS - half} width={hold} height={2 * half} />
        <Threads from={face} to={face + hold} half={half} />
      </g>
      {gripAnswer?.planes.map((plane, index) => (
        <path
          key={plane.between.join()}
          class="drawing-centre"
          d={`M${faces[stud ? faces.length - 1 - index : index] ?? face} 34V196`}
        />
      ))}
      <path class="drawing-centre" d={`M8 ${AXIS}h376`} />
      <path class="drawing-changes" d={`M${face} 200v14M${face + hold} 200v14M${face} 207h${hold}`} />
      <text
        class="drawing-changes-text"
        x={Math.min(384, Math.max(250, face + hold))}
        y="232"
        text-anchor="end"
      >
        {`${answer.engaged ? 'engaged' : 'needed'} ${show(engaged, unit)}`}
      </text>
    </svg>
  );
}

function Leg({ x, width, half, label }: { x: number; width: number; half: number; label: string }) {
  const top = 44;
  const height = AXIS - half - top - 3;
  return (
    <>
      <rect class="drawing-solid" x={x} y={top} width={width} height={height} />
      <rect class="drawing-solid" x={x} y={AXIS + half + 3} width={width} height={height} />
      <text x={x + width / 2} y="34" text-anchor="middle">
        {label}
      </text>
    </>
  );
}

/** Flanks of a thread, drawn coarser than they are. */
function Threads({ from, to, half }: { from: number; to: number; half: number }) {
  const count = Math.max(0, Math.floor((to - from) / 8));
  const lines = Array.from(
    { length: count },
    (_, index) => `M${from + 4 + index * 8} ${AXIS - half}l3 ${2 * half}`,
  );
  return <path class="drawing-hatch" d={lines.join('')} />;
}

/** Widths to scale; a leg too thin to be named is drawn wider. */
function layOut(thread: Thread, legs: readonly Length[], engaged: Length) {
  const major = thread.major;
  const all = [...legs, engaged].map((length) => Math.max(0.02, ratioOf(length, major)));
  const room = RIGHT - LEFT - 24 - (legs.length === 0 ? 60 : 0);
  const scale = Math.min(2 * MOST_HALF, room / sumOf(all));
  const raw = all.map((share) => Math.max(LEAST_LEG, share * scale));
  const squeeze = Math.min(1, room / sumOf(raw));
  const widths = raw.map((width) => width * squeeze);
  return {
    widths: widths.slice(0, -1),
    hold: widths.at(-1) ?? LEAST_LEG,
    half: Math.max(12, scale / 2),
  };
}

/** Where the shank ends, in the stretched widths of the legs it lies in. */
function shankWidth(shank: Length, legs: readonly Length[], widths: readonly number[], most: number): number {
  const whole = legs.reduce((so, leg) => so + ratioOf(leg, shank), 0);
  const part = whole === 0 ? 1 : 1 / whole;
  return Math.max(0, Math.min(most, sumOf(widths) * part));
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((so, next) => so + next, 0);
}

function spoken(
  thread: Thread,
  answer: EngagementAnswer,
  grip: GripAnswer | undefined,
  unit: ShownUnit,
): string {
  const planes = grip?.planes.map((plane) => sayPlane(plane, unit)).join(' ') ?? '';
  return `${thread.designation}, ${figure(thread.major, unit)} ${unit} across, in its part. ${sayEngagement(answer, unit)} ${planes}`.trim();
}
