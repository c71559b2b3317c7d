import { isMore, zero, type Length } from '../../length/length.ts';
import { sayLeast } from '../../length/say-least.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { RouteReason } from './hole-and-pin-routes.ts';

type WallReason = Extract<
  RouteReason,
  {
    code:
      | 'ask-wall'
      | 'wall-left'
      | 'wall-too-thin'
      | 'cleans-up-to'
      | 'no-larger-shank'
      | 'bushing-wall'
      | 'bushing-wall-too-thin'
      | 'no-reamer'
      | 'pin-worn';
  }
>;

/** What a larger hole or a bushing leaves of the metal, and which size it comes to. */
export function sayWallReason(reason: WallReason, unit: ShownUnit): string {
  const size = (length: Length): string => show(length, unit);
  switch (reason.code) {
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
    default:
      return reason satisfies never;
  }
}
