import { floatMm, minus, zero, type Length } from '../../../engine/length/length.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import { drillingOrder } from '../../../engine/worksheets/adapter-plate/drilling-order.ts';
import { edgesOf } from '../../../engine/worksheets/adapter-plate/laid-plate.ts';
import { laidPattern, type LaidPattern } from '../../../engine/worksheets/adapter-plate/pattern.ts';
import type { PlateAnswer } from '../../../engine/worksheets/adapter-plate/plate.ts';
import type { Outline } from '../../../engine/worksheets/adapter-plate/plate-question.ts';
import { holesKnown, outlineAsked, type Prefix } from '../../../engine/worksheets/adapter-plate/question.ts';
import { floatSpot, moved, turned, type Spot } from '../../../engine/worksheets/adapter-plate/spots.ts';
import { adapterPlateWorksheet } from '../../../engine/worksheets/adapter-plate/worksheet.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { Drawn, DrawingBox } from '../frame/drawn.ts';
import { plateLabels } from './plate-labels.ts';

const LEFT = 152;
const EDGE = 12;
const RUNNING = 26;

/** The plate from above with every hole in its place, to scale; A is filled, B is open, the first to be drilled is brass. */
export function drawAdapterPlate(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = adapterPlateWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const picture = pictureOf(given, answer);
  const scale = scaleOf(picture, box);
  const web = answer?.judged.find(({ of }) => of === 'web');
  return {
    shapes: <Plate picture={picture} scale={scale} first={answer && drillingOrder(answer.holes)[0]?.name} />,
    sizes: plateLabels(given, answer, box),
    running: web && {
      text: `web ${figure(web.judged.value, unit)}`,
      x: box.width - EDGE,
      y: box.height - 8,
    },
    words: answer ? spoken(answer, unit) : 'A plate with its holes, seen from above.',
  };
}

type DrawnHole = {
  readonly name: string;
  readonly spot: Spot;
  readonly hole?: Length | undefined;
  readonly head?: Length | undefined;
};
type Picture = {
  readonly outline: Outline | undefined;
  readonly holes: readonly DrawnHole[];
  readonly circles: readonly { readonly middle: Spot; readonly radius: Length }[];
  readonly bore: Length | undefined;
};

/** What is known of it so far: a pattern stands in it as soon as its places are known. */
function pictureOf(given: AnyGiven, answer: PlateAnswer | undefined): Picture {
  const a = laidSoFar(given, 'a');
  const b = laidSoFar(given, 'b');
  const turn = answer?.b?.turnDegrees ?? given.number('turn') ?? 0;
  const shift = { x: given.exact('shiftX') ?? zero, y: given.exact('shiftY') ?? zero };
  const ofB = (spot: Spot) => moved(turned(spot, turn), shift);
  return {
    outline: outlineAsked(given),
    bore: given.exact('bore'),
    circles: [
      ...(a?.circle ? [a.circle] : []),
      ...(b?.circle ? [{ ...b.circle, middle: ofB(b.circle.middle) }] : []),
    ],
    holes: [...drawnHoles(given, 'a', a?.spots ?? []), ...drawnHoles(given, 'b', b?.spots.map(ofB) ?? [])],
  };
}

function laidSoFar(given: AnyGiven, prefix: Prefix): LaidPattern | undefined {
  const known = holesKnown(given, prefix);
  const laid = known && laidPattern(prefix === 'a' ? 'A' : 'B', known, mean);
  return laid?.ok ? laid.value : undefined;
}

function drawnHoles(given: AnyGiven, prefix: Prefix, spots: readonly Spot[]): readonly DrawnHole[] {
  const hole = given.exact(`${prefix}Hole`);
  const head = given.exact(`${prefix}Head`);
  return spots.map((spot, index) => ({ name: `${prefix.toUpperCase()}${index + 1}`, spot, hole, head }));
}

