import {
  absolute,
  dividedBy,
  isLess,
  isMore,
  lengthOf,
  minus,
  roundToStep,
  sameLength,
  type Length,
  type Unit,
} from './length.ts';
import { evenFigures, figureTo, MOST_PLACES } from './show.ts';

type Ends = { readonly lower?: Length; readonly upper?: Length };

export type ShownAgainst = {
  readonly values: readonly string[];
  readonly lower?: string;
  readonly upper?: string;
};

// Chosen, not published: a hundredth of a micrometre and less is not told apart by anything that is read.
const MOST_MORE = 4;

/**
 * Sizes beside the limits they are held to, in figures that say the same as the sizes: `.00105` beside `.001`, never
 * `.001` that is past `.001`. Limits are rounded inwards; all get a place more until what is outside is shown outside,
 * what is inside inside, and the limits don't cross. One limit has as many places as the other.
 */
export function showAgainst(values: readonly Length[], ends: Ends, unit: Unit): ShownAgainst {
  const places = placesNeeded(values, ends, unit);
  const { lower, upper } = inwards(ends, unit, places);
  const limits = [lower, upper].filter((limit) => limit !== undefined);
  const figures = evenFigures(limits, unit, places);
  const [atLower, atUpper] = [figures[0] ?? '', figures.at(-1) ?? ''];
  const shown = (value: Length): string => {
    if (ends.lower && sameLength(value, ends.lower)) return atLower;
    return ends.upper && sameLength(value, ends.upper) ? atUpper : figureTo(value, unit, places);
  };
  return {
    values: values.map(shown),
    ...(lower && { lower: atLower }),
    ...(upper && { upper: atUpper }),
  };
}

/** One size beside its one limit, with units: what it is, what it has to be, and what is between them. */
export function showBeside(
  value: Length,
  { limit, is }: { readonly limit: Length; readonly is: 'least' | 'most' },
  unit: Unit,
): { readonly value: string; readonly limit: string; readonly by: string } {
  const ends = is === 'least' ? { lower: limit } : { upper: limit };
  const { values, lower, upper } = showAgainst([value], ends, unit);
  const by = figureTo(absolute(minus(value, limit)), unit, placesNeeded([value], ends, unit));
  return {
    value: `${values[0] ?? ''} ${unit}`,
    limit: `${lower ?? upper ?? ''} ${unit}`,
    by: `${by} ${unit}`,
  };
}

function placesNeeded(values: readonly Length[], ends: Ends, unit: Unit): number {
  const usual = MOST_PLACES[unit];
  const start = endsOnHalves(ends, unit, usual) ? usual + 1 : usual;
  for (let places = start; places < usual + MOST_MORE; places += 1)
    if (saysTheSame(values, ends, { unit, places })) return places;
  return usual + MOST_MORE;
}

/** As tables print half tenths and half micrometres: of two limits one that ends one place further is shown whole. */
function endsOnHalves({ lower, upper }: Ends, unit: Unit, places: number): boolean {
  const endsAt = (limit: Length, at: number) =>
    sameLength(roundToStep(limit, stepOf(unit, at), 'down'), limit);
  return (
    lower !== undefined &&
    upper !== undefined &&
    [lower, upper].every((limit) => endsAt(limit, places + 1)) &&
    [lower, upper].some((limit) => !endsAt(limit, places))
  );
}

function saysTheSame(
  values: readonly Length[],
  { lower, upper }: Ends,
  { unit, places }: { readonly unit: Unit; readonly places: number },
): boolean {
  const shown = inwards({ ...(lower && { lower }), ...(upper && { upper }) }, unit, places);
  if (shown.lower && shown.upper && isMore(shown.lower, shown.upper)) return false;
  return values.every((value) => {
    const at = rounded(value, unit, places);
    // A size that is the limit itself is written as the limit is.
    const isUnder =
      lower && shown.lower && !sameLength(value, lower) && isLess(value, lower) !== isLess(at, shown.lower);
    const isOver =
      upper && shown.upper && !sameLength(value, upper) && isMore(value, upper) !== isMore(at, shown.upper);
    return isUnder !== true && isOver !== true;
  });
}

function inwards({ lower, upper }: Ends, unit: Unit, places: number): Ends {
  const step = stepOf(unit, places);
  return {
    ...(lower && { lower: roundToStep(lower, step, 'up') }),
    ...(upper && { upper: roundToStep(upper, step, 'down') }),
  };
}

function rounded(value: Length, unit: Unit, places: number): Length {
  return roundToStep(value, stepOf(unit, places), 'nearest');
}

function stepOf(unit: Unit, places: number): Length {
  return dividedBy(lengthOf(`1 ${unit}`), 10 ** places);
}
