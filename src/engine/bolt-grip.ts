import { combine, mean, typedEstimate, type Band, type Estimate, type Term } from './estimate.ts';
import { lengthOf, minus, plus, roundToStep, sum, times, zero, type Length } from './length.ts';
import { isInchThread, type Thread } from './threads.ts';
import { verdictOf, type Verdict } from './verdict.ts';

/** How the joint is held: through with a nut, a bolt into the part, a stud in the part with a nut. */
export type Held = 'nut' | 'tapped' | 'stud';

export type GripQuestion = {
  readonly thread: Thread;
  readonly held: Held;
  /** Clamped parts, from the head or nut on. */
  readonly legs: readonly { readonly name: string; readonly thickness: Estimate }[];
  readonly headWasher?: Length;
  readonly nutWasher?: Length;
  readonly nutHeight?: Length;
  /** What the part has to hold of the thread, for a bolt into it or a stud. */
  readonly engagement?: Length;
  /** Plain shank from under the head to the first thread. */
  readonly shank?: Estimate;
  /** The bolt on hand, from under the head to its end. */
  readonly boltLength?: Estimate;
};

/** A face where two parts want to slide past each other, and whether plain shank lies in it. */
export type ShearPlane = {
  readonly between: readonly [string, string];
  /** From under the head. */
  readonly at: Length;
  readonly band: Band;
  readonly shank?: { readonly past: Length; readonly halfWidth: Length; readonly verdict: Verdict };
};

export type GripAnswer = {
  /** All that is clamped, washers counted. */
  readonly grip: Length;
  readonly planes: readonly ShearPlane[];
  /** Plain shank wanted: past the last plane, and never as far as the nut. */
  readonly shankWanted: { readonly least: Length; readonly most: Length };
  /** Least length of bolt or stud, and the next one that is made. */
  readonly lengthLeast: Length;
  readonly lengthToBuy: Length;
  readonly nutBottoms?: { readonly room: Length; readonly verdict: Verdict };
  /** What sticks out past the nut, or past what a part must hold. */
  readonly past?: { readonly over: Length; readonly least: Length; readonly verdict: Verdict };
};

export const PAST_SOURCE = 'two threads past the nut: common practice, no source';
const PLANE_SOURCE = 'plain shank in every shear plane: common practice, no source';
const HOLD_SOURCE = 'the least engagement';
const NUT_SOURCE = 'the nut must clamp before it meets the end of the thread';

/** A full hexagon nut: 0.875 D by inch, 0.9 D metric; about ASME B18.2.2 and ISO 4032, from memory. */
export function usualNutHeight(thread: Thread): Length {
  return times(thread.major, isInchThread(thread) ? '0.875' : '0.9');
}

/**
 * Grip of a bolt or stud: where its shear planes are, the shank they want, and the length to buy.
 *
 * Units:  Lengths from under the head (a stud: from under its nut), each plane with the band of the legs before it.
 * Range:  with a nut there is a plane between every two legs; into a part also between the last leg and the part. A stud
 *         has its planes counted the same from the nut's side.
 * Source: geometry; two threads past the nut, lengths in steps of 1/8 in or 5 mm: common practice, no source.
 */
export function boltGrip(q: GripQuestion): GripAnswer {
  const grip = sum([headWasherOf(q), ...q.legs.map((leg) => mean(leg.thickness)), nutWasherOf(q)]);
  const planes = shearPlanes(q);
  const lengthLeast = plus(grip, holdLength(q));
  return {
    grip,
    planes,
    shankWanted: { least: planes.at(-1)?.at ?? zero, most: grip },
    lengthLeast,
    lengthToBuy: roundToStep(lengthLeast, lengthOf(isInchThread(q.thread) ? '1/8 in' : '5 mm'), 'up'),
    ...bottoming(q),
    ...pastEnd(q),
  };
}

function headWasherOf(q: GripQuestion): Length {
  return q.headWasher ?? zero;
}

function nutWasherOf(q: GripQuestion): Length {
  return q.held === 'tapped' ? zero : (q.nutWasher ?? zero);
}

/** What the thread needs past the clamped parts. */
function holdLength(q: GripQuestion): Length {
  const withNut = plus(q.nutHeight ?? usualNutHeight(q.thread), times(q.thread.pitch, 2));
  const inPart = q.engagement ?? zero;
  if (q.held === 'tapped') return inPart;
  return q.held === 'nut' ? withNut : plus(withNut, inPart);
}

function shearPlanes(q: GripQuestion): readonly ShearPlane[] {
  const names = [...q.legs.map(({ name }) => name), ...(q.held === 'nut' ? [] : ['the tapped part'])];
  return names.slice(1).map((name, index) => {
    const terms = headTo(q, index + 1);
    const { value, band } = combine(terms);
    return {
      between: [names[index] ?? '', name] as const,
      at: value,
      band,
      ...(q.shank && { shank: shankAt(q.shank, terms) }),
    };
  });
}

function headTo(q: GripQuestion, legs: number): readonly Term[] {
  return [
    { estimate: typedEstimate(headWasherOf(q)), coefficient: 1 },
    ...q.legs.slice(0, legs).map(({ thickness }) => ({ estimate: thickness, coefficient: 1 })),
  ];
}

function less(estimate: Estimate, terms: readonly Term[]) {
  return combine([
    { estimate, coefficient: 1 },
    ...terms.map((term) => ({ ...term, coefficient: -term.coefficient })),
  ]);
}

function shankAt(shank: Estimate, terms: readonly Term[]): NonNullable<ShearPlane['shank']> {
  const { value, band } = less(shank, terms);
  return {
    past: value,
    halfWidth: band.halfWidth,
    verdict: verdictOf({
      value,
      halfWidth: band.halfWidth,
      limits: { lower: zero, source: PLANE_SOURCE },
    }),
  };
}

/** A shank longer than what is clamped: the nut, or the tapped part, meets the end of the thread first. */
function bottoming(q: GripQuestion): Pick<GripAnswer, 'nutBottoms'> {
  if (!q.shank || q.legs.length === 0) return {};
  const { value, band } = less(q.shank, allClamped(q));
  const room = minus(zero, value);
  const verdict = verdictOf({
    value: room,
    halfWidth: band.halfWidth,
    limits: { lower: zero, source: NUT_SOURCE },
  });
  return { nutBottoms: { room, verdict } };
}

function pastEnd(q: GripQuestion): Pick<GripAnswer, 'past'> {
  if (!q.boltLength || q.legs.length === 0) return {};
  const needed = typedEstimate(minus(holdLength(q), spare(q)));
  const { value, band } = less(q.boltLength, [...allClamped(q), { estimate: needed, coefficient: 1 }]);
  const least = spare(q);
  return {
    past: {
      over: value,
      least,
      verdict: verdictOf({
        value,
        halfWidth: band.halfWidth,
        limits: { lower: least, source: q.held === 'tapped' ? HOLD_SOURCE : PAST_SOURCE },
      }),
    },
  };
}

/** Two threads past a nut; a part has no far side to look at. */
function spare(q: GripQuestion): Length {
  return q.held === 'tapped' ? zero : times(q.thread.pitch, 2);
}

function allClamped(q: GripQuestion): readonly Term[] {
  return [...headTo(q, q.legs.length), { estimate: typedEstimate(nutWasherOf(q)), coefficient: 1 }];
}