type Scale = { readonly x: number; readonly y: number; readonly by: number; readonly room: number };

// As drawn while nothing is given: a circle of four and a half inches.
const USUAL_MM = 57;

function scaleOf({ outline, holes, circles }: Picture, { width, height }: DrawingBox): Scale {
  const reach = [
    ...holes.map(({ spot, hole }) => reachOf(spot) + (hole ? floatMm(hole) / 2 : 0)),
    ...circles.map(({ middle, radius }) => reachOf(middle) + floatMm(radius)),
    ...(outline && outline.is !== 'none'
      ? Object.values(edgesOf(outline, mean)).map((edge) => Math.abs(floatMm(edge)))
      : []),
  ];
  const far = Math.max(1, ...(reach.length > 0 ? reach.map((mm) => mm * 1.04) : [USUAL_MM * 1.2]));
  const room = Math.min((height - RUNNING) / 2 - 2, (width - LEFT - EDGE) / 2);
  return { x: (LEFT + width - EDGE) / 2, y: room + 4, by: room / far, room };
}

function reachOf(spot: Spot): number {
  const { x, y } = floatSpot(spot);
  return Math.hypot(x, y);
}

type PlateProps = {
  readonly picture: Picture;
  readonly scale: Scale;
  readonly first: string | undefined;
};

function Plate({ picture: { outline, holes, circles, bore }, scale, first }: PlateProps) {
  const { x, y, by, room } = scale;
  const at = (spot: Spot) => {
    const { x: across, y: up } = floatSpot(spot);
    return { cx: x + across * by, cy: y - up * by };
  };
  return (
    <>
      {outline && <OutlineDrawn outline={outline} scale={scale} />}
      <path class="drawing-centre" d={`M${x - room} ${y}h${2 * room}M${x} ${y - room}v${2 * room}`} />
      {circles.map(({ middle, radius }, index) => (
        <circle key={index} class="drawing-centre" {...at(middle)} r={floatMm(radius) * by} />
      ))}
      {bore && <circle class="drawing-solid" cx={x} cy={y} r={(floatMm(bore) / 2) * by} />}
      {holes.map(({ name, spot, hole, head }) => {
        const { cx, cy } = at(spot);
        const r = hole ? Math.max(2.5, (floatMm(hole) / 2) * by) : 2.5;
        const kind = name.startsWith('A') ? 'drawing-part' : 'drawing-solid';
        return (
          <g key={name}>
            {head && (
              <circle
                class="drawing-hatch"
                stroke-dasharray="3 3"
                cx={cx}
                cy={cy}
                r={(floatMm(head) / 2) * by}
              />
            )}
            <circle class={name === first ? `${kind} drawing-changes` : kind} cx={cx} cy={cy} r={r} />
          </g>
        );
      })}
    </>
  );
}

function OutlineDrawn({ outline, scale: { x, y, by } }: { outline: Outline; scale: Scale }) {
  if (outline.is === 'none') return null;
  const { left, right, below, above } = edgesOf(outline, mean);
  const px = (size: Length) => floatMm(size) * by;
  if (outline.is === 'round') return <circle class="drawing-solid" cx={x} cy={y} r={px(left)} />;
  return (
    <rect
      class="drawing-solid"
      x={x - px(left)}
      y={y - px(above)}
      width={px(minus(right, minus(zero, left)))}
      height={px(minus(above, minus(zero, below)))}
    />
  );
}

function spoken({ holes, judged, b }: PlateAnswer, unit: ShownUnit): string {
  const count = (name: 'A' | 'B') => holes.filter(({ pattern }) => pattern === name).length;
  const ofB = b ? ` and ${count('B')} holes B` : '';
  const left = judged.map(({ of, where, judged: { value } }) => `${of} ${where} ${show(value, unit)}`);
  return `Plate with ${count('A')} holes A${ofB}, seen from above; least left: ${left.join(', ')}.`;
}
