import { expansionPerCelsius } from '../material/material.ts';
import { absolute, isLess, dividedBy, minus, times, type Length } from '../length/length.ts';
import { materialNamed, type Material } from '../material/tables/materials.ts';

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

/** How warm a part and the tool that read it lay together, and what the part is made of. */
export type ReadWarm = { readonly celsius: number; readonly material: Material };

// Callister, Fundamentals of Materials Science, table B.6, steel 1020: what tools are made of, near enough.
const TOOL_STEEL = 11.7e-6;
// Chosen, not published: what part and tool may differ by without anybody feeling it.
const UNFELT_CELSIUS = 3;
// A thousandth of a micrometre in a metre: two figures of one metal, not two metals.
const LEAST_SHARE = 1e-9;
// Chosen, not published: a shop of 50 or 86 °F in which nobody said how warm it is.
export const UNASKED_CELSIUS = 10;
// Chosen, not published: a part that is warm to the hand after a cut, in a shop of 20 °C.
const FROM_CUT_CELSIUS = 15;

/**
 * The size at 20 °C of a part read with a steel tool as warm as itself, and what is not known of it: the two may differ by
 * a few degrees that nobody feels, and books give a metal's expansion as a range.
 *
 * Units:   `doubt` is a standard uncertainty: the part's growth over 3 °C and half the range of its expansion over what
 *          it is from 20 °C, each rectangular, by root-sum-square.
 * Source:  ISO 1; JCGM 100:2008 4.3.7; expansions as in the table of materials.
 */
export function readWarm(
  measured: Length,
  { celsius, material }: ReadWarm,
): { readonly at20: Length; readonly doubt: Length } {
  const { low, high } = expansionPerCelsius(material);
  const part = { celsius, expansionPerCelsius: (low + high) / 2 };
  const at20 = sizeAt20({ measured, part, tool: { celsius, expansionPerCelsius: TOOL_STEEL } });
  const apart = part.expansionPerCelsius * UNFELT_CELSIUS;
  const unsure = ((high - low) / 2) * Math.abs(celsius - 20);
  const share = Math.hypot(apart, unsure) / Math.sqrt(3);
  return { at20, doubt: times(absolute(measured), share.toFixed(15)) };
}

/**
 * What is not known of a size of which nobody said how warm it was read: a shop is within a few degrees of 20 °C, which
 * nobody finds worth a word, and the part grows by more or less than the steel of the tool.
 *
 * Units:   a standard uncertainty: size · |α_part − α_tool| · 3 °C, rectangular. Of a range of expansions the one that
 *          differs most; without a metal as aluminium, which grows most of what is usual.
 * Range:   undefined where the part grows as the tool does. .5 in of unknown metal: 0.0003 mm.
 * Source:  JCGM 100:2008 4.3.7; expansions as in the table of materials; the 3 °C common practice.
 */
export function unsaidWarmth(size: Length, material?: Material): Length | undefined {
  const metal = material ?? materialNamed('aluminium-6061');
  if (!metal) throw new Error('aluminium is among the materials');
  const { low, high } = expansionPerCelsius(metal);
  const apart = Math.max(Math.abs(low - TOOL_STEEL), Math.abs(high - TOOL_STEEL));
  const share = (apart * UNFELT_CELSIUS) / Math.sqrt(3);
  return share < LEAST_SHARE ? undefined : times(absolute(size), share.toFixed(15));
}

/**
 * How much a size may be off for want of its temperature: aluminium, read with a steel tool, 10 °C from 20.
 *
 * Range:   undefined where that is less than a third of what the tool knows, and not worth a word.
 * Source:  Callister, table B.6, 23.6 and 11.7 millionths a °C; the 10 °C and the third are chosen, not published.
 */
export function unaskedWarmth(size: Length, halfWidth: Length): Length | undefined {
  const aluminium = materialNamed('aluminium-6061');
  if (!aluminium) throw new Error('aluminium is among the materials');
  const share = (expansionPerCelsius(aluminium).high - TOOL_STEEL) * UNASKED_CELSIUS;
  const off = times(absolute(size), share.toFixed(15));
  return isLess(off, dividedBy(halfWidth, 3)) ? undefined : off;
}

/**
 * How much larger a part may be read that is warm from the cut, by a tool that lay beside the lathe: 35 °C against 20.
 *
 * Units:   size · greatest expansion · 15 °C; without a metal as aluminium, which grows most of what is usual.
 * Range:   undefined where it is less than a third of what the limits leave, and not worth a word.
 * Source:  expansions as in the table of materials; the 15 °C and the third are chosen, not published.
 */
export function warmFromCut({
  size,
  limits,
  material,
}: {
  readonly size: Length;
  readonly limits: { readonly lower: Length; readonly upper: Length };
  readonly material?: Material | undefined;
}): Length | undefined {
  const metal = material ?? materialNamed('aluminium-6061');
  if (!metal) throw new Error('aluminium is among the materials');
  const share = expansionPerCelsius(metal).high * FROM_CUT_CELSIUS;
  const over = times(absolute(size), share.toFixed(15));
  return isLess(over, dividedBy(minus(limits.upper, limits.lower), 3)) ? undefined : over;
}

/** Degrees as they were typed, in Celsius. */
export function inCelsius({ degrees, unit }: { readonly degrees: number; readonly unit: 'C' | 'F' }): number {
  return unit === 'C' ? degrees : ((degrees - 32) * 5) / 9;
}
