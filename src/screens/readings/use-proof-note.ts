import type { MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { featuresOf } from '../../store/kept/features.ts';
import type { Feature } from '../../store/base/records.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import { getJob } from '../../store/kept/jobs.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { worksheetsUsing } from '../../store/kept/worksheets.ts';
import type { VerdictKind } from '../common/verdict-band.tsx';
import { useLive } from '../common/store-context.ts';
import { useDial } from '../common/use-dial.ts';
import { useShownUnit } from '../common/use-settings.ts';

export type ProofNote = {
  readonly said: string;
  /** What the readings of a check come to so far, as short as it stands beside the last of them. */
  readonly verdict?: { readonly kind: VerdictKind; readonly word: string };
};

/**
 * Said before the first reading and after: the tool in hand can't prove what a worksheet wants of this feature; of a
 * check, what its readings prove so far. The
 * sums behind it belong to the worksheets' code, which is fetched only where a worksheet uses the feature.
 */
export function useProofNote(feature: Feature, tool: MeasuringTool | undefined): ProofNote | undefined {
  const unit = useShownUnit();
  const dial = useDial();
  return useLive(
    `proof/${feature.id}/${tool?.id ?? ''}/${unit}`,
    ['worksheets', 'checks', 'readings', 'tools'],
    async (store) => {
      if (feature.checkId !== undefined) {
        const { checkNote } = await import('../fit-up/check-note.ts');
        return checkNote(store, feature, tool, unit);
      }
      const worksheets = tool ? await worksheetsUsing(store, feature.jobId, feature.id) : [];
      if (!tool || worksheets.length === 0) return undefined;
      const [job, features, readings, tools, { proofNote }] = await Promise.all([
        getJob(store, feature.jobId),
        featuresOf(store, feature.jobId),
        readingsOfJob(store, feature.jobId),
        measuringTools(store),
        import('../worksheets/proof-note.ts'),
      ]);
      if (!job) return undefined;
      const said = worksheets
        .map((worksheet) =>
          proofNote(
            { job, worksheet, features, readings, tools, drawer: [], unit, dial },
            feature.kind,
            tool,
            feature.id,
          ),
        )
        .find((note) => note !== '');
      return said === undefined ? undefined : { said };
    },
  );
}
