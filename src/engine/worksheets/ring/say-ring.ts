import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import type { Refusal } from '../../length/refusal.ts';
import type { RingAnswer, RingRefusal } from './ring.ts';
import type { CutFromBlank, Holding, RingCut, WhyNot } from './ring-blank.ts';
import { say } from '../../length/say.ts';
import { withUnit, figure, show, sayFromTo, type ShownUnit } from '../../length/show.ts';
import { showAgainst, showBeside } from '../../length/show-limits.ts';
const DEEDS: Readonly<Record<string, string>> = {
  bore: 'Bore the inside',
  outside: 'Turn the outside',
  length: 'Face to thickness',
};

/** What one cut does: `Bore the inside`. */
export function sayRingDeed({ kind }: Pick<RingCut, 'kind'>): string {
  return DEEDS[kind] ?? kind;
}

/** `.750 → .765, .015 off; good from .762 to .768.` */
export function sayRingCut({ from, to, take, lower, upper }: RingCut, unit: ShownUnit): string {
  return `${figure(from, unit)} → ${figure(to, unit)}, ${withUnit(figure(take, unit), unit)} off; ${sayGood({ lower, upper }, unit)}.`;
}

/** `good from .762 to .768`; a thickness has only a most. */
export function sayGood(
  { lower, upper }: { readonly lower: Length; readonly upper: Length },
  unit: ShownUnit,
): string {
  return isZero(lower)
    ? `good up to ${withUnit(showAgainst([], { upper }, unit).upper ?? '', unit)}`
    : `good ${sayFromTo(lower, upper, unit)}`;
}

/** Said where the readings are too wide for the clearance: cut to the aim, then try it. */
export const RING_NOT_PROVED =
  'These readings can’t prove the clearance. Cut to the aim, leave it full. Try the ring in place before the last pass.';

/** How the ring stands in its recess. */
export function sayProud({ proud }: Pick<RingAnswer, 'proud'>, unit: ShownUnit): string {
  if (!proud) return 'Give the depth of the recess to learn what stands proud.';
  if (isZero(proud)) return 'It stands level with the face.';
  const by = show(absolute(proud), unit);
  return isNegative(proud) ? `It lies ${by} below the face.` : `It stands ${by} proud of the face.`;
}

/** Which washer, and how much has to come off it in all. */
export function sayBlank({ blank, cuts }: CutFromBlank): string {
  if (cuts.length === 0) return `${blank.name} goes in as it is.`;
  return `${blank.name}: ${cuts.length === 1 ? 'one cut' : `${cuts.length} cuts`}.`;
}

export function sayWhyNot(why: WhyNot): string {
  switch (why) {
    case 'too-small-outside':
      return 'too small outside';
    case 'too-wide-inside':
      return 'its hole is too wide';
    case 'too-thin':
      return 'too thin';
    case 'not-measured':
      return 'a size is missing: put in its outside, inside and thickness';
    default:
      return why satisfies never;
  }
}

/** How to hold it. Common practice, no source. */
export function sayHolding(holding: Holding): string {
  switch (holding) {
    case 'bore-first':
      return 'Bore first, while the full outside can be held without squeezing the hole.';
    case 'mandrel':
      return 'Turn the outside on a mandrel through the finished bore: both run true.';
    case 'face-on-mandrel':
      return 'Face it on a mandrel with a square shoulder, a little off each side. Deburr both edges.';
    case 'thin':
      return 'It is thin: jaws squeeze it out of round. Clamp it on a mandrel between shoulder and washer. Sharp tool, light cuts.';
    default:
      return holding satisfies never;
  }
}

export function sayRingRefusal(refusal: RingRefusal | Refusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'ring-no-wall':
      return `No ring fits: ${show(refusal.outside, unit)} outside, ${show(refusal.inside, unit)} inside, wall under ${show(refusal.least, unit)}. Check recess and stem, or take less clearance.`;
    case 'ring-no-depth':
      return `No depth left for a ring: ${show(refusal.depth, unit)} deep, ${show(refusal.stayFree, unit)} must stay free. Leave it out, or deepen the recess.`;
    case 'ring-too-thin':
      return `Ring too thin: ${sayMost(refusal, unit)} or more. Leave it out, or deepen the recess.`;
    default:
      return say(refusal, unit);
  }
}

function sayMost({ most, least }: Extract<RingRefusal, { code: 'ring-too-thin' }>, unit: ShownUnit): string {
  const shown = showBeside(most, { limit: least, is: 'least' }, unit);
  return `${shown.value} at most, want ${shown.limit}`;
}
