import type { ShownUnit } from '../../engine/length/show.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import { featuresOf } from '../../store/kept/features.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { getWorksheet } from '../../store/kept/worksheets.ts';
import { go } from '../address.ts';
import { announce } from '../common/announce.ts';
import { useLive, useStore } from '../common/store-context.ts';
import { cutSince, giveWorksheet } from '../worksheets/cut-since.ts';
import { sayWorkedOutWith } from '../worksheets/since-cut.tsx';
import type { LatheCut } from './use-lathe-cut.ts';

/**
 * Gives the size just reached to the worksheet that asked for it, and goes there; resolves to why not, where it failed.
 * Undefined where no worksheet waits for it.
 */
export function useGiveSize(
  { cut, job, last }: LatheCut,
  unit: ShownUnit,
): (() => Promise<string | undefined>) | undefined {
  const store = useStore();
  const { worksheetId } = cut;
  const found = useLive(
    `give-size/${cut.id}`,
    ['worksheets', 'features', 'readings', 'cuts'],
    async (from) => {
      const worksheet = worksheetId === undefined ? undefined : await getWorksheet(from, worksheetId);
      if (!worksheet) return undefined;
      const [features, readings, cuts] = await Promise.all([
        featuresOf(from, cut.jobId),
        readingsOfJob(from, cut.jobId),
        cutsOf(from, cut.jobId),
      ]);
      const { notGiven } = cutSince({ worksheet, features, readings }, cuts);
      return { worksheet, features, readings, notGiven };
    },
  );
  const part = found?.notGiven.find(({ pass }) => pass.at === last?.[1].at);
  if (!found || !part) return undefined;
  return async () => {
    const given = await giveWorksheet(store, found, part);
    if (!given.ok) return sayStore(given.refusal);
    announce(sayWorkedOutWith(part, unit));
    go({ at: 'worksheet', jobId: job.id, worksheetId: found.worksheet.id });
    return undefined;
  };
}
