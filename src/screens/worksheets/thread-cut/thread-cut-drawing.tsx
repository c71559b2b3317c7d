import { floatMm, type Length } from '../../../engine/length/length.ts';
import { figure, show, showLimits, type ShownUnit } from '../../../engine/length/show.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { isStud, threadCutNeeds } from '../../../engine/worksheets/thread-cut/question.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from '../../../engine/worksheets/thread-cut/thread-cut.ts';
import { threadCutWorksheet } from '../../../engine/worksheets/thread-cut/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';

const LEFT = 150;
const EDGE = 12;
const RUNNING = 26;
const PITCHES = 4;
// Heights in pitches, of a 60° thread cut to its form: from the pitch line up to the crest, and down to the root.
const CREST = 0.3248;
const ROOT = 0.2887;
const WIRE = 0.57735;

/** The thread's upper flanks cut along the axis, much larger than it is, with the wires lying in them. */
export function drawThreadCut(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = threadCutWorksheet.work(given);
  const answered = worked.is === 'answered' ? worked : undefined;
  const profile = profileIn(box, wireInPitches(answered));
  return {
    shapes: (
      <>
        <Profile {...profile} hasWires={answered !== undefined} />
        {box.height >= 150 && (
          <text class="form-drawing-note" x={EDGE} y={box.height - 8}>
            drawn larger
          </text>
        )}
      </>
    ),
    sizes: labels(given, box),
    running: answered && {
      text: `over wires ${figure(answered.answer.overWires.target, unit)}`,
      x: box.width - EDGE,
      y: box.height - 8,
    },
    words: answered
      ? spoken(answered.question, answered.answer, unit)
      : 'A thread’s flanks with wires lying in them.',
  };
}

type Answered = { readonly question: ThreadCutQuestion; readonly answer: ThreadCutAnswer };

function wireInPitches(answered: Answered | undefined): number {
  if (!answered) return WIRE;
  return floatMm(answered.answer.wire.size) / floatMm(answered.question.thread.pitch);
}

const NAMES: Readonly<Record<string, string>> = {
  outside: 'outside',
  grip: 'grip',
  wire: 'wire',
  inPart: 'in part',
};

/** What is measured, one under the other; a stud's own sizes only where it is one. */
function labels(given: AnyGiven, { height }: DrawingBox): readonly DrawnSize[] {
  const needs = threadCutNeeds(given);
  const fields = [
    'outside',
    ...(isStud(given) ? ['grip'] : []),
    ...needs.filter((one) => one === 'inPart'),
    'wire',
  ];
  const between = Math.min(36, (height - 34) / Math.max(3, fields.length - 1));
  return fields.map((field, row) => {
    const size = given.size(field)?.tightest;
    const exact = size ? undefined : given.exact(field);
    return {
      field,
      name: NAMES[field] ?? field,
      figure: size ? sizeFigure(size, given.unit) : exact && figure(exact, given.unit),
      x: EDGE,
      y: 22 + row * between,
      anchor: 'start',
      beside: true,
    };
  });
}

type ProfileAt = {
  readonly left: number;
  readonly pitchLine: number;
  readonly bottom: number;
  /** One pitch, in pixels. */
  readonly pitch: number;
  readonly wire: number;
};

function profileIn({ width, height }: DrawingBox, wire: number): ProfileAt {
  // From the pitch line to the top of a wire: its middle lies W − half the sharp height above it.
  const above = Math.max(CREST, 1.5 * wire - 0.433);
  const room = height - RUNNING - 8;
  const pitch = Math.max(4, Math.min((width - LEFT - EDGE) / PITCHES, room / (above + ROOT + 0.45)));
  return {
    left: width - EDGE - PITCHES * pitch,
    pitchLine: 8 + above * pitch,
    bottom: height - RUNNING,
    pitch,
    wire,
  };
}

function Profile({
  left,
  pitchLine,
  bottom,
  pitch,
  wire,
  hasWires,
}: ProfileAt & { readonly hasWires: boolean }) {
  const crest = pitchLine - CREST * pitch;
  const root = pitchLine + ROOT * pitch;
  // Flats of P/8 on the crest and P/6 at the root; what is left of a pitch is its two flanks.
  const [flat, bed] = [pitch / 8, pitch / 6];
  const flank = (pitch - flat - bed) / 2;
  const teeth = Array.from(
    { length: PITCHES },
    () => `l${flank} ${root - crest}h${bed}l${flank} ${crest - root}h${flat}`,
  );
  const middle = (groove: number) => left + flat + groove * pitch + flank + bed / 2;
  const radius = (wire * pitch) / 2;
  const height = pitchLine - (wire - 0.433) * pitch;
  return (
    <>
      <path
        class="drawing-part drawing-changes"
        d={`M${left} ${bottom}V${crest}h${flat}${teeth.join('')}V${bottom}z`}
      />
      <path class="drawing-centre" d={`M${left} ${pitchLine}h${PITCHES * pitch}`} />
      {hasWires &&
        [0, PITCHES - 1].map((groove) => (
          <circle key={groove} class="drawing-solid" cx={middle(groove)} cy={height} r={radius} />
        ))}
    </>
  );
}

function spoken({ thread, stud }: ThreadCutQuestion, answer: ThreadCutAnswer, unit: ShownUnit): string {
  const size = (length: Length) => show(length, unit);
  const { outside, overWires, wire, depth } = answer;
  const what = stud ? `Stud, ${thread.designation} at both ends` : `Thread ${thread.designation}`;
  return `${what}: outside ${size(outside.target)}, ${size(depth)} deep, over wires of ${size(wire.size)} from ${showLimits(overWires.lower, overWires.upper, unit)}.`;
}
