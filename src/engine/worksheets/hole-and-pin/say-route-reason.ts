import type { PlaceReason, PressReason, RouteReason, SleeveReason } from './hole-and-pin-routes.ts';
import { absolute, isMore, zero, type Length } from '../../length/length.ts';
import { sayPlaceReason, sayPressReason, saySleeveReason } from './say-routes-more.ts';
import { sayInsertReason } from './say-insert-reason.ts';
import { sayWallReason } from './say-wall-reason.ts';
import { showAgainst } from '../../length/show-limits.ts';
import { figure, show, showBetween, type ShownUnit } from '../../length/show.ts';

/** Why a route is in, out, or waits for an answer, in a fitter's words. */
export function sayRouteReason(reason: RouteReason, unit: ShownUnit): string {
  const size = (length: Length): string => show(length, unit);
  switch (reason.code) {
    case 'fits':
      return `It fits: clearance ${figure(reason.tightest, unit)} at its tightest, ${size(reason.loosest)} at its loosest.`;
    case 'too-close':
      return sayTooClose(reason, unit);
    case 'too-loose':
      return sayTooLoose(reason, unit);
    case 'too-tight':
      return `The pin is ${size(reason.by)} too tight. Open the bore to ${showBetween(reason.boreLower, reason.boreUpper, unit)} ${unit}, and the pin that is there fits.`;
    case 'not-needed':
      return 'The joint fits as it is, so no metal has to go.';
    case 'not-for-a-tight-bore':
      return `The bore is ${size(reason.by)} too tight, not worn. Open it for the pin that is there before thinking of this.`;
    case 'insert-not-for-this-joint':
    case 'insert-needs-a-bolt':
    case 'thread-not-known':
    case 'no-insert-made':
    case 'hole-past-insert-thread':
    case 'shank-must-pass':
    case 'closer-than-thread-play':
    case 'threads-in-shear':
    case 'faces-carry':
    case 'straight-to-tap':
    case 'drill-first':
    case 'drill-anyway':
    case 'hole-over':
    case 'too-little-thread':
    case 'ask-shank-passes':
    case 'ask-clamped-faces':
    case 'ask-metal':
      return sayInsertReason(reason, unit);
    case 'ask-wall':
    case 'wall-left':
    case 'wall-too-thin':
    case 'cleans-up-to':
    case 'no-larger-shank':
    case 'bushing-wall':
    case 'bushing-wall-too-thin':
    case 'no-reamer':
    case 'pin-worn':
      return sayWallReason(reason, unit);
    default:
      return sayMadeReason(reason, unit);
  }
}

/** Of a bushing pressed in, of a sleeve on the pin, and of the place of the hole. */
function sayMadeReason(reason: PressReason | SleeveReason | PlaceReason, unit: ShownUnit): string {
  switch (reason.code) {
    case 'press-grip':
    case 'bushing-closes':
    case 'press-force':
    case 'press-metals':
    case 'ask-press-metals':
    case 'press-warning':
      return sayPressReason(reason, unit);
    case 'sleeve-not-on-a-bolt':
    case 'no-room-for-sleeve':
    case 'sleeve-wall':
    case 'pin-core-left':
    case 'pin-core-too-thin':
    case 'ask-case-hardened':
    case 'case-hardened':
      return saySleeveReason(reason, unit);
    default:
      return sayPlaceReason(reason, unit);
  }
}

function sayTooClose(reason: Extract<RouteReason, { code: 'too-close' }>, unit: ShownUnit): string {
  const near = {
    lower: 'the least clearance',
    upper: 'the most clearance',
    both: 'the nearer limit, and the other is no clearer',
  }[reason.near];
  return `Too close to call: it lies ${show(reason.short, unit)} from ${near}. The readings can't tell which side it is on. Measure closer before cutting anything.`;
}

const COUNT_WORDS = [
  '',
  '',
  'twice',
  'three times',
  'four times',
  'five times',
  'six times',
  'seven times',
  'eight times',
];

/** Chosen, not published: what is this near to a whole number is said as one; the figures stand beside it. */
const NEAR_WHOLE = 0.15;

function sayTooLoose(reason: Extract<RouteReason, { code: 'too-loose' }>, unit: ShownUnit): string {
  if (!isMore(reason.upper, zero))
    return `The pin is not tight: clearance ${show(reason.loosest, unit)}, and it has to be ${show(absolute(reason.upper), unit)} larger than the bore or more.`;
  const { values, upper = '' } = showAgainst([reason.loosest], { upper: reason.upper }, unit);
  const figures = `${values[0] ?? ''} of ${upper} ${unit}`;
  const times = reason.timesTheMost ?? 0;
  const count = Math.floor(times + NEAR_WHOLE);
  if (count < 2) return `The slop is ${show(reason.by, unit)} more than this joint may have (${figures}).`;
  const more = times - count > NEAR_WHOLE ? 'more than ' : '';
  return `The slop is ${more}${COUNT_WORDS[count] ?? `${count} times`} what this joint may have (${figures}).`;
}
