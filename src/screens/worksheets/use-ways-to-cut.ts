import { useEffect, useMemo, useState } from 'preact/hooks';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { worksheetCuts, type WaysToCut } from './worksheet-cuts.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** The ways a worksheet can be cut; undefined until the code that works them out is there. */
export function useWaysToCut(data: WorksheetData): readonly CutWay[] | undefined {
  const { kind } = data.worksheet;
  const [held, setHeld] = useState<{ readonly kind: string; readonly ways: WaysToCut | undefined }>();
  useEffect(() => {
    const load = worksheetCuts[kind];
    let wanted = true;
    const hold = (ways: WaysToCut | undefined) => wanted && setHeld({ kind, ways });
    // Should the piece not come (an update half-way), the worksheet itself still stands.
    if (load) load().then(hold, () => hold(undefined));
    else hold(undefined);
    return () => {
      wanted = false;
    };
  }, [kind]);
  return useMemo(() => (held?.kind === kind ? (held.ways?.(data) ?? []) : undefined), [held, data]);
}
