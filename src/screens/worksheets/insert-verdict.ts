import type { VerdictKind } from '../common/verdict-band.tsx';
import type { InsertAnswer } from '../../engine/worksheets/thread-insert/thread-insert.ts';

/** What the hole of an insert is as it stands; nothing while there is only solid metal. */
export function verdictOfHole({ hole }: InsertAnswer): VerdictKind | undefined {
  switch (hole.state) {
    case 'solid':
      return undefined;
    case 'straight-to-tap':
      return hole.closeToMost === true ? 'too-close' : 'good';
    case 'run-drill-through-anyway':
      return 'too-close';
    case 'drill':
    case 'over':
      return 'no-good';
    default:
      return hole.state satisfies never;
  }
}
