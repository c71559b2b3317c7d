import { featureKindOf } from '../../engine/cut/cut-progress.ts';
import { usualTools } from '../../engine/reading/measuring-tool.ts';
import { usualToolFor } from '../../engine/reading/usual-tool.ts';
import type { Cut, CutPass, TypedSize } from '../base/records.ts';
import { inForce } from './readings.ts';

/**
 * What a cut's measured figure counts as read by: its tool, or where none was named the usual one for such a size, assumed.
 * Like a size that is typed on a worksheet it is never exact for want of a tool.
 *
 * Range: nothing where no usual tool reads such a size.
 */
export function readBy(
  { of }: Pick<Cut, 'of'>,
  { tool, toolAssumed, measured }: Pick<CutPass, 'tool' | 'toolAssumed' | 'measured'>,
): Pick<TypedSize, 'tool' | 'toolAssumed'> {
  if (tool) return { tool: inForce(tool), ...(toolAssumed && { toolAssumed }) };
  const usual = usualToolFor({
    tools: usualTools,
    kind: featureKindOf(of),
    size: measured.exact,
    unit: measured.unit === 'mm' ? 'mm' : 'in',
  });
  return usual ? { tool: inForce(usual), toolAssumed: true } : {};
}

/** A measurement with the tool that it counts as read by. */
export function asRead(cut: Pick<Cut, 'of'>, pass: CutPass): CutPass {
  return { ...pass, ...readBy(cut, pass) };
}

/** What a cut measured, as a worksheet has it typed. */
export function typedSizeOf(cut: Pick<Cut, 'of'>, pass: CutPass): TypedSize {
  return {
    from: 'typed',
    ...pass.measured,
    ...readBy(cut, pass),
    ...(pass.warmth && { warmth: pass.warmth }),
  };
}
