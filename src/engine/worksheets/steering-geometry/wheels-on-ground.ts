import { mean } from '../../reading/estimate.ts';
import { floatMm, lengthFromFloat, lengthOf, type Length } from '../../length/length.ts';
import type { SteeringBefore, SteeringChange } from './steering-geometry.ts';

/** All of it is floating point and comes back to .001 mm; a trail is never known that closely. */
const STEP = lengthOf('.001 mm');

/** Beyond it no front end is one. */
export const MOST_RAKE_DEGREES = 60;

/** The question in millimetres and radians. */
export type Figures = {
  readonly rake: number;
  readonly frontMm: number;
  readonly rearMm: number;
  readonly wheelbaseMm: number;
  readonly clampMm: number;
  readonly leadMm: number;
  readonly extra: number;
  readonly forkMm: number;
};

export type Standing = {
  readonly rake: number;
  readonly offsetMm: number;
  readonly trailMm: number;
  readonly normalMm: number;
  readonly wheelbaseMm: number;
  readonly rise: { readonly frontMm: number; readonly rearMm: number };
};

/** The machine in millimetres and radians, floating point. */
export function figuresOf(before: SteeringBefore): Figures {
  return {
    rake: radians(before.rakeDegrees),
    frontMm: floatMm(mean(before.frontRadius)),
    rearMm: floatMm(mean(before.rearRadius)),
    wheelbaseMm: floatMm(mean(before.wheelbase)),
    clampMm: floatMm(mean(before.clampOffset)),
    leadMm: floatMm(mean(before.axleLead)),
    extra: radians(before.extraAngleDegrees),
    forkMm: before.forkLength ? floatMm(mean(before.forkLength)) : 0,
  };
}

/** Where the axle is from the steering axis, and how far down along it. */
function axle(clampMm: number, leadMm: number, extra: number, forkMm: number) {
  return {
    offsetMm: clampMm + leadMm * Math.cos(extra) + forkMm * Math.sin(extra),
    downMm: forkMm * Math.cos(extra) - leadMm * Math.sin(extra),
  };
}

/** The machine on its wheels after a change; x forward and y up from the rear axle, in the frame as it stood before. */
export function stand(now: Figures, change: SteeringChange): Standing | undefined {
  const was = axle(now.clampMm, now.leadMm, now.extra, now.forkMm);
  const is = axle(
    millimetres(change.clampOffset, now.clampMm),
    millimetres(change.axleLead, now.leadMm),
    change.extraAngleDegrees === undefined ? now.extra : radians(change.extraAngleDegrees),
    now.forkMm + millimetres(change.forkLonger, 0),
  );
  const frontMm = millimetres(change.frontRadius, now.frontMm);
  const rearMm = millimetres(change.rearRadius, now.rearMm);
  const higherMm = millimetres(change.rearHigher, 0);
  const { forwardMm, downMm } = axleMoves(now.rake, is.downMm - was.downMm, is.offsetMm - was.offsetMm);
  const xMm = now.wheelbaseMm + forwardMm;
  const yMm = now.frontMm - now.rearMm - downMm + higherMm;
  const apartMm = Math.hypot(xMm, yMm);
  const fallMm = frontMm - rearMm;
  if (!(Math.abs(fallMm) < apartMm) || !(now.wheelbaseMm > 0) || !(xMm > 0)) return undefined;
  const tilt = Math.asin(fallMm / apartMm) - Math.atan2(yMm, xMm);
  const rake = now.rake + tilt;
  if (Math.abs(degrees(rake)) >= MOST_RAKE_DEGREES) return undefined;
  const normalMm = frontMm * Math.sin(rake) - is.offsetMm;
  const overFrontMm =
    now.wheelbaseMm * Math.sin(tilt) + (now.frontMm - now.rearMm + higherMm) * Math.cos(tilt);
  return {
    rake,
    offsetMm: is.offsetMm,
    normalMm,
    trailMm: normalMm / Math.cos(rake),
    wheelbaseMm: Math.sqrt(apartMm ** 2 - fallMm ** 2),
    rise: {
      frontMm: rearMm + overFrontMm - now.frontMm,
      rearMm: rearMm + higherMm * Math.cos(tilt) - now.rearMm,
    },
  };
}

/** Down the steering axis and ahead of it, as forward and down in the frame. */
function axleMoves(rake: number, alongMm: number, aheadMm: number) {
  return {
    forwardMm: alongMm * Math.sin(rake) + aheadMm * Math.cos(rake),
    downMm: alongMm * Math.cos(rake) - aheadMm * Math.sin(rake),
  };
}

function millimetres(length: Length | undefined, otherwiseMm: number): number {
  return length ? floatMm(length) : otherwiseMm;
}

/** Degrees as radians, floating point. */
export function radians(angleDegrees: number): number {
  return (angleDegrees * Math.PI) / 180;
}

/** Radians as degrees, floating point. */
export function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}

/** Back from floating point, to .001 mm. */
export function toStep(sizeMm: number): Length {
  return lengthFromFloat(sizeMm, STEP);
}
