import { readEntry } from '../../engine/length/entry.ts';
import type { Length } from '../../engine/length/length.ts';
import { getDraft } from '../../store/kept/drafts.ts';
import { featuresOf, getFeature } from '../../store/kept/features.ts';
import { readingsOf } from '../../store/kept/readings.ts';
import type { Feature } from '../../store/base/records.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { LeadOn } from '../common/lead-on.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive } from '../common/store-context.ts';
import { useJob } from '../jobs/use-job.ts';
import { AllReadings } from './all-readings.tsx';
import { ReadingPad } from './reading-pad.tsx';
import { ToolChoice } from './tool-choice.tsx';
import { WarmthScreen } from './warmth-screen.tsx';
import { useMeasuring } from './use-measuring.ts';

type FeatureScreenProps = { readonly jobId: string; readonly featureId: string; readonly choosing?: string };

/** One feature: the pad its readings are logged with; behind it all its readings, and the tools to choose from. */
export function FeatureScreen({ jobId, featureId, choosing }: FeatureScreenProps) {
  const { job, missing } = useJob(jobId);
  const found = useLive(`feature/${featureId}`, ['features'], async (store) => ({
    feature: await getFeature(store, featureId),
  }));
  const features = useLive(`features/${jobId}`, ['features'], (store) => featuresOf(store, jobId));
  const readings = useLive(`readings-of/${featureId}`, ['readings'], (store) => readingsOf(store, featureId));
  const feature = found?.feature;
  const last = readings?.findLast((reading) => !reading.struckOut);
  const { measuring, known, change } = useMeasuring(feature?.kind, { jobId, size: last?.exact });
  if (missing || (found && !feature)) return <NotHere what="reading" />;
  if (!job || !feature || !readings || !known) return <Page title=" ">{null}</Page>;
  if (feature.jobId !== jobId) return <LeadOn to={{ at: 'feature', jobId: feature.jobId, featureId }} />;
  // Opened from a worksheet or from a fit-up check, the way back leads there.
  const [, way, opener, asked] = /^(?:(for|check)\/([^/]+))?\/?(tool|all|warm)?$/.exec(choosing ?? '') ?? [];
  const from = way === undefined || opener === undefined ? '' : `${way}/${opener}`;
  const pad = { at: 'feature', jobId, featureId, ...(from !== '' && { choosing: from }) } as const;
  if (asked === 'tool') return <ToolOfFeature feature={feature} last={last?.exact} back={hrefOf(pad)} />;
  if (asked === 'all') {
    const warm = hrefOf({ ...pad, choosing: from === '' ? 'warm' : `${from}/warm` });
    return <AllReadings job={job} feature={feature} readings={readings} back={hrefOf(pad)} warm={warm} />;
  }
  if (asked === 'warm') return <WarmthScreen job={job} feature={feature} back={hrefOf(pad)} />;
  // What was read for a check is not among the readings that a foot switch goes through.
  const own = features?.filter(({ checkId }) => checkId === undefined);
  const listed = own?.findIndex((one) => one.id === featureId) ?? -1;
  const after = listed === -1 ? undefined : own?.[listed + 1];
  const there = openerOf(jobId, way, opener);
  const toNext = () => {
    if (there) return go(there);
    if (!after) return undefined;
    announce(`Next: ${after.name}.`);
    return go({ at: 'feature', jobId, featureId: after.id });
  };
  return (
    <ReadingPad
      job={job}
      feature={feature}
      readings={readings}
      measuring={measuring}
      from={from}
      back={
        there
          ? { href: hrefOf(there), to: there.at === 'check' ? 'the check' : 'the worksheet' }
          : { href: hrefOf({ at: 'readings', jobId }), to: 'the readings' }
      }
      onMeasuring={change}
      onNext={!there && !after ? undefined : toNext}
    />
  );
}

type ToolOfFeatureProps = {
  readonly feature: Feature;
  readonly last: Length | undefined;
  readonly back: string;
};

/** Only tools that can read what stands half typed on the pad, or else what was read last. */
function ToolOfFeature({ feature, last, back }: ToolOfFeatureProps) {
  const { id, kind, jobId } = feature;
  const draft = useLive(`draft-of/${id}`, ['drafts'], async (store) => ({
    half: await getDraft(store, `feature/${id}`),
  }));
  const typed = draft?.half && readEntry(draft.half.typed, { unit: draft.half.unit });
  const size = typed?.ok ? typed.value.exact : last;
  const { measuring, change } = useMeasuring(kind, { jobId, size });
  if (!draft || !measuring) return <Page title=" ">{null}</Page>;
  return <ToolChoice back={back} kind={kind} measuring={measuring} onChange={change} />;
}

function openerOf(jobId: string, way: string | undefined, opener: string | undefined) {
  if (opener === undefined) return undefined;
  return way === 'check'
    ? ({ at: 'check', jobId, checkId: opener } as const)
    : ({ at: 'worksheet', jobId, worksheetId: opener } as const);
}
