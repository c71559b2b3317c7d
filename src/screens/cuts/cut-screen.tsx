import { getCut } from '../../store/kept/cuts.ts';
import { LeadOn } from '../common/lead-on.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive } from '../common/store-context.ts';
import { SpareScreen } from '../drawer/spare-screen.tsx';
import { useJob } from '../jobs/use-job.ts';
import { CutChoiceScreen, isCutChoice } from './cut-choice-screen.tsx';
import { CutForm } from './cut-form.tsx';
import { metalStores, withKnownMetal } from './known-metal.ts';
import { CutNameScreen } from './cut-name-screen.tsx';
import { CutSizeScreen, cutSizeNamed } from './cut-size-screen.tsx';
import { MakeAgainScreen } from './make-again-screen.tsx';
import { NewCutScreen } from './new-cut-screen.tsx';

type CutScreenProps = { readonly jobId: string; readonly cutId: string; readonly field?: string };

/** One cut: its figures, its passes, what becomes of it; or one of its figures. `new` is a cut of one's own. */
export function CutScreen({ jobId, cutId, field }: CutScreenProps) {
  const { missing } = useJob(jobId);
  if (missing) return <NotHere what={cutId === 'new' ? 'job' : 'cut'} />;
  return cutId === 'new' ? (
    <NewCutScreen jobId={jobId} {...(field !== undefined && { path: field })} />
  ) : (
    <KeptCut jobId={jobId} cutId={cutId} field={field} />
  );
}

type KeptCutProps = Pick<CutScreenProps, 'jobId' | 'cutId'> & { readonly field: string | undefined };

function KeptCut({ jobId, cutId, field }: KeptCutProps) {
  const found = useLive(`cut/${cutId}`, metalStores, async (store) => {
    const kept = await getCut(store, cutId);
    return { cut: kept && (await withKnownMetal(store, kept)) };
  });
  if (!found) return <Page title=" ">{null}</Page>;
  const { cut } = found;
  if (!cut) return <NotHere what="cut" />;
  if (cut.jobId !== jobId) return <LeadOn to={{ at: 'cut', jobId: cut.jobId, cutId }} />;
  const size = cutSizeNamed(field);
  if (size) return <CutSizeScreen key={size.name} cut={cut} size={size} />;
  if (isCutChoice(field)) return <CutChoiceScreen cut={cut} asked={field} />;
  if (field === 'name') return <CutNameScreen cut={cut} />;
  if (field === 'again') return <MakeAgainScreen cut={cut} />;
  if (field === 'spare') return <SpareScreen cut={cut} />;
  return <CutForm cut={cut} />;
}
