import { drawerPieces } from '../../store/kept/drawer.ts';
import { featuresOf } from '../../store/kept/features.ts';
import { getJob } from '../../store/kept/jobs.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { getWorksheet } from '../../store/kept/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { useDial } from '../common/use-dial.ts';
import { useShownUnit } from '../common/use-settings.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** Everything a worksheet is worked out from, kept up with every change. `missing` once it is known not to be there. */
export function useWorksheetData(
  jobId: string,
  worksheetId: string,
): { data: WorksheetData | undefined; missing: boolean } {
  const unit = useShownUnit();
  const dial = useDial();
  const found = useLive(
    `worksheet/${worksheetId}`,
    ['jobs', 'worksheets', 'features', 'readings', 'tools', 'drawer', 'drawerCounts'],
    async (store) => {
      const [job, worksheet, features, readings, tools, drawer] = await Promise.all([
        getJob(store, jobId),
        getWorksheet(store, worksheetId),
        featuresOf(store, jobId),
        readingsOfJob(store, jobId),
        measuringTools(store),
        drawerPieces(store),
      ]);
      return { job, worksheet, features, readings, tools, drawer };
    },
  );
  if (!found) return { data: undefined, missing: false };
  const { job, worksheet } = found;
  if (!job || !worksheet) return { data: undefined, missing: true };
  return { data: { ...found, job, worksheet, unit, dial }, missing: false };
}
