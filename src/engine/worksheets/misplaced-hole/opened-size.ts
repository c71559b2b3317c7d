import { cleanUpSize } from '../../fit/clean-up.ts';
import { systemOf, type Range } from '../../fit/fits.ts';
import { leastBushingWall, leastWallSource } from '../../fit/tables/least-walls.ts';
import { standardReamers } from '../../fit/tables/reamer-sizes.ts';
import { dividedBy, isLess, largest, minus, plus, times, zero, type Length } from '../../length/length.ts';
import type {
  MisplacedHoleAnswer,
  MisplacedHoleQuestion,
  MisplacedHoleRefusal,
  OffMiddle,
} from './misplaced-hole.ts';
import type { Place } from './place.ts';

/** How far the opened hole stands off the hole that is there; all that its readings leave open counts. */
export function reachOf({ inRightPlace }: Pick<MisplacedHoleQuestion, 'inRightPlace'>, place: Place): Length {
  return inRightPlace ? plus(place.offBy, place.halfWidth) : zero;
}

export type Known = { readonly place: Place; readonly inside: Range; readonly off: OffMiddle };

/** The least size that leaves nothing of the old hole, and that leaves the bushing its thin side. */
export function leastOpened(q: MisplacedHoleQuestion, { place, inside, off }: Known) {
  const clean = plus(cleanUpSize(q.bushed.bore.loosest, q.bushed.shop), times(reachOf(q, place), 2));
  const walls = plus(inside.upper, times(plus(thinWants(q).least, eccentric(q, off)), 2));
  return { clean, walls, least: largest(clean, walls) };
}

/** What the thin side loses to the offset at the most. */
function eccentric(
  { inRightPlace }: Pick<MisplacedHoleQuestion, 'inRightPlace'>,
  { by, within }: OffMiddle,
): Length {
  return inRightPlace ? zero : plus(by, within);
}

export function thinWants({ bushed: { leastBushingWall: own, shop = 'in' } }: MisplacedHoleQuestion) {
  return own
    ? { least: own, source: leastWallSource.own }
    : { least: leastBushingWall[shop], source: leastWallSource.bushing };
}

type TooSmall = Pick<Known, 'inside' | 'off'> & {
  readonly chosen: Length;
  readonly opened: ReturnType<typeof leastOpened>;
};

/** Why a size that was chosen won't do. */
export function tooSmall(
  q: MisplacedHoleQuestion,
  { chosen, inside, off, opened }: TooSmall,
): MisplacedHoleRefusal {
  const { least } = opened;
  if (isLess(chosen, opened.clean)) return { code: 'not-clean', opened: chosen, least };
  const thin = minus(dividedBy(minus(chosen, inside.upper), 2), eccentric(q, off));
  return { code: 'thin-side', opened: chosen, thin, wants: thinWants(q).least, least };
}

/** What the other ways would open it to, as reamers are made. */
export function otherWays(q: MisplacedHoleQuestion, known: Known): MisplacedHoleAnswer['others'] {
  const { place, inside, off } = known;
  const clean = cleanUpSize(q.bushed.bore.loosest, q.bushed.shop);
  const over = plus(place.offBy, place.halfWidth);
  const toReam = (size: Length) => reamedOver(q, size);
  return {
    inOtherPlace: toReam(leastOpened({ ...q, inRightPlace: !q.inRightPlace }, { place, inside, off }).least),
    midway: toReam(plus(clean, over)),
    alongOne: toReam(plus(clean, times(over, 2))),
  };
}

/** The next standard reamer of the system in hand; the size itself where there is none so large. */
function reamedOver({ bushed }: MisplacedHoleQuestion, size: Length): Length {
  const family = systemOf(bushed.pressClass) === 'iso' ? 'mm' : 'in';
  return (
    standardReamers.find((reamer) => reamer.name.endsWith(family) && !isLess(reamer.size, size))?.size ?? size
  );
}
