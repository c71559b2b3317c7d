import type { Joint } from '../../fit/joint-limits.ts';
import type { RouteReason } from './hole-and-pin-routes.ts';
import { absolute, isMore, minus, zero, type Length } from '../../length/length.ts';
import { sayDrillSize, sayPercent } from '../thread-insert/say-insert.ts';
import { sayPlaceReason, sayPressReason, saySleeveReason } from './say-routes-more.ts';
import { sayLeast } from '../../length/say-least.ts';
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
      return `${NOT_IN_THREADS[reason.joint]} A thread insert is only for a bolt that stands still, held by its nut.`;
    case 'insert-needs-a-bolt':
      return 'A plain pin has no thread to screw into an insert. Say which thread it has if it is a bolt.';
    case 'thread-not-known':
      return `Which thread is ${reason.thread}? Pick it from the list, such as 7/16-20 UNF or M8x1.25.`;
    case 'no-insert-made':
      return `No wire insert is usually made for ${reason.thread}.`;
    case 'hole-past-insert-thread':
      return `The hole is ${size(reason.hole)}, ${size(minus(reason.hole, reason.major))} past the thread of an insert for ${reason.thread}: nothing is left to tap.`;
    case 'shank-must-pass':
      return `The plain shank has to pass this hole, and it can't pass a ${reason.thread} thread.`;
    case 'closer-than-thread-play':
      return `This joint has to be held within ${size(reason.upper)}, and in its thread a bolt can shift ${size(reason.play)}.`;
    case 'threads-in-shear':
      return `The clamped faces don't carry this joint, so the ${reason.thread} thread lies in the shear plane and takes the load.`;
    case 'faces-carry':
      return 'The faces the nut clamps carry the joint; the thread only has to clamp.';
    case 'straight-to-tap':
      return `The hole is already to size for the STI tap: ${sayPercent(reason.percent)} of thread.`;
    case 'drill-first':
      return `The hole is too small for the STI tap. After ${sayDrillSize(reason.drill)} it has ${sayPercent(reason.percent)} of thread.`;
    case 'drill-anyway':
      return `The hole is too close to the tap's least to call. Run ${sayDrillSize(reason.drill)} through anyway: ${sayPercent(reason.percent)} of thread.`;
    case 'hole-over':
      return `The hole is ${size(reason.overBy)} over what the insert wants and leaves ${sayPercent(reason.percent)} of thread. Accept that, or bush the hole.`;
    case 'too-little-thread':
      return `The hole leaves ${sayPercent(reason.percent)} of thread for an insert; under ${reason.leastPercent} % a hole is bushed (common practice).`;
    case 'ask-shank-passes':
      return `Does the plain shank have to pass this hole? It can't pass a ${reason.thread} thread.`;
    case 'ask-clamped-faces':
      return 'Which faces does the nut clamp? Only if those faces carry the joint is the thread spared the load.';
    case 'ask-metal':
      return `What is the part made of? Aluminium wants drill ${sayDrillSize(reason.aluminium)}, steel ${sayDrillSize(reason.steel)}.`;
    case 'ask-wall':
      return `How much wall is there from the hole's edge to the part's edge, at the thinnest side? This takes ${size(reason.takes)} of it, and ${size(reason.least)} has to stay (${reason.source}).`;
    case 'wall-left':
      return `Wall left ${sayLeast(reason.wall, reason, unit)}.`;
    case 'wall-too-thin':
      return isMore(reason.wall, zero)
        ? `Too little metal: wall left ${sayLeast(reason.wall, reason, unit)}.`
        : `The hole would break out of the part's edge: there is no wall left, and ${size(reason.least)} has to stay.`;
    case 'cleans-up-to':
      return `${reason.shank.name} is the next size that the bore cleans up to, from ${size(reason.loosest)} at its loosest.`;
    case 'no-larger-shank':
      return `No bolt or pin in the list is large enough: the bore cleans up at ${size(reason.needs)}.`;
    case 'bushing-wall':
      return `Bushing wall ${sayLeast(reason.wall, reason, unit)}.`;
    case 'bushing-wall-too-thin':
      return `The part can bear a hole of ${reason.reamer.name}, and that leaves the bushing a wall of ${sayLeast(reason.wall, reason, unit)}.`;
    case 'no-reamer':
      return `No standard reamer in the list reaches ${size(reason.needs)}. Bore it on the mill or the lathe.`;
    case 'pin-worn':
      return `The pin itself is ${size(reason.by)} out of true, and the joint has only ${size(reason.room)} of room. A new pin comes first.`;
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

const NOT_IN_THREADS: Readonly<Record<Exclude<Joint, 'located'>, string>> = {
  'turns-under-load': 'This pin turns under load and would wear a thread out.',
  turns: 'This pin turns and would wear a thread out.',
  slides: 'This pin slides, and a thread is no bearing.',
  pressed: 'This pin is pressed in and needs a plain bore.',
};

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
