import type { SizeInput, StackPartInput } from '../../../store/base/records.ts';
import { setPart } from '../../../store/kept/worksheets.ts';
import { go, goInstead } from '../../address.ts';
import { useStore } from '../../common/store-context.ts';
import { useTold } from '../../common/told.tsx';
import { featureFor } from '../measure-for.ts';
import type { WorksheetData } from '../worksheet-data.ts';
import type { PartPath } from './part-path.ts';

/** What is done with a part that is in the stack; each is one act with its undo. */
export function usePart(data: WorksheetData, { id, part }: Pick<PartPath, 'id' | 'part'>) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { worksheet, job } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const keep = (kept: StackPartInput | undefined, draftKey?: string, then?: () => void) =>
    told(setPart(store, worksheet.id, id, kept, draftKey), then);
  const giveSize = (size: SizeInput, draftKey?: string) => {
    const read = size.from === 'feature' && /^part \d+$/.test(part.name) ? size.featureId : undefined;
    const name = data.features.find((feature) => feature.id === read)?.name ?? part.name;
    return keep({ ...part, name, size }, draftKey, () => goInstead(here));
  };
  const giveLeast = (leastLength: SizeInput, draftKey?: string) =>
    keep({ ...part, leastLength }, draftKey, () => goInstead({ ...here, field: `part/${id}` }));
  const measure = () =>
    told(featureFor(store, data, { kind: 'length', name: part.name }), ({ id: featureId }) =>
      keep({ ...part, size: { from: 'feature', featureId } }, undefined, () =>
        go({ at: 'feature', jobId: job.id, featureId, choosing: `for/${worksheet.id}` }),
      ),
    );
  const takeOut = () => keep(undefined, undefined, () => goInstead(here));
  return {
    trouble,
    giveSize,
    giveLeast,
    measure,
    takeOut,
    change: (changed: Partial<StackPartInput>) => keep({ ...part, ...changed }),
  };
}
