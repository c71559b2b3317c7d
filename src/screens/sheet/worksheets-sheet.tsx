import { sameLength } from '../../engine/length/length.ts';
import { isWorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import type { SizeInput, Worksheet } from '../../store/base/records.ts';
import { cutSince, isCutSince } from '../worksheets/cut-since.ts';
import { saySinceCut } from '../worksheets/since-cut.tsx';
import { warmthWanted } from '../worksheets/warm-sizes.ts';
import { isReadOfTheWhole } from '../../store/kept/parts-changed.ts';
import { saySetAside } from '../worksheets/read-again.tsx';
import { setAside } from '../worksheets/worksheet-data.ts';
import { AccountOnPaper } from './account-on-paper.tsx';
import type { SheetData } from './sheet-data.ts';
import { worksheetDataOf } from './worksheet-data-of.ts';
import { WithAssumed } from '../worksheets/said-assumed.tsx';

/** Every worksheet with its drawing and answer, worked out again as it is drawn. */
export function WorksheetsSheet({ data }: { data: SheetData }) {
  if (data.worksheets.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Worksheets</h3>
      {data.worksheets.map((worksheet) => (
        <section key={worksheet.id} class="sheet-part sheet-worksheet">
          <h4>{worksheet.title}</h4>
          <WorksheetSheet worksheet={worksheet} data={data} />
        </section>
      ))}
    </section>
  );
}

/** One worksheet as it is printed; a kind of a newer Slipfit has no sheet here. */
export function WorksheetSheet({ worksheet, data }: { worksheet: Worksheet; data: SheetData }) {
  const { kind } = worksheet;
  if (!isWorksheetKind(kind)) return <p>Made with a newer Slipfit.</p>;
  const cuts = data.cuts.filter(({ worksheetId }) => worksheetId === worksheet.id);
  const known = worksheetDataOf(worksheet, data);
  const warm = warmthWanted(known, timeToKeep());
  const since = cutSince(known, data.cuts);
  const aside = setAside(
    known,
    Object.keys(worksheet.sizes).filter((name) => isReadOfTheWhole(worksheet, name)),
  );
  return (
    <WithAssumed data={known} onPaper>
      <AccountOnPaper
        data={known}
        kind={kind}
        isCut={isCutSince(since)}
        cutNames={cuts.map(({ name }) => name)}
        takenFurther={takenFurther(worksheet, data.worksheets)}
      />
      {aside && <p>{saySetAside(aside, worksheet)}</p>}
      {warm && <p>{warm.said}</p>}
      {saySinceCut({ data: known, since }).map((sentence) => (
        <p key={sentence}>
          <strong>{sentence}</strong>
        </p>
      ))}
    </WithAssumed>
  );
}

/** Where the kind that a way to cure a hole leads to keeps that hole. */
const HOLE_OF: Readonly<Record<string, string>> = { 'thread-insert': 'hole', bushing: 'bore' };

/** The ways to cure a hole that have a worksheet of their own, of the same hole. */
function takenFurther({ id, sizes: { bore } }: Worksheet, all: readonly Worksheet[]): readonly string[] {
  return all
    .filter((one) => one.id !== id && isSameSize(bore, one.sizes[HOLE_OF[one.kind] ?? '']))
    .map(({ kind }) => kind);
}

function isSameSize(one: SizeInput | undefined, other: SizeInput | undefined): boolean {
  if (one?.from === 'feature') return other?.from === 'feature' && one.featureId === other.featureId;
  return one !== undefined && other?.from === 'typed' && sameLength(one.exact, other.exact);
}
