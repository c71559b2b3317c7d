import { fitLimits, jointClass, type FitSystem } from './fits.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import { jointLimits, type ClearanceLimits, type Joint } from './joint-limits.ts';
import { largest, smallest, type Length } from './length.ts';
import { bushingClasses } from './tables/joint-classes.ts';
import type { Limits } from './verdict.ts';

type Wanted = Pick<HoleAndPinQuestion, 'joint' | 'fitSystem' | 'ownLimits'>;

/**
 * The clearance a joint has where its user set none: by common practice, or by the class that how it runs usually gets.
 *
 * Units:   bore less pin; below zero the pin is the larger.
 * Range:   a size past the class's table falls back on common practice, and the source says so.
 * Source:  ISO 286-1 or ANSI B4.1 where a system was picked, else common practice, no source.
 */
export function usualLimits(
  { joint, fitSystem }: Pick<Wanted, 'joint' | 'fitSystem'>,
  nominal: Length,
): ClearanceLimits {
  return fitSystem
    ? classLimits({ fitClass: jointClass(joint, fitSystem), joint, nominal })
    : jointLimits(joint, nominal);
}

/** What a thin-walled bushing is pressed in with, in the system that was picked. */
export function pressLimits(fitSystem: FitSystem | undefined, nominal: Length): ClearanceLimits {
  return fitSystem
    ? classLimits({ fitClass: bushingClasses[fitSystem], joint: 'pressed', nominal })
    : jointLimits('pressed', nominal);
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
}: {
  readonly fitClass: string;
  readonly joint: Joint;
  readonly nominal: Length;
}): ClearanceLimits {
  const fit = fitLimits({ fitClass, nominal });
  if (fit.ok) return { ...fit.value.clearance, source: fit.value.source };
  const practice = jointLimits(joint, nominal);
  return { ...practice, source: `${practice.source}; ${fitClass} has no limits at this size` };
}
