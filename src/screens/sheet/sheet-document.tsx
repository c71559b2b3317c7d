import { EmptyLine } from '../common/empty-line.tsx';
import { AssemblySheet, RechecksSheet } from './assembly-sheet.tsx';
import { ChecksSheet } from './checks-sheet.tsx';
import { CutsSheet } from './cuts-sheet.tsx';
import { HeadSheet, PartsSheet } from './head-sheet.tsx';
import { MoneySheet } from './money-sheet.tsx';
import { ReadingsSheet } from './readings-sheet.tsx';
import type { SheetData } from './sheet-data.ts';
import { ReasonsSheet } from './reasons-sheet.tsx';
import { SigningSheet, type Signer } from './signing-sheet.tsx';
import { WorksheetsSheet } from './worksheets-sheet.tsx';
import './sheet-document.css';
import './sheet-print.css';

type SheetDocumentProps = {
  readonly data: SheetData;
  readonly today: number;
  /** Missing while it is unsigned, or was changed since. */
  readonly signer?: Signer | undefined;
};

/** The record of a job, what came out of it first and what it was read from behind it: printed, shared and frozen. */
export function SheetDocument({ data, today, signer }: SheetDocumentProps) {
  const isEmpty = [data.features, data.worksheets, data.cuts, data.checks, data.steps].every(
    ({ length }) => length === 0,
  );
  return (
    <article class="sheet">
      <HeadSheet data={data} today={today} />
      {isEmpty && (
        <EmptyLine>
          Readings, worksheets, cuts, checks and assembly of this job will stand here, ready to print.
        </EmptyLine>
      )}
      <WorksheetsSheet data={data} />
      <CutsSheet data={data} />
      <ChecksSheet data={data} />
      <PartsSheet data={data} />
      <AssemblySheet data={data} />
      <RechecksSheet data={data} />
      <MoneySheet data={data} />
      <ReasonsSheet data={data} today={today} />
      <ReadingsSheet data={data} />
      <SigningSheet signer={signer} />
    </article>
  );
}
