import {
  changeOfAll,
  cutOfAll,
  placeOf,
  spreadOf,
  worstOf,
  type Place,
  type Places,
  type SettingWant,
} from './change-of-places.ts';
import { combine, mean, type Estimate } from '../../reading/estimate.ts';
import { isLess, isMore, isNegative, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { metalOnTarget } from '../../length/metal-on.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import {
  type Between,
  type SeatCut,
  type Known,
  type CutRefusal,
  cutWithin,
  shimFor,
  sidesOf,
} from './seat-cuts.ts';

export type SleeveQuestion = {
  /** Between the faces the inner races stand on, or between the races themselves with the outer ones seated. */
  readonly between: Estimate;
  readonly sleeve?: Estimate;
  /** By how much the sleeve is longer, read with it in the hub: replaces sleeve less distance. */
  readonly direct?: Estimate;
  /** Where the sleeve is longest over the distance, if they were read at several places; the others are where it is least. */
  readonly longest?: Pick<SleeveQuestion, 'between' | 'sleeve' | 'direct'>;
  /** By how much the sleeve should be longer. */
  readonly want: SettingWant;
  readonly step: Length;
};

export type SleeveAnswer = {
  /**
   * The sleeve to make, and its limits after the band of the distance; beside a direct reading they stand whole where the
   * band would leave nothing of them, and prove nothing.
   */
  readonly make: Between & { readonly target: Length; readonly provable: boolean };
  /** The sleeve there is: by how much it is longer. */
  readonly present?: Known & {
    readonly direct: boolean;
    readonly trim?: Result<SeatCut>;
    readonly shim?: Between;
  };
};

export type SleeveRefusal = { readonly code: 'sleeve-would-side-load'; readonly lower: Length };

/**
 * The sleeve between the inner races of two ball bearings.
 *
 * Units:   length = distance between the bearing faces + what is wanted over it. Rounded metal-on: longer. How far a
 *          sleeve stands proud of the shoulder in the hub is its excess, and counts before sleeve less distance.
 * Range:   wanted zero or more, at the shortest place and at the longest. A shorter sleeve lets the nut pull the inner races together and loads the balls sideways.
 * Refuses: sleeve-would-side-load; no-proof, no-step-in-limits, for the sleeve and for a trim.
 * Source:  geometry; the usual excess is common practice, no source.
 */
export function innerSleeve(q: SleeveQuestion): Result<SleeveAnswer, SleeveRefusal | CutRefusal> {
  const { limits, aim } = q.want;
  if (isNegative(limits.lower)) return refuse({ code: 'sleeve-would-side-load', lower: limits.lower });
  const { value: distance, band } = distanceBetween(q);
  const { halfWidth } = band;
  const provable = !isMore(times(halfWidth, 2), minus(limits.upper, limits.lower));
  if (!provable && !q.direct) return refuse({ code: 'no-proof', halfWidth, ...sidesOf(limits) });
  const margin = provable ? halfWidth : zero;
  const make = {
    aim: plus(distance, aim),
    lower: plus(plus(distance, limits.lower), margin),
    upper: minus(plus(distance, limits.upper), margin),
  };
  const target = metalOnTarget(make, 'length', q.step);
  if (!target.ok) return target;
  const present = presentSleeves(q);
  return worked({ make: { ...make, target: target.value, provable }, ...(present && { present }) });
}

/** As it was measured; beside a sleeve that was read in place, the sleeve less what it stands proud. */
function distanceBetween({ between, sleeve, direct }: SleeveQuestion) {
  const terms =
    direct && sleeve
      ? [
          { estimate: sleeve, coefficient: 1 },
          { estimate: direct, coefficient: -1 },
        ]
      : [{ estimate: between, coefficient: 1 }];
  return combine(terms);
}

function presentSleeves({ longest, ...least }: SleeveQuestion): SleeveAnswer['present'] {
  const { want, step } = least;
  const places = [least, ...(longest ? [longest] : [])].flatMap((at) => sleeveAt(at, want) ?? []);
  const [first, ...more] = places;
  if (!first) return undefined;
  const all: Places<SleevePlace> = [first, ...more];
  const { value, band, verdict, direct, change: own } = worstOf(all);
  const present = { value, band, verdict, direct };
  if (verdict.kind === 'good') return present;
  const change = changeOfAll(all, want);
  const { aim } = change ?? own;
  if (isLess(aim, zero)) {
    const shim = change && shimFor(change);
    return { ...present, ...(shim && { shim }), ...(!change && { apart: spreadOf(all) }) };
  }
  const [from, ...others] = all.flatMap(({ of, ...place }) => (of ? [{ ...place, of }] : []));
  if (!isMore(aim, zero) || !from) return present;
  const cut = cutOfAll([from, ...others], want, 'length');
  if (!cut) return { ...present, apart: spreadOf(all) };
  return { ...present, trim: cutWithin({ ...cut, kind: 'length', step, want, band }) };
}

type SleevePlace = Place & { readonly direct: boolean; readonly of: Length | undefined };

function sleeveAt(
  { sleeve, direct, between }: Pick<SleeveQuestion, 'between' | 'sleeve' | 'direct'>,
  want: SettingWant,
): SleevePlace | undefined {
  const longer = direct ?? sleeve;
  if (!longer) return undefined;
  const read = combine([
    { estimate: longer, coefficient: 1 },
    ...(direct ? [] : [{ estimate: between, coefficient: -1 }]),
  ]);
  return { ...placeOf(read, want), direct: direct !== undefined, of: sleeve && mean(sleeve) };
}
