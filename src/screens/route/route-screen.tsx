import { signedStores } from '../../store/base/stores.ts';
import { route, routePlaces, type RoutePlace, type RouteRow } from '../../engine/job/route.ts';
import { PLACE_NAMES, sayRouteFault, sayRouteMark } from '../../engine/job/say-route.ts';
import { isSafetyCritical } from '../../engine/job/safety.ts';
import type { Job } from '../../store/base/records.ts';
import { hrefOf, type Address } from '../address.ts';
import { useNow } from '../assembly/use-assembly.ts';
import { LinkButton } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive } from '../common/store-context.ts';
import { touchWords } from '../common/system-names.ts';
import { unbroken } from '../common/unbroken.tsx';
import { UnreadableLine } from '../jobs/unreadable-line.tsx';
import { useJob } from '../jobs/use-job.ts';
import { nextStep, type NextStep } from './next-step.ts';
import type { SheetData } from '../sheet/sheet-data.ts';
import type { RouteData } from './route-data.ts';
import { routeLine } from './route-lines.ts';
import { RouteMark } from './route-mark.tsx';
import './route-screen.css';

/** A job as the order of its work: the next act in the panel, then every place with its mark, what is in it, and how many. */
export function RouteScreen({ jobId }: { jobId: string }) {
  const { job, missing } = useJob(jobId);
  const now = useNow();
  const found = useLive(
    `route/${jobId}/${now}`,
    [...signedStores, 'drawer', 'drawerCounts', 'settings'],
    async (store) => {
      // What works a whole job out comes behind the page.
      const { readRoute } = await import('./route-data.ts');
      return readRoute(store, jobId, now);
    },
  );
  if (missing) return <NotHere what="job" />;
  if (!job) return <Page title=" ">{null}</Page>;
  return <Route job={job} found={found} />;
}

const PLACES: Readonly<Record<RoutePlace, (jobId: string) => Address>> = {
  measure: (jobId) => ({ at: 'readings', jobId }),
  decide: (jobId) => ({ at: 'worksheets', jobId }),
  cut: (jobId) => ({ at: 'cuts', jobId }),
  get: (jobId) => ({ at: 'get', jobId }),
  prove: (jobId) => ({ at: 'fit-up', jobId }),
  'put-together': (jobId) => ({ at: 'assembly', jobId }),
  sheet: (jobId) => ({ at: 'sheet', jobId }),
};

function Route({ job, found }: { job: Job; found: RouteData | undefined }) {
  const known = found && route(found.question);
  const step = found && known && nextStep(known.next, found.data);
  const isNew = known?.next.is === 'begin';
  return (
    <Page
      title={job.name}
      subtitle={subtitleOf(job)}
      back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}
      aside={<LinkButton href={hrefOf({ at: 'job', jobId: job.id })}>About</LinkButton>}
      foot={
        // No key becomes another under the finger: they come when it is known which they are.
        <>
          {known && (
            <LinkButton href={isNew ? hrefOf({ at: 'worksheets', jobId: job.id }) : newSize(job.id)}>
              {isNew ? 'Decide' : 'New size'}
            </LinkButton>
          )}
          {step && (
            <LinkButton kind="main" href={hrefOf(step.address)}>
              {step.key}
            </LinkButton>
          )}
        </>
      }
    >
      <NextPanel step={step} />
      <UnreadableLine jobId={job.id} />
      <ul class="route">
        {routePlaces.map((place) => (
          <li key={place} class="route-place">
            <PlaceRow
              jobId={job.id}
              place={place}
              row={known?.rows.find((one) => one.place === place)}
              line={found ? routeLine(place, found.data, found.question) : ''}
            />
            {place === 'measure' && found && <LastSize data={found.data} />}
          </li>
        ))}
      </ul>
    </Page>
  );
}

function newSize(jobId: string): string {
  return hrefOf({ at: 'new-feature', jobId });
}

function subtitleOf(job: Job): string {
  return [isSafetyCritical(job) ? touchWords(job) : '', job.demo ? 'demo data' : '', job.what]
    .filter((part) => part !== '')
    .slice(0, 2)
    .join(' · ');
}

/** What is done next: what, how much, where. */
function NextPanel({ step }: { step: NextStep | undefined }) {
  return (
    <section class="route-next" aria-label="Next">
      <p class="route-next-label">next</p>
      <p class="route-next-what">{step && unbroken(step.what)}</p>
      <p class="route-next-more">{step && unbroken(step.more)}</p>
      {step?.strength !== undefined && step.strength !== '' && (
        <p class="route-next-strength">{step.strength}</p>
      )}
    </section>
  );
}

/** The size that was read last, one press from being read again. */
function LastSize({ data: { job, features, readings } }: { data: SheetData }) {
  const sizes = features.filter(({ checkId }) => checkId === undefined);
  const last = readings
    .filter(({ featureId }) => sizes.some(({ id }) => id === featureId))
    .toSorted((a, b) => b.at - a.at)[0];
  const feature = sizes.find(({ id }) => id === last?.featureId);
  if (!feature) return null;
  return (
    <a class="route-last" href={hrefOf({ at: 'feature', jobId: job.id, featureId: feature.id })}>
      <small>again </small>
      {feature.name}
    </a>
  );
}

type PlaceRowProps = {
  readonly jobId: string;
  readonly place: RoutePlace;
  readonly row: RouteRow | undefined;
  readonly line: string;
};

function PlaceRow({ jobId, place, row, line }: PlaceRowProps) {
  const fault = row && sayRouteFault(row);
  return (
    <a class="route-row" href={hrefOf(PLACES[place](jobId))} data-fault={row?.fault}>
      <RouteMark row={row} />
      <span class="route-row-words">
        <strong>{PLACE_NAMES[place]}</strong>
        {row && <span class="unseen">{sayRouteMark(row)}</span>}
        {fault !== undefined && <span class="route-row-fault">{fault}</span>}
        {line !== '' && <span class="route-row-line">{unbroken(line)}</span>}
      </span>
      {row !== undefined && row.count > 0 && <span class="route-row-count">{row.count}</span>}
    </a>
  );
}
