import { aimedInside, type Change } from '../../shim/change-wanted.ts';
import { bandOf, combine, mean, type Band, type Estimate } from '../../reading/estimate.ts';
import {
  isLess,
  isMore,
  isNegative,
  minus,
  negate,
  plus,
  ratioOf,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { cutTarget, metalOnTarget } from '../../length/metal-on.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { verdictOf, worseVerdict, type Limits, type Verdict } from '../../reading/verdict.ts';

/** What a size should come to. */
export type SettingWant = {
  readonly limits: Limits & { readonly lower: Length; readonly upper: Length };
  readonly aim: Length;
};

/** A size to cut to or a shim to add, with what the band leaves of the limits. */
export type Between = { readonly aim: Length; readonly lower: Length; readonly upper: Length };

export type SeatCut = Between & { readonly from: Length; readonly to: Length; readonly take: Length };

type Known = { readonly value: Length; readonly band: Band; readonly verdict: Verdict };

type SeatSizes = {
  readonly depth: Estimate;
  readonly goesIn: readonly { readonly size: Estimate; readonly count: number }[];
  /** How far it stands proud, read with it home in its recess: replaces the sum. */
  readonly direct?: Estimate;
};

export type SeatQuestion = SeatSizes & {
  /** Where it stands least proud, if the sizes were read at several places; the others are where it stands proudest. */
  readonly leastProud?: SeatSizes;
  /** How far it should stand proud; below zero it should lie deeper. */
  readonly want?: SettingWant;
  /** Of the dial, for depths. */
  readonly step: Length;
};

export type SeatAnswer = {
  /** What goes in less the depth: above zero it stands proud, below zero it lies under the face. */
  readonly proud: Length;
  readonly band: Band;
  readonly goesIn: Length;
  readonly direct: boolean;
  readonly verdict?: Verdict;
  /** It lies too deep: a shim behind it. */
  readonly shim?: Between;
  /** It stands too proud: the recess made deeper. */
  readonly deepen?: Result<SeatCut>;
};

/**
 * How a bearing stands in its recess, and the shim or the cut that puts it right.
 *
 * Units:   proud = what goes in − depth; above zero it stands proud, below zero it lies under the face. Shim: aim − proud;
 *          deeper recess: depth + proud − aim, rounded metal-on. Limits of both are what the band leaves of the want.
 * Range:   without a want only the figure and its band. Where it stands least proud counts where that alone is past a limit.
 * Refuses: for the cut: no-proof, no-step-in-limits.
 * Source:  difference of a dimension chain; common practice.
 */
export function bearingInSeat({ leastProud, ...proudest }: SeatQuestion): SeatAnswer {
  const answer = seatAt(proudest);
  if (!leastProud) return answer;
  const { shim: _shim, deepen: _deepen, ...least } = seatAt({ ...proudest, ...leastProud });
  return worseOf<SeatAnswer>(answer, least);
}

function seatAt({ depth, goesIn, want, direct, step }: Omit<SeatQuestion, 'leastProud'>): SeatAnswer {
  const terms = goesIn.map(({ size, count }) => ({ estimate: size, coefficient: count }));
  const { value, band } = combine(
    direct ? [{ estimate: direct, coefficient: 1 }] : [...terms, { estimate: depth, coefficient: -1 }],
  );
  const figures = { proud: value, band, goesIn: combine(terms).value, direct: direct !== undefined };
  if (!want) return figures;
  const { verdict, change } = judged(value, band, want);
  if (verdict.kind === 'good') return { ...figures, verdict };
  const shim = shimFor(change);
  if (shim) return { ...figures, verdict, shim };
  const isTooProud = isMore(change.aim, zero);
  return {
    ...figures,
    verdict,
    ...(isTooProud && { deepen: deepened({ from: mean(depth), change, band, want, step }) }),
  };
}

/**
 * The worse of two places of the same thing; the first where neither is. What would put the second right is left out: it
 * moves the first as far, and out of the limits that it keeps.
 */
function worseOf<Place extends { readonly verdict?: Verdict }>(first: Place, second: Place): Place {
  if (!first.verdict || !second.verdict || second.verdict.kind === 'good') return first;
  return worseVerdict(second.verdict, first.verdict) === second.verdict ? second : first;
}

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

type CutRefusal = Extract<Result<never>, { ok: false }>['refusal'];

export type TaperSetting = 'nut' | 'shim-between' | 'shim-behind';

export type TaperQuestion = {
  /** Read with an indicator, rocking it axially; below zero it is preload. */
  readonly endPlay: Estimate;
  /** The most, where it was read at several places; `endPlay` is the least of them. */
  readonly endPlayMost?: Estimate;
  /** The maker's figure, typed in. */
  readonly want: SettingWant;
  /** A shim between the two cones gives play; a shim behind a cup takes it, one under a cover's flange gives it. */
  readonly setBy: TaperSetting;
  readonly shim?: Estimate;
  /** Of the nut's thread. */
  readonly pitch?: Length;
};

export type TaperAnswer = Known & {
  /** End play to lose; below zero to gain. Limits are what the band leaves of the maker's figure. */
  readonly change: Between;
  /** Whether readings as close as these can prove the maker's figure at all. */
  readonly provable: boolean;
  /** Set by a nut: how far to turn it, tighter above zero; floating point. */
  readonly turnDegrees?: number;
  /** Set by a shim: how much thicker it has to be; below zero thinner. */
  readonly shimThicker?: Between;
  readonly newShim?: Between;
};

/**
 * Taper rollers set to the maker's end play or preload.
 *
 * Units:   end play, preload below zero. Turn = change / pitch · 360°. Shim between the cones: thinner by the change;
 *          behind a cup: thicker by the change.
 * Range:   a good setting is left: no turn and no shim. Read at several places, the one furthest past a limit counts.
 * Source:  the figure is the maker's; the rest is geometry.
 */
export function taperSetting({ endPlayMost, ...least }: TaperQuestion): TaperAnswer {
  const answer = taperAt(least);
  if (!endPlayMost) return answer;
  const { value, band, verdict, change, provable } = taperAt({ ...least, endPlay: endPlayMost });
  return worseOf<TaperAnswer>(answer, { value, band, verdict, change, provable });
}

function taperAt({ endPlay, want, setBy, shim, pitch }: Omit<TaperQuestion, 'endPlayMost'>): TaperAnswer {
  const value = mean(endPlay);
  const band = bandOf(endPlay);
  const { verdict, change } = judged(value, band, want);
  const answer = {
    value,
    band,
    verdict,
    change: { aim: change.aim, lower: change.least, upper: change.most },
    provable: !isMore(change.least, change.most),
  };
  if (verdict.kind === 'good') return answer;
  if (setBy === 'nut') return { ...answer, ...(pitch && { turnDegrees: 360 * ratioOf(change.aim, pitch) }) };
  const shimThicker = setBy === 'shim-behind' ? answer.change : turnedRound(answer.change);
  return { ...answer, shimThicker, ...(shim && { newShim: movedBy(mean(shim), shimThicker) }) };
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
  const [at, other] = [presentSleeve(least), longest && presentSleeve({ ...least, ...longest })];
  if (!at || !other) return at;
  const { shim: _shim, trim: _trim, ...most } = other;
  return worseOf<NonNullable<SleeveAnswer['present']>>(at, most);
}

function presentSleeve(q: SleeveQuestion): SleeveAnswer['present'] {
  const { sleeve, direct } = q;
  const longer = direct ?? sleeve;
  if (!longer) return undefined;
  const { value, band } = combine([
    { estimate: longer, coefficient: 1 },
    ...(direct ? [] : [{ estimate: q.between, coefficient: -1 }]),
  ]);
  const { verdict, change } = judged(value, band, q.want);
  const known = { value, band, verdict, direct: direct !== undefined };
  if (verdict.kind === 'good') return known;
  const shim = shimFor(change);
  if (shim) return { ...known, shim };
  if (!isMore(change.aim, zero) || !sleeve) return known;
  const from = mean(sleeve);
  const limits = { lower: minus(from, change.most), upper: minus(from, change.least) };
  const trim = cutWithin({ from, aim: minus(from, change.aim), ...limits, kind: 'length', ...q, band });
  return { ...known, trim };
}

function deepened(q: {
  readonly from: Length;
  readonly change: Change;
  readonly band: Band;
  readonly want: SettingWant;
  readonly step: Length;
}): Result<SeatCut> {
  const { from, change } = q;
  const limits = { lower: plus(from, change.least), upper: plus(from, change.most) };
  return cutWithin({ ...q, aim: plus(from, change.aim), ...limits, kind: 'recess-depth' });
}

function cutWithin(q: {
  readonly from: Length;
  readonly aim: Length;
  readonly lower: Length;
  readonly upper: Length;
  readonly kind: 'length' | 'recess-depth';
  readonly step: Length;
  readonly want: SettingWant;
  readonly band: Band;
}): Result<SeatCut> {
  const { from, aim, lower, upper, kind, step } = q;
  if (isMore(lower, upper))
    return refuse({ code: 'no-proof', halfWidth: q.band.halfWidth, ...sidesOf(q.want.limits) });
  const cut = cutTarget({ aim, lower, upper, present: from, kind, step });
  if (!cut.ok) return cut;
  return worked({ aim, lower, upper, from, to: cut.value.target, take: cut.value.take });
}

function judged(value: Length, { halfWidth, doubt }: Band, { limits, aim }: SettingWant) {
  const change = aimedInside({
    aim: minus(value, aim),
    least: minus(value, minus(limits.upper, halfWidth)),
    most: minus(value, plus(limits.lower, halfWidth)),
  });
  return { verdict: verdictOf({ value, halfWidth, limits, doubt }), change };
}

/** A shim makes up what is missing; none where the band leaves nothing of the limits. */
function shimFor({ aim, least, most }: Change): Between | undefined {
  if (!isLess(aim, zero) || isMore(least, most)) return undefined;
  return { aim: negate(aim), lower: negate(most), upper: negate(least) };
}

function turnedRound({ aim, lower, upper }: Between): Between {
  return { aim: negate(aim), lower: negate(upper), upper: negate(lower) };
}

function movedBy(from: Length, { aim, lower, upper }: Between): Between {
  return { aim: plus(from, aim), lower: plus(from, lower), upper: plus(from, upper) };
}

function sidesOf({ lower, upper }: SettingWant['limits']) {
  return { lower, upper };
}
