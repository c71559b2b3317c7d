/** Pieces of one thickness, as whole steps of a length that measures all of them exactly. */
export type ShimSize = { readonly steps: number; readonly count: number };

/** Every sum that can still matter, rising, each with the fewest pieces that give it. */
export type Layer = {
  readonly sums: number[];
  readonly pieces: number[];
  /** How the sum is made of thicker sizes, as a place in the trail; -1 for no pieces. */
  readonly nodes: number[];
  /** How many of the size in hand are in it. */
  readonly taken: number[];
};

/** How sums were reached: each entry is so many of one size on top of an earlier entry of thicker sizes. */
export type Trail = { readonly size: number[]; readonly taken: number[]; readonly before: number[] };

/** No sum above `most` and no pick of more than `pieces` is of use. */
type Bounds = { readonly most: number; readonly pieces: number };

export const NO_PIECES = -1;

export function emptyLayer(): Layer {
  return { sums: [], pieces: [], nodes: [], taken: [] };
}

/** Nothing taken yet: the one sum 0. */
export function firstLayer(): Layer {
  return { sums: [0], pieces: [0], nodes: [NO_PIECES], taken: [0] };
}

/** Every sum again with one, two ... of a size added: portions of 1, 2, 4 ... give every count up to all of them. */
export function withSize(layer: Layer, { steps, count }: ShimSize, bounds: Bounds): Layer {
  let grown = layer;
  let left = Math.min(count, bounds.pieces);
  for (let portion = 1; left > 0; portion *= 2) {
    const pieces = Math.min(portion, left);
    grown = merged(grown, { steps: pieces * steps, count: pieces }, bounds);
    left -= pieces;
  }
  return grown;
}

/**
 * A layer and the same layer moved up by a portion, as one rising list. Of equal sums the one of fewer pieces stays, then
 * the one with less of the size in hand: it is the thinnest so far, and the thin ones are to stay in the drawer.
 */
function merged({ sums, pieces, nodes, taken }: Layer, portion: ShimSize, bounds: Bounds): Layer {
  const into = emptyLayer();
  let low = 0;
  let high = 0;
  while (high < sums.length) {
    const lowSum = low < sums.length ? numberAt(sums, low) : Infinity;
    const highSum = numberAt(sums, high) + portion.steps;
    if (Math.min(lowSum, highSum) > bounds.most) break;
    const highPieces = numberAt(pieces, high) + portion.count;
    const highTaken = numberAt(taken, high) + portion.count;
    const isHigh =
      highSum < lowSum ||
      (highSum === lowSum &&
        (highPieces < numberAt(pieces, low) ||
          (highPieces === numberAt(pieces, low) && highTaken < numberAt(taken, low))));
    if (!isHigh) push(into, lowSum, numberAt(pieces, low), numberAt(nodes, low), numberAt(taken, low));
    else if (highPieces <= bounds.pieces) push(into, highSum, highPieces, numberAt(nodes, high), highTaken);
    if (lowSum <= highSum) low += 1;
    if (highSum <= lowSum) high += 1;
  }
  return into;
}

export function push(layer: Layer, sum: number, pieces: number, node: number, taken: number): void {
  layer.sums.push(sum);
  layer.pieces.push(pieces);
  layer.nodes.push(node);
  layer.taken.push(taken);
}

/** The node of a sum once its size is done with: a new one where some of that size were taken. */
export function settle(
  trail: Trail,
  { size, taken, before }: { readonly size: number; readonly taken: number; readonly before: number },
): number {
  if (taken === 0) return before;
  trail.size.push(size);
  trail.taken.push(taken);
  return trail.before.push(before) - 1;
}

/** How many of each of so many sizes a sum is made of. */
export function countsOf(trail: Trail, node: number, sizes: number): readonly number[] {
  const counts = Array.from({ length: sizes }, () => 0);
  for (let here = node; here !== NO_PIECES; here = numberAt(trail.before, here))
    counts[numberAt(trail.size, here)] = numberAt(trail.taken, here);
  return counts;
}

/** Whether one pick leaves more of the thinnest pieces than another: the thinnest size they differ in decides. */
export function leavesThinner(one: readonly number[], other: readonly number[]): boolean {
  const place = one.findLastIndex((count, index) => count !== other[index]);
  return place !== -1 && numberAt(one, place) < numberAt(other, place);
}

/** The lists of a layer are of one length and its places stay inside them. */
export function numberAt(list: readonly number[], place: number): number {
  const found = list[place];
  if (found === undefined) throw new Error('a place outside the list');
  return found;
}
