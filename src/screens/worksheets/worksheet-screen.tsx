import { isWorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import { removeWorksheet, renameWorksheet } from '../../store/kept/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { LeadOn } from '../common/lead-on.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { lazyScreen } from '../common/lazy-screen.tsx';
import { WorksheetForm } from './frame/worksheet-form.tsx';
import { isPartPath, partAt } from './spacer-stack/part-path.ts';
import { WarmSizesScreen } from './warm-sizes-screen.tsx';
import { useWorksheetData } from './use-worksheet-data.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './worksheet-page.css';

const CutItScreen = lazyScreen(() => import('./cut-it-screen.tsx').then((file) => file.CutItScreen));

type WorksheetScreenProps = { readonly jobId: string; readonly worksheetId: string; readonly field?: string };

/** One worksheet: its answer, or one of the things it asks for. */
export function WorksheetScreen({ jobId, worksheetId, field }: WorksheetScreenProps) {
  const { data, missing } = useWorksheetData(jobId, worksheetId);
  if (missing) return <NotHere what="worksheet" />;
  if (!data) return <Page title=" ">{null}</Page>;
  const { kind, jobId: own } = data.worksheet;
  if (own !== jobId) return <LeadOn to={{ at: 'worksheet', jobId: own, worksheetId }} />;
  if (!isWorksheetKind(kind)) return <NewerWorksheet data={data} />;
  if (field === 'about') return <AboutWorksheet data={data} />;
  if (field === 'warm') return <WarmSizesScreen data={data} />;
  if (field === 'cuts' || field?.startsWith('cuts/') === true)
    return <CutItScreen data={data} path={field} />;
  if (isPartPath(field) && !partAt(data.worksheet, field)) return <NotHere what="part" />;
  return <WorksheetForm data={data} kind={kind} pressed={field} />;
}

function NewerWorksheet({ data }: { data: WorksheetData }) {
  return (
    <Page
      title={data.worksheet.title}
      back={{ href: hrefOf({ at: 'worksheets', jobId: data.job.id }), to: 'the worksheets' }}
    >
      <p class="worksheet-newer">
        This worksheet was made with a newer Slipfit. It is kept as it is; take the new version to see it.
      </p>
    </Page>
  );
}

/** Its name, and the way to remove it. */
function AboutWorksheet({ data: { worksheet, job } }: { data: WorksheetData }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const rename = async (title: string) => title !== '' && told(renameWorksheet(store, worksheet.id, title));
  const remove = () =>
    told(removeWorksheet(store, worksheet.id), () => go({ at: 'worksheets', jobId: job.id }));
  return (
    <Page
      title="About this worksheet"
      back={{
        href: hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id }),
        to: 'the worksheet',
      }}
    >
      <KeptField label="Name" kept={worksheet.title} onWords={rename} />
      <Trouble>{trouble}</Trouble>
      <PhotoStrip owner={{ store: 'worksheets', id: worksheet.id }} jobId={job.id} />
      <div class="worksheet-remove">
        <Button onPress={() => remove()}>Remove {worksheet.title}</Button>
      </div>
    </Page>
  );
}
