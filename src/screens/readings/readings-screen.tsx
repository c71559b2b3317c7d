import { isSafetyCritical } from '../../engine/job/safety.ts';
import { featuresOf } from '../../store/kept/features.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import type { Feature, ReadingRecord } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { Caution, SafetyCaution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { JobPage } from '../jobs/job-page.tsx';
import { useJob } from '../jobs/use-job.ts';
import { kindName } from './feature-kinds.ts';
import { countedRecords, isElsewhere, whereElsewhere } from './elsewhere.ts';
import { formOfReadings, summaryOf } from './feature-summary.ts';
import './readings-screen.css';

/** What was measured in a job. */
export function ReadingsScreen({ jobId }: { jobId: string }) {
  const { job, missing } = useJob(jobId);
  const features = useLive(`features/${jobId}`, ['features'], (store) => featuresOf(store, jobId));
  const readings = useLive(`readings/${jobId}`, ['readings'], (store) => readingsOfJob(store, jobId));
  if (missing) return <NotHere what="job" />;
  if (!job || !features || !readings) return <Page title=" ">{null}</Page>;
  const own = features.filter(({ checkId }) => checkId === undefined);
  // What was read for a check is looked for there; here it only completes the list, once there is something of it.
  const ofChecks = features.filter(
    ({ id, checkId }) => checkId !== undefined && readings.some(({ featureId }) => featureId === id),
  );
  return (
    <JobPage
      job={job}
      here="measure"
      foot={
        <>
          <LinkButton href={hrefOf({ at: 'known', jobId })}>Measured before</LinkButton>
          <LinkButton kind="main" href={hrefOf({ at: 'new-feature', jobId })}>
            New size
          </LinkButton>
        </>
      }
    >
      {own.length === 0 && (
        <EmptyLine>
          Bores, pins, lengths and gaps go here, each with its readings and the tool that took them.
        </EmptyLine>
      )}
      <FeatureRows features={own} readings={readings} />
      {ofChecks.length > 0 && (
        <section class="readings-of-checks">
          <h2>Fit-up</h2>
          <FeatureRows features={ofChecks} readings={readings} />
        </section>
      )}
      {isSafetyCritical(job) && <SafetyCaution />}
      <Caution heading="Before each reading:">
        spindle stopped, part clean and deburred, tool and part equally warm.
      </Caution>
    </JobPage>
  );
}

function FeatureRows({
  features,
  readings,
}: {
  features: readonly Feature[];
  readings: readonly ReadingRecord[];
}) {
  return (
    <ul>
      {features.map((feature) => (
        <li key={feature.id}>
          <FeatureRow
            feature={feature}
            readings={readings.filter((reading) => reading.featureId === feature.id)}
          />
        </li>
      ))}
    </ul>
  );
}

function FeatureRow({ feature, readings }: { feature: Feature; readings: readonly ReadingRecord[] }) {
  const unit = useShownUnit();
  const form = formOfReadings(feature.kind, countedRecords(feature, readings), feature.material);
  const summary = form && summaryOf(form, unit);
  const ofAnother = isElsewhere(feature, readings);
  return (
    <Row
      href={hrefOf({
        at: 'feature',
        jobId: feature.jobId,
        featureId: feature.id,
        ...(feature.checkId !== undefined && { choosing: `check/${feature.checkId}` }),
      })}
      title={feature.name}
      detail={
        <>
          {kindName(feature.kind)}, {countSentence(readings)}
          {ofAnother && <span class="row-detail">{`of ${whereElsewhere(feature.elsewhere)}`}</span>}
          {summary && summary.form !== '' && <span class="row-detail">{summary.form}</span>}
        </>
      }
      // How well another one is known proves nothing of this one.
      figure={summary && <Size {...summary} band={ofAnother ? '' : summary.band} />}
    />
  );
}

function Size({ size, band }: { size: string; band: string }) {
  return (
    <>
      {size}
      {band !== '' && <small class="row-detail">{band}</small>}
    </>
  );
}

export function countSentence(readings: readonly ReadingRecord[]): string {
  const struck = readings.filter((reading) => reading.struckOut !== undefined).length;
  const counted = readings.length - struck;
  const count = counted === 0 ? 'no readings yet' : counted === 1 ? '1 reading' : `${counted} readings`;
  return struck === 0 ? count : `${count}, ${struck} struck out`;
}
