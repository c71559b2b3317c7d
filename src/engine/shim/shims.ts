import { inCommonSteps, type InSteps } from '../length/common-step.ts';
import { combine, STATISTICS_STEP, type Band, type Estimate, type Term } from '../reading/estimate.ts';
import {
  floatMm,
  isLess,
  isMore,
  lengthFromFloat,
  minus,
  plus,
  smallest,
  toText,
  zero,
  type Length,
} from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { fewestProved, knownCounts, type RowCounts, type RowsOfSize } from './shim-proved.ts';
import { fewestInside, nearestSum } from './shim-search.ts';
import { t95 } from '../reading/student-t.ts';

/** Shims or washers of one kind on hand. */
export type ShimPiece = {
  readonly id: string;
  readonly name: string;
  readonly thickness: Estimate;
  readonly count: number;
};

export type ShimQuestion = {
  /** In the order listed; of pieces alike the first listed are taken first. */
  readonly drawer: readonly ShimPiece[];
  readonly lower: Length;
  readonly upper: Length;
  readonly aim: Length;
  /** The sizes that the limits were worked out from, if their band isn't taken off the limits yet: it counts with the pick's. */
  readonly beside?: readonly Term[];
};

export type ShimPick = {
  /** Thickest first. */
  readonly picked: readonly { readonly piece: ShimPiece; readonly count: number }[];
  readonly pieces: number;
  readonly total: Length;
  /** Total less aim: below zero it is too thin. */
  readonly offAim: Length;
  /** Of the total: it grows with every piece. */
  readonly band: Band;
  readonly worstCase: Length;
  /** Whether the total lies inside the limits; if not, it is the nearest to the aim that the drawer can make. */
  readonly fits: boolean;
  /** Whether it lies inside with the whole band, that of `beside` with it. */
  readonly proves: boolean;
  /** There were too many picks to try them all: one that proves may have been missed. */
  readonly untried?: true;
};

export type ShimRefusal = { readonly code: 'no-shims' } | { readonly code: 'shims-too-fine' };

type Size = { readonly steps: number; readonly pieces: readonly ShimPiece[] };

const FINEST = 2 ** 50; // a sum of whole steps below this is exact in a JS number, four times over

/**
 * The best pick from the drawer: one that proves good with its own band before one that doesn't; then inside the limits with
 * the fewest pieces; of those the nearest to the aim; of those the one that leaves the thinnest pieces in the drawer; of
 * pieces alike the first listed. Nothing inside the limits: the nearest to the aim, then as before.
 *
 * Units:   sums are exact, on the largest step that measures every thickness. The band is that of the sum: a tool's own
 *          error counts with every piece it measured.
 * Range:   1,000 pieces and more; a thickness of nothing and a count of none are passed over. No piece at all is a pick
 *          too, where the limits allow it or nothing comes nearer. `untried` where the picks were too many to try them all
 *          for proof, which no drawer that was tried came near.
 * Refuses: no-shims; shims-too-fine (thicknesses given to more places than can be added exactly, far past any gauge).
 * Source:  exact optimum by dynamic programming, see shim-search.ts and shim-proved.ts; common practice in what is best.
 */
export function shimsFromDrawer(q: ShimQuestion): Result<ShimPick, ShimRefusal> {
  const usable = q.drawer.filter(({ thickness, count }) => count >= 1 && isMore(thickness.sum, zero));
  if (usable.length === 0) return refuse({ code: 'no-shims' });
  const steps = inCommonSteps(
    usable.map(({ thickness }) => thickness),
    [q.lower, q.upper, q.aim, STATISTICS_STEP],
  );
  const limits = {
    least: steps.ceiling(q.lower),
    most: steps.floor(q.upper),
    aimQuarters: steps.quarters(q.aim),
  };
  const sizes = sizesThickestFirst(usable, steps);
  const reach = Math.max(Number(limits.most), Number(limits.aimQuarters) / 2);
  const far = Math.max(Math.abs(reach), Math.abs(Number(limits.least)), ...sizes.map((size) => size.steps));
  if (far > FINEST / 4) return refuse({ code: 'shims-too-fine' });
  const aimQuarters = Number(limits.aimQuarters);
  const proved = provedPick(q, { sizes, steps, reach, aimQuarters });
  if (proved !== 'none' && proved !== 'too-many') return worked(pickOf(sizes, proved, q, true));
  const counted = sizes.map((size) => ({ steps: size.steps, count: usefulCount(size, reach) }));
  const inside = fewestInside(counted, {
    least: Number(limits.least),
    most: Number(limits.most),
    aimQuarters,
  });
  const counts = (inside ?? nearestSum(counted, aimQuarters)).map((count, index) =>
    takenInOrder(sizes[index]?.pieces ?? [], count),
  );
  const pick = pickOf(sizes, counts, q, inside !== undefined);
  return worked({ ...pick, ...(proved === 'too-many' && { untried: true }) });
}

