import { cleanUpSize } from '../../fit/clean-up.ts';
import { bandOf, combine, mean, type Band, type Estimate } from '../../reading/estimate.ts';
import type { FitSystem } from '../../fit/fits.ts';
import { readable } from '../../reading/check-offer.ts';
import { jointNominal, limitsAsked, limitsInForce, unitOf } from './hole-and-pin-limits.ts';
import { routesFor, type Route } from './hole-and-pin-routes.ts';
import type { InsertMetal } from '../../thread/insert-drill.ts';
import type { Joint } from '../../fit/joint-limits.ts';
import { isMore, largest, minus, scaledBy, times, zero, type Length } from '../../length/length.ts';
import type { Nominal } from '../../fit/nominal.ts';
import type { Material } from '../../material/tables/materials.ts';
import type { ShopFamily } from '../../fit/tables/reamer-sizes.ts';
import { placesOf, type MeasuredPart } from '../../fit/fit-check.ts';
import { rulingPlace, verdictOf, worseVerdict, type Limits, type Verdict } from '../../reading/verdict.ts';
import { leastCleanUp } from '../../fit/tables/least-walls.ts';
import { wornAxis, type WornAxis } from '../../fit/worn-axis.ts';

export type HoleAndPinQuestion = {
  readonly bore: MeasuredPart;
  /** The pin's tightest place is its largest. */
  readonly pin: MeasuredPart;
  readonly joint: Joint;
  readonly ownLimits?: Limits;
  /** The size the limits are taken at; left out: the bolt's, or the preferred size nearest the pin. */
  readonly nominal?: Length;
  /** Whose classes give the limits; left out: common practice. */
  readonly fitSystem?: FitSystem;
  /** The hole is in the wrong place, and by how much its middle is off; zero where nobody has measured it. */
  readonly offBy?: Length;
  /** Bore length outer end to outer end of two bushings; reach from mid-bearing to where the rock is felt. */
  readonly arm?: { readonly boreLength: Length; readonly reach: Length; readonly bellMouth?: Length };
  /** The slop read with an indicator, or the rock at the arm's end both ways together: replaces bore less pin. */
  readonly direct?: DirectPlay;
  /** Thread of a bolt, '7/16-20 UNF'; left out: a plain pin. */
  readonly pinThread?: string;
  /** The pin has a hard skin: case-hardened, nitrided or hard-chromed. */
  readonly pinCaseHardened?: boolean;
  /** Whether the finished hole has to stand on its old axis; left out or false: it goes where the wear leads a reamer. */
  readonly keepsAxis?: boolean;
  /** The plain shank has to pass this hole. */
  readonly shankPasses?: boolean;
  /** The faces the nut clamps carry the joint. */
  readonly clampedFacesCarry?: boolean;
  /** Present least wall from the hole's edge to the part's edge. */
  readonly wall?: Length;
  /** Metal the hole goes through. */
  readonly thickness?: Length;
  /** What the part is made of, for the insert's drill. */
  readonly metal?: InsertMetal;
  readonly leastWall?: Length;
  readonly leastBushingWall?: Length;
  /** Whose bolts and reamers come first; left out: whatever takes least. */
  readonly shop?: ShopFamily;
  /** What a bushing is pressed into, and what it is made of. */
  readonly partMetal?: Material;
  readonly bushingMetal?: Material;
};

/** `tightest` where it was read at several places: `read` is the loosest of them. */
export type DirectPlay = {
  readonly kind: 'slop' | 'rock';
  readonly read: Estimate;
  readonly tightest?: Estimate;
};

export type Rock = {
  /** ± this much at the end of the arm. */
  readonly eachWay: Length;
  readonly inAll: Length;
  /** Half width of the band of `eachWay`. */
  readonly eachWayHalfWidth: Length;
};

export type RockRefusal = {
  readonly code: 'bell-mouth-eats-bore';
  readonly boreLength: Length;
  readonly bellMouth: Length;
};

export type HoleAndPinAnswer = {
  readonly tightest: Length;
  readonly loosest: Length;
  /** Of the loosest clearance. */
  readonly band: Band;
  readonly tightestBand: Band;
  readonly limits: Limits;
  /** What the limits are taken at. */
  readonly nominal: Nominal;
  readonly verdict: Verdict;
  /** Where the middle goes when a worn bore is opened; left out where it isn't worn. */
  readonly axis?: WornAxis;
  /** What the clearance was read as, where it wasn't worked out from bore and pin. */
  readonly direct?: DirectPlay['kind'];
  readonly rock?: Rock;
  /** Why there is no rock to show although the arm was given. */
  readonly rockRefusal?: RockRefusal;
  /** Ranked: ruled out last. */
  readonly routes: readonly Route[];
};

/**
 * How much slop a pin has in its bore, whether the joint may have it, what it means at the arm's end, and every cure.
 *
 * Units:   clearance = bore − pin, below zero the pin is the larger. Tightest: smallest bore less largest pin; loosest:
 *          largest bore less smallest pin. The tightest is held against the lower limit, the loosest against the
 *          upper, and the worse of the two verdicts counts. Rock: ± clearance · reach / bore length less bell-mouth.
 *          Slop that was read stands in for both, at its tightest and its loosest place; a rock in all gives it as rock · length / (2 · reach).
 *          Held against a lower limit above zero only: what can be moved by hand does not grip.
 * Range:   limits for the nominal of the joint (`jointNominal`): the user's own, those of a class, or common practice.
 * Refuses: bell-mouth-eats-bore, for the rock alone.
 * Source:  geometry; verdict by the ISO 14253-1 idea; limits as they say themselves.
 */
