import { mean } from '../../engine/reading/estimate.ts';
import {
  absolute,
  isNegative,
  isZero,
  largest,
  ratioOf,
  sum,
  times,
  type Length,
} from '../../engine/length/length.ts';
import { showSize, sizeFigure } from '../../engine/reading/say-readings.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import type { StackAnswer, StackQuestion } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import '../common/drawing.css';

type StackDrawingProps = {
  readonly question: StackQuestion;
  readonly answer: StackAnswer;
  readonly changing: string | undefined;
  readonly unit: ShownUnit;
};

const LEFT = 52;
const RIGHT = 338;
const AXIS = 122;
const LEAST_PART = 16;
const LEAST_GAP = 14;

type Slot = {
  readonly name: string;
  readonly x: number;
  readonly width: number;
  readonly changes: boolean;
  readonly tall: boolean;
};

/** The stack cut along its axis, lengths to scale; what would vanish is drawn larger and says so. The part that changes is brass. */
export function StackDrawing({ question, answer, changing, unit }: StackDrawingProps) {
  const { slots, gapAt, drawn } = layOut(question, answer, changing);
  const named = slots.every((slot) => slot.name.length * 9.4 <= slot.width + 4);
  const proud = isNegative(answer.gap);
  const sleeveEnd = proud ? gapAt - 8 : RIGHT;
  return (
    <svg class="drawing" viewBox="0 0 390 236" role="img" aria-label={spoken(question, answer, unit)}>
      <Hatched x={6} width={LEFT - 6} />
      <Hatched x={RIGHT} width={46} />
      <path d={`M${LEFT} 100h${sleeveEnd - LEFT}v12H${LEFT} M${LEFT} 144h${sleeveEnd - LEFT}v-12H${LEFT}`} />
      <path class="drawing-centre" d={`M0 ${AXIS}h390`} />
      {slots.map((slot, index) => (
        <Part key={slot.x} slot={slot} label={named ? slot.name : String(index + 1)} />
      ))}
      <text class="drawing-over-line" x="195" y="128" text-anchor="middle">
        {`${question.fixed.name} ${sizeFigure(question.fixed.length, unit)}`}
      </text>
      <path class="drawing-changes" d={gapMark(gapAt, proud)} />
      <text class="drawing-changes-text" x={Math.min(384, gapAt + 40)} y="228" text-anchor="end">
        {`${proud ? 'proud' : 'gap'} ${figure(absolute(answer.gap), unit)} now${drawn}`}
      </text>
    </svg>
  );
}

function Part({ slot, label }: { slot: Slot; label: string }) {
  const height = slot.tall ? 38 : 28;
  const shape = (y: number) => (
    <rect
      class={`drawing-part ${slot.changes ? 'drawing-changes' : 'drawing-solid'}`}
      x={slot.x}
      y={y}
      width={slot.width}
      height={height}
    />
  );
  return (
    <>
      {shape(AXIS - 22 - height)}
      {shape(AXIS + 22)}
      <text
        class={slot.changes ? 'drawing-changes-text' : undefined}
        x={slot.x + slot.width / 2}
        y="50"
        text-anchor="middle"
      >
        {label}
      </text>
    </>
  );
}

function Hatched({ x, width }: { x: number; width: number }) {
  const lines = [88, 112, 136, 160, 182].map((y) => `M${x} ${y}l${width} -26`).join(' ');
  return (
    <>
      <rect x={x} y="62" width={width} height="120" />
      <path class="drawing-hatch" d={lines} />
    </>
  );
}

/** Widths to scale where they can be seen; the smallest ones are widened, and the rest gives way. */
function layOut({ fixed, parts }: StackQuestion, answer: StackAnswer, changing: string | undefined) {
  const gap = absolute(answer.gap);
  const lengths = parts.map(({ thickness, count }) => times(mean(thickness), count));
  const whole = largest(mean(fixed.length), sum(lengths));
  const room = RIGHT - LEFT;
  const trueGap = room * shareOf(gap, whole);
  const gapWidth = Math.min(60, Math.max(LEAST_GAP, trueGap));
  const widths = shares(lengths, room - (isNegative(answer.gap) ? 0 : gapWidth));
  const slots = parts.map((part, index): Slot => {
    const x = LEFT + widths.slice(0, index).reduce((so, next) => so + next, 0);
    return {
      name: part.count > 1 ? `${part.count} × ${part.name}` : part.name,
      x,
      width: widths[index] ?? 0,
      changes: part.name === changing,
      tall: index % 2 === 1,
    };
  });
  return {
    slots,
    gapAt: isNegative(answer.gap) ? RIGHT : RIGHT - gapWidth,
    drawn: gapWidth > trueGap ? ', drawn larger' : gapWidth < trueGap ? ', drawn smaller' : '',
  };
}

function shares(lengths: readonly Length[], room: number): readonly number[] {
  const total = sum(lengths);
  const raw = lengths.map((length) => Math.max(LEAST_PART, room * shareOf(length, total)));
  const over = raw.reduce((so, next) => so + next, 0) / room;
  return raw.map((width) => width / over);
}

// A size of nothing is a slip of the pad; the drawing stays, so that it can be found and put right.
function shareOf(length: Length, whole: Length): number {
  return isZero(whole) ? 0 : ratioOf(length, whole);
}

function gapMark(gapAt: number, proud: boolean): string {
  return proud
    ? `M${RIGHT - 8} 196v16 M${RIGHT} 196v16 M${RIGHT - 30} 204h22`
    : `M${gapAt} 196v16 M${RIGHT} 196v16 M${gapAt - 22} 204H${gapAt} M${RIGHT} 204h22`;
}

function spoken({ fixed, parts }: StackQuestion, { gap, partsTotal }: StackAnswer, unit: ShownUnit): string {
  const list = parts
    .map(
      ({ name, count, thickness }) =>
        `${count > 1 ? `${count} times ` : ''}${name} ${showSize(thickness, unit)}`,
    )
    .join(', ');
  const left = isNegative(gap)
    ? `they stand ${show(absolute(gap), unit)} proud`
    : `a gap of ${show(gap, unit)} is left`;
  return `From left to right: ${list}; together ${show(partsTotal, unit)} in ${fixed.name} ${showSize(fixed.length, unit)}; ${left}.`;
}
