import { dividedBy, largest, minus, plus, smallest, type Length } from '../../length/length.ts';
import { sizeStep } from '../../length/metal-on.ts';
import type { RingQuestion } from './ring.ts';
import type { RingBlank } from './ring-blank.ts';
import { usualRingClearances, type RingClearance } from './tables/ring-practice.ts';
import type { Given } from '../given.ts';
import type { RingFields } from './fields.ts';

type RingGiven = Given<RingFields>;

/** The clearances a ring gets, outside and inside: the usual ones by what locates it, or one's own. */
export function ringClearances(given: RingGiven): {
  readonly outside: RingClearance;
  readonly inside: RingClearance;
} {
  const { locates, free } = usualRingClearances[given.unit];
  const byStem = given.choice('locates') === 'stem';
  return {
    outside: ownClearance(byStem ? free : locates, given.exact('outLeast'), given.exact('outMost')),
    inside: ownClearance(byStem ? locates : free, given.exact('inLeast'), given.exact('inMost')),
  };
}

/** The question a ring worksheet asks, once the recess and the stem have a size. */
export function ringQuestion(given: RingGiven): RingQuestion | undefined {
  const recess = given.size('recess');
  const stem = given.size('stem');
  if (!recess || !stem) return undefined;
  const depth = given.size('depth');
  const stayFree = given.exact('stayFree');
  const leastThickness = given.exact('leastThickness');
  const clearances = ringClearances(given);
  return {
    recess: { tightest: recess.tightest, loosest: recess.loosest },
    stem: { tightest: stem.tightest, loosest: stem.loosest },
    outsideClearance: clearances.outside,
    insideClearance: clearances.inside,
    ...(depth && { depth: depth.tightest }),
    ...(stayFree && { stayFree }),
    ...(leastThickness && { leastThickness }),
    shop: given.unit,
    blanks: [...washerInHand(given), ...blanksOnHand(given)],
    steps: { diameter: sizeStep('outside', given.dial), length: sizeStep('length', given.dial) },
  };
}

function ownClearance(
  usual: RingClearance,
  least: Length | undefined,
  most: Length | undefined,
): RingClearance {
  if (!least && !most) return usual;
  const room = minus(usual.upper, usual.lower);
  const lower = least ?? smallest(usual.lower, most ?? usual.lower);
  const upper = most ?? largest(usual.upper, plus(lower, room));
  return { lower, upper, aim: dividedBy(plus(lower, upper), 2), source: 'your own limits' };
}

function washerInHand(given: RingGiven): readonly RingBlank[] {
  const outside = given.exact('blankOutside');
  const inside = given.exact('blankInside');
  const thickness = given.exact('blankThickness');
  if (!outside && !inside && !thickness) return [];
  return [blankOf({ id: 'in-hand', name: 'The washer in hand', outside, inside, thickness })];
}

/** Whatever lies in the drawer with a hole in it: washers, spacers, shims. */
function blanksOnHand({ drawer }: RingGiven): readonly RingBlank[] {
  return drawer
    .filter(({ kind, count }) => ['washer', 'spacer', 'shim'].includes(kind) && count > 0)
    .map(blankOf);
}

type Blank = {
  readonly id: string;
  readonly name: string;
  readonly outside: Length | undefined;
  readonly inside: Length | undefined;
  readonly thickness: Length | undefined;
};

function blankOf({ id, name, outside, inside, thickness }: Blank): RingBlank {
  return {
    id,
    name,
    ...(outside && { outside }),
    ...(inside && { inside }),
    ...(thickness && { thickness }),
  };
}
