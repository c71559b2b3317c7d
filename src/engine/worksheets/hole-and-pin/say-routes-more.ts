import type { PlaceReason, PressReason, SleeveReason } from './hole-and-pin-routes.ts';
import { isMore, isZero, zero } from '../../length/length.ts';
import { sayBushingWarning, sayForce, sayInterference } from '../../press/say-bushing.ts';
import { sayLeast } from '../../length/say-least.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';

/** What pressing a bushing in does, in a fitter's words. */
export function sayPressReason(reason: PressReason, unit: ShownUnit): string {
  switch (reason.code) {
    case 'press-grip':
      return `Pressed in with ${sayInterference(reason.least, reason.greatest, unit)} of interference (${reason.source}).`;
    case 'bushing-closes':
      return `Its bore closes by ${figure(reason.lower, unit)} to ${show(reason.upper, unit)} when it goes in, so its inside is finished after that.`;
    case 'press-force':
      return `The press has to give up to ${sayForce(reason.pressN, unit)}; the fit is good for ${sayForce(reason.holdN, unit)} along its axis.`;
    case 'press-metals':
      return `Worked for a part of ${inSentence(reason.part)} and a bushing of ${inSentence(reason.bushing)}.`;
    case 'ask-press-metals':
      return `${METALS_ASKED[reason.missing]} Heat, force and stress hang on it.`;
    case 'press-warning':
      return sayBushingWarning(reason.warning, unit);
    default:
      return reason satisfies never;
  }
}

const METALS_ASKED: Readonly<Record<Extract<PressReason, { code: 'ask-press-metals' }>['missing'], string>> =
  {
    both: 'What are the part and the bushing made of?',
    part: 'What is the part made of?',
    bushing: 'What is the bushing made of?',
  };

/** Whole percent, never more than there is. */
export function sayShare(share: number): string {
  return `${Math.floor(share * 100)} %`;
}

function inSentence(name: string): string {
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** Why a sleeve can or can't go on the pin. */
export function saySleeveReason(reason: SleeveReason, unit: ShownUnit): string {
  switch (reason.code) {
    case 'sleeve-not-on-a-bolt':
      return `A bolt that its nut clamps gets no sleeve${reason.thread === undefined ? '' : `, and this is a ${reason.thread}`}. Cure the hole, or take a larger bolt.`;
    case 'no-room-for-sleeve':
      return isMore(reason.wall, zero)
        ? `Over the ${reason.thread} bolt there is room for a sleeve wall of ${sayLeast(reason.wall, { ...reason, source: 'common practice, no source' }, unit)}, and a bolt is not turned down.`
        : `Over the ${reason.thread} bolt there is no room for a sleeve, and a bolt is not turned down.`;
    case 'sleeve-wall':
      return `Sleeve wall ${sayLeast(reason.wall, reason, unit)}.`;
    case 'pin-core-left':
      return `The pin keeps ${sayLeast(reason.turnTo, reason, unit)}. That is ${sayShare(reason.bendingLeft)} of its strength in bending, which goes by the cube of its size.`;
    case 'pin-core-too-thin':
      return `The pin would have to be turned down to ${sayLeast(reason.turnTo, reason, unit)}. It would keep ${sayShare(reason.bendingLeft)} of its strength in bending.`;
    case 'ask-case-hardened':
      return 'Is the pin case-hardened or chromed? Does a file skid on it? Turned down, it is soft and wears at once.';
    case 'case-hardened':
      return 'The pin has a hard skin: turned down, it is soft and wears at once. Make a new pin.';
    default:
      return reason satisfies never;
  }
}

/** What is said of a hole in the wrong place, and of the last resort. */
export function sayPlaceReason(reason: PlaceReason, unit: ShownUnit): string {
  const size = (length: Parameters<typeof show>[0]): string => show(length, unit);
  switch (reason.code) {
    case 'hole-not-off':
      return 'Only for a hole that is in the wrong place. Say so if this one is, and by how much.';
    case 'place-stays':
      return isZero(reason.by)
        ? 'The hole is in the wrong place, and this leaves it there.'
        : `The hole is ${size(reason.by)} off its place, and this leaves it there.`;
    case 'ask-off-by':
      return 'How far is the middle of the hole from where it should be?';
    case 'offset-walls':
      return `With the bore ${size(reason.by)} off its middle the bushing is ${sayLeast(reason.thin, reason, unit, ' thick on its thin side')}, and ${size(reason.thick)} on the other.`;
    case 'other-cures-first':
      return 'A last resort, and there are other ways on this list.';
    case 'last-resort':
      return 'Nothing else on this list can be done. May this part be plugged or welded at all? Ask whoever answers for its strength, or make it new. No figures are worked out for this.';
    default:
      return reason satisfies never;
  }
}
