import { useState } from 'preact/hooks';
import { newId } from '../../store/new-id.ts';
import { sayStore } from '../../store/say-store.ts';
import { createWorksheet, worksheetsOf } from '../../store/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { SafetyCaution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { useOnePress } from '../common/one-press.ts';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { VerdictMark } from '../common/verdict-band.tsx';
import { signedStores } from '../../store/signed-stores.ts';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import { JobPage } from '../jobs/job-page.tsx';
import { useJob } from '../jobs/use-job.ts';
import { planOf, worksheetPlans } from './worksheet-plans.ts';
import { nextNeed, type WorksheetPlan } from './worksheet-plan.ts';
import type { WorksheetVerdict } from './worksheet-verdict.ts';
import './worksheets-screen.css';

/** The questions of a job, and the kinds of question to begin with one press. */
export function WorksheetsScreen({ jobId }: { jobId: string }) {
  const store = useStore();
  const { job, missing } = useJob(jobId);
  const worksheets = useLive(`worksheets/${jobId}`, ['worksheets'], (from) => worksheetsOf(from, jobId));
  const marks = useLive(`worksheet-marks/${jobId}`, [...signedStores, 'settings'], async (from) => {
    const { worksheetMarks } = await import('./worksheet-marks.ts');
    return worksheetMarks(from, jobId);
  });
  const [trouble, setTrouble] = useState('');
  const one = useOnePress();
  if (missing) return <NotHere what="job" />;
  if (!job || !worksheets) return <Page title=" ">{null}</Page>;
  const begin = async (plan: WorksheetPlan) => {
    const alike = worksheets.filter((one) => one.kind === plan.kind).length;
    const title = alike === 0 ? plan.name : `${plan.name} ${alike + 1}`;
    const parts = Object.fromEntries(plan.parts.map((part) => [newId(), part]));
    const made = await createWorksheet(store, {
      jobId,
      kind: plan.kind,
      title,
      choices: plan.choices,
      parts,
    });
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    const field = nextNeed(plan, made.value);
    return go({ at: 'worksheet', jobId, worksheetId: made.value.id, ...(field !== undefined && { field }) });
  };
  return (
    <JobPage job={job} here="worksheets">
      {worksheets.length === 0 && (
        <EmptyLine>A worksheet answers one question from the readings. Begin one below.</EmptyLine>
      )}
      <ul>
        {worksheets.map((worksheet) => (
          <li key={worksheet.id}>
            <Row
              href={hrefOf({ at: 'worksheet', jobId, worksheetId: worksheet.id })}
              title={worksheet.title}
              detail={
                <>
                  {planOf(worksheet.kind)?.name ?? 'made with a newer Slipfit'}
                  <Said verdict={marks?.get(worksheet.id)} />
                </>
              }
              mark={<Mark verdict={marks?.get(worksheet.id)} />}
            />
          </li>
        ))}
      </ul>
      <h2 class="worksheets-begin">Begin a worksheet</h2>
      <div class="worksheets-kinds">
        {worksheetPlans.map((plan) => (
          <button
            key={plan.kind}
            type="button"
            class="worksheets-kind"
            onClick={() => one.take(() => begin(plan), { commits: true })}
          >
            <strong>{plan.name}</strong>
            <small>{plan.asks}</small>
          </button>
        ))}
      </div>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      {isSafetyCritical(job) && <SafetyCaution />}
    </JobPage>
  );
}

type OfVerdict = { readonly verdict: WorksheetVerdict | undefined };

/** Its answer in one sentence; nothing where it judges nothing, or lacks a size still. */
function Said({ verdict }: OfVerdict) {
  if (!verdict || verdict.found === 'not-judged' || verdict.found === 'no-answer') return null;
  return <span class="row-detail">{verdict.said}</span>;
}

function Mark({ verdict }: OfVerdict) {
  if (!verdict || verdict.found === 'not-judged' || verdict.found === 'no-answer') return null;
  return <VerdictMark kind={verdict.found} />;
}
