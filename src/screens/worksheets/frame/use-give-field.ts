import { useState } from 'preact/hooks';
import type { FeatureKind } from '../../../engine/reading/measuring-tool.ts';
import { nextNeed } from '../../../engine/worksheets/all-worksheets.ts';
import type { Field } from '../../../engine/worksheets/fields.ts';
import type { AnyWorksheet } from '../../../engine/worksheets/worksheet.ts';
import { sayStore } from '../../../store/say-store.ts';
import type { SizeInput, Worksheet } from '../../../store/records.ts';
import type { StoreResult } from '../../../store/store-refusal.ts';
import { setChoice, setSize } from '../../../store/worksheets.ts';
import { go, goInstead } from '../../address.ts';
import { useStore } from '../../common/store-context.ts';
import { limitFault } from '../limit-fault.ts';
import { featureFor } from '../measure-for.ts';
import { withWarmthOfDay } from '../warm-sizes.ts';
import type { WorksheetData } from '../worksheet-data.ts';

const LIMIT_NAMES: ReadonlySet<string> = new Set(['lower', 'upper', 'aim']);

type GiveField = {
  readonly data: WorksheetData;
  readonly kind: AnyWorksheet;
  readonly name: string;
  readonly field: Field;
};

/** What is done with a field of the form: given, chosen, left out, or measured properly. */
export function useGiveField({ data, kind, name, field }: GiveField) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const { worksheet, job } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  // The form itself asks for the next thing that is missing: its address has no field in it.
  const onward = (result: StoreResult<Worksheet>): boolean => {
    setTrouble(result.ok ? '' : sayStore(result.refusal));
    if (result.ok && location.hash.split('/').length > 5) goInstead(here);
    return result.ok;
  };
  const giveSize = async (size: SizeInput | undefined, draftKey?: string) => {
    const fault =
      size?.from === 'typed' && LIMIT_NAMES.has(name) ? limitFault(data, name, size.exact) : undefined;
    if (fault !== undefined) return setTrouble(fault);
    return onward(
      await setSize(
        store,
        worksheet.id,
        name,
        size && withWarmthOfDay(data, name, size, Date.now()),
        draftKey,
      ),
    );
  };
  const giveChoice = async (value: string | undefined) =>
    onward(await setChoice(store, worksheet.id, name, value));
  const measure = async (of: FeatureKind) => {
    const made = await featureFor(store, data, { kind: of, name: field.label });
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    const featureId = made.value.id;
    const taken = await setSize(store, worksheet.id, name, { from: 'feature', featureId });
    if (!taken.ok) return setTrouble(sayStore(taken.refusal));
    return go({ at: 'feature', jobId: job.id, featureId, choosing: `for/${worksheet.id}` });
  };
  const isNeeded = kind.needs.includes(name);
  const isGiven = worksheet.sizes[name] !== undefined || worksheet.choices[name] !== undefined;
  const leaveOut = () => (field.enter === 'size' ? giveSize(undefined) : giveChoice(undefined));
  // A foot switch steps on to the next thing that is missing, else to the answer.
  const next = nextNeed(kind, {
    sizes: worksheet.sizes,
    choices: { ...worksheet.choices, [name]: 'passed by' },
  });
  const stepOn = () => go({ ...here, ...(next !== undefined && { field: next }) });
  return {
    trouble,
    giveSize,
    giveChoice,
    measure,
    ...(isGiven && !isNeeded && { leaveOut }),
    ...((next !== undefined || isGiven) && { stepOn }),
  };
}
