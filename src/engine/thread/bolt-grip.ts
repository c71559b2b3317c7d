import { combine, mean, typedEstimate, type Band, type Estimate, type Term } from '../reading/estimate.ts';
import { setDown } from './insert-lengths.ts';
import {
  absolute,
  isMore,
  isNegative,
  largest,
  minus,
  plus,
  sum,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import {
  LEAST_RUN_OUT_PITCHES,
  PAST_NUT_PITCHES,
  POINT_PITCHES,
  RUN_OUT_PITCHES,
} from './tables/bolt-threads.ts';
import { usualThreadLength } from './thread-length.ts';
import { isInchThread, type Thread } from './threads.ts';
import { verdictOf, worseVerdict, type Verdict } from '../reading/verdict.ts';

/** How the joint is held: through with a nut, a bolt into the part, a stud in the part with a nut. */
export type Held = 'nut' | 'tapped' | 'stud';

/** A clamped part; `thickest` where its places differ. */
export type GripLeg = { readonly name: string; readonly thickness: Estimate; readonly thickest?: Estimate };

/** The tapped hole: through, or so deep in full thread from the part's face. */
export type TappedHole = 'through' | { readonly depth: Estimate };

export type GripQuestion = {
  readonly thread: Thread;
  readonly held: Held;
  /** Clamped parts, from the head on; those of a stud from the part's face on. */
  readonly legs: readonly GripLeg[];
  readonly headWasher?: Length;
  readonly nutWasher?: Length;
  readonly nutHeight?: Length;
  /** What the part has to hold of the thread, for a bolt into it or a stud. */
  readonly engagement?: Length;
  /** The part holds by an insert, whose first coil lies below the face. */
  readonly withInsert?: boolean;
  readonly hole?: TappedHole;
  /** Plain shank from under the head (a stud: from the part's face) to the first trace of thread. */
  readonly shank?: Estimate;
  readonly shankLongest?: Estimate;
  /** From the same place to where the nut stops, run on by hand: the run-out is measured then. */
  readonly nutRunsTo?: Estimate;
  /** The bolt on hand, from under the head to its end; a stud over all. */
  readonly boltLength?: Estimate;
  readonly boltLongest?: Estimate;
};

/** A face where two parts want to slide past each other, and whether plain shank lies in it. */
export type ShearPlane = {
  readonly between: readonly [string, string];
  /** From under the head; of a stud from the part's face. */
  readonly at: Length;
  readonly from: 'head' | 'part';
  readonly band: Band;
  /** At the face of a part that a bolt is turned into its thread begins: no shank can lie there, and none is judged. */
  readonly isThreadAlways: boolean;
  readonly shank?: { readonly past: Length; readonly halfWidth: Length; readonly verdict: Verdict };
};

export type GripAnswer = {
  /** All that is clamped, washers counted. */
  readonly grip: Length;
  readonly planes: readonly ShearPlane[];
  /**
   * Plain shank wanted: past the last plane between clamped parts, and its run-out clear of the nut or of the tapped part.
   * `missing`: both can't be had without so much more washer.
   */
  readonly shankWanted: { readonly least: Length; readonly most: Length; readonly missing?: Length };
  readonly nutBottoms?: {
    /** From the end of the thread to where the nut clamps, before anything is taken off for the run-out. */
    readonly room: Length;
    /** What the run-out may take of it; zero where it was measured. */
    readonly runOut: Length;
    /** The thread that a bolt of this length usually has, where its shank was not given. */
    readonly usualThread?: Length;
    readonly verdict: Verdict;
  };
  /** What sticks out past the nut, or past what a part must hold. `point`: what of it may be no whole thread. */
  readonly past?: {
    readonly over: Length;
    readonly least: Length;
    readonly point: Length;
    readonly verdict: Verdict;
  };
  /**
   * From the bolt's end to the end of a blind hole's thread, of a stud from what must be in the part; without `room` the hole
   * was not given.
   */
  readonly hole?: { readonly room?: Length; readonly verdict: Verdict };
};

export const PAST_SOURCE = 'two whole threads past the nut: common practice, no source; point: ISO 4753';
const PLANE_SOURCE = 'plain shank in every shear plane: common practice, no source';
const HOLD_SOURCE = 'the least engagement; point: ISO 4753; set-down: ASME B18.29.1, B18.29.2M';
const NUT_SOURCE =
  'the nut must clamp before it meets the run-out of the thread: ISO 4014, 5 pitches at most';
const HOLE_SOURCE = 'the bolt must clamp before it meets the end of its hole';

/** A full hexagon nut: 0.875 D by inch, 0.9 D metric; about ASME B18.2.2 and ISO 4032, from memory. */
export function usualNutHeight(thread: Thread): Length {
  return times(thread.major, isInchThread(thread) ? '0.875' : '0.9');
}

/**
 * Grip of a bolt or stud: where its shear planes are, the shank they want, and whether one on hand holds and clamps.
 *
 * Units:  Lengths from under the head; of a stud from the part's face. Each with the band of the legs before it.
 * Range:  with a nut there is a plane between every two legs; into a part also between the last leg and the part, for a
 *         stud between the part and the first leg. Where a run-out, a point or an insert's set-down isn't measured, good
 *         holds at the most it may be, no good at the least, and in between it is too close to call. So is a bolt whose shank
 *         wasn't given and that, with the thread it usually has, would not clamp.
 * Source: geometry; ISO 4014 (run-out), ISO 4753 (point), ASME B18.29.1 (set-down); two threads past the nut: common
 *         practice, no source.
 */
export function boltGrip(q: GripQuestion): GripAnswer {
  const grip = combine(allClamped(q, 'thickness')).value;
  return {
    grip,
    planes: shearPlanes(q),
    shankWanted: shankWanted(q, grip),
    ...nutBottoms(q),
    ...pastEnd(q),
    ...holeEnd(q),
  };
}

/** The worst of all that was judged of a bolt on hand; undefined where nothing was. */
export function gripVerdict({ planes, nutBottoms: nut, past, hole }: GripAnswer): Verdict | undefined {
  const all = [...planes.map(({ shank }) => shank), nut, past, hole].flatMap((one) => one?.verdict ?? []);
  return all.length === 0 ? undefined : all.reduce(worseVerdict);
}

/** What the thread needs past the clamped parts: at most with every run-out, point and set-down against it. */
export function heldPast(q: GripQuestion): { readonly least: Length; readonly most: Length } {
  const point = times(q.thread.pitch, POINT_PITCHES);
  const nut = plus(q.nutHeight ?? usualNutHeight(q.thread), times(q.thread.pitch, PAST_NUT_PITCHES));
  const past = { least: nut, most: plus(nut, point) };
  if (q.held === 'nut') return past;
  const part = inPart(q);
  if (q.held === 'tapped') return part;
  return { least: plus(past.least, part.least), most: plus(past.most, part.most) };
}

/** How deep the end goes into the part, for what the part must hold. */
export function inPart(q: GripQuestion): { readonly least: Length; readonly most: Length } {
  const engagement = q.engagement ?? zero;
  const down = q.withInsert === true ? setDown(q.thread) : { least: zero, most: zero };
  const point = times(q.thread.pitch, POINT_PITCHES);
  return { least: plus(engagement, down.least), most: sum([engagement, down.most, point]) };
}

type Which = 'thickness' | 'thickest';

/** Everything between head or part and nut, legs at their thinnest or thickest place. */
export function allClamped(q: GripQuestion, which: Which): readonly Term[] {
  return [
    { estimate: typedEstimate(headWasherOf(q)), coefficient: 1 },
    ...legTerms(q, which),
    { estimate: typedEstimate(nutWasherOf(q)), coefficient: 1 },
  ];
}

/** How far the last plane between two clamped parts lies from the head or the part's face, and the terms that make it. */
export function lastPlane(q: GripQuestion): readonly Term[] | undefined {
  if (q.held === 'stud') return headTo(q, q.legs.length - 1);
  return q.legs.length > 1 ? headTo(q, q.legs.length - 1) : undefined;
}

function headWasherOf(q: GripQuestion): Length {
  return q.held === 'stud' ? zero : (q.headWasher ?? zero);
}

function nutWasherOf(q: GripQuestion): Length {
  return q.held === 'tapped' ? zero : (q.nutWasher ?? zero);
}

function legTerms(q: GripQuestion, which: Which, count = q.legs.length): readonly Term[] {
  return q.legs.slice(0, count).map((leg) => ({
    estimate: which === 'thickest' ? (leg.thickest ?? leg.thickness) : leg.thickness,
    coefficient: 1,
  }));
}

/** The shank must reach past the thickest place of each leg. */
function headTo(q: GripQuestion, legs: number): readonly Term[] {
  return [
    { estimate: typedEstimate(headWasherOf(q)), coefficient: 1 },
    ...legTerms(q, 'thickest', Math.max(0, legs)),
  ];
}

function shankWanted(q: GripQuestion, grip: Length): GripAnswer['shankWanted'] {
  const plane = lastPlane(q);
  const least = plane && q.legs.length > 0 ? combine(plane).value : zero;
  const most = minus(grip, times(q.thread.pitch, RUN_OUT_PITCHES));
  return { least, most, ...(isMore(least, most) && { missing: minus(least, most) }) };
}

function shearPlanes(q: GripQuestion): readonly ShearPlane[] {
  const legs = q.legs.map(({ name }) => name);
  const isStud = q.held === 'stud';
  const part = legs.length === 0 ? [] : ['the tapped part'];
  const names = { nut: legs, tapped: [...legs, ...part], stud: [...part, ...legs] }[q.held];
  return names.slice(1).map((name, index) => {
    const terms = headTo(q, isStud ? index : index + 1);
    const isThreadAlways = q.held === 'tapped' && index === names.length - 2;
    const { value, band } = combine(terms);
    return {
      between: [names[index] ?? '', name] as const,
      at: value,
      from: isStud ? ('part' as const) : ('head' as const),
      band,
      isThreadAlways,
      ...(q.shank && !isThreadAlways && { shank: shankAt(q.shank, terms) }),
    };
  });
}

function less(estimate: Estimate, terms: readonly Term[]) {
  return combine([
    { estimate, coefficient: 1 },
    ...terms.map((term) => ({ ...term, coefficient: -term.coefficient })),
  ]);
}

function shankAt(shank: Estimate, terms: readonly Term[]): NonNullable<ShearPlane['shank']> {
  const { value, band } = less(shank, terms);
  // A stud without plain shank has thread in the very face of its part.
  const noShank = !isMore(mean(shank), zero);
  return {
    past: value,
    halfWidth: band.halfWidth,
    verdict: noShank
      ? { kind: 'no-good', way: 'under', by: minus(zero, value) }
      : verdictOf({
          value,
          ...band,
          limits: { lower: zero, source: PLANE_SOURCE },
        }),
  };
}

/** Good at the most an unmeasured length may take, no good at the least, else too close to call. */
function verdictBetween(q: {
  readonly value: Length;
  readonly mayTake: Length;
  readonly band: Band;
  readonly lower: Length;
  readonly source: string;
}): Verdict {
  const at = (value: Length) => verdictOf({ value, ...q.band, limits: { lower: q.lower, source: q.source } });
  const worst = at(minus(q.value, q.mayTake));
  if (worst.kind !== 'no-good') return worst;
  const best = at(q.value);
  return best.kind === 'no-good' ? best : { kind: 'too-close', near: 'lower', short: worst.by };
}

/** The nut, or the tapped part, meets the run-out of the thread before it clamps. */
function nutBottoms(q: GripQuestion): Pick<GripAnswer, 'nutBottoms'> {
  const ends = q.nutRunsTo ?? q.shankLongest ?? q.shank;
  if (q.legs.length === 0) return {};
  if (!ends) return bottomsByUsual(q);
  const { value, band } = less(ends, allClamped(q, 'thickness'));
  const room = minus(zero, value);
  const runOut = q.nutRunsTo ? zero : times(q.thread.pitch, RUN_OUT_PITCHES);
  const surely = q.nutRunsTo ? zero : times(q.thread.pitch, LEAST_RUN_OUT_PITCHES);
  const verdict = verdictBetween({
    value: minus(room, surely),
    mayTake: minus(runOut, surely),
    band,
    lower: zero,
    source: NUT_SOURCE,
  });
  return { nutBottoms: { room, runOut, verdict } };
}

/** So long that one with the usual thread would not clamp: nobody knows until its shank was measured. */
function bottomsByUsual(q: GripQuestion): Pick<GripAnswer, 'nutBottoms'> {
  const bolt = q.boltLongest ?? q.boltLength;
  if (!bolt) return {};
  const part = q.held === 'stud' ? inPart(q).most : zero;
  const outside = minus(mean(bolt), part);
  const usualThread = usualThreadLength(q.thread, outside);
  const past = less(bolt, allClamped(q, 'thickness')).value;
  const room = minus(plus(usualThread, part), past);
  if (!isNegative(room)) return {};
  const verdict: Verdict = { kind: 'too-close', near: 'lower', short: absolute(room) };
  return { nutBottoms: { room, runOut: zero, usualThread, verdict } };
}

function pastEnd(q: GripQuestion): Pick<GripAnswer, 'past'> {
  if (!q.boltLength || q.legs.length === 0) return {};
  const least = q.held === 'tapped' ? zero : times(q.thread.pitch, PAST_NUT_PITCHES);
  const held = heldPast(q);
  const needed = typedEstimate(minus(held.least, least));
  const clamped = allClamped(q, 'thickest');
  const { value, band } = less(q.boltLength, [...clamped, { estimate: needed, coefficient: 1 }]);
  const point = minus(held.most, held.least);
  const verdict = verdictBetween({
    value,
    mayTake: point,
    band,
    lower: least,
    source: q.held === 'tapped' ? HOLD_SOURCE : PAST_SOURCE,
  });
  return { past: { over: value, least, point, verdict } };
}

/** A bolt longer than its hole is deep never clamps, however tight it feels. */
function holeEnd(q: GripQuestion): Pick<GripAnswer, 'hole'> {
  const bolt = q.boltLongest ?? q.boltLength;
  if (q.held === 'nut' || !bolt || q.legs.length === 0 || q.hole === 'through') return {};
  if (!q.hole) return { hole: { verdict: { kind: 'too-close', near: 'upper', short: zero } } };
  if (q.held === 'stud') return { hole: studInHole(q, q.hole.depth) };
  const { value: room, band } = combine([
    ...allClamped(q, 'thickness'),
    { estimate: q.hole.depth, coefficient: 1 },
    { estimate: bolt, coefficient: -1 },
  ]);
  const limits = { lower: zero, source: HOLE_SOURCE };
  return { hole: { room, verdict: verdictOf({ value: room, ...band, limits }) } };
}

/** A stud must hold in the part before its end meets the end of the hole's thread. */
function studInHole(q: GripQuestion, depth: Estimate): NonNullable<GripAnswer['hole']> {
  const { least, most } = inPart(q);
  const { value: room, band } = less(depth, [{ estimate: typedEstimate(least), coefficient: 1 }]);
  const mayTake = minus(most, least);
  return { room, verdict: verdictBetween({ value: room, mayTake, band, lower: zero, source: HOLE_SOURCE }) };
}

/** The longer of two, for a figure that must hold for both. */
export function longer(a: Length, b: Length | undefined): Length {
  return b ? largest(a, b) : a;
}
