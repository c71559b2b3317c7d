/** What one size brings of its tool's error limit into a sum: its coefficient times the limit, with its sign. */
export type ErrorShare = {
  readonly toolId: string;
  readonly zeroChecked: boolean;
  readonly sizeMm: number;
  readonly errorMm: number;
};

// Chosen, no source: sizes so close stand at the same part of the scale and between the same part of the jaws.
const ALIKE_WITHIN_MM = 6.35; // 1/4 in
const ALIKE_WITHIN = 1.25;

/**
 * What the error limits of the tools bring into the variance of a sum, in mm²; floating point. Each tool whose zero was
 * checked gives two: with the zero's part out, and with it in, as that is true still. The caller takes the one that leaves
 * the narrowest band: beside readings that scatter a smaller error alone would widen it, by fewer degrees of freedom.
 *
 * Units:   limit²/3 (rectangular). A tool's error is common to all it measured: its zero to every size, its scale and jaws
 *          to sizes that are alike. So it counts with its net coefficient (four parts less one sleeve: 3), never with
 *          less than the root-sum-square of its coefficients, because a difference of two sizes doesn't cancel the whole
 *          error. A zero that was checked takes the zero's part out and nothing else: alike sizes stay common (four
 *          washers: 4), unlike ones combine by root-sum-square, and it never counts for more than an unchecked one.
 * Range:   a zero counts as checked where it was for every size that the tool brings in. Alike: within 1/4 in or a
 *          quarter of the smallest, chosen.
 * Source:  JCGM 100:2008 4.3.7, 5.2 and F.1.2; the floor under the net coefficient and what is alike are common
 *          practice, no source.
 */
export function toolErrorVariances(shares: readonly ErrorShare[]): readonly number[] {
  const tools = [...new Set(shares.map(({ toolId }) => toolId))];
  return tools
    .map((id) => ofOneTool(shares.filter(({ toolId }) => toolId === id)))
    .reduce((sums, some) => sums.flatMap((so) => some.map((one) => so + one / 3)), [0]);
}

function ofOneTool(shares: readonly ErrorShare[]): readonly number[] {
  const all = common(shares);
  if (!shares.every(({ zeroChecked }) => zeroChecked)) return [all];
  const zeroOut = total(alike(shares).map(common));
  return zeroOut < all ? [zeroOut, all] : [all];
}

function common(shares: readonly ErrorShare[]): number {
  const errorsMm = shares.map(({ errorMm }) => errorMm);
  return Math.max(total(errorsMm) ** 2, total(errorsMm.map((errorMm) => errorMm ** 2)));
}

/** From the smallest up, each with all that are like it. */
function alike(shares: readonly ErrorShare[]): readonly (readonly ErrorShare[])[] {
  const [smallest, ...larger] = shares.toSorted((a, b) => a.sizeMm - b.sizeMm);
  if (!smallest) return [];
  const most = Math.max(smallest.sizeMm + ALIKE_WITHIN_MM, smallest.sizeMm * ALIKE_WITHIN);
  const like = larger.filter(({ sizeMm }) => sizeMm <= most);
  return [[smallest, ...like], ...alike(larger.slice(like.length))];
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((so, next) => so + next, 0);
}
