import type { ComponentType } from 'preact';
import { isWorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { Worksheet } from '../../store/records.ts';
import { cutSince } from '../worksheets/cut-since.ts';
import { saySinceCut } from '../worksheets/since-cut.tsx';
import { warmthWanted } from '../worksheets/warm-sizes.ts';
import { isReadOfTheWhole } from '../../store/parts-changed.ts';
import { saySetAside } from '../worksheets/read-again.tsx';
import { setAside, type WorksheetData } from '../worksheets/worksheet-data.ts';
import { AccountOnPaper } from './account-on-paper.tsx';
import { BushingSheet } from './bushing-sheet.tsx';
import { SteeringGeometrySheet, ThreadEngagementSheet } from './engagement-and-steering-sheets.tsx';
import { FitSheet } from './fit-sheet.tsx';
import { LineUpSheet } from './line-up-sheet.tsx';
import { BearingSeatSheet } from './bearing-seat-sheet.tsx';
import type { SheetData } from './sheet-data.ts';
import { worksheetDataOf } from './worksheet-data-of.ts';
import { HoleAndPinSheet, SpacerStackSheet, ThreadInsertSheet } from './worksheet-sheets.tsx';
import { WithAssumed } from '../worksheets/said-assumed.tsx';

const SHEETS: Readonly<Record<string, ComponentType<{ data: WorksheetData }>>> = {
  'spacer-stack': SpacerStackSheet,
  'hole-and-pin': HoleAndPinSheet,
  fit: FitSheet,
  bushing: BushingSheet,
  'thread-insert': ThreadInsertSheet,
  'bearing-seat': BearingSeatSheet,
  'axle-line-up': LineUpSheet,
  'thread-engagement': ThreadEngagementSheet,
  'steering-geometry': SteeringGeometrySheet,
};

/** A kind on one page is printed by its account; a kind of a newer Slipfit has no sheet here. */
function sheetOf(kind: string): ComponentType<{ data: WorksheetData }> | undefined {
  return isWorksheetKind(kind) ? ({ data }) => <AccountOnPaper data={data} kind={kind} /> : SHEETS[kind];
}

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

/** One worksheet as it is printed. */
export function WorksheetSheet({ worksheet, data }: { worksheet: Worksheet; data: SheetData }) {
  const Sheet = sheetOf(worksheet.kind);
  if (!Sheet) return <p>Made with a newer Slipfit.</p>;
  const known = worksheetDataOf(worksheet, data);
  const warm = warmthWanted(known, Date.now());
  const aside = setAside(
    known,
    Object.keys(worksheet.sizes).filter((name) => isReadOfTheWhole(worksheet, name)),
  );
  return (
    <WithAssumed data={known} onPaper>
      <Sheet data={known} />
      {aside && <p>{saySetAside(aside)}</p>}
      {warm && <p>{warm.said}</p>}
      {saySinceCut({ data: known, since: cutSince(known, data.cuts) }).map((sentence) => (
        <p key={sentence}>
          <strong>{sentence}</strong>
        </p>
      ))}
    </WithAssumed>
  );
}
