import { useShownUnit } from '../common/use-settings.ts';
import { inShopWords } from '../../engine/length/american-words.ts';
import { signedStores } from '../../store/base/stores.ts';
import type { Worksheet } from '../../store/base/records.ts';
import { createWorksheet, worksheetsOf } from '../../store/kept/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { SafetyCaution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { useOnePress } from '../common/one-press.ts';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { VerdictMark } from '../common/verdict-band.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import { JobPage } from '../jobs/job-page.tsx';
import { useJob } from '../jobs/use-job.ts';
import {
  worksheetKinds,
  worksheetOf,
  worksheets,
  type WorksheetKind,
} from '../../engine/worksheets/all-worksheets.ts';
import { nextNeed } from './kind-fields.ts';
import type { WorksheetMark } from './worksheet-marks.ts';
import './worksheets-screen.css';

/** The questions of a job, and the kinds of question to begin with one press. */
export function WorksheetsScreen({ jobId }: { jobId: string }) {
  const { job, missing } = useJob(jobId);
  const begun = useLive(`worksheets/${jobId}`, ['worksheets'], (from) => worksheetsOf(from, jobId));
  const marks = useLive(`worksheet-marks/${jobId}`, [...signedStores, 'settings'], async (from) => {
    const { worksheetMarks } = await import('./worksheet-marks.ts');
    return worksheetMarks(from, jobId);
  });
  if (missing) return <NotHere what="job" />;
  if (!job || !begun) return <Page title=" ">{null}</Page>;
  return (
    <JobPage job={job} here="decide">
      {begun.length === 0 && (
        <EmptyLine>A worksheet answers one question from the readings. Begin one below.</EmptyLine>
      )}
      <ul>
        {begun.map((worksheet) => (
          <li key={worksheet.id}>
            <WorksheetRow worksheet={worksheet} verdict={marks?.get(worksheet.id)} />
          </li>
        ))}
      </ul>
      <KindKeys jobId={jobId} begun={begun} />
      {isSafetyCritical(job) && <SafetyCaution />}
    </JobPage>
  );
}

type WorksheetRowProps = OfVerdict & { readonly worksheet: Worksheet };

function WorksheetRow({ worksheet, verdict }: WorksheetRowProps) {
  return (
    <Row
      href={hrefOf({ at: 'worksheet', jobId: worksheet.jobId, worksheetId: worksheet.id })}
      title={worksheet.title}
      detail={
        <>
          {worksheetOf(worksheet.kind)?.name ?? 'made with a newer Slipfit'}
          <Said verdict={verdict} />
        </>
      }
      mark={<Mark verdict={verdict} />}
    />
  );
}

type KindKeysProps = { readonly jobId: string; readonly begun: readonly Worksheet[] };

/** Each kind of question, one press from being asked. */
function KindKeys({ jobId, begun }: KindKeysProps) {
  const store = useStore();
  const unit = useShownUnit();
  const { trouble, told } = useTold();
  const onePress = useOnePress();
  const begin = (kind: WorksheetKind) => {
    const { name, starts } = worksheets[kind];
    const alike = begun.filter((worksheet) => worksheet.kind === kind).length;
    const title = alike === 0 ? name : `${name} ${alike + 1}`;
    return told(createWorksheet(store, { jobId, kind, title, choices: starts }), (made) => {
      const field = nextNeed(made);
      go({ at: 'worksheet', jobId, worksheetId: made.id, ...(field !== undefined && { field }) });
    });
  };
  return (
    <>
      <h2 class="worksheets-begin">Begin a worksheet</h2>
      <div class="worksheets-kinds">
        {worksheetKinds.map((kind) => (
          <button
            key={kind}
            type="button"
            class="worksheets-kind"
            onClick={() => onePress.take(() => begin(kind), { commits: true })}
          >
            <strong>{worksheets[kind].name}</strong>
            <small>{inShopWords(worksheets[kind].asks, unit)}</small>
          </button>
        ))}
      </div>
      <Trouble>{trouble}</Trouble>
    </>
  );
}

type OfVerdict = { readonly verdict: WorksheetMark | undefined };

/** Its leading figure, and its verdict in one sentence; nothing where it lacks a size still. */
function Said({ verdict }: OfVerdict) {
  if (!verdict || verdict.found === 'no-answer') return null;
  return (
    <>
      {verdict.lead !== undefined && <strong class="worksheets-lead">{verdict.lead}</strong>}
      {verdict.found !== 'not-judged' && <span class="row-detail">{verdict.said}</span>}
    </>
  );
}

function Mark({ verdict }: OfVerdict) {
  if (!verdict || verdict.found === 'not-judged' || verdict.found === 'no-answer') return null;
  return <VerdictMark kind={verdict.found} />;
}
