import type { Entry } from '../../engine/length/entry.ts';
import {
  exactDecimalText,
  isLess,
  isMore,
  lengthOf,
  roundToStep,
  type Length,
} from '../../engine/length/length.ts';
import type { Rounding } from '../../engine/length/length.ts';
import type { ShownUnit } from '../../engine/length/show.ts';

const FINEST: Readonly<Record<ShownUnit, Length>> = { in: lengthOf('.0001 in'), mm: lengthOf('0.001 mm') };
// The longest a drill's fraction gets in either unit: 1/64 in is .015625, and 0.396875 mm.
const MOST_PLACES = 6;

/** A size that was worked out, as if it had been typed: exact where it ends soon, in either unit. */
export function exactEntry(size: Length, unit: ShownUnit): Entry | undefined {
  const units: readonly ShownUnit[] = unit === 'in' ? ['in', 'mm'] : ['mm', 'in'];
  return units
    .map((one) => ({ exact: size, typed: withoutNought(exactDecimalText(size, one), one), unit: one }))
    .find(({ typed }) => (typed.split('.')[1] ?? '').length <= MOST_PLACES);
}

/** The same, rounded to the finest figure that is shown where it doesn't end: the way is written out. */
export function roundedEntry(size: Length, unit: ShownUnit, way: Rounding): Entry {
  const rounded = roundToStep(size, FINEST[unit], way);
  return (
    exactEntry(size, unit) ?? {
      exact: rounded,
      typed: withoutNought(exactDecimalText(rounded, unit), unit),
      unit,
    }
  );
}

/** Limits rounded inwards, so that nothing counts as good that isn't; never past the target between them. */
export function limitEntries(
  { target, lower, upper }: { readonly target: Length; readonly lower: Length; readonly upper: Length },
  unit: ShownUnit,
): { readonly target: Entry; readonly lower: Entry; readonly upper: Entry } {
  const aim = roundedEntry(target, unit, 'nearest');
  const low = roundedEntry(lower, unit, 'up');
  const high = roundedEntry(upper, unit, 'down');
  return {
    target: aim,
    lower: isMore(low.exact, aim.exact) ? aim : low,
    upper: isLess(high.exact, aim.exact) ? aim : high,
  };
}

function withoutNought(text: string, unit: ShownUnit): string {
  return unit === 'in' ? text.replace(/^(-?)0\./, '$1.') : text;
}
