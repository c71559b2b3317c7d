import { sameLength } from '../../engine/length/length.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { partStandsAsIn, sizeStandsAsIn } from '../../store/kept/basis.ts';
import { isReadOfTheWhole } from '../../store/kept/parts-changed.ts';
import { passesOf } from '../../store/kept/cut-state.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import { typedSizeOf } from '../../store/kept/pass-tool.ts';
import { giveCutSize, withCutSize, type GivenCutSize } from '../../store/kept/give-cut-size.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Basis, Cut, CutPass, Id, SizeInput, Worksheet } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { useLive } from '../common/store-context.ts';
import { givenChoices } from './given-choices.ts';
import { isOlderThanSizes } from '../older/older-than-sizes.ts';
import { basisNow } from './new-cuts.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** A part of a stack, or a spacer of an axle, that was cut to size, and what it measured last. */
export type PartCut = {
  readonly place: GivenCutSize['place'];
  readonly name: string;
  readonly cut: Cut;
  readonly pass: CutPass;
};

export type GapReadBefore = {
  /** What was cut since; where nothing was, `why` says what else was done. */
  readonly cut?: PartCut;
  readonly why: string;
  /** What has to be read again, and the size it stands in. */
  readonly name: string;
  readonly input: SizeInput;
};

/** What was done at the machine since the worksheet was given its sizes. */
export type CutSince = {
  /** Cut to size; the worksheet still has the size of before. */
  readonly notGiven: readonly PartCut[];
  /** The gap was read before what it asked for was done: it is another gap by now, and the sum had been shown to be wrong. */
  readonly gapReadBefore?: GapReadBefore;
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

/** Something was done that the answer doesn't know of. */
export function isCutSince({ notGiven, gapReadBefore }: CutSince): boolean {
  return notGiven.length > 0 || gapReadBefore !== undefined;
}

/** The part's new size goes into the worksheet, as one measured with the tool that was used at the machine. */
export async function giveWorksheet(
  store: Store,
  data: Known,
  { place, cut, pass }: PartCut,
): Promise<StoreResult<Worksheet>> {
  const { worksheet } = data;
  const size: SizeInput = typedSizeOf(cut, pass);
  const after = withCutSize(worksheet, place, size);
  const stood = (await cutsOf(store, worksheet.jobId)).filter(
    (cut) =>
      cut.worksheetId === worksheet.id &&
      cut.state === 'to-size' &&
      cut.basis &&
      !isOlderThanSizes({ of: 'cut', cut }, { ...data, worksheets: [worksheet] }),
  );
  return giveCutSize(store, {
    worksheetId: worksheet.id,
    place,
    size,
    cutIds: stood.map(({ id }) => id),
    basis: basisNow({ ...data, worksheet: after }),
  });
}

/** The last cut of each part that is to size. */
function partsCut(worksheet: Worksheet, cuts: readonly Cut[]): readonly PartCut[] {
  const made = cuts
    .filter(
      ({ worksheetId, state, of }) =>
        worksheetId === worksheet.id && state === 'to-size' && (of === 'length' || of === 'recess-depth'),
    )
    .flatMap((cut) => {
      const pass = passesOf(cut).findLast(([, { struckOut }]) => !struckOut)?.[1];
      return pass ? [{ cut, pass }] : [];
    })
    .toSorted((a, b) => b.pass.at - a.pass.at);
  return placesOf(worksheet).flatMap(({ place, name }) => {
    const last = made.find(({ cut }) => cut.part === name);
    return last ? [{ place, name, ...last }] : [];
  });
}

/** Where a worksheet keeps the sizes of parts that it has cut; two parts of one name can't be told apart. */
function placesOf(worksheet: Worksheet): readonly Pick<PartCut, 'place' | 'name'>[] {
  const { kind, choices } = worksheet;
  const own = worksheetOf(kind)?.cutPlaces(givenChoices(choices)) ?? [];
  if (own.length > 0) return own.map(({ field, part }) => ({ place: { sizeName: field }, name: part }));
  const names = Object.values(worksheet.parts).map(({ name }) => name);
  return Object.entries(worksheet.parts).flatMap(([partId, { name, count }]) => {
    const isAlone = count === 1 && names.filter((one) => one === name).length === 1;
    return isAlone ? [{ place: { partId }, name }] : [];
  });
}

function isNotGiven({ worksheet, readings }: Known, { place, pass, cut }: PartCut): boolean {
  const size = 'partId' in place ? worksheet.parts[place.partId]?.size : worksheet.sizes[place.sizeName];
  if (cut.basis && !standsAsIn(cut.basis, worksheet, place)) return false;
  // A spacer that was made new had none on hand before.
  if (!size) return 'sizeName' in place;
  if (size.from === 'typed') return !sameLength(size.exact, pass.measured.exact);
  return (lastReadAt(readings, size.featureId) ?? 0) < pass.at;
}

function standsAsIn(basis: Basis, worksheet: Worksheet, place: PartCut['place']): boolean {
  return 'partId' in place
    ? partStandsAsIn(basis, worksheet, place.partId)
    : sizeStandsAsIn(basis, worksheet, place.sizeName);
}

function gapReadBefore({ worksheet, readings }: Known, made: readonly PartCut[]): GapReadBefore | undefined {
  const { sizes, partsChanged } = worksheet;
  // A bearing says itself that what was read in place is to be read again.
  if (worksheet.kind === 'bearing-seat') return undefined;
  const name = readInPlace(worksheet);
  const input = name === undefined ? undefined : sizes[name];
  const readAt = input && (input.from === 'typed' ? input.at : lastReadAt(readings, input.featureId));
  if (name === undefined || !input || readAt === undefined) return undefined;
  const isAside = partsChanged !== undefined && readAt <= partsChanged.at;
  // Parts changed by choice: the reading is of others, and their sizes count.
  if (isAside && readAt <= (partsChanged.otherwiseAt ?? partsChanged.at)) return undefined;
  const cut = made.find(({ pass }) => pass.at > readAt);
  if (!cut && !isAside) return undefined;
  return { name, input, why: partsChanged?.why ?? '', ...(cut && { cut }) };
}

/** The size that was read on the whole, as what is wanted stands now. */
function readInPlace({ kind, choices, sizes }: Worksheet): string | undefined {
  const fields = worksheetOf(kind)?.fieldsFor(givenChoices(choices)) ?? sizes;
  return Object.keys(fields).find((name) => isReadOfTheWhole({ kind }, name) && sizes[name] !== undefined);
}

function lastReadAt(readings: WorksheetData['readings'], featureId: Id): number | undefined {
  return readings.findLast((one) => one.featureId === featureId && !one.struckOut)?.at;
}
