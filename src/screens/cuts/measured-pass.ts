import { grownBack } from '../../engine/cut/grown-back.ts';
import type { MeasuredPass } from '../../engine/cut/spring.ts';
import type { Length } from '../../engine/length/length.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { unsaidWarmth } from '../../engine/reading/temperature.ts';
import { countedAt20 } from '../../store/kept/read-at-20.ts';
import type { Cut, CutPass } from '../../store/base/records.ts';

/** A measurement as it counts: one taken warm at 20 °C. `metal` is what the part is made of, where the cut says so. */
export function measuredPass(
  { measured, tool, asked, struckOut, warmth }: Omit<CutPass, 'at'>,
  metal?: string,
): MeasuredPass {
  const { exact, doubt } = countedAt20(measured.exact, warmth ? { warmth } : {});
  const unsaid = warmth ? undefined : unsaidWarmth(exact, materialNamed(metal));
  return {
    measured: exact,
    ...(doubt && { warmthDoubt: doubt }),
    ...(unsaid && { warmthUnsaid: unsaid }),
    struckOut: struckOut !== undefined,
    ...(tool && { tool }),
    ...(asked && { asked: asked.exact }),
  };
}

/**
 * Both sizes as they are at 20 °C, where a part seems to have grown since it was measured last; one that reads larger only
 * as it is warm has not.
 */
export function grownSince(
  of: Cut['of'],
  last: Omit<CutPass, 'at'>,
  pass: Omit<CutPass, 'at'>,
): { readonly before: Length; readonly now: Length } | undefined {
  const [before, now] = [measuredPass(last), measuredPass(pass)];
  return grownBack({ of, before, now }) && { before: before.measured, now: now.measured };
}
