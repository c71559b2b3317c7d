import { inCommonSteps, type InSteps } from './common-step.ts';
import { combine, type Band, type Estimate } from './estimate.ts';
import { isMore, minus, zero, type Length } from './length.ts';
import { refuse, worked, type Result } from './refusal.ts';
import { fewestInside, nearestSum } from './shim-search.ts';

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
};

export type ShimRefusal = { readonly code: 'no-shims' } | { readonly code: 'shims-too-fine' };

type Size = { readonly steps: number; readonly pieces: readonly ShimPiece[] };

const FINEST = 2 ** 50; // a sum of whole steps below this is exact in a JS number, four times over

/**
 * The best pick from the drawer: inside the limits with the fewest pieces; of those the nearest to the aim; of those the
 * one that leaves the thinnest pieces in the drawer; of pieces alike the first listed. Nothing inside the limits: the
 * nearest to the aim, then as before.
 *
 * Units:   sums are exact, on the largest step that measures every thickness. The band is that of the sum: a tool's own
 *          error counts with every piece it measured.
 * Range:   1,000 pieces and more; a thickness of nothing and a count of none are passed over. No piece at all is a pick
 *          too, where the limits allow it or nothing comes nearer.
 * Refuses: no-shims; shims-too-fine (thicknesses given to more places than can be added exactly, far past any gauge).
 * Source:  exact optimum by dynamic programming, see shim-search.ts; common practice in what is best.
 */
export function shimsFromDrawer(q: ShimQuestion): Result<ShimPick, ShimRefusal> {
  const usable = q.drawer.filter(({ thickness, count }) => count >= 1 && isMore(thickness.sum, zero));
  if (usable.length === 0) return refuse({ code: 'no-shims' });
  const steps = inCommonSteps(
    usable.map(({ thickness }) => thickness),
    [q.lower, q.upper, q.aim],
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
  const counted = sizes.map((size) => ({ steps: size.steps, count: usefulCount(size, reach) }));
  const aimQuarters = Number(limits.aimQuarters);
  const inside = fewestInside(counted, {
    least: Number(limits.least),
    most: Number(limits.most),
    aimQuarters,
  });
  return worked(pickOf(sizes, inside ?? nearestSum(counted, aimQuarters), q, inside !== undefined));
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

function pickOf(
  sizes: readonly Size[],
  counts: readonly number[],
  { aim }: ShimQuestion,
  fits: boolean,
): ShimPick {
  const picked = sizes.flatMap(({ pieces }, index) => takenInOrder(pieces, counts[index] ?? 0));
  const { value, band, worstCase } = combine(
    picked.map(({ piece, count }) => ({ estimate: piece.thickness, coefficient: count })),
  );
  const pieces = picked.reduce((so, { count }) => so + count, 0);
  return { picked, pieces, total: value, offAim: minus(value, aim), band, worstCase, fits };
}

function takenInOrder(pieces: readonly ShimPiece[], wanted: number): ShimPick['picked'] {
  let left = wanted;
  return pieces.flatMap((piece) => {
    const count = Math.min(left, Math.floor(piece.count));
    left -= count;
    return count > 0 ? [{ piece, count }] : [];
  });
}
