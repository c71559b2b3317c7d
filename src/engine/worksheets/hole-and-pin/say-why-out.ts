import { isMore, isZero, minus, zero } from '../../length/length.ts';
import { showAgainst } from '../../length/show-limits.ts';
import { figure, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Length } from '../../length/length.ts';
import type { RouteReason } from './hole-and-pin-routes.ts';

/** Why a way is ruled out, in one short sentence: the first of its reasons. All of them, with their sources, stand under Why. */
export function sayWhyOut(why: readonly RouteReason[], unit: ShownUnit): string {
  const [reason] = why;
  return reason ? sayShort(reason, unit) : '';
}

function sayShort(reason: RouteReason, unit: ShownUnit): string {
  const size = (length: Length): string => withUnit(figure(length, unit), unit);
  switch (reason.code) {
    case 'too-loose':
      return 'It is too loose as it is.';
    case 'too-tight':
      return 'It is too tight as it is.';
    case 'not-needed':
      return 'Not needed: the joint fits.';
    case 'not-for-a-tight-bore':
      return 'The bore is tight, not worn.';
    case 'insert-not-for-this-joint':
      return 'Only for a bolt that stands still, held by its nut.';
    case 'insert-needs-a-bolt':
      return 'A plain pin has no thread. Pick one if it is a bolt.';
    case 'no-insert-made':
      return `No wire insert is usually made for ${reason.thread.replace('x', ' × ')}.`;
    case 'hole-past-insert-thread':
      return `The hole is ${size(minus(reason.hole, reason.major))} past the insert’s thread.`;
    case 'shank-must-pass':
      return 'The plain shank has to pass, and it can’t pass a thread.';
    case 'closer-than-thread-play':
      return `In its thread the bolt can shift ${size(reason.play)}.`;
    case 'too-little-thread':
      return `Only ${Math.floor(reason.percent)} % of thread would be left.`;
    case 'wall-too-thin':
      return isMore(reason.wall, zero)
        ? `Too little metal: ${sayOfLeast('wall', reason, unit)}.`
        : 'The hole would break out of the part’s edge.';
    case 'bushing-wall-too-thin':
      return `Too thin a bushing: ${sayOfLeast('wall', reason, unit)}.`;
    case 'no-larger-shank':
      return `No bolt or pin in the list: it needs ${size(reason.needs)}.`;
    case 'no-reamer':
      return `No standard reamer reaches ${size(reason.needs)}. Bore it.`;
    case 'pin-worn':
      return `The pin is ${size(reason.by)} out of true: a new one first.`;
    default:
      return sayShortOfPin(reason, unit);
  }
}

function sayShortOfPin(reason: RouteReason, unit: ShownUnit): string {
  switch (reason.code) {
    case 'sleeve-not-on-a-bolt':
      return 'Not on a bolt that its nut clamps.';
    case 'no-room-for-sleeve':
      return 'No room for a sleeve, and a bolt is not turned down.';
    case 'pin-core-too-thin':
      return `Too thin a pin: ${sayOfLeast('left', { ...reason, wall: reason.turnTo }, unit)}.`;
    case 'case-hardened':
      return 'Turned down, a hard pin is soft. Make a new one.';
    case 'hole-not-off':
      return 'Only for a hole in the wrong place.';
    case 'place-stays':
      return isZero(reason.by)
        ? 'It leaves the hole in the wrong place.'
        : `It leaves the hole ${withUnit(figure(reason.by, unit), unit)} off its place.`;
    default:
      return 'A last resort: there are other ways.';
  }
}

/** `wall .110, least .2188`: never two figures that look alike. */
function sayOfLeast(
  what: string,
  { wall, least }: { readonly wall: Length; readonly least: Length },
  unit: ShownUnit,
): string {
  const { values, lower = '' } = showAgainst([wall], { lower: least }, unit);
  return `${what} ${withUnit(values[0] ?? '', unit)}, least ${withUnit(lower, unit)}`;
}
