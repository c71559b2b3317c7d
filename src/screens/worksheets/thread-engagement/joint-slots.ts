/** A part in the drawing, from its left face to its right one. */
export type Slot = { readonly left: number; readonly right: number };

/**
 * Parts side by side in the room there is: to one scale, save that none is narrower than its label. `sizes` in any one
 * unit; one that isn't known is as long as the others are on average.
 */
export function slotsToScale(
  sizes: readonly (number | undefined)[],
  { left, width, least }: { readonly left: number; readonly width: number; readonly least: number },
): readonly Slot[] {
  const known = sizes.filter((size) => size !== undefined);
  const usual = known.length === 0 ? 1 : sumOf(known) / known.length;
  const widths = widened(
    sizes.map((size) => Math.max(1e-6, size ?? usual)),
    width,
    Math.min(least, width / Math.max(1, sizes.length)),
  );
  return widths.map((each, index) => {
    const from = left + sumOf(widths.slice(0, index));
    return { left: from, right: from + each };
  });
}

/** Those too narrow at the common scale get their least; the others share what is left, to scale. */
function widened(sizes: readonly number[], room: number, least: number): readonly number[] {
  const narrow = new Set<number>();
  for (;;) {
    const free = room - narrow.size * least;
    const rest = sumOf(sizes.filter((_, index) => !narrow.has(index)));
    const scale = rest === 0 ? 0 : free / rest;
    const more = sizes.findIndex((size, index) => !narrow.has(index) && size * scale < least - 1e-9);
    if (more === -1) return sizes.map((size, index) => (narrow.has(index) ? least : size * scale));
    narrow.add(more);
  }
}

/** Where so much from the first face lies, in parts that aren't all to one scale; past the last by that one's own. */
export function placeOf(
  length: number,
  sizes: readonly number[],
  slots: readonly Slot[],
): number | undefined {
  let from = 0;
  for (const [index, slot] of slots.entries()) {
    const size = sizes[index] ?? 0;
    const isLast = index === slots.length - 1;
    if (size > 0 && (length <= from + size || isLast))
      return slot.left + ((slot.right - slot.left) * (length - from)) / size;
    from += size;
  }
  return undefined;
}

export function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((so, next) => so + next, 0);
}
