import { bandOf, type Estimate } from '../../reading/estimate.ts';
import { absolute, floatMm, isMore, isNegative, plus, type Length } from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { verdictOf, type Limits, type Verdict } from '../../reading/verdict.ts';
import {
  MOST_RAKE_DEGREES,
  type Figures,
  type Standing,
  figuresOf,
  stand,
  radians,
  degrees,
  toStep,
} from './wheels-on-ground.ts';

/** How the fork sits in the frame. The extra angle is what raked clamps add: the fork leans further than the steering axis. */
export type ForkSetting = {
  readonly clampOffset: Estimate;
  /** The axle ahead of the fork's leg; below zero behind it. */
  readonly axleLead: Estimate;
  readonly extraAngleDegrees: number;
};

export type SteeringBefore = ForkSetting & {
  /** Steering axis from the vertical. */
  readonly rakeDegrees: number;
  /** The rake is known to ± this much. */
  readonly rakeWithinDegrees: number;
  /** Axle above the ground, the machine loaded as it is ridden. */
  readonly frontRadius: Estimate;
  readonly rearRadius: Estimate;
  readonly wheelbase: Estimate;
  /** From the clamps to the axle along the leg; needed only where clamps add an angle, before or after. */
  readonly forkLength?: Estimate;
};

/** What a swap changes; what is left out stays as it is. */
export type SteeringChange = {
  readonly forkLonger?: Length;
  readonly frontRadius?: Length;
  readonly rearRadius?: Length;
  /** The frame over the rear axle, up is above zero. */
  readonly rearHigher?: Length;
  readonly clampOffset?: Length;
  readonly extraAngleDegrees?: number;
  readonly axleLead?: Length;
};

export type ChangeName = keyof SteeringChange;

export type SteeringState = {
  readonly rakeDegrees: number;
  readonly offset: Length;
  readonly trail: Length;
  readonly normalTrail: Length;
  readonly wheelbase: Length;
};

export type SteeringAnswer = {
  readonly before: SteeringState;
  readonly after: SteeringState;
  /** The trail is known to ± this much. */
  readonly trailHalfWidth: Length;
  /** Readings of a size it stands on contradict each other. */
  readonly doubt?: true;
  /** Each change by itself; what they do together beyond their sum. */
  readonly moved: readonly {
    readonly name: ChangeName;
    readonly trail: Length;
    readonly rakeDegrees: number;
  }[];
  readonly together: Length;
  /** How much the frame rises over the front axle, half-way, and over the rear axle. */
  readonly rise: { readonly front: Length; readonly middle: Length; readonly rear: Length };
};

export type SteeringRefusal =
  | { readonly code: 'rake-out-of-reach'; readonly degrees: number; readonly mostDegrees: number }
  | { readonly code: 'fork-length-needed' }
  | { readonly code: 'wheels-do-not-reach' };

export const TRAIL_SOURCE = 'trail (R sin ρ − o) / cos ρ, ρ from the vertical: published formula';

/**
 * Trail of a front wheel, floating point.
 *
 * Units:   degrees from the vertical; R the loaded tyre radius, offset perpendicular to the steering axis. To .001 mm.
 * Range:   rake below 60°.
 * Source:  trail = (R sin ρ − o) / cos ρ, normal trail = R sin ρ − o; published formula.
 */
export function trailOf(q: {
  readonly rakeDegrees: number;
  readonly tyreRadius: Length;
  readonly offset: Length;
}): { readonly trail: Length; readonly normalTrail: Length } {
  const rake = radians(q.rakeDegrees);
  const normalMm = floatMm(q.tyreRadius) * Math.sin(rake) - floatMm(q.offset);
  return { trail: toStep(normalMm / Math.cos(rake)), normalTrail: toStep(normalMm) };
}

/**
 * The offset that gives a wanted trail, floating point: o = R sin ρ − trail · cos ρ.
 *
 * Units:   as `trailOf`.
 */
export function offsetForTrail(q: {
  readonly rakeDegrees: number;
  readonly tyreRadius: Length;
  readonly trail: Length;
}): Length {
  const rake = radians(q.rakeDegrees);
  return toStep(floatMm(q.tyreRadius) * Math.sin(rake) - floatMm(q.trail) * Math.cos(rake));
}

/**
 * Rake, trail and ride height before and after a fork, wheel or tyre swap, and which change moved the trail how far.
 *
 * Units:   degrees and Lengths; floating point inside, to .001 mm. A rise is above zero.
 * Range:   the frame is rigid and the springs sit as before; the machine stands on both wheels. The whole offset counts:
 *          clamps + axle lead · cos δ + fork length · sin δ, δ the clamps' extra angle.
 * Refuses: rake-out-of-reach, fork-length-needed (an extra angle without the fork's length), wheels-do-not-reach.
 * Source:  geometry of a rigid frame on two wheels; a longer fork drops the axle by ΔL·cos ρ, the frame tilts until both
 *          wheels stand on the ground. The tilt is solved in one step, which is where going round and round ends.
 */
