import type { Job, SignedSheet } from '../../store/base/records.ts';
import { getSheet } from '../../store/kept/sheets.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import { harmlessCsv } from './csv.ts';
import { fileName } from './file-names.ts';
import { FrozenSheet } from './frozen-sheet.tsx';
import { OnPaper } from './on-paper.tsx';
import { momentOf } from './sheet-words.ts';
import { spreadsheet } from './spreadsheet.ts';
import { useGive } from './use-give.ts';
import { useSignedSince } from './use-signed-since.ts';
import './files-place.css';
import './sheet-document.css';
import './sheet-print.css';

type SignedPlaceProps = { readonly job: Job; readonly sheetId: string };

/** A signed sheet as it stood when it was signed, whatever was changed in the job since. */
export function SignedPlace({ job, sheetId }: SignedPlaceProps) {
  const { id: jobId, name: jobName, signedOff } = job;
  const since = useSignedSince(jobId);
  const found = useLive(`signed/${sheetId}`, ['sheets'], async (store) => ({
    sheet: await getSheet(store, sheetId),
  }));
  if (!found) return <Page title=" ">{null}</Page>;
  const { sheet } = found;
  if (!sheet || sheet.jobId !== jobId) return <NotHere what="signed sheet" />;
  return (
    <Page
      title={`${jobName}, signed`}
      subtitle={`${momentOf(sheet.signedAt)} by ${sheet.signedBy}`}
      back={{ href: hrefOf({ at: 'sheet', jobId }), to: 'the sheet' }}
      foot={
        <Button kind="main" onPress={() => print()}>
          Print or save as PDF
        </Button>
      }
    >
      {since !== undefined && signedOff?.sheetId === sheetId && (
        <p class="frozen-sheet-since not-printed">{`The job was changed since: ${since}.`}</p>
      )}
      <OnPaper name={`${jobName}, signed`}>
        <FrozenSheet content={sheet.content} />
      </OnPaper>
      <SignedFiles sheet={sheet} jobName={jobName} />
    </Page>
  );
}

/** The readings and cuts as they were signed. */
function SignedFiles({ sheet, jobName }: { readonly sheet: SignedSheet; readonly jobName: string }) {
  const { said, give } = useGive();
  const file = (what: string, text: string) => async () =>
    spreadsheet(fileName([jobName, 'signed', what], 'csv'), harmlessCsv(text));
  return (
    <section class="files not-printed">
      <h2>As signed, for a spreadsheet (CSV)</h2>
      {said !== '' && <p class="files-said">{said}</p>}
      <Row title="Readings" onPress={() => give(file('readings', sheet.readingsCsv))} />
      <Row title="Cuts" onPress={() => give(file('cuts', sheet.cutsCsv))} />
    </section>
  );
}
