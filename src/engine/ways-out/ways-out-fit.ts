import { combine, mean, typedEstimate } from '../reading/estimate.ts';
import { boreForPin, checkClearance, pinForBore, type MeasuredPart } from '../fit/fit-check.ts';
import { ansiClasses } from '../fit/fits-ansi.ts';
import { fitLimits, jointClass, systemOf, type FitLimits, type FitSystem } from '../fit/fits.ts';
import { byLength, isMore, isNegative, minus, zero, type Length } from '../length/length.ts';
import { nominalNear } from '../fit/nominal.ts';
import { usualIsoFits } from '../fit/tables/joint-classes.ts';
import type { Verdict } from '../reading/verdict.ts';
import { ruledOut, type WayOut } from './ways-out-kinds.ts';
import type { WaysOutQuestion } from './ways-out.ts';

/** The bore and the pin of the joint, the one that was cut among them. */
export type Pair = { readonly bore: MeasuredPart; readonly pin: MeasuredPart };

/**
 * The class in force where the bore and the pin keep it as they are after all, else the tightest other class of its
 * family that they keep.
 *
 * Units:   clearance = bore − pin, held against the class's least and most with the band of the difference. A class that
 *          is proved comes before one that is too close to call.
 * Range:   ANSI B4.1: of the same letters, RC for RC. ISO: of those offered by name that always leave room, leave it or
 *          not, or always grip, as the class in force does; one that runs stays one that runs.
 * Refuses: (as out) mate-not-known, no-class-met; no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ISO 286-1; ANSI B4.1.
 */
export function nextClassWay(q: WaysOutQuestion): WayOut {
  const pair = pairOf(q);
  if (!pair) return ruledOut('next-class', { code: 'mate-not-known' });
  const nominal = nominalNear(mean(pair.pin.tightest), systemFor(q));
  const inForce = fitLimits({ fitClass: classFor(q, pair), nominal });
  if (!inForce.ok) return ruledOut('next-class', inForce.refusal);
  const fits = [inForce.value, ...familyOf(inForce.value)];
  const met = firstMet(fits, pair, 'good') ?? firstMet(fits, pair, 'too-close');
  if (!met)
    return ruledOut('next-class', {
      code: 'no-class-met',
      clearance: clearanceOf(pair),
      system: inForce.value.system,
    });
  const { fit, value: clearance, halfWidth, verdict } = met;
  const stillMet = fit.fitClass === inForce.value.fitClass;
  return {
    kind: 'next-class',
    state: 'open',
    irreversibleSteps: 0,
    fit,
    clearance,
    halfWidth,
    verdict,
    stillMet,
  };
}

/**
 * The other part made to suit the one that was cut: a larger pin for a bore, a smaller bore for a shaft.
 *
 * Units:   limits of the part to make, as `pinForBore` and `boreForPin`.
 * Refuses: (as out) mate-not-known; no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ISO 286-1; ANSI B4.1.
 */
export function newMateWay(q: WaysOutQuestion): WayOut {
  const pair = pairOf(q);
  if (!pair) return ruledOut('new-mate', { code: 'mate-not-known' });
  const fit = fitLimits({
    fitClass: classFor(q, pair),
    nominal: nominalNear(mean(pair.pin.tightest), systemFor(q)),
  });
  if (!fit.ok) return ruledOut('new-mate', fit.refusal);
  const make = q.of === 'outside' ? 'bore' : 'pin';
  const limits = make === 'pin' ? pinForBore(fit.value, pair.bore) : boreForPin(fit.value, pair.pin);
  if (!limits.ok) return ruledOut('new-mate', limits.refusal);
  return {
    kind: 'new-mate',
    state: 'open',
    irreversibleSteps: 0,
    fit: fit.value,
    make,
    limits: limits.value,
  };
}

/** The two parts, where the mate was measured. */
export function pairOf({ of, present, tool, mate }: WaysOutQuestion): Pair | undefined {
  if (!mate) return undefined;
  const estimate = typedEstimate(present, tool);
  const cut = { tightest: estimate, loosest: estimate };
  return of === 'outside' ? { bore: mate, pin: cut } : { bore: cut, pin: mate };
}

/** The class in force: the cut's own, else the usual one of its joint; of no known joint, by what the target leaves. */
export function classFor(q: WaysOutQuestion, pair: Pair): string {
  const joint = q.joint ?? (isGrip(q, pair) ? 'pressed' : 'turns');
  return q.fitClass ?? jointClass(joint, systemFor(q));
}

export function systemFor({ fitClass, system }: WaysOutQuestion): FitSystem {
  if (fitClass !== undefined) return systemOf(fitClass);
  return system ?? 'ansi';
}

/** The first that the pair keeps so surely; one after the other, as the band of each takes its time. */
function firstMet(fits: readonly FitLimits[], pair: Pair, kind: Verdict['kind']) {
  for (const fit of fits) {
    const checked = checkClearance(fit, pair);
    if (checked.verdict.kind === kind) return { fit, ...checked };
  }
  return undefined;
}

/** The classes of its family, the tightest first. */
function familyOf(inForce: FitLimits): readonly FitLimits[] {
  const names =
    inForce.system === 'iso'
      ? usualIsoFits
      : ansiClasses.filter((fitClass) => lettersOf(fitClass) === lettersOf(inForce.fitClass));
  return names
    .flatMap((fitClass) => fitAt(fitClass, inForce.nominal))
    .filter((fit) => fit.system === 'ansi' || runsAlike(fit, inForce))
    .toSorted((a, b) => byLength(a.clearance.upper, b.clearance.upper));
}

function fitAt(fitClass: string, nominal: Length): readonly FitLimits[] {
  const fit = fitLimits({ fitClass, nominal });
  return fit.ok ? [fit.value] : [];
}

function runsAlike(fit: FitLimits, inForce: FitLimits): boolean {
  return (
    fit.kind === inForce.kind && isMore(fit.clearance.lower, zero) === isMore(inForce.clearance.lower, zero)
  );
}

function lettersOf(fitClass: string): string {
  return fitClass.replace(/\d+$/, '');
}

function isGrip({ of, target }: WaysOutQuestion, { bore, pin }: Pair): boolean {
  return isNegative(
    of === 'outside' ? minus(mean(bore.tightest), target) : minus(target, mean(pin.tightest)),
  );
}

function clearanceOf({ bore, pin }: Pair): Length {
  return combine([
    { estimate: bore.loosest, coefficient: 1 },
    { estimate: pin.loosest, coefficient: -1 },
  ]).value;
}