export function steeringGeometry(
  before: SteeringBefore,
  change: SteeringChange,
): Result<SteeringAnswer, SteeringRefusal> {
  if (!(before.rakeDegrees >= 0 && before.rakeDegrees < MOST_RAKE_DEGREES))
    return refuse({
      code: 'rake-out-of-reach',
      degrees: before.rakeDegrees,
      mostDegrees: MOST_RAKE_DEGREES,
    });
  const isRaked = before.extraAngleDegrees !== 0 || (change.extraAngleDegrees ?? 0) !== 0;
  if (isRaked && !before.forkLength) return refuse({ code: 'fork-length-needed' });
  const figures = figuresOf(before);
  const standing = stand(figures, {});
  const after = stand(figures, change);
  if (!standing || !after) return refuse({ code: 'wheels-do-not-reach' });
  const moved = namesOf(change).flatMap((name) => {
    const alone = stand(figures, { [name]: change[name] });
    if (!alone) return [];
    return [
      { name, trailMm: alone.trailMm - standing.trailMm, rakeDegrees: degrees(alone.rake - standing.rake) },
    ];
  });
  const togetherMm = after.trailMm - standing.trailMm - moved.reduce((so, { trailMm }) => so + trailMm, 0);
  return worked({
    before: stateOf(standing),
    after: stateOf(after),
    trailHalfWidth: toStep(trailHalfWidthMm(before, change)),
    ...(isInDoubt(before) && { doubt: true }),
    moved: moved.map(({ trailMm, ...rest }) => ({ ...rest, trail: toStep(trailMm) })),
    together: toStep(togetherMm),
    rise: {
      front: toStep(after.rise.frontMm),
      middle: toStep((after.rise.frontMm + after.rise.rearMm) / 2),
      rear: toStep(after.rise.rearMm),
    },
  });
}

/** Whether the trail is known to be above nothing. */
export type TrailSign = 'positive' | 'may-be-negative' | 'negative';

/**
 * Whether the tyre is known to touch the ground behind the steering axis.
 *
 * Range:   a trail whose band holds nothing, or reaches it, may be negative; one that lies below by more than its band is.
 */
export function trailSign({
  after,
  trailHalfWidth,
}: Pick<SteeringAnswer, 'after' | 'trailHalfWidth'>): TrailSign {
  if (isNegative(plus(after.trail, trailHalfWidth))) return 'negative';
  return isMore(after.trail, trailHalfWidth) ? 'positive' : 'may-be-negative';
}

/**
 * The trail against the fitter's own limits, and against nothing: without limits only a trail that is or may be negative is
 * judged, as there is no trail that is right for every machine.
 */
export function trailVerdict(
  answer: Pick<SteeringAnswer, 'after' | 'trailHalfWidth' | 'doubt'>,
  limits: Limits | undefined,
): Verdict | undefined {
  const sign = trailSign(answer);
  const { trail } = answer.after;
  const { trailHalfWidth: halfWidth, doubt } = answer;
  const own = limits && verdictOf({ value: trail, halfWidth, limits, doubt });
  if (sign === 'positive' || own?.kind === 'no-good') return own;
  // What may be negative is not ridden: it is no good until it is known better.
  return { kind: 'no-good', way: 'under', by: absolute(trail) };
}

function stateOf(standing: Standing): SteeringState {
  return {
    rakeDegrees: degrees(standing.rake),
    offset: toStep(standing.offsetMm),
    trail: toStep(standing.trailMm),
    normalTrail: toStep(standing.normalMm),
    wheelbase: toStep(standing.wheelbaseMm),
  };
}

function isInDoubt(before: SteeringBefore): boolean {
  const { frontRadius, rearRadius, wheelbase, clampOffset, axleLead, forkLength } = before;
  return [frontRadius, rearRadius, wheelbase, clampOffset, axleLead, forkLength].some(
    (size) => size !== undefined && bandOf(size).doubt === true,
  );
}

/** Each input moved by its own half width, the shifts of the trail put together by root-sum-square (JCGM 100:2008 5.1). */
function trailHalfWidthMm(before: SteeringBefore, change: SteeringChange): number {
  const figures = figuresOf(before);
  const wideMm = (estimate: Estimate | undefined) => (estimate ? floatMm(bandOf(estimate).halfWidth) : 0);
  const shifted: readonly Figures[] = [
    { ...figures, rake: figures.rake + radians(before.rakeWithinDegrees) },
    { ...figures, frontMm: figures.frontMm + wideMm(before.frontRadius) },
    { ...figures, rearMm: figures.rearMm + wideMm(before.rearRadius) },
    { ...figures, wheelbaseMm: figures.wheelbaseMm + wideMm(before.wheelbase) },
    { ...figures, clampMm: figures.clampMm + wideMm(before.clampOffset) },
    { ...figures, leadMm: figures.leadMm + wideMm(before.axleLead) },
    { ...figures, forkMm: figures.forkMm + wideMm(before.forkLength) },
  ];
  const trailMm = stand(figures, change)?.trailMm ?? 0;
  return Math.hypot(...shifted.map((one) => (stand(one, change)?.trailMm ?? trailMm) - trailMm));
}

const CHANGE_NAMES = [
  'forkLonger',
  'frontRadius',
  'rearRadius',
  'rearHigher',
  'clampOffset',
  'extraAngleDegrees',
  'axleLead',
] as const satisfies readonly ChangeName[];

function namesOf(change: SteeringChange): readonly ChangeName[] {
  return CHANGE_NAMES.filter((name) => change[name] !== undefined);
}
