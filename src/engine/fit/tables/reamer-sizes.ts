import { fractionText } from '../../length/fraction.ts';
import { byLength, lengthOf } from '../../length/length.ts';
import type { Length } from '../../length/length.ts';

/** A reamer as it is ordered: '9/16 in', '.5010 in', '12 mm'. */
export type Reamer = { readonly name: string; readonly size: Length };

/** What a shop has its drills, reamers and bolts in. */
export type ShopFamily = 'inch' | 'metric';

export function familyOf({ name }: Reamer): ShopFamily {
  return name.endsWith(' mm') ? 'metric' : 'inch';
}

// Usual stock of chucking reamers, from memory: every 64th from 1/8 to 1-1/2 in, whole millimetres from 3 to 38.
const sixtyFourths = Array.from({ length: 96 - 8 + 1 }, (_, place) => place + 8);
const millimetres = Array.from({ length: 38 - 3 + 1 }, (_, place) => place + 3);

// Dowel reamers a thou over and a thou or less under the size, from memory of the usual sets.
const OVER_AND_UNDER =
  '.1240 .1260 .1865 .1885 .2490 .2510 .3115 .3135 .3740 .3760 .4365 .4385 .4990 .5010 .6240 .6260 .7490 .7510 .8740 .8760 .9990 1.0010';

/** Whole fractions of an inch and whole millimetres: what a bushing's outside is chosen from. Smallest first. */
export const standardReamers: readonly Reamer[] = [
  ...sixtyFourths.map((count) => ({
    name: `${fractionText(count, 64)} in`,
    size: lengthOf(`${count}/64 in`),
  })),
  ...millimetres.map((count) => ({ name: `${count} mm`, size: lengthOf(`${count} mm`) })),
].sort((a, b) => byLength(a.size, b.size));

/** The standard ones and the dowel sizes a little over and under: what a bore for a given pin is chosen from. */
export const allReamers: readonly Reamer[] = [
  ...standardReamers,
  ...OVER_AND_UNDER.split(' ').map((size) => ({ name: `${size} in`, size: lengthOf(`${size} in`) })),
].sort((a, b) => byLength(a.size, b.size));
