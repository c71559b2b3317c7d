import { isZero, ratioOf, type Length } from '../../engine/length/length.ts';
import { mean } from '../../engine/reading/estimate.ts';
import type { RingAnswer, RingQuestion } from '../../engine/worksheets/ring/ring.ts';
import { showSize } from '../../engine/reading/say-readings.ts';
import { sayProud } from '../../engine/worksheets/ring/say-ring.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import '../common/drawing.css';

type RingDrawingProps = {
  readonly question: RingQuestion;
  readonly answer: RingAnswer;
  readonly unit: ShownUnit;
};

const FACE = { x: 96, y: 104, radius: 86 };
const SECTION = { x: 292, face: 74, depth: 56, half: 78, floor: 130, bottom: 178 };
const LEAST_GAP = 5;

/** The ring from the front, and cut through in its recess round the stem. The ring is brass; gaps too small to see are larger. */
export function RingDrawing({ question, answer, unit }: RingDrawingProps) {
  const recess = mean(question.recess.tightest);
  const stem = mean(question.stem.tightest);
  const thickness = madeThickness(answer);
  const face = radii(recess, stem, answer, FACE.radius);
  const cut = radii(recess, stem, answer, SECTION.half);
  const size = [answer.outside.target, answer.inside.target, ...(thickness ? [thickness] : [])]
    .map((one) => figure(one, unit))
    .join(' × ');
  return (
    <svg class="drawing" viewBox="0 0 390 236" role="img" aria-label={spoken(question, answer, unit)}>
      <path class="drawing-centre" d={`M2 ${FACE.y}h188 M${FACE.x} 10v188`} />
      <circle cx={FACE.x} cy={FACE.y} r={FACE.radius} />
      <path
        class="drawing-part drawing-changes"
        fill-rule="evenodd"
        d={`${circle(face.outside)} ${circle(face.inside)}`}
      />
      <circle class="drawing-solid" cx={FACE.x} cy={FACE.y} r={face.stem} />
      <Section radii={cut} height={heightOf(thickness, question.depth && mean(question.depth))} />
      <text class="drawing-changes-text" x="195" y="231" text-anchor="middle">
        {size}
      </text>
      <text x="384" y="208" text-anchor="end">
        gaps drawn larger
      </text>
      <text x={SECTION.x} y="28" text-anchor="middle">
        {answer.proud ? proudMark(answer.proud, unit) : 'depth not given'}
      </text>
    </svg>
  );
}

type Radii = { readonly outside: number; readonly inside: number; readonly stem: number };

function Section({ radii: { outside, inside, stem }, height }: { radii: Radii; height: number }) {
  const { x, face, half, floor, bottom } = SECTION;
  const body = (side: 1 | -1) =>
    `M${x + side * (half + 16)} ${face}H${x + side * half}V${floor}H${x + side * (stem + 4)}V${bottom}H${x + side * (half + 16)}z`;
  const side = (way: 1 | -1) => (way === 1 ? x + inside : x - outside);
  return (
    <>
      <path class="drawing-solid" d={`${body(-1)} ${body(1)}`} />
      <rect class="drawing-solid" x={x - stem} y={face - 28} width={2 * stem} height={bottom - face + 40} />
      {([-1, 1] as const).map((way) => (
        <rect
          key={way}
          class="drawing-part drawing-changes"
          x={side(way)}
          y={floor - height}
          width={outside - inside}
          height={height}
        />
      ))}
      <path class="drawing-centre" d={`M${x} ${face - 34}V${bottom + 18}`} />
    </>
  );
}

/** Radii to scale; the gaps beside the ring are drawn no smaller than can be seen. */
function radii(recess: Length, stem: Length, { outside, inside }: RingAnswer, scale: number): Radii {
  const share = (size: Length) => (isZero(recess) ? 0 : scale * ratioOf(size, recess));
  const stemRadius = Math.min(share(stem), scale - 4 * LEAST_GAP);
  const inner = Math.max(share(inside.target), stemRadius + LEAST_GAP);
  return {
    stem: stemRadius,
    inside: Math.min(inner, scale - 3 * LEAST_GAP),
    outside: Math.min(share(outside.target), scale - LEAST_GAP),
  };
}

function heightOf(thickness: Length | undefined, depth: Length | undefined): number {
  if (!thickness || !depth || isZero(depth)) return SECTION.depth / 2;
  return Math.min(1.3 * SECTION.depth, Math.max(6, SECTION.depth * ratioOf(thickness, depth)));
}

function madeThickness({ thickness, fromBlanks }: RingAnswer): Length | undefined {
  return fromBlanks.best?.thickness ?? thickness?.target;
}

function circle(radius: number): string {
  const { x, y } = FACE;
  return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
}

function proudMark(proud: Length, unit: ShownUnit): string {
  if (isZero(proud)) return 'level';
  const text = figure(proud, unit);
  return text.startsWith('−') ? `${text.slice(1)} below` : `${text} proud`;
}

function spoken({ recess, stem }: RingQuestion, answer: RingAnswer, unit: ShownUnit): string {
  const thickness = madeThickness(answer);
  const sizes = `outside ${show(answer.outside.target, unit)}, inside ${show(answer.inside.target, unit)}`;
  return `Ring ${sizes}${thickness ? `, ${show(thickness, unit)} thick` : ''}, in a recess ${showSize(recess.tightest, unit)} wide round a stem of ${showSize(stem.tightest, unit)}. ${sayProud(answer, unit)} Gaps are drawn larger.`;
}
