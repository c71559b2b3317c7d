import { combine, mean, type Estimate, type Term } from '../reading/estimate.ts';
import { isMore, largest, minus, times, zero, type Length } from '../length/length.ts';
import { RUN_OUT_PITCHES } from './tables/bolt-threads.ts';
import { verdictOf, worseVerdict, type Verdict } from '../reading/verdict.ts';
import type { GripQuestion, ShearPlane, GripAnswer } from './grip-question.ts';
import { allClamped, lastPlane, headTo, whatIsLeft } from './grip-clamped.ts';
import { nutBottoms, pastEnd, holeEnd } from './grip-ends.ts';

const PLANE_SOURCE = 'plain shank in every shear plane: common practice, no source';

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

export function shankWanted(q: GripQuestion, grip: Length): GripAnswer['shankWanted'] {
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

function shankAt(shank: Estimate, terms: readonly Term[]): NonNullable<ShearPlane['shank']> {
  const { value, band } = whatIsLeft(shank, terms);
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

/** The longer of two, for a figure that must hold for both. */
export function longer(a: Length, b: Length | undefined): Length {
  return b ? largest(a, b) : a;
}
