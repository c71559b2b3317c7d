import { combine, mean, typedEstimate, type Band, type Estimate } from '../reading/estimate.ts';
import { setDown } from './insert-lengths.ts';
import { absolute, isNegative, minus, plus, sum, times, zero, type Length } from '../length/length.ts';
import {
  LEAST_RUN_OUT_PITCHES,
  PAST_NUT_PITCHES,
  POINT_PITCHES,
  RUN_OUT_PITCHES,
} from './tables/bolt-threads.ts';
import { usualThreadLength } from './thread-length.ts';
import { isInchThread, type Thread } from './threads.ts';
import { verdictOf, type Verdict } from '../reading/verdict.ts';
import type { GripQuestion, GripAnswer } from './grip-question.ts';
import { allClamped, whatIsLeft } from './grip-clamped.ts';

export const PAST_SOURCE = 'two whole threads past the nut: common practice, no source; point: ISO 4753';

const HOLD_SOURCE = 'the least engagement; point: ISO 4753; set-down: ASME B18.29.1, B18.29.2M';

const NUT_SOURCE =
  'the nut must clamp before it meets the run-out of the thread: ISO 4014, 5 pitches at most';

const HOLE_SOURCE = 'the bolt must clamp before it meets the end of its hole';

/** A full hexagon nut: 0.875 D by inch, 0.9 D metric; about ASME B18.2.2 and ISO 4032, from memory. */
export function usualNutHeight(thread: Thread): Length {
  return times(thread.major, isInchThread(thread) ? '0.875' : '0.9');
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
export function nutBottoms(q: GripQuestion): Pick<GripAnswer, 'nutBottoms'> {
  const ends = q.nutRunsTo ?? q.shankLongest ?? q.shank;
  if (q.legs.length === 0) return {};
  if (!ends) return bottomsByUsual(q);
  const { value, band } = whatIsLeft(ends, allClamped(q, 'thickness'));
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
  const past = whatIsLeft(bolt, allClamped(q, 'thickness')).value;
  const room = minus(plus(usualThread, part), past);
  if (!isNegative(room)) return {};
  const verdict: Verdict = { kind: 'too-close', near: 'lower', short: absolute(room) };
  return { nutBottoms: { room, runOut: zero, usualThread, verdict } };
}

/** How far the end stands past the clamped parts, and whether that is enough of it. */
export function pastEnd(q: GripQuestion): Pick<GripAnswer, 'past'> {
  if (!q.boltLength || q.legs.length === 0) return {};
  const least = q.held === 'tapped' ? zero : times(q.thread.pitch, PAST_NUT_PITCHES);
  const held = heldPast(q);
  const needed = typedEstimate(minus(held.least, least));
  const clamped = allClamped(q, 'thickest');
  const { value, band } = whatIsLeft(q.boltLength, [...clamped, { estimate: needed, coefficient: 1 }]);
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
export function holeEnd(q: GripQuestion): Pick<GripAnswer, 'hole'> {
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
  const { value: room, band } = whatIsLeft(depth, [{ estimate: typedEstimate(least), coefficient: 1 }]);
  const mayTake = minus(most, least);
  return { room, verdict: verdictBetween({ value: room, mayTake, band, lower: zero, source: HOLE_SOURCE }) };
}
