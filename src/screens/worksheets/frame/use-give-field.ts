import type { FeatureKind } from '../../../engine/reading/measuring-tool.ts';
import { readEntry } from '../../../engine/length/entry.ts';
import type { Field } from '../../../engine/worksheets/fields.ts';
import type { ShownUnit } from '../../../engine/length/show.ts';
import type { AnyWorksheet, Besides } from '../../../engine/worksheets/worksheet.ts';
import { timeToKeep } from '../../../store/base/clock.ts';
import type { SizeInput, Worksheet } from '../../../store/base/records.ts';
import type { StoreResult } from '../../../store/base/store-refusal.ts';
import { setChoice, setSize } from '../../../store/kept/worksheets.ts';
import { go, goInstead } from '../../address.ts';
import { useStore } from '../../common/store-context.ts';
import { useTold } from '../../common/told.tsx';
import { givenOf } from '../given-of.ts';
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
  const { trouble, told, say } = useTold();
  const { worksheet, job } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  // The form itself asks for the next thing that is missing: its address has no field in it.
  const onward = (act: Promise<StoreResult<Worksheet>>) =>
    told(act, () => {
      if (location.hash.split('/').length > 5) goInstead(here);
    });
  const giveSize = async (size: SizeInput | undefined, draftKey?: string) => {
    const fault =
      size?.from === 'typed' && LIMIT_NAMES.has(name) ? limitFault(data, name, size.exact) : undefined;
    if (fault !== undefined) return say(fault);
    return onward(
      setSize(store, worksheet.id, name, size && withWarmthOfDay(data, name, size, timeToKeep()), draftKey),
    );
  };
  const given = givenOf(data);
  const giveChoice = async (value: string | undefined) =>
    onward(
      setChoice(store, worksheet.id, name, value, inputsOf(kind.besides(given, name, value), data.unit)),
    );
  // What is said in place of a size: it stands among the choices.
  const said = field.enter === 'size' && !given.has(name) ? field.instead : undefined;
  const sayInstead = async ({ choice, value }: NonNullable<typeof said>) =>
    onward(setChoice(store, worksheet.id, choice, value));
  const measure = (of: FeatureKind) => {
    const made = featureFor(store, data, { kind: of, name: field.label });
    return told(made, ({ id: featureId }) =>
      told(setSize(store, worksheet.id, name, { from: 'feature', featureId }), () =>
        go({ at: 'feature', jobId: job.id, featureId, choosing: `for/${worksheet.id}` }),
      ),
    );
  };
  const isNeeded = kind.needs(given).includes(name);
  const isGiven = given.has(name);
  const leaveOut = () => (field.enter === 'size' ? giveSize(undefined) : giveChoice(undefined));
  // A foot switch steps on to the next thing that is missing, else to the answer.
  const next = kind.nextNeed({ ...given, has: (one) => one === name || given.has(one) });
  const stepOn = () => go({ ...here, ...(next !== undefined && { field: next }) });
  return {
    goTo: (other: string) => go({ ...here, field: other }),
    trouble,
    giveSize,
    giveChoice,
    measure,
    ...(isGiven && !isNeeded && { leaveOut }),
    ...(said && { instead: { key: said.key, say: () => sayInstead(said) } }),
    ...((next !== undefined || isGiven) && { stepOn }),
  };
}

/** What follows from a choice, as it is kept: sizes as if they were typed, with no tool, for nobody read them. */
function inputsOf(
  { sizes = {}, choices = {} }: Besides,
  unit: ShownUnit,
): Record<string, SizeInput | string> {
  const typed = Object.entries(sizes).flatMap(([name, text]) => {
    const entry = readEntry(text, { unit, signed: true });
    return entry.ok ? [[name, { from: 'typed', ...entry.value }] as const] : [];
  });
  return { ...Object.fromEntries(typed), ...choices };
}
