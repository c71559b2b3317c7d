import { times, type Length } from './length.ts';

/** How warm something is and how much it grows: 0.0000236 a degree Celsius for aluminium, say. */
export type Warmth = { readonly celsius: number; readonly expansionPerCelsius: number };

/**
 * The size at 20 °C of a part that was measured warm or cold.
 *
 * Units:   L20 = M·(1 + α_tool·(T_tool − 20) − α_part·(T_part − 20)); the factor is floating point, the length isn't.
 * Range:   shop temperatures. Part and tool of one metal and equally warm need no correction, and get none.
 * Source:  ISO 1 (20 °C); linear expansion, the product of two expansions left out (less than a ten-millionth at 30 °C).
 */
export function sizeAt20({
  measured,
  part,
  tool,
}: {
  readonly measured: Length;
  readonly part: Warmth;
  readonly tool: Warmth;
}): Length {
  const factor = 1 + growth(tool) - growth(part);
  return times(measured, factor.toFixed(15));
}

function growth({ celsius, expansionPerCelsius }: Warmth): number {
  return expansionPerCelsius * (celsius - 20);
}
