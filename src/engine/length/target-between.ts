import { dividedBy, exactDecimalText, plus, type Length } from './length.ts';
import { leavesMoreWhenLarge, metalOnTarget, type CutKind } from './metal-on.ts';
import { MOST_PLACES } from './show.ts';

/**
 * Where to cut to between two limits: half way, rounded metal-on to the dial; where no mark of it lies inside, to what is
 * judged by eye between two marks, the coarsest part of a step first, and to a figure that is shown whole. Every lead and
 * every cut asks here, so that they name the same size.
 *
 * Units:   as `metalOnTarget`. Limits closer than the finest figure: the one that leaves most metal.
 */
export function targetBetween(
  {
    lower,
    upper,
    aim = dividedBy(plus(lower, upper), 2),
  }: { readonly lower: Length; readonly upper: Length; readonly aim?: Length },
  kind: CutKind,
  step: Length,
): Length {
  const onMark = metalOnTarget({ aim, lower, upper }, kind, step);
  if (onMark.ok) return onMark.value;
  for (const part of PARTS_OF_A_STEP) {
    const target = metalOnTarget({ aim, lower, upper }, kind, dividedBy(step, part));
    if (target.ok && isShownWhole(target.value)) return target.value;
  }
  return leavesMoreWhenLarge(kind) ? upper : lower;
}

// Between two marks the eye tells a half, a fifth, a tenth; the last is for a dial that reads radius.
const PARTS_OF_A_STEP = [2, 5, 10, 20] as const;

function isShownWhole(size: Length): boolean {
  return (['in', 'mm'] as const).some(
    (unit) => (exactDecimalText(size, unit).split('.')[1] ?? '').length <= MOST_PLACES[unit],
  );
}
