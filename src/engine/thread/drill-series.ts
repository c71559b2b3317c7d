import { fractionText } from '../length/fraction.ts';
import { byLength, isLess, isMore, lengthOf, minus, sameLength } from '../length/length.ts';
import type { Length } from '../length/length.ts';
import { largestSixtyFourths, letterThousandths, metricRule, numberTenThousandths } from './tables/drills.ts';

export type DrillSeries = 'number' | 'letter' | 'fraction' | 'metric';

/** One drill as it is stamped: '#7', 'F', '29/64', '11.5 mm'. */
export type Drill = { readonly name: string; readonly series: DrillSeries; readonly size: Length };

export type DrillNeighbours = {
  readonly series: DrillSeries;
  readonly exact?: Drill;
  readonly below?: { readonly drill: Drill; readonly by: Length };
  readonly above?: { readonly drill: Drill; readonly by: Length };
};

// Drill charts are read by fraction too: offered from here beside the drills.
export { nearestFraction } from '../length/fraction.ts';

const SERIES_AS_SHOWN = ['fraction', 'letter', 'number', 'metric'] as const satisfies readonly DrillSeries[];
const kept = new Map<DrillSeries, readonly Drill[]>();

/**
 * Every drill of a series, smallest first.
 *
 * Range:  #97 to #1 (.0059 to .2280 in), A to Z, 1/64 to 1-1/2 in, 0.2 to 25.75 mm.
 * Source: tables/drills.ts.
 */
export function drillsOf(series: DrillSeries): readonly Drill[] {
  const known = kept.get(series);
  if (known) return known;
  const made = MAKERS[series]().sort((a, b) => byLength(a.size, b.size));
  kept.set(series, made);
  return made;
}

/**
 * The drill with this name, however it is written: '#7', 'no. 7', 'f', '29/64 in', '1 1/32', '11,5mm'.
 *
 * Refuses: by undefined. A bare figure such as '7' could be a number, an inch or a millimetre drill, and is not guessed at.
 */
export function drillNamed(name: string): Drill | undefined {
  const text = name.trim().toLowerCase().replace(',', '.').replace(/\s+/g, ' ');
  const number = /^(?:#|no\.?) ?(\d+)$/.exec(text)?.[1];
  if (number !== undefined) return drillsOf('number').find((drill) => drill.name === `#${Number(number)}`);
  if (/^[a-z]$/.test(text)) return drillsOf('letter').find((drill) => drill.name === text.toUpperCase());
  const metric = /^(\d*\.?\d+) ?mm$/.exec(text)?.[1];
  if (metric !== undefined) return drillOfSize('metric', lengthOf(`${metric} mm`));
  const fraction = /^((?:\d+[- ])?\d+\/(?:2|4|8|16|32|64)|1)(?: ?in| ?")?$/.exec(text)?.[1];
  return fraction === undefined ? undefined : drillOfSize('fraction', lengthOf(`${fraction} in`));
}

/**
 * The drills of each series next to a size: the one that is exactly it, the next below and the next above.
 *
 * Units:  `by` is never negative: how far the size is from the drill.
 * Range:  any size; a side is left out where the series ends.
 */
export function drillsAround(size: Length): readonly DrillNeighbours[] {
  return SERIES_AS_SHOWN.map((series) => neighboursIn(series, size));
}

/** The next drill strictly below and strictly above a size among the given series. */
export function nextDrills(
  size: Length,
  among: readonly DrillSeries[],
): { readonly below?: Drill; readonly above?: Drill } {
  const all = among.flatMap((series) => drillsOf(series)).sort((a, b) => byLength(a.size, b.size));
  const below = all.findLast((drill) => isLess(drill.size, size));
  const above = all.find((drill) => isMore(drill.size, size));
  return { ...(below && { below }), ...(above && { above }) };
}

const MAKERS: Record<DrillSeries, () => Drill[]> = {
  number: () =>
    figuresOf(numberTenThousandths).map((size, place) => ({
      name: `#${place + 1}`,
      series: 'number',
      size: lengthOf(`.${size.padStart(4, '0')} in`),
    })),
  letter: () =>
    figuresOf(letterThousandths).map((size, place) => ({
      name: String.fromCharCode(65 + place),
      series: 'letter',
      size: lengthOf(`.${size} in`),
    })),
  fraction: () =>
    Array.from({ length: largestSixtyFourths }, (_, place) => ({
      name: fractionText(place + 1, 64),
      series: 'fraction',
      size: lengthOf(`${place + 1}/64 in`),
    })),
  metric: () => metricHundredths().map(metricDrill),
};

function figuresOf(rows: string): string[] {
  return rows.trim().split(/\s+/);
}

function metricHundredths(): number[] {
  return metricRule.flatMap(({ first, last, every, at }) => {
    const rounds = Math.floor((last - first) / every) + 1;
    return Array.from({ length: rounds }, (_, round) =>
      at.map((extra) => first + round * every + extra),
    ).flat();
  });
}

function metricDrill(hundredths: number): Drill {
  const text = (hundredths / 100).toFixed(2).replace(/\.?0+$/, '');
  return { name: `${text} mm`, series: 'metric', size: lengthOf(`${text} mm`) };
}

function drillOfSize(series: DrillSeries, size: Length): Drill | undefined {
  return drillsOf(series).find((drill) => sameLength(drill.size, size));
}

function neighboursIn(series: DrillSeries, size: Length): DrillNeighbours {
  const exact = drillOfSize(series, size);
  const { below, above } = nextDrills(size, [series]);
  return {
    series,
    ...(exact && { exact }),
    ...(below && { below: { drill: below, by: minus(size, below.size) } }),
    ...(above && { above: { drill: above, by: minus(above.size, size) } }),
  };
}
