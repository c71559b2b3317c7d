import { mean, type Estimate } from '../../../engine/reading/estimate.ts';
import { isZero, ratioOf, type Length } from '../../../engine/length/length.ts';
import type { RingAnswer, RingQuestion } from '../../../engine/worksheets/ring/ring.ts';
import { showSize, sizeFigure } from '../../../engine/reading/say-readings.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import { sayProud } from '../../../engine/worksheets/ring/say-ring.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { ringWorksheet } from '../../../engine/worksheets/ring/worksheet.ts';
import type { Drawn, DrawingBox } from '../frame/drawn.ts';

const LEAST_GAP = 4;

/** The ring cut through in its recess round the stem; what isn't given yet is drawn as it usually is. */
export function drawRing(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = ringWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const recess = given.size('recess')?.tightest;
  const stem = given.size('stem')?.tightest;
  const depth = given.size('depth')?.tightest;
  const at = placed({ recess, stem, answer, depth }, box);
  const said = (size: Estimate | undefined) => size && sizeFigure(size, unit);
  return {
    shapes: (
      <>
        <Section at={at} />
        {answer && (
          <text x={box.width - 8} y={18} text-anchor="end">
            {proudMark(answer, unit)}
          </text>
        )}
        {answer && box.width >= 380 && (
          <text class="form-drawing-note" x={8} y={box.height - 32}>
            gaps drawn larger
          </text>
        )}
      </>
    ),
    sizes: (
      [
        ['recess', 'recess', recess],
        ['stem', 'stem', stem],
        ['depth', 'depth', depth],
      ] as const
    ).map(([field, name, size], index) => ({
      field,
      name,
      figure: said(size),
      x: 14,
      y: 26 + index * Math.min(40, box.height * 0.26),
      anchor: 'start',
      beside: true,
    })),
    running: answer && {
      text: madeOf(answer)
        .map((size) => figure(size, unit))
        .join(' × '),
      x: box.width - 10,
      y: box.height - 8,
    },
    words:
      worked.is === 'answered'
        ? spoken(worked.question, worked.answer, unit)
        : 'A ring in its recess, round a stem.',
  };
}

function spoken({ recess, stem }: RingQuestion, answer: RingAnswer, unit: ShownUnit): string {
  const [outside, inside, thick] = madeOf(answer);
  const sizes = `outside ${outside ? show(outside, unit) : ''}, inside ${inside ? show(inside, unit) : ''}`;
  return `Ring ${sizes}${thick ? `, ${show(thick, unit)} thick` : ''}, in a recess ${showSize(recess.tightest, unit)} wide round a stem of ${showSize(stem.tightest, unit)}. ${sayProud(answer, unit)} Gaps are drawn larger.`;
}

/** `level`, `.010 proud`, `.020 below`; without a depth that is said. */
function proudMark({ proud }: RingAnswer, unit: ShownUnit): string {
  if (!proud) return 'depth not given';
  if (isZero(proud)) return 'level';
  const text = figure(proud, unit);
  return text.startsWith('−') ? `${text.slice(1)} below` : `${text} proud`;
}

/** Outside, inside, and how thick where that is known. */
function madeOf({ outside, inside, thickness, fromBlanks }: RingAnswer): readonly Length[] {
  const thick = fromBlanks.best?.thickness ?? thickness?.target;
  return [outside.target, inside.target, ...(thick ? [thick] : [])];
}

type Places = {
  readonly x: number;
  readonly face: number;
  readonly floor: number;
  readonly bottom: number;
  readonly half: number;
  readonly stem: number;
  readonly ring: { readonly outside: number; readonly inside: number; readonly height: number } | undefined;
};

type Sizes = {
  readonly recess: Estimate | undefined;
  readonly stem: Estimate | undefined;
  readonly depth: Estimate | undefined;
  readonly answer: RingAnswer | undefined;
};

function placed({ recess, stem, depth, answer }: Sizes, box: DrawingBox): Places {
  const half = Math.min(96, box.width * 0.2);
  const face = box.height * 0.32;
  const floor = box.height * 0.6;
  const share = (size: Length) =>
    recess && !isZero(mean(recess)) ? half * ratioOf(size, mean(recess)) : half / 2;
  const stemHalf = Math.min(stem ? share(mean(stem)) : half / 2, half - 4 * LEAST_GAP);
  return {
    x: box.width * 0.66,
    face,
    floor,
    bottom: box.height * 0.74,
    half,
    stem: stemHalf,
    ring: answer && {
      outside: Math.min(share(answer.outside.target), half - LEAST_GAP),
      inside: Math.min(Math.max(share(answer.inside.target), stemHalf + LEAST_GAP), half - 3 * LEAST_GAP),
      height: heightOf(answer, depth, floor - face),
    },
  };
}

function heightOf(answer: RingAnswer, depth: Estimate | undefined, deep: number): number {
  const [, , thick] = madeOf(answer);
  if (!thick || !depth || isZero(mean(depth))) return deep / 2;
  return Math.min(1.3 * deep, Math.max(6, deep * ratioOf(thick, mean(depth))));
}

function Section({ at: { x, face, floor, bottom, half, stem, ring } }: { at: Places }) {
  const body = (side: 1 | -1) =>
    `M${x + side * (half + 26)} ${face}H${x + side * half}V${floor}H${x + side * (stem + 3)}V${bottom}H${x + side * (half + 26)}z`;
  return (
    <>
      <path class="drawing-solid" d={`${body(-1)} ${body(1)}`} />
      <rect class="drawing-solid" x={x - stem} y={face - 14} width={2 * stem} height={bottom - face + 20} />
      {ring &&
        ([-1, 1] as const).map((way) => (
          <rect
            key={way}
            class="drawing-part drawing-changes"
            x={way === 1 ? x + ring.inside : x - ring.outside}
            y={floor - ring.height}
            width={ring.outside - ring.inside}
            height={ring.height}
          />
        ))}
      <path class="drawing-centre" d={`M${x} ${face - 20}V${bottom + 10}`} />
      <path
        d={`M${x - half - 52} ${face}h8 M${x - half - 48} ${face}V${floor} M${x - half - 52} ${floor}h8`}
      />
    </>
  );
}
