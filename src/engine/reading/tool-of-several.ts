import { sum, times } from '../length/length.ts';
import type { ToolInForce } from './measuring-tool.ts';

/**
 * The tool that stands for several pieces measured one by one, where only their sum is kept: its error goes in once for
 * each of them.
 *
 * Range:   undefined for no piece at all. Of several tools the first lends its name.
 * Source:  the same sign of the error in every piece, as `combine` counts one tool's; worst of several tools.
 */
export function toolOfSeveral(
  pieces: readonly { readonly tool: ToolInForce; readonly count: number }[],
): ToolInForce | undefined {
  const [first] = pieces;
  if (!first) return undefined;
  const all = pieces.reduce((so, { count }) => so + count, 0);
  const each = (of: 'mpe' | 'resolution' | 'repeatability') =>
    sum(pieces.map(({ tool, count }) => times(tool[of], count)));
  return {
    ...first.tool,
    ...(all > 1 && { name: `${first.tool.name}, ${all} pieces` }),
    mpe: each('mpe'),
    resolution: each('resolution'),
    repeatability: each('repeatability'),
  };
}