type Search = {
  readonly sizes: readonly Size[];
  readonly steps: InSteps;
  readonly reach: number;
  readonly aimQuarters: number;
};

function provedPick(
  q: ShimQuestion,
  { sizes, steps, reach, aimQuarters }: Search,
): RowCounts | 'none' | 'too-many' {
  const known = knownAlike(sizes);
  const rows = sizes.map((size, index): RowsOfSize => ({
    steps: size.steps,
    rows: size.pieces.map(({ count }, place) => ({
      count: Math.min(Math.floor(count), Math.max(0, Math.floor(reach / size.steps))),
      known: known[index]?.[place] ?? 0,
    })),
  }));
  const betweenFor = (halfWidth: Length) => ({
    least: Number(steps.ceiling(plus(q.lower, halfWidth))),
    most: Number(steps.floor(minus(q.upper, halfWidth))),
  });
  if (rows.every((size) => size.rows.every((row) => row.known === 0))) {
    // Known exactly, so the band is the same whatever is picked: the fewest inside what it leaves.
    const { halfWidth, doubt } = combine(q.beside ?? []).band;
    const counted = sizes.map((size) => ({ steps: size.steps, count: usefulCount(size, reach) }));
    const counts = doubt ? undefined : fewestInside(counted, { ...betweenFor(halfWidth), aimQuarters });
    return counts?.map((count, index) => takenInOrder(sizes[index]?.pieces ?? [], count)) ?? 'none';
  }
  const leastAt = leastBand(q);
  const bands = new Map<string, ReturnType<typeof betweenFor>>();
  const bests = new Map<string, ReturnType<typeof betweenFor>>();
  return fewestProved({
    sizes: rows,
    aimQuarters,
    atBest: (pieces) => betweenFor(leastAt(pieces)),
    atBestWith: (place, counts, key) => {
      const before = bests.get(key);
      if (before) return before;
      const mm = bareMm([...(q.beside ?? []), ...termsOf(sizes.slice(place), counts)]);
      const between = betweenFor(justBelow(mm));
      bests.set(key, between);
      return between;
    },
    provedBetween: (counts) => {
      const key = knownCounts(rows, counts);
      const before = bands.get(key);
      if (before) return before;
      const { halfWidth, doubt } = combine([...(q.beside ?? []), ...termsOf(sizes, counts)]).band;
      const between = doubt ? { least: 1, most: 0 } : betweenFor(halfWidth);
      bands.set(key, between);
      return between;
    },
  });
}

/** A number for each row, the same for those that are known by one tool as closely; 0 is known exactly. */
function knownAlike(sizes: readonly Size[]): readonly (readonly number[])[] {
  const numbers = new Map<string, number>();
  return sizes.map(({ pieces }) =>
    pieces.map(({ thickness }) => {
      const { scatter, degreesOfFreedom, step, doubt, tool } = thickness;
      if (!tool && !step && !doubt && !isMore(scatter, zero)) return 0;
      // Where a zero was checked, alike sizes share an error: then the size itself tells them apart.
      const size = tool?.zeroChecked === true ? thickness.sum : undefined;
      const texts = [scatter, step, tool?.mpe, tool?.resolutionBeside, size].map((one) => one && toText(one));
      const key = JSON.stringify([texts, String(degreesOfFreedom), doubt, tool?.id, tool?.zeroChecked]);
      const number = numbers.get(key) ?? numbers.size + 1;
      numbers.set(key, number);
      return number;
    }),
  );
}

/**
 * What no pick of so many pieces can be known better than; floating point.
 *
 * Units:   t95(∞)·√(the variance of what is beside + that of so many of the piece known best). A tool's shared error never
 *          makes that less, see `combine`; where one tool read every piece it is counted as shared.
 */
