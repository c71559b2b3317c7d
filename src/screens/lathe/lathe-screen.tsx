import { useEffect } from 'preact/hooks';
import { readEntry } from '../../engine/length/entry.ts';
import { getDraft } from '../../store/kept/drafts.ts';
import { goInstead, hrefOf } from '../address.ts';
import { LeadOn } from '../common/lead-on.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useSayAloud } from '../common/speech.ts';
import { useLive } from '../common/store-context.ts';
import { ToolChoice } from '../readings/tool-choice.tsx';
import { useMeasuring } from '../readings/use-measuring.ts';
import { AtTheLathe } from './at-the-lathe.tsx';
import { AtTheMill } from '../mill/at-the-mill.tsx';
import { ZeroOff } from '../mill/zero-off.tsx';
import { DiameterPad } from './diameter-pad.tsx';
import { MeasuredPad } from './measured-pad.tsx';
import { kindAtTheLathe, useLatheCut, type LatheCut } from './use-lathe-cut.ts';
import { measuredKey, useMeasured } from './use-measured.ts';
import './lathe-tokens.css';
import './lathe-screen.css';

type LatheScreenProps = { readonly jobId: string; readonly cutId: string; readonly field?: string };

/** One cut fills the screen, which is dark but in full sun. */
export function LatheScreen({ jobId, cutId, field }: LatheScreenProps) {
  const { at, missing } = useLatheCut(cutId);
  useLatheBrowserBar();
  if (missing) return <NotHere what="cut" />;
  if (at && at.job.id !== jobId) return <LeadOn to={{ at: 'lathe', jobId: at.job.id, cutId }} />;
  return (
    <div class="lathe">
      {!at ? (
        <Page title=" ">{null}</Page>
      ) : field === 'measured' ? (
        <Measured at={at} />
      ) : field === 'tool' ? (
        <ToolAtTheLathe at={at} />
      ) : field === 'work-diameter' ? (
        <DiameterPad at={at} />
      ) : field?.startsWith('zero') === true ? (
        <ZeroOff at={at} field={field} />
      ) : at.cut.stands ? (
        <AtTheMill at={at} />
      ) : (
        <AtTheLathe key={at.cut.id} at={at} />
      )}
    </div>
  );
}

function Measured({ at }: { at: LatheCut }) {
  const aloud = useSayAloud();
  const measured = useMeasured(at, {
    isAloud: aloud?.isOn === true,
    onLogged: () => goInstead({ at: 'lathe', jobId: at.job.id, cutId: at.cut.id }),
  });
  return <MeasuredPad at={at} measured={measured} />;
}

function ToolAtTheLathe({ at }: { at: LatheCut }) {
  const kind = kindAtTheLathe(at.cut);
  const draft = useLive(`draft-of/${at.cut.id}`, ['drafts'], async (store) => ({
    half: await getDraft(store, measuredKey(at.cut.id)),
  }));
  const typed = draft?.half && readEntry(draft.half.typed, { unit: draft.half.unit });
  const size = typed?.ok ? typed.value.exact : (at.progress.present ?? at.cut.target.exact);
  const { measuring, change } = useMeasuring(kind, { jobId: at.job.id, size });
  const back = hrefOf({ at: 'lathe', jobId: at.job.id, cutId: at.cut.id, field: 'measured' });
  if (!draft || !measuring) return <Page title=" ">{null}</Page>;
  return <ToolChoice back={back} kind={kind} measuring={measuring} onChange={change} />;
}

/** The phone's own bar above the page takes its colour. */
function useLatheBrowserBar(): void {
  useEffect(() => {
    const bar = document.querySelector<HTMLMetaElement>('meta[name=theme-color]');
    const light = bar?.content;
    if (!bar || light === undefined) return undefined;
    bar.content = getComputedStyle(document.documentElement).getPropertyValue('--paper');
    return () => {
      bar.content = light;
    };
  }, []);
}
