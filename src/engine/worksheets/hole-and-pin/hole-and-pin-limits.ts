import { mean } from '../../reading/estimate.ts';
import { fitLimits, jointClass, type Range } from '../../fit/fits.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import { jointLimits, type ClearanceLimits, type Joint } from '../../fit/joint-limits.ts';
import { dividedBy, largest, minus, plus, smallest, type Length } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import { nominalNear, type Nominal } from '../../fit/nominal.ts';
import { threadNamed } from '../../thread/threads.ts';
import { bushingClasses } from '../../fit/tables/joint-classes.ts';
import type { Limits } from '../../reading/verdict.ts';

type Wanted = Pick<HoleAndPinQuestion, 'joint' | 'fitSystem' | 'ownLimits' | 'shop'>;
type InShop = Pick<HoleAndPinQuestion, 'fitSystem' | 'shop'>;

/**
 * The size the joint's limits are taken at: never the measured pin itself.
 *
 * Units:   the user's own; else the bolt's, where its thread is known; else the preferred size nearest the pin's largest.
 * Source:  nominal.ts.
 */
export function jointNominal({
  nominal,
  pinThread,
  fitSystem,
  pin,
}: Pick<HoleAndPinQuestion, 'nominal' | 'pinThread' | 'fitSystem' | 'pin'>): Nominal {
  if (nominal) return { size: nominal, from: 'given' };
  const thread = pinThread === undefined ? undefined : threadNamed(pinThread);
  return thread
    ? { size: thread.major, from: 'thread' }
    : { size: nominalNear(mean(pin.tightest), fitSystem), from: 'nearest' };
}

/**
 * The clearance a joint has where its user set none: by common practice, or by the class that how it runs usually gets.
 *
 * Units:   bore less pin; below zero the pin is the larger.
 * Range:   a size past the class's table falls back on common practice, and the source says so.
 * Source:  ISO 286-1 or ANSI B4.1 where a system was picked, else common practice, no source.
 */
export function usualLimits(
  { joint, fitSystem, shop }: Omit<Wanted, 'ownLimits'>,
  nominal: Length,
): ClearanceLimits {
  return fitSystem
    ? classLimits({ fitClass: jointClass(joint, fitSystem), joint, nominal, shop })
    : jointLimits(joint, nominal, unitOf(shop));
}

/** What a thin-walled bushing is pressed in with, in the system that was picked. */
export function pressLimits({ fitSystem, shop }: InShop, nominal: Length): ClearanceLimits {
  return fitSystem
    ? classLimits({ fitClass: bushingClasses[fitSystem], joint: 'pressed', nominal, shop })
    : jointLimits('pressed', nominal, unitOf(shop));
}

/** A reamed hole and what is pressed into it: any of the one, cut inside its limits, grips any of the other. */
export type PressParts = {
  readonly hole: Range;
  readonly holeSource: string;
  readonly outside: Range;
  readonly source: string;
};

/**
 * What the hole for a thin-walled bushing is reamed to, and what the bushing's outside is turned to.
 *
 * Units:   sizes. By a class each has its own tolerance. By common practice the hole is H7, and the outside has what that
 *          leaves of the usual interference: least = greatest hole + least grip, greatest = least hole + greatest grip.
 * Range:   a size past the class's table: the hole has half of the room.
 * Source:  ISO 286-1 or ANSI B4.1; else common practice, no source.
 */
export function pressParts(asked: InShop, nominal: Length): PressParts {
  const { fitSystem } = asked;
  const fit = fitLimits({ fitClass: bushingClasses[fitSystem ?? 'iso'], nominal });
  const { lower, upper, source } = pressLimits(asked, nominal);
  const hole = fit.ok
    ? fit.value.hole
    : { lower: nominal, upper: plus(nominal, dividedBy(minus(upper, lower), 2)) };
  const holeSource = fit.ok ? `the hole of ${fit.value.source}` : source;
  const outside =
    fit.ok && fitSystem
      ? fit.value.pin
      : { lower: minus(hole.upper, upper), upper: minus(hole.lower, lower) };
  return { hole, holeSource, outside, source };
}

/** The user's own limits as he gave them, else the usual ones. */
export function limitsAsked(question: Wanted, nominal: Length): Limits {
  const { ownLimits } = question;
  return ownLimits?.lower || ownLimits?.upper ? ownLimits : usualLimits(question, nominal);
}

/** The same with both sides: the usual ones stand in for a side left free, unless they would cross. */
export function limitsInForce(question: Wanted, nominal: Length): ClearanceLimits {
  const usual = usualLimits(question, nominal);
  const own = limitsAsked(question, nominal);
  const lower = own.lower ?? smallest(usual.lower, own.upper ?? usual.lower);
  const upper = own.upper ?? largest(usual.upper, own.lower ?? usual.upper);
  return { lower, upper, source: own.source };
}

function classLimits({
  fitClass,
  joint,
  nominal,
  shop,
}: {
  readonly fitClass: string;
  readonly joint: Joint;
  readonly nominal: Length;
  readonly shop: HoleAndPinQuestion['shop'] | undefined;
}): ClearanceLimits {
  const fit = fitLimits({ fitClass, nominal });
  if (fit.ok) return { ...fit.value.clearance, source: fit.value.source };
  const practice = jointLimits(joint, nominal, unitOf(shop));
  return { ...practice, source: `${practice.source}; ${fitClass} has no limits at this size` };
}

/** What usual figures are round in. */
export function unitOf(shop: HoleAndPinQuestion['shop']): ShownUnit {
  return shop === 'metric' ? 'mm' : 'in';
}