function leastBand({ beside = [], drawer }: ShimQuestion): (pieces: number) => Length {
  const besideMm = bareMm(beside);
  const ownMm = Math.min(...drawer.map(({ thickness }) => bareMm([{ estimate: thickness, coefficient: 1 }])));
  const best = bestOfOneTool(drawer);
  return (pieces) => {
    const each = best ? Array.from({ length: pieces }, () => ({ estimate: best, coefficient: -1 })) : [];
    const apartMm = Math.hypot(besideMm, Math.sqrt(pieces) * ownMm);
    const mm = Math.max(apartMm, best ? bareMm([...beside, ...each]) : 0);
    return justBelow(mm);
  };
}

/** Floating point's last digits must not shut out a pick that just proves. */
function justBelow(mm: number): Length {
  return lengthFromFloat(Math.max(0, mm - 1e-8), STATISTICS_STEP);
}

/** A piece known as well as the best of a drawer that one tool measured; undefined where it was more than one. */
function bestOfOneTool(drawer: readonly ShimPiece[]): Estimate | undefined {
  const [first] = drawer;
  const tools = drawer.map(({ thickness: { tool } }) => tool);
  const [tool] = tools;
  if (!first || !tool || tools.some((one) => one?.id !== tool.id || one.zeroChecked)) return undefined;
  const least = (of: (one: NonNullable<typeof tool>) => Length) =>
    smallest(of(tool), ...tools.flatMap((one) => (one ? of(one) : [])));
  return {
    sum: first.thickness.sum,
    count: first.thickness.count,
    scatter: smallest(first.thickness.scatter, ...drawer.map(({ thickness }) => thickness.scatter)),
    degreesOfFreedom: Infinity,
    tool: { ...tool, mpe: least(({ mpe }) => mpe), resolutionBeside: least((one) => one.resolutionBeside) },
  };
}

/** The band with the coverage of many readings: what more of them could come down to. */
function bareMm(terms: readonly Term[]): number {
  const { halfWidth, coverage } = combine(terms).band;
  return (floatMm(halfWidth) * t95(Infinity)) / coverage;
}

function termsOf(sizes: readonly Size[], counts: RowCounts): readonly Term[] {
  return sizes.flatMap(({ pieces }, size) =>
    pieces.flatMap(({ thickness }, row) => {
      const count = counts[size]?.[row] ?? 0;
      return count > 0 ? [{ estimate: thickness, coefficient: -count }] : [];
    }),
  );
}

function sizesThickestFirst(drawer: readonly ShimPiece[], steps: InSteps): readonly Size[] {
  const bySteps = new Map<number, ShimPiece[]>();
  for (const [index, piece] of drawer.entries()) {
    const thickness = Number(steps.sizes[index]);
    bySteps.set(thickness, [...(bySteps.get(thickness) ?? []), piece]);
  }
  return [...bySteps].map(([thickness, pieces]) => ({ steps: thickness, pieces })).sort(byThickness);
}

function byThickness(a: Size, b: Size): number {
  return b.steps - a.steps;
}

/** More of one size than reach the upper limit, or lie past the aim by as much as no piece at all lies before it, are no use. */
function usefulCount({ steps, pieces }: Size, reach: number): number {
  const onHand = pieces.reduce((so, { count }) => so + Math.floor(count), 0);
  return Math.max(0, Math.min(onHand, Math.floor(reach / steps)));
}

function pickOf(sizes: readonly Size[], counts: RowCounts, q: ShimQuestion, fits: boolean): ShimPick {
  const picked = sizes.flatMap(({ pieces }, size) =>
    pieces.flatMap((piece, row) => {
      const count = counts[size]?.[row] ?? 0;
      return count > 0 ? [{ piece, count }] : [];
    }),
  );
  const { value, band, worstCase } = combine(
    picked.map(({ piece, count }) => ({ estimate: piece.thickness, coefficient: count })),
  );
  const pieces = picked.reduce((so, { count }) => so + count, 0);
  const { halfWidth, doubt } = combine([...(q.beside ?? []), ...termsOf(sizes, counts)]).band;
  const proves =
    doubt !== true && !isLess(minus(value, halfWidth), q.lower) && !isMore(plus(value, halfWidth), q.upper);
  return { picked, pieces, total: value, offAim: minus(value, q.aim), band, worstCase, fits, proves };
}

/** So many out of pieces alike, the first listed used up first. */
function takenInOrder(pieces: readonly ShimPiece[], wanted: number): readonly number[] {
  let left = wanted;
  return pieces.map((piece) => {
    const count = Math.min(left, Math.floor(piece.count));
    left -= count;
    return count;
  });
}
