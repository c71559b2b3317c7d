import { mean, typedEstimate, type Estimate } from '../../../engine/reading/estimate.ts';
import { dividedBy, lengthOf, minus, times, zero, type Length } from '../../../engine/length/length.ts';
import {
  axleSideOf,
  isAxleLayout,
  isAxleSize,
  type AxleGiven,
} from '../../../engine/worksheets/axle-line-up/fields.ts';
import {
  lineUp,
  type LineUpAnswer,
  type LineUpQuestion,
} from '../../../engine/worksheets/axle-line-up/line-up.ts';
import { axleLimits, knownSizes } from '../../../engine/worksheets/axle-line-up/question.ts';
import { parted } from '../../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { axleLayouts } from '../../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { axleLineUpWorksheet } from '../../../engine/worksheets/axle-line-up/worksheet.ts';

/** An axle as it is drawn: its answer, or what is given of it with usual proportions for the rest. */
export type AxleSketch = {
  readonly question: LineUpQuestion;
  readonly answer: LineUpAnswer;
  /** Nothing of it is worked out yet: its spacers have no length. */
  readonly isSketch: boolean;
};

// In thousandths of the room between legs, or from shoulder to nut: only for drawing what nobody has given yet.
const USUAL: Readonly<Record<string, number>> = {
  width: 1000,
  seat: 1000,
  hub: 650,
  centre: 338,
  disc: 46,
  slot: 28,
  bracket: 75,
  float: 4,
  plate: 90,
  sprocket: 45,
  chainLine: 383,
  mount: 290,
  wheelPlace: 420,
};
const SOME_WIDTH = lengthOf('170 mm');
const SOME_STEP = lengthOf('1 thou');

/** The axle to draw; undefined where its sizes can't be laid out at all. */
export function axleSketch(
  given: AxleGiven & Parameters<typeof axleLineUpWorksheet.work>[0],
): AxleSketch | undefined {
  const worked = axleLineUpWorksheet.work(given);
  if (worked.is === 'answered') return { question: worked.question, answer: worked.answer, isSketch: false };
  const chosen = given.choice('layout');
  const layout = axleLayouts[isAxleLayout(chosen) ? chosen : 'front-one-disc'];
  const known = knownSizes(given);
  const whole = wholeOf(known);
  const missing = layout.needs.flatMap((name): [string, Estimate][] =>
    known[name] ? [] : [[name, typedEstimate(usual(name, known, whole))]],
  );
  const question: LineUpQuestion = {
    layout,
    side: axleSideOf(given),
    sizes: { ...Object.fromEntries(missing), ...known },
    onHand: {},
    limits: axleLimits(given),
    step: SOME_STEP,
  };
  const answer = lineUp(question);
  return answer.ok ? { question, answer: answer.value, isSketch: true } : undefined;
}

type Known = Readonly<Record<string, Estimate>>;

/** The room that the parts fill, as it is known or as the hub's width says. */
function wholeOf({ width, seat, hub }: Known): Length {
  const given = width ?? seat;
  if (given) return mean(given);
  return hub ? dividedBy(times(mean(hub), 1000), USUAL['hub'] ?? 650) : SOME_WIDTH;
}

/** A wheel's centre is somewhat past the middle of its own hub. */
function usual(name: string, { hub }: Known, whole: Length): Length {
  if (name === 'centre' && hub) return dividedBy(times(mean(hub), 52), 100);
  return dividedBy(times(whole, USUAL[parted(name).plain] ?? 50), 1000);
}

/** What the sizes given so far leave for the spacers; undefined before the room itself is known. */
export function roomLeft(given: AxleGiven, { question: { layout, sizes } }: AxleSketch): Length | undefined {
  const whole = given.size(layout.needs.includes('seat') ? 'seat' : 'width');
  if (!whole) return undefined;
  const filled = layout.parts
    .flatMap(({ length }) => length)
    .filter(({ of }) => !layout.spacers.includes(of) && isKnown(given, layout.usual[of], of))
    .map(({ of, top, bottom }) => dividedBy(times(sizeOf(sizes, layout.usual[of], of), top), bottom));
  return filled.reduce(minus, mean(whole.tightest));
}

type StandsIn = 'nothing' | { readonly as: string } | undefined;

function isKnown(given: AxleGiven, stands: StandsIn, name: string): boolean {
  const has = (one: string) => isAxleSize(one) && given.size(one) !== undefined;
  return has(name) || (typeof stands === 'object' && has(stands.as));
}

function sizeOf(sizes: Known, stands: StandsIn, name: string): Length {
  const size = sizes[name] ?? (typeof stands === 'object' ? sizes[stands.as] : undefined);
  return size ? mean(size) : zero;
}
