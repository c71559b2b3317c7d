import { toolBeside } from '../../engine/reading/say-readings.ts';
import { readBy } from '../../store/kept/pass-tool.ts';
import type { Cut, CutPass } from '../../store/base/records.ts';

/** The tool that a measurement counts as read by, on the cut's page, on paper and in its file; empty where none reads it. */
export function passToolWords(cut: Pick<Cut, 'of'>, pass: CutPass): string {
  const { tool, toolAssumed } = readBy(cut, pass);
  if (!tool) return '';
  const name = toolBeside({ tool, exact: pass.measured.exact });
  return toolAssumed ? `${name}, assumed` : name;
}
