import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { lazyScreen } from '../common/lazy-screen.tsx';
import { Row } from '../common/row.tsx';
import { JobPage } from '../jobs/job-page.tsx';
import { FrozenSheetList } from './frozen-sheet-list.tsx';
import { useSheetData, type SheetData } from './sheet-data.ts';
import { OnPaper } from './on-paper.tsx';
import { SheetDocument } from './sheet-document.tsx';
import { useSigner } from './use-signed-since.ts';
import { timeToKeep } from '../../store/base/clock.ts';

const FilesPlace = lazyScreen(() => import('./files-place.tsx').then((file) => file.FilesPlace));

const SignedPlace = lazyScreen(() => import('./signed-place.tsx').then((file) => file.SignedPlace));

/** The printed record of a job, and behind it the files it can be given away as. */
export function SheetScreen({ jobId, field = '' }: { readonly jobId: string; readonly field?: string }) {
  const { data, missing } = useSheetData(jobId);
  const [place = '', ...rest] = field.split('/');
  if (missing) return <NotHere what="job" />;
  if (!data) return <Page title=" ">{null}</Page>;
  switch (place) {
    case 'files':
      return <FilesPlace data={data} field={rest.join('/')} />;
    case 'signed':
      return <SignedPlace job={data.job} sheetId={rest[0] ?? ''} />;
    default:
      return <Sheet data={data} />;
  }
}

function Sheet({ data }: { readonly data: SheetData }) {
  const { job } = data;
  const signer = useSigner(job);
  return (
    <JobPage
      job={job}
      here="sheet"
      foot={
        <>
          <Button kind="main" onPress={() => print()}>
            Print or save as PDF
          </Button>
          <LinkButton href={hrefOf({ at: 'sheet', jobId: job.id, field: 'files' })}>Files</LinkButton>
        </>
      }
    >
      <FrozenSheetList job={job} />
      <OnPaper name={job.name}>
        <SheetDocument data={data} today={timeToKeep()} signer={signer} />
      </OnPaper>
      <div class="not-printed">
        <Row
          href={hrefOf({ at: 'money', jobId: job.id })}
          title="Money and time"
          detail="parts, costs and hours, with their total"
        />
      </div>
    </JobPage>
  );
}
