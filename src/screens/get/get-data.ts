import { marked } from '../../engine/length/decimal-text.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { chosenWay } from '../../engine/cut/chosen-way.ts';
import { getList, type GetItem, type Need } from '../../engine/job/get-list.ts';
import { sameLength } from '../../engine/length/length.ts';
import { allReamers } from '../../engine/fit/tables/reamer-sizes.ts';
import { tapOfCut } from '../../engine/thread/tap-name.ts';
import type { Cut, Worksheet } from '../../store/base/records.ts';
import { countsStill } from '../cuts/cut-words.ts';
import type { SheetData } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import { givenOf } from '../worksheets/given-of.ts';

/** A line of the list, and whether it is there. */
export type GetLine = GetItem & { readonly isThere: boolean };

type GetData = Pick<
  SheetData,
  'job' | 'worksheets' | 'cuts' | 'steps' | 'drawer' | 'features' | 'readings' | 'tools' | 'unit' | 'dial'
>;

/** What has to be bought or found for a job: what its worksheets, cuts and steps ask for, and what the fitter added. */
export function getLines(data: GetData): readonly GetLine[] {
  const { job, steps } = data;
  const needs: readonly Need[] = [
    ...data.cuts.filter(isToBeMade).flatMap((cut) => toolsOfCut(cut, data)),
    ...data.worksheets.flatMap((worksheet) => needsOfWorksheet(worksheet, data)),
    ...steps.flatMap(({ text, locker, grease, cotterPin }): Need[] => [
      ...(locker === undefined
        ? []
        : [{ kind: 'locker', what: `thread locker, ${locker}`, count: 1, purpose: text } satisfies Need]),
      ...(grease === undefined
        ? []
        : [{ kind: 'grease', what: grease, count: 1, purpose: text } satisfies Need]),
      ...(cotterPin === true
        ? [{ kind: 'cotter-pin', what: 'cotter pin', count: 1, purpose: text } satisfies Need]
        : []),
    ]),
    ...Object.values(job.toGet ?? {}).map((what): Need => ({ kind: 'own', what, count: 1, purpose: '' })),
  ];
  return getList(needs).map((item) => ({ ...item, isThere: job.got?.[item.key] === true }));
}

/** What its answer asks for, by the way that its cuts in the job go; nothing for a part that is being cut or was. */
function needsOfWorksheet(worksheet: Worksheet, data: GetData): readonly Need[] {
  const of = worksheetOf(worksheet.kind);
  if (!of) return [];
  const given = givenOf(worksheetDataOf(worksheet, data));
  const cuts = data.cuts.filter((cut) => cut.worksheetId === worksheet.id && countsStill(cut));
  const begun = new Set(cuts.filter(({ state }) => state !== 'to-cut').map(({ part }) => part));
  return of
    .gets(given, chosenWay(of.cuts(given), cuts)?.id)
    .filter(({ part }) => part === undefined || !begun.has(part))
    .map(({ kind, what, count }) => ({ kind, what, count, purpose: worksheet.title }));
}

function isToBeMade({ state }: Cut): boolean {
  return state === 'to-cut' || state === 'cutting';
}

/** The tap, drill or reamer that a cut is made with, where the drawer hasn't got it. */
function toolsOfCut(cut: Cut, { drawer }: GetData): readonly Need[] {
  if (!countsStill(cut)) return [];
  const tap = tapOfCut(cut);
  if (tap !== undefined && cut.operation === 'tap')
    return drawer.some(({ piece, count }) => count > 0 && sameName(piece.name, tap))
      ? []
      : [{ kind: 'tap', what: tap, count: 1, purpose: cut.part }];
  if (cut.operation === 'drill' && cut.drill !== undefined)
    return [{ kind: 'drill', what: `drill ${cut.drill}`, count: 1, purpose: cut.part }];
  if (cut.operation !== 'ream') return [];
  const isInDrawer = drawer.some(
    ({ piece, count }) =>
      piece.kind === 'reamer' &&
      count > 0 &&
      piece.outside?.from === 'typed' &&
      sameLength(piece.outside.exact, cut.target.exact),
  );
  return isInDrawer
    ? []
    : [
        {
          kind: 'reamer',
          what: `reamer ${reamerName(cut)}`,
          count: 1,
          purpose: cut.part,
        },
      ];
}

/** As it is stamped: a standard one by its name. */
function reamerName({ drill, target }: Cut): string {
  const standard = allReamers.find(({ size }) => sameLength(size, target.exact));
  return drill ?? standard?.name ?? `${marked(target.typed)} ${target.unit}`;
}

function sameName(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
