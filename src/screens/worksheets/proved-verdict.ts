import type { Cut, SizeInput } from '../../store/records.ts';
import { lastPassOf } from '../../store/cut-state.ts';
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
  if (verdict.found !== 'no-good' && verdict.found !== 'too-close') return verdict;
  const { worksheet } = data;
  const proved = checks.filter((known) => known.check.worksheetId === worksheet.id && provesNow(known));
  const read = Object.fromEntries([...proved.flatMap(readSize), ...drilled(data, cuts)]);
  if (Object.keys(read).length === 0) return verdict;
  return worksheetVerdict({ ...data, worksheet: { ...worksheet, sizes: { ...worksheet.sizes, ...read } } });
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

function drilled({ worksheet }: WorksheetData, cuts: readonly Cut[]): readonly Read[] {
  if (worksheet.kind !== 'thread-insert') return [];
  const hole = cuts.findLast(
    ({ worksheetId, operation, state }) =>
      worksheetId === worksheet.id && operation === 'drill' && state === 'to-size',
  );
  const pass = hole && lastPassOf(hole)?.[1];
  return pass
    ? [
        [
          'hole',
          {
            from: 'typed',
            ...pass.measured,
            ...(pass.tool && { tool: pass.tool }),
            ...(pass.warmth && { warmth: pass.warmth }),
          },
        ],
      ]
    : [];
}
