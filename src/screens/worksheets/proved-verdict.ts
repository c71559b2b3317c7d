import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { Cut, SizeInput } from '../../store/base/records.ts';
import { lastPassOf } from '../../store/kept/cut-state.ts';
import { typedSizeOf } from '../../store/kept/pass-tool.ts';
import type { KnownCheck } from '../fit-up/check-data.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { worksheetVerdict, type WorksheetVerdict } from './worksheet-verdict.ts';

type Proofs = { readonly checks: readonly KnownCheck[]; readonly cuts: readonly Cut[] };

/**
 * What a worksheet comes to with what was proved on the machine since. A check that is good stands in for the size it was
 * read as, whether the fitter gave it to the worksheet or not: the worksheet itself then says what else is still open. A
 * check by eye, or of something else than the verdict hangs on, proves nothing here. A hole to be drilled is drilled once
 * its cut is to size: nobody can read it again with the insert in.
 */
export function provedVerdict(data: WorksheetData, { checks, cuts }: Proofs): WorksheetVerdict {
  const verdict = worksheetVerdict(data);
  if (verdict.found === 'good' || verdict.found === 'no-answer') return verdict;
  const { worksheet } = data;
  const proved = checks.filter((known) => known.check.worksheetId === worksheet.id && provesNow(known));
  const read = Object.fromEntries([...proved.flatMap(readSize), ...doneAtTheMachine(data, cuts)]);
  if (Object.keys(read).length === 0) return verdict;
  return worksheetVerdict({ ...data, worksheet: { ...worksheet, sizes: { ...worksheet.sizes, ...read } } });
}

/** Whether a check is good that stands in for a size of its worksheet. */
export function provesSize(known: KnownCheck): boolean {
  return known.check.sizeName !== undefined && provesNow(known);
}

function provesNow({ state, older, readBefore }: KnownCheck): boolean {
  return state.found === 'good' && !older && !readBefore;
}

type Read = readonly [name: string, size: SizeInput];

function readSize({ check, takes }: KnownCheck): readonly Read[] {
  const featureId = takes.at(-1)?.featureId;
  const { sizeName } = check;
  return sizeName === undefined || featureId === undefined
    ? []
    : [[sizeName, { from: 'feature', featureId }]];
}

function doneAtTheMachine({ worksheet }: WorksheetData, cuts: readonly Cut[]): readonly Read[] {
  const proved = worksheetOf(worksheet.kind)?.provedByCut ?? {};
  return Object.entries(proved).flatMap(([operation, field]): Read[] => {
    const done = cuts.findLast(
      (cut) => cut.worksheetId === worksheet.id && cut.operation === operation && cut.state === 'to-size',
    );
    const pass = done && lastPassOf(done)?.[1];
    if (!pass) return [];
    return [[field, typedSizeOf(done, pass)]];
  });
}
