import { sameLength } from '../../engine/length.ts';
import { partStandsAsIn } from '../../store/basis.ts';
import { passesOf } from '../../store/cut-state.ts';
import { cutsOf } from '../../store/cuts.ts';
import { giveCutSize } from '../../store/give-cut-size.ts';
import type { Store } from '../../store/open-store.ts';
import type { Cut, CutPass, Id, SizeInput, Worksheet } from '../../store/records.ts';
import type { StoreResult } from '../../store/store-refusal.ts';
import { useLive } from '../common/store-context.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import { basisNow } from './new-cuts.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** A part of a stack that was cut to size, and what it measured last. */
export type PartCut = { readonly partId: Id; readonly name: string; readonly pass: CutPass };

/** What was done at the machine since the worksheet was given its sizes. */
export type CutSince = {
  /** Cut to size; the worksheet still has the size of before. */
  readonly notGiven: readonly PartCut[];
  /** The gap was read on the machine before this part was cut: it is another gap by now. */
  readonly gapReadBefore?: PartCut & { readonly checkId?: Id };
};

type Known = Pick<WorksheetData, 'worksheet' | 'readings' | 'features'>;

/** Without it an answer would ask for metal that has been taken already. */
export function cutSince(data: Known, cuts: readonly Cut[]): CutSince {
  const made = partsCut(data.worksheet, cuts);
  const gap = gapReadBefore(data, made);
  return {
    notGiven: made.filter((one) => isNotGiven(data, one)),
    ...(gap && { gapReadBefore: gap }),
  };
}

export function useCutSince(data: WorksheetData): CutSince | undefined {
  const cuts = useLive(`cuts/${data.job.id}`, ['cuts'], (store) => cutsOf(store, data.job.id));
  return cuts && cutSince(data, cuts);
}

/** The part's new size goes into the worksheet, as one measured with the tool that was used at the machine. */
export async function giveWorksheet(
  store: Store,
  data: Known,
  { partId, pass }: PartCut,
): Promise<StoreResult<Worksheet>> {
  const { worksheet } = data;
  const part = worksheet.parts[partId];
  const size: SizeInput = { from: 'typed', ...pass.measured, ...(pass.tool && { tool: pass.tool }) };
  const after = part
    ? { ...worksheet, parts: { ...worksheet.parts, [partId]: { ...part, size } } }
    : worksheet;
  const stood = (await cutsOf(store, worksheet.jobId)).filter(
    (cut) =>
      cut.worksheetId === worksheet.id &&
      cut.state === 'to-size' &&
      cut.basis &&
      !isOlderThanSizes({ of: 'cut', cut }, { ...data, worksheets: [worksheet] }),
  );
  return giveCutSize(store, {
    worksheetId: worksheet.id,
    partId,
    size,
    cutIds: stood.map(({ id }) => id),
    basis: basisNow({ ...data, worksheet: after }),
  });
}

type MadeCut = PartCut & { readonly cut: Cut };

/** The last cut of each part that is to size; two parts of one name can't be told apart. */
function partsCut(worksheet: Worksheet, cuts: readonly Cut[]): readonly MadeCut[] {
  const made = cuts
    .filter(
      ({ worksheetId, state, of }) => worksheetId === worksheet.id && state === 'to-size' && of === 'length',
    )
    .flatMap((cut) => {
      const pass = passesOf(cut).findLast(([, { struckOut }]) => !struckOut)?.[1];
      return pass ? [{ cut, pass }] : [];
    })
    .toSorted((a, b) => b.pass.at - a.pass.at);
  const names = Object.values(worksheet.parts).map(({ name }) => name);
  return Object.entries(worksheet.parts).flatMap(([partId, { name, count }]) => {
    const last = made.find(({ cut }) => cut.part === name);
    const isAlone = count === 1 && names.filter((one) => one === name).length === 1;
    return last && isAlone ? [{ partId, name, ...last }] : [];
  });
}

function isNotGiven({ worksheet, readings }: Known, { partId, pass, cut }: MadeCut): boolean {
  const size = worksheet.parts[partId]?.size;
  if (!size || (cut.basis && !partStandsAsIn(cut.basis, worksheet, partId))) return false;
  if (size.from === 'typed') return !sameLength(size.exact, pass.measured.exact);
  return (lastReadAt(readings, size.featureId) ?? 0) < pass.at;
}

function gapReadBefore({ worksheet, readings, features }: Known, made: readonly MadeCut[]) {
  const { sizes, choices } = worksheet;
  const direct = sizes[choices['want'] === 'clamp' ? 'directProud' : 'direct'];
  if (direct?.from !== 'feature') return undefined;
  const readAt = lastReadAt(readings, direct.featureId);
  // Set aside already: the parts were changed here since, the one that was cut among them.
  if (readAt !== undefined && readAt <= (worksheet.partsChanged?.at ?? 0)) return undefined;
  const cut = made.find(({ pass }) => readAt !== undefined && pass.at > readAt);
  const checkId = features.find(({ id }) => id === direct.featureId)?.checkId;
  return cut && { ...cut, ...(checkId !== undefined && { checkId }) };
}

function lastReadAt(readings: WorksheetData['readings'], featureId: Id): number | undefined {
  return readings.findLast((one) => one.featureId === featureId && !one.struckOut)?.at;
}
