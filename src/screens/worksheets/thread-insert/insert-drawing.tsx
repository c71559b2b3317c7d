import { mean } from '../../../engine/reading/estimate.ts';
import type { Length } from '../../../engine/length/length.ts';
import { figure, show, type ShownUnit } from '../../../engine/length/show.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { legFields } from '../../../engine/worksheets/thread-insert/fields.ts';
import type { LeggedAnswer } from '../../../engine/worksheets/thread-insert/insert-in-legs.ts';
import { asksForLegs } from '../../../engine/worksheets/thread-insert/question.ts';
import { sayPercent } from '../../../engine/worksheets/thread-insert/say-insert.ts';
import { threadInsertWorksheet } from '../../../engine/worksheets/thread-insert/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';
import { EndOn } from './insert-end-on.tsx';
import { legSlots, LegsCut, type LegSlot } from './insert-legs-cut.tsx';

const LEFT_COLUMN = 122;
const EDGE = 10;
const LEG_LABELS = 46;
const BOTTOM_ROW = 30;
const FEW_LEGS = 2;
// What "+ leg" takes at the right, with room for a finger.
const ONE_MORE = 66;

/** The hole end-on, to scale, and the legs cut through it with their inserts; what isn't given is drawn as it usually is. */
export function drawInsert(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = threadInsertWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const isCrowded = legsShown(given).length > FEW_LEGS;
  const slots = legSlots(legSizes(given, answer), {
    left: isCrowded ? EDGE : LEFT_COLUMN,
    right: box.width - EDGE,
  });
  const section = { top: LEG_LABELS, bottom: box.height - BOTTOM_ROW };
  const end = endOnIn(box);
  return {
    shapes: (
      <>
        {!isCrowded && end.radius > 0 && <EndOn answer={answer} {...end} />}
        <LegsCut slots={slots} {...section} />
      </>
    ),
    sizes: [...holeAndWall(given, box, isCrowded), ...legLabels(given, slots, box)],
    running: answer && {
      text: isCrowded ? drillWords(answer) : `${drillWords(answer)} · ${sayPercent(percentOf(answer))}`,
      x: box.width - EDGE,
      y: box.height - 8,
    },
    words:
      worked.is === 'answered'
        ? spoken(worked.question.thread.designation, worked.answer, unit)
        : 'A hole for a wire thread insert.',
  };
}

/** Where the hole's end-on view stands: under the two sizes of the left column, as large as there is room. */
function endOnIn({ height }: DrawingBox) {
  const top = 66;
  const radius = Math.max(0, Math.min(50, (height - top - 8) / 2));
  return { x: LEFT_COLUMN / 2 - 4, y: height - 8 - radius, radius };
}

type LegField = (typeof legFields)[number];

/** The legs that were given, and the next one while it is asked for or there is none yet. */
function legsShown(given: AnyGiven): readonly LegField[] {
  const known = legFields.filter((name) => given.has(name));
  const next = legFields.find((name) => !given.has(name));
  const isAsked = asksForLegs(given) || known.length === 0;
  return legFields.filter((name) => known.includes(name) || (isAsked && name === next));
}

function legSizes(given: AnyGiven, answer: LeggedAnswer | undefined) {
  const known = legFields.filter((name) => given.has(name));
  return legsShown(given).map((name) => {
    const leg = answer?.legs[known.includes(name) ? known.indexOf(name) : 0];
    const size = given.size(name)?.least;
    return {
      thickness: size && mean(size),
      insert: known.includes(name) ? leg?.chosen : undefined,
      isBlind: leg?.blindDepth !== undefined,
    };
  });
}

function holeAndWall(given: AnyGiven, { height }: DrawingBox, isCrowded: boolean): readonly DrawnSize[] {
  const hole = given.size('hole')?.tightest;
  const fromCentre = given.has('centreToEdge') || (!given.has('wall') && given.has('noHole') && !hole);
  const wall = given.exact(fromCentre ? 'centreToEdge' : 'wall');
  const place = (index: number) =>
    isCrowded ? { x: EDGE + index * 112, y: height - 10 } : { x: EDGE, y: 24 + index * 30 };
  return [
    { field: 'hole', name: 'hole', figure: hole && sizeFigure(hole, given.unit), ...place(0) },
    {
      field: fromCentre ? 'centreToEdge' : 'wall',
      name: fromCentre ? 'edge' : 'wall',
      figure: wall && figure(wall, given.unit),
      ...place(1),
    },
  ].map((size) => ({ ...size, anchor: 'start', beside: true }));
}

function legLabels(given: AnyGiven, slots: readonly LegSlot[], box: DrawingBox): readonly DrawnSize[] {
  const shown = legsShown(given);
  const labels = shown.map((field, index): DrawnSize => {
    const size = given.size(field)?.least;
    const slot = slots[index];
    return {
      field,
      name: shown.length === 1 ? 'metal' : `leg ${index + 1}`,
      figure: size && sizeFigure(size, given.unit),
      x: slot ? (slot.left + slot.right) / 2 : 0,
      y: 18,
    };
  });
  const next = legFields.find((name) => !given.has(name));
  const right = slots.at(-1)?.right ?? 0;
  const hasRoom = next !== undefined && !shown.includes(next) && right < box.width - ONE_MORE;
  return hasRoom
    ? [...labels, { field: next, name: '+ leg', x: box.width - EDGE - 4, y: 18, anchor: 'end' }]
    : labels;
}

function drillWords({ hole, drill }: LeggedAnswer): string {
  switch (hole.state) {
    case 'straight-to-tap':
      return 'no drill';
    case 'over':
      return 'over size';
    case 'solid':
    case 'drill':
    case 'run-drill-through-anyway':
      return `drill ${drill.drill.name}`;
    default:
      return hole.state satisfies never;
  }
}

function percentOf({ hole, drill }: LeggedAnswer): number {
  return hole.percentAfterDrill ?? hole.percent ?? drill.percent;
}

function spoken(thread: string, answer: LeggedAnswer, unit: ShownUnit): string {
  const { limits, hole, drill, legs } = answer;
  const now = hole.loosest ? `hole now ${figure(hole.loosest, unit)}, ` : '';
  const first = `${thread}: ${now}drill ${drill.drill.name}, tapped to ${figure(limits.majorLeast, unit)} at least.`;
  const each = legs.flatMap(({ thickness, chosen }, index) =>
    thickness ? [sayLeg(thickness, chosen.times, legs.length > 1 ? `Leg ${index + 1}` : 'Metal', unit)] : [],
  );
  return [first, ...each].join(' ');
}

function sayLeg(thickness: Length, times: string, name: string, unit: ShownUnit): string {
  return `${name} ${show(thickness, unit)} thick, insert ${times}.`;
}
