import { boreForPin, surest } from '../../fit/fit-check.ts';
import { fitLimits, type Range } from '../../fit/fits.ts';
import {
  dividedBy,
  isLess,
  isMore,
  isZero,
  largest,
  lengthOf,
  minus,
  plus,
  ratioOf,
  roundForShow,
  roundToStep,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { targetBetween } from '../../length/target-between.ts';
import { insideNominal } from '../../press/bushing-sizes.ts';
import {
  bushing,
  type BushingAnswer,
  type BushingQuestion,
  type BushingRefusal,
} from '../../press/bushing.ts';
import { mean, type Estimate } from '../../reading/estimate.ts';
import { verdictOf } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import { leastOpened, otherWays, reachOf, thinWants, tooSmall } from './opened-size.ts';
import { placeOf, type Place, type WhereAsked } from './place.ts';
import { asThinRing, wallLeft, wallsOf } from './walls.ts';

export type Lock = 'dowel' | 'screw' | 'bond';

export type MisplacedHoleQuestion = {
  readonly where: WhereAsked;
  /** Bushed as any other hole, its least wall the thin side's. */
  readonly bushed: BushingQuestion;
  /** Beside the hole as it is now, with what its readings know. */
  readonly wall: Estimate;
  /** Bored on its right middle, so that a plain bushing does; else opened where it is. */
  readonly inRightPlace: boolean;
  /** The fitter's own: how close the finished hole has to come to its place. */
  readonly within?: Length | undefined;
  readonly lock: Lock;
  /** The finest figure that a size is set to. */
  readonly finest: Length;
};

export type MisplacedHoleRefusal =
  | BushingRefusal
  | { readonly code: 'not-off' }
  | {
      readonly code: 'thin-side';
      readonly opened: Length;
      readonly thin: Length;
      readonly wants: Length;
      readonly least: Length;
    }
  | { readonly code: 'not-clean'; readonly opened: Length; readonly least: Length };

/** How close the finished hole has to come, and whose word that is. */
export type HowClose = { readonly within: Length; readonly from: 'own' | 'clearance' | 'practice' };

/** The bushing's bore off its middle: by how much, and what that and the mark may be off. */
export type OffMiddle = { readonly by: Length; readonly within: Length; readonly degrees: number };

export type MisplacedHoleAnswer = {
  readonly place: Place;
  readonly judgedPlace: Judged;
  readonly close: HowClose;
  /** The least size that the part is opened to. */
  readonly least: Length;
  /** Nothing where it is opened in its right place: then the bushing is a plain one. */
  readonly off?: OffMiddle | undefined;
  readonly thin: Range;
  readonly thick: Range;
  readonly thinWants: { readonly least: Length; readonly source: string };
  /** The bushing in its part, as a ring of its thin side. */
  readonly press: BushingAnswer;
  /** The wall that is left in the part. */
  readonly wall: Judged;
  /** The other ways: opened in the other place, and line-reamed midway or along one of both holes. */
  readonly others: { readonly inOtherPlace: Length; readonly midway: Length; readonly alongOne: Length };
};

// Offset and direction share what the place may be off: .7² + .7² is .98.
export const SHARE = '0.7';

/** What a hole has to come to where its pin leaves no clearance to judge by. Common practice, no source. */
const USUAL_WITHIN = { in: lengthOf('.001 in'), mm: lengthOf('0.02 mm') } as const;

/**
 * A hole in the wrong place, opened to a round clean one and bushed so that the pin stands in its right place.
 *
 * Units:   opened where it is: at least bore of the bushing + 2 · (least wall + offset + what that may be off), and clean;
 *          opened in its right place: at least the hole + 2 · offset, and clean all round. Walls = half of (outside − bore)
 *          ∓ offset, over all that outside, bore and offset may be. The finished hole comes within half the clearance that
 *          the pin has, where nobody said how close; √(offset error² + chord of the direction error²) stays under that.
 * Range:   sizes as a bushing's. The offset is set to the finest figure that is shown.
 * Refuses: not-off, thin-side and not-clean with the size that would do, and what a bushing refuses.
 * Source:  geometry; press/bushing.ts; tables/least-walls.ts. That half the clearance may go: a pin without play in the
 *          other part binds past it. A ring of the thin side for the bushing's stress: common practice, no source.
 */
export function misplacedHole(q: MisplacedHoleQuestion): Result<MisplacedHoleAnswer, MisplacedHoleRefusal> {
  const place = placeOf(q.where);
  const by = roundForShow(place.offBy, q.finest);
  if (isZero(by)) return refuse({ code: 'not-off' });
  const inside = insideOf(q.bushed);
  if (!inside.ok) return inside;
  const close = howClose(q, inside.value);
  const off = offMiddle(by, close);
  const opened = leastOpened(q, { place, inside: inside.value, off });
  const chosen = q.bushed.reamed ? mean(q.bushed.reamed.tightest) : q.bushed.reamTo;
  if (chosen && isLess(chosen, opened.least))
    return refuse(tooSmall(q, { chosen, inside: inside.value, off, opened }));
  const press = bushing({
    ...q.bushed,
    wall: minus(mean(q.wall), reachOf(q, place)),
    leastBushingWall: dividedBy(minus(opened.least, inside.value.upper), 2),
  });
  if (!press.ok) return press;
  return worked(answerOf(q, { place, close, off, opened, press: press.value }));
}

/** The bushing's bore in place, and where it is cut to. */
function insideOf(q: BushingQuestion): Result<Range & { readonly target: Length }, BushingRefusal> {
  const fit = fitLimits({ fitClass: q.insideClass, nominal: insideNominal(q).size });
  if (!fit.ok) return fit;
  const bore = boreForPin(fit.value, q.pin);
  if (!bore.ok) return bore;
  const limits = surest(bore.value);
  return worked({ ...limits, target: targetBetween(limits, 'bore', q.step) });
}

function howClose(q: MisplacedHoleQuestion, { target }: { readonly target: Length }): HowClose {
  if (q.within && !isZero(q.within)) return { within: q.within, from: 'own' };
  const half = dividedBy(minus(target, mean(q.bushed.pin.tightest)), 2);
  if (!isMore(half, zero)) return { within: USUAL_WITHIN[q.bushed.shop ?? 'in'], from: 'practice' };
  return { within: largest(q.finest, roundToStep(half, q.finest, 'down')), from: 'clearance' };
}

function offMiddle(by: Length, { within }: HowClose): OffMiddle {
  const share = times(within, SHARE);
  // The chord that the direction moves the hole by, on the largest circle it can stand on.
  const chord = ratioOf(share, times(plus(by, share), 2));
  return { by, within: share, degrees: (2 * Math.asin(Math.min(1, chord)) * 180) / Math.PI };
}

type Worked = {
  readonly place: Place;
  readonly close: HowClose;
  readonly off: OffMiddle;
  readonly opened: { readonly least: Length };
  readonly press: BushingAnswer;
};

function answerOf(
  q: MisplacedHoleQuestion,
  { place, close, off, opened, press }: Worked,
): MisplacedHoleAnswer {
  const { offBy, halfWidth, doubt } = place;
  const limits = {
    lower: minus(offBy, close.within),
    upper: plus(offBy, close.within),
    source: CLOSE_SOURCE[close.from],
  };
  const sides = wallsOf(q, press, off);
  return {
    place,
    judgedPlace: {
      verdict: verdictOf({ value: offBy, halfWidth, limits, doubt }),
      value: offBy,
      halfWidth,
      limits,
      legs: place.legs,
    },
    close,
    least: opened.least,
    ...(!q.inRightPlace && { off }),
    ...sides,
    thinWants: thinWants(q),
    press: asThinRing(q.bushed, press, sides.thin.lower),
    wall: wallLeft(q, press),
    others: otherWays(q, { place, off, inside: press.inside }),
  };
}

const CLOSE_SOURCE: Readonly<Record<HowClose['from'], string>> = {
  own: 'your own limit',
  clearance: 'half the clearance of the pin: past it the pin binds',
  practice: 'common practice, no source',
};
