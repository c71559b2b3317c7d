import { signedStores } from '../../store/base/stores.ts';
import { moneyTotal } from '../../engine/job/money.ts';
import { showMoney } from '../../engine/job/say-money.ts';
import { minorPlaces } from '../../engine/job/tables/minor-units.ts';
import { changeJob, removeJob } from '../../store/kept/jobs.ts';
import { moneyOf } from '../../store/kept/money.ts';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import { jobsChangedSinceSigning } from '../../store/kept/signed-since.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { SafetyCaution } from '../common/caution.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { UndoKey } from '../common/undo-key.tsx';
import type { Job } from '../../store/base/records.ts';
import { useCurrency } from '../money/use-currency.ts';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { useJobFile } from './use-job-file.ts';
import { SystemsChoice } from './systems-choice.tsx';
import { UnreadableLine } from './unreadable-line.tsx';
import { useJob } from './use-job.ts';
import { dayWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import './job-screen.css';

/** What a job is and touches, its photos and its money; also where it is closed or removed. */
export function JobScreen({ jobId }: { jobId: string }) {
  const { job, missing } = useJob(jobId);
  if (missing) return <NotHere what="job" />;
  return job ? <JobForm key={job.id} job={job} /> : <Page title=" ">{null}</Page>;
}

function JobForm({ job }: { job: Job }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { said, give } = useJobFile(job);
  const isChanged = useIsChanged(job);
  const change = (changes: Parameters<typeof changeJob>[2]) => told(changeJob(store, job.id, changes));
  const write = (field: 'name' | 'what' | 'customer' | 'machine' | 'customerNote') => async (words: string) =>
    // A job without a name can't be found again: the last name stays until there is another.
    (field !== 'name' || words !== '') && change({ [field]: words });
  const remove = () => told(removeJob(store, job.id), () => go({ at: 'jobs' }));
  return (
    <Page
      title="About this job"
      subtitle={[job.name, signedWords(job, isChanged), job.state === 'closed' ? 'closed' : '']
        .filter((word) => word !== '')
        .join(' · ')}
      back={{ href: hrefOf({ at: 'route', jobId: job.id }), to: 'the job' }}
      foot={<LinkButton href={hrefOf({ at: 'again', jobId: job.id })}>Begin another from it</LinkButton>}
    >
      <UnreadableLine jobId={job.id} />
      <PhotoStrip owner={{ store: 'jobs', id: job.id }} jobId={job.id} />
      <KeptField label="Name" kept={job.name} onWords={write('name')} />
      <KeptField label="What it is" long kept={job.what} onWords={write('what')} />
      <KeptField label="Customer" kept={job.customer ?? ''} onWords={write('customer')} />
      <KeptField label="Machine" kept={job.machine ?? ''} onWords={write('machine')} />
      <KeptField label="Note for the sheet" long kept={job.customerNote} onWords={write('customerNote')} />
      <SystemsChoice touched={job} onChange={(to) => void change((now) => to(now))} />
      {isSafetyCritical(job) && <SafetyCaution />}
      <div class="job-screen-lines">
        <MoneyRow jobId={job.id} />
        <Row
          href={hrefOf({ at: 'assembly', jobId: job.id, field: 'odometer' })}
          title="Odometer"
          detail={
            job.odometer ? `read ${dayWords(job.odometer.at)}` : 'not read yet; re-checks after miles need it'
          }
          {...(job.odometer && { figure: `${job.odometer.reading} ${job.odometer.unit}` })}
        />
      </div>
      <Trouble>{trouble}</Trouble>
      <div class="job-screen-end">
        <UndoKey jobId={job.id} />
        {said !== '' && <p>{said}</p>}
        <Button onPress={() => give()}>Hand this job over as a file</Button>
        <CloseButton job={job} onState={(state) => change({ state })} />
        <Button onPress={() => remove()}>Remove this job</Button>
      </div>
    </Page>
  );
}

/** Whether it stands otherwise than it was signed, as in the list of jobs: it is asked at every letter. */
function useIsChanged({ id }: Job): boolean {
  const changed = useLive(`changed/${id}`, signedStores, (store) => jobsChangedSinceSigning(store, [id]));
  return changed?.has(id) === true;
}

function MoneyRow({ jobId }: { jobId: string }) {
  const sign = useCurrency();
  const lines = useLive(`money/${jobId}`, ['money'], (store) => moneyOf(store, jobId));
  const count = lines?.length ?? 0;
  const known = lines !== undefined && sign !== undefined && count > 0;
  return (
    <Row
      href={hrefOf({ at: 'money', jobId })}
      title="Money and time"
      detail={count === 0 ? 'parts, costs and hours' : count === 1 ? '1 line' : `${count} lines`}
      figure={known ? showMoney(moneyTotal(lines, minorPlaces(sign)).total, sign) : undefined}
    />
  );
}

/** What was changed stands on the assembly: the heading has no room for it. */
function signedWords({ signedOff }: Job, isChanged: boolean): string {
  return signedOff ? `signed off ${dayWords(signedOff.at)}${isChanged ? ', changed since' : ''}` : '';
}

type CloseButtonProps = { readonly job: Job; readonly onState: (state: Job['state']) => Promise<boolean> };

/** A closed job stays whole and readable; its cuts no longer stand among what is to be cut, its re-checks still come due. */
function CloseButton({ job, onState }: CloseButtonProps) {
  const isOpen = job.state === 'open';
  const press = async () => {
    if (await onState(isOpen ? 'closed' : 'open'))
      announce(isOpen ? 'The job is closed.' : 'The job is open again.');
  };
  return <Button onPress={() => press()}>{isOpen ? 'Close this job' : 'Open this job again'}</Button>;
}
