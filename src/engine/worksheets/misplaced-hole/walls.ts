import type { Range } from '../../fit/fits.ts';
import { leastParentWall, leastWallSource } from '../../fit/tables/least-walls.ts';
import { dividedBy, isMore, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { pressStress } from '../../press/bushing-stress.ts';
import { stressWarnings, type BushingWarning } from '../../press/bushing-warnings.ts';
import type { BushingAnswer, BushingQuestion } from '../../press/bushing.ts';
import { bandOf, combine, mean } from '../../reading/estimate.ts';
import { legOf } from '../../reading/settle.ts';
import { verdictOf } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import type { MisplacedHoleQuestion, OffMiddle } from './misplaced-hole.ts';

/** The bushing's walls over all that outside, bore and offset may be; alike where it is a plain one. */
export function wallsOf(
  q: MisplacedHoleQuestion,
  { outside, inside }: BushingAnswer,
  { by, within }: OffMiddle,
): { readonly thin: Range; readonly thick: Range } {
  const { outside: turned } = q.bushed;
  const measured = turned && {
    lower: minus(mean(turned.loosest), bandOf(turned.loosest).halfWidth),
    upper: plus(mean(turned.tightest), bandOf(turned.tightest).halfWidth),
  };
  const { lower, upper } = measured ?? outside;
  const even = {
    lower: dividedBy(minus(lower, inside.upper), 2),
    upper: dividedBy(minus(upper, inside.lower), 2),
  };
  if (q.inRightPlace) return { thin: even, thick: even };
  return {
    thin: { lower: minus(even.lower, plus(by, within)), upper: minus(even.upper, minus(by, within)) },
    thick: { lower: plus(even.lower, minus(by, within)), upper: plus(even.upper, plus(by, within)) },
  };
}

/** The wall that is left in the part, judged with what the readings of wall and hole know. */
export function wallLeft(q: MisplacedHoleQuestion, { partWall = zero, hole }: BushingAnswer): Judged {
  const { leastWall: own, bore, reamed } = q.bushed;
  const limits = own
    ? { lower: own, source: leastWallSource.own }
    : { lower: leastParentWall(hole.upper), source: leastWallSource.besideHole };
  // Twice the wall, as halves of a diameter don't go into a sum of whole sizes.
  const { band } = combine([
    { estimate: q.wall, coefficient: 2 },
    { estimate: bore.tightest, coefficient: 1 },
    ...(reamed ? [{ estimate: reamed.loosest, coefficient: -1 }] : []),
  ]);
  const halfWidth = dividedBy(band.halfWidth, 2);
  const verdict = verdictOf({ value: partWall, halfWidth, limits, doubt: band.doubt });
  return { verdict, value: partWall, halfWidth, limits, legs: [legOf('length', q.wall, 1)] };
}

const BY_STRESS: ReadonlySet<BushingWarning['code']> = new Set([
  'yields',
  'near-yield',
  'takes-a-set',
  'may-crack',
]);
// Both walls are judged here, with their bands.
const BY_WALL: ReadonlySet<BushingWarning['code']> = new Set(['thin-bushing', 'thin-part']);

/** The thin side is squeezed hardest: stress, force and hold as of a ring that is so thin all round. */
export function asThinRing(q: BushingQuestion, press: BushingAnswer, thin: Length): BushingAnswer {
  const { hole, partWall, reamTakes, interference, greatestInUse } = press;
  const kept = press.warnings.filter(({ code }) => !BY_WALL.has(code));
  if (!partWall || !isMore(thin, zero)) return { ...press, warnings: kept };
  const across = (wall: Length) => plus(hole.upper, times(wall, 2));
  const stressAt = (greatest: Length) =>
    pressStress({
      at: hole.upper,
      outside: across(partWall),
      ...(q.thickWall && { thickOutside: across(minus(q.thickWall, dividedBy(reamTakes, 2))) }),
      inside: minus(hole.upper, times(thin, 2)),
      part: q.part,
      bushing: q.bushing,
      interference: { ...interference, greatest },
      ...(q.length && { length: q.length }),
    });
  const stressInUse = stressAt(greatestInUse);
  return {
    ...press,
    stress: stressAt(interference.greatest),
    stressInUse,
    warnings: [...stressWarnings(q, stressInUse), ...kept.filter(({ code }) => !BY_STRESS.has(code))],
  };
}