export function holeAndPin(question: HoleAndPinQuestion): HoleAndPinAnswer {
  const { bore, pin } = question;
  const read = directClearance(question);
  const nominal = jointNominal(question);
  const asked = limitsAsked(question, nominal.size);
  const limits = read ? readable(asked) : asked;
  const inForce = limitsInForce(question, nominal.size);
  const unit = unitOf(question.shop);
  const axis = wornAxis({
    loosest: bore.loosest,
    nominal: nominal.size,
    most: largest(zero, inForce.upper),
    unit,
  });
  const { tight, loose } = rulingClearances(question, limits, read);
  const [tightest, loosest] = [tight.clearance, loose.clearance];
  const verdict = worseVerdict(tight.verdict, loose.verdict);
  return {
    tightest: tightest.value,
    loosest: loosest.value,
    band: loosest.band,
    tightestBand: tightest.band,
    limits,
    nominal,
    verdict,
    ...(axis && { axis }),
    ...(read && question.direct && { direct: question.direct.kind }),
    ...rockOf(question.arm, loosest),
    routes: routesFor({
      question,
      limits: inForce,
      nominal: nominal.size,
      verdict,
      tightest: tightest.value,
      loosest: loosest.value,
      bore: {
        tightest: mean(bore.tightest),
        loosest: mean(bore.loosest),
        cleanUp: (question.keepsAxis === true && axis?.onOldAxis) || cleanUpSize(bore.loosest, unit),
        ...(question.keepsAxis === true &&
          axis && { oldAxis: { nominal: nominal.size, touches: minus(axis.onOldAxis, leastCleanUp[unit]) } }),
        bands: bandsOf(bore),
      },
      pin: { largest: mean(pin.tightest), smallest: mean(pin.loosest), bands: bandsOf(pin) },
    }),
  };
}

function bandsOf({ tightest, loosest }: HoleAndPinQuestion['bore']) {
  return { tightest: bandOf(tightest).halfWidth, loosest: bandOf(loosest).halfWidth };
}

type Clearance = { readonly value: Length; readonly band: Band };

type ReadPlay = { readonly tightest: Clearance; readonly loosest: Clearance };

/** The tightest held against the lower limit and the loosest against the upper: where the bands reach furthest, or surely past. */
function rulingClearances(
  { bore, pin }: HoleAndPinQuestion,
  { lower, upper, source }: Limits,
  read: ReadPlay | undefined,
) {
  const all = read
    ? []
    : placesOf(bore).flatMap((hole) => placesOf(pin).map((shank) => clearance(hole, shank)));
  const against = (limits: Limits) => (one: Clearance) => ({
    clearance: one,
    verdict: verdictOf({ value: one.value, ...one.band, limits }),
  });
  const toLower = against({ source, ...(lower && { lower }) });
  const toUpper = against({ source, ...(upper && { upper }) });
  return {
    tight: rulingPlace(toLower(read?.tightest ?? clearance(bore.tightest, pin.tightest)), all.map(toLower)),
    loose: rulingPlace(toUpper(read?.loosest ?? clearance(bore.loosest, pin.loosest)), all.map(toUpper)),
  };
}

function clearance(bore: Estimate, pin: Estimate): Clearance {
  return combine([
    { estimate: bore, coefficient: 1 },
    { estimate: pin, coefficient: -1 },
  ]);
}

/** The clearance by what was read; nothing where a rock was read and the arm that it was read at isn't known. */
function directClearance({ direct, arm }: HoleAndPinQuestion): ReadPlay | undefined {
  if (!direct) return undefined;
  const ratio = arm && rockRatio(arm);
  if (direct.kind === 'rock' && !ratio) return undefined;
  const atBore = (size: Length): Length =>
    direct.kind === 'rock' && ratio
      ? scaledBy(size, { numerator: ratio.denominator, denominator: times(ratio.numerator, 2) })
      : size;
  const asPlay = (read: Estimate): Clearance => {
    const band = bandOf(read);
    return { value: atBore(mean(read)), band: { ...band, halfWidth: atBore(band.halfWidth) } };
  };
  return { tightest: asPlay(direct.tightest ?? direct.read), loosest: asPlay(direct.read) };
}

/** Reach over the length the pin is held in; nothing where the bell-mouth takes all of it, or the reach is nothing. */
export function rockRatio({ boreLength, reach, bellMouth = zero }: NonNullable<HoleAndPinQuestion['arm']>) {
  const denominator = minus(boreLength, bellMouth);
  return isMore(denominator, zero) && isMore(reach, zero) ? { numerator: reach, denominator } : undefined;
}

function rockOf(
  arm: HoleAndPinQuestion['arm'],
  { value, band }: Clearance,
): { readonly rock?: Rock; readonly rockRefusal?: RockRefusal } {
  if (!arm) return {};
  const { boreLength, reach, bellMouth = zero } = arm;
  const denominator = minus(boreLength, bellMouth);
  if (!isMore(denominator, zero))
    return { rockRefusal: { code: 'bell-mouth-eats-bore', boreLength, bellMouth } };
  const atReach = (size: Length): Length => scaledBy(size, { numerator: reach, denominator });
  const slop = isMore(value, zero) ? value : zero;
  return {
    rock: {
      eachWay: atReach(slop),
      inAll: atReach(times(slop, 2)),
      eachWayHalfWidth: atReach(band.halfWidth),
    },
  };
}
