import { floatMm } from '../../../engine/length/length.ts';
import { figure, type ShownUnit } from '../../../engine/length/show.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import { usualNutHeight } from '../../../engine/thread/grip-ends.ts';
import { sayLengthToBuy, sayPlane } from '../../../engine/thread/say-grip.ts';
import { threadNamed, type Thread } from '../../../engine/thread/threads.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { legFields } from '../../../engine/worksheets/thread-engagement/fields.ts';
import type { JointAnswer } from '../../../engine/worksheets/thread-engagement/joint.ts';
import { asksForLegs, heldOf } from '../../../engine/worksheets/thread-engagement/question.ts';
import { sayEngagement } from '../../../engine/worksheets/thread-engagement/say-engagement.ts';
import { threadEngagementWorksheet } from '../../../engine/worksheets/thread-engagement/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';
import { HEAD, JointCut } from './joint-cut.tsx';
import { placeOf, slotsToScale, sumOf, type Slot } from './joint-slots.ts';
import { boltLabels, runningWidth } from './joint-labels.ts';

const EDGE = 10;
const LEG_LABELS = 46;
const ROW = 30;
// A figure stands over each part: narrower than this it would run into its neighbour's.
const LEAST_WIDTH = 57;
// A part is shown past what is engaged, so that its thread is seen to end in it.
const PAST = 8;
const TWO_ROWS = 160;

/** The bolt in its joint, legs to scale, what it engages in brass; what isn't given is drawn as it usually is. */
export function drawJoint(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = threadEngagementWorksheet.work(given);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const rows = box.height >= TWO_ROWS ? 2 : 1;
  const at = placed(given, answer, box);
  const running = answer && runningText(answer, unit);
  return {
    shapes: <JointCut {...at} top={LEG_LABELS + 2} bottom={box.height - rows * ROW - 2} />,
    sizes: [
      ...at.labels,
      ...boltLabels(given, {
        rows,
        left: EDGE,
        right: box.width - EDGE,
        bottom: box.height,
        running: running === undefined ? 0 : runningWidth(running),
        nextLeg: asksForLegs(given) ? undefined : legFields.find((name) => !given.has(name)),
      }),
    ],
    running: running === undefined ? undefined : { text: running, x: box.width - EDGE, y: box.height - 8 },
    words:
      worked.is === 'answered'
        ? spoken(worked.question.thread.thread, worked.answer, unit)
        : 'A bolt along its axis, with the parts that it clamps.',
  };
}

type LegField = (typeof legFields)[number];

/** The legs that were given, and the next one while it is asked for or there is none yet. */
function legsShown(given: AnyGiven): readonly LegField[] {
  const known = legFields.filter((name) => given.has(name));
  const next = legFields.find((name) => !given.has(name));
  return legFields.filter(
    (name) => known.includes(name) || (name === next && (asksForLegs(given) || known.length === 0)),
  );
}

function placed(given: AnyGiven, answer: JointAnswer | undefined, box: DrawingBox) {
  const held = heldOf(given);
  const counted = legsShown(given);
  const names = held === 'stud' ? counted.toReversed() : counted;
  const legMm = names.map((name) => mm(given.size(name)?.least));
  const holdMm = holdOf(given, answer);
  const left = EDGE + HEAD;
  const right = box.width - EDGE;
  const slots = slotsToScale([...legMm, holdMm], {
    left,
    width: right - left - PAST,
    least: LEAST_WIDTH,
  });
  const hold = slots.at(-1) ?? { left, right };
  const allMm = [...legMm, holdMm];
  const known = allMm.filter((size) => size !== undefined);
  const fromHead = (length: number | undefined): number | undefined => {
    if (length === undefined || known.length < allMm.length) return undefined;
    const place = placeOf(length, known, slots);
    return place === undefined ? undefined : Math.min(right - 2, place);
  };
  const shankMm = mm(given.size('shank')?.least);
  const legsMm = sumOf(legMm.flatMap((size) => size ?? []));
  const shankEnd = fromHead(held === 'stud' && shankMm !== undefined ? legsMm - shankMm : shankMm);
  return {
    held,
    legs: names.map((name, index) => ({ ...slotAt(slots, index), isKnown: given.has(name) })),
    hold,
    left,
    right: held === 'nut' ? hold.right + PAST : right,
    shankEnd: shankEnd === undefined ? undefined : Math.max(left, Math.min(hold.left, shankEnd)),
    boltEnd: held === 'stud' ? undefined : fromHead(mm(given.size('boltLength')?.least)),
    isBlind: given.choice('hole') === 'blind',
    hasPlanes: answer?.bolt !== undefined,
    labels: [
      ...names.map((name, index) => legLabel(given, name, slotAt(slots, index))),
      holdLabel(given, hold),
    ],
  };
}

function slotAt(slots: readonly Slot[], index: number): Slot {
  return slots[index] ?? { left: 0, right: 0 };
}

function mm(size: Parameters<typeof mean>[0] | undefined): number | undefined {
  return size && floatMm(mean(size));
}

/** What is drawn in brass: what is engaged, else what has to be; of a bolt with a nut the nut. */
function holdOf(given: AnyGiven, answer: JointAnswer | undefined): number | undefined {
  if (heldOf(given) === 'nut') {
    const thread = threadNamed(given.choice('thread') ?? '');
    const height = given.exact('nutHeight') ?? (thread && usualNutHeight(thread));
    return height && floatMm(height);
  }
  const engaged = given.size('engaged')?.least;
  if (engaged) return floatMm(mean(engaged));
  return answer && floatMm(answer.thread.least.both);
}

function legLabel(given: AnyGiven, field: LegField, slot: Slot): DrawnSize {
  const size = given.size(field)?.least;
  return {
    field,
    name: field.replace('leg', 'leg '),
    figure: size && sizeFigure(size, given.unit),
    x: (slot.left + slot.right) / 2,
    y: 18,
  };
}

/** Over what holds: how much is engaged, or how high the nut is. */
function holdLabel(given: AnyGiven, slot: Slot): DrawnSize {
  const x = (slot.left + slot.right) / 2;
  if (heldOf(given) === 'nut') {
    const height = given.exact('nutHeight');
    return { field: 'nutHeight', name: 'nut', figure: height && figure(height, given.unit), x, y: 18 };
  }
  const engaged = given.size('engaged')?.least;
  return {
    field: 'engaged',
    name: 'engaged',
    figure: engaged && sizeFigure(engaged, given.unit),
    x,
    y: 18,
    changes: true,
  };
}

/** The length to buy; without legs what has to be engaged. */
function runningText({ thread, bolt }: JointAnswer, unit: ShownUnit): string {
  if (bolt?.length) return sayLengthToBuy(bolt.length, unit);
  return `needs ${figure(thread.least.both, unit)}`;
}

function spoken(thread: Thread, { thread: answer, bolt }: JointAnswer, unit: ShownUnit): string {
  const planes = bolt?.grip.planes.map((plane) => sayPlane(plane, unit)).join(' ') ?? '';
  return `${thread.designation}, ${figure(thread.major, unit)} ${unit} across, in its part. ${sayEngagement(answer, unit)} ${planes}`.trim();
}
