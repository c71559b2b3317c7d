import { useEffect, useState } from 'preact/hooks';
import { listJobs } from '../../store/kept/job-list.ts';
import { bringKnown, knownPartsOf, lastReadAt, type KnownPart } from '../../store/kept/known-parts.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Feature, Job } from '../../store/base/records.ts';
import { goInstead } from '../address.ts';
import { announce } from '../common/announce.ts';
import { dayWords } from '../common/day-words.ts';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { recordsElsewhere } from './elsewhere.ts';
import { formOfReadings, summaryOf } from './feature-summary.ts';

type KnownRowsProps = { readonly jobId: string; readonly parts: readonly KnownPart[] };

/** Parts that were measured in other jobs: a press brings one in with all its sizes, marked as another one's. */
export function KnownRows({ jobId, parts }: KnownRowsProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const bring = (part: KnownPart) =>
    told(bringKnown(store, jobId, part), ({ name, sizes }) => {
      announce(`Brought in: ${name}, ${countWords(sizes.length)} of another one.`);
      goInstead({ at: 'readings', jobId });
    });
  return (
    <>
      <Trouble>{trouble}</Trouble>
      <ul>
        {parts.map((part) => (
          <li key={part.id}>
            <KnownRow part={part} onBring={() => bring(part)} />
          </li>
        ))}
      </ul>
    </>
  );
}

function KnownRow({ part, onBring }: { part: KnownPart; onBring: () => unknown }) {
  const unit = useShownUnit();
  const [first] = part.sizes;
  const jobName = first?.elsewhere.jobName ?? '';
  const only = part.sizes.length === 1 ? first : undefined;
  const form = only && formOf(only);
  return (
    <Row
      onPress={onBring}
      title={part.name}
      detail={[
        ...(part.origin ? [countWords(part.sizes.length)] : []),
        jobName,
        `read ${dayWords(lastReadAt(part))}`,
      ].join(' · ')}
      {...(form && { figure: summaryOf(form, unit).size })}
    />
  );
}

function countWords(count: number): string {
  return count === 1 ? '1 size' : `${count} sizes`;
}

function formOf({ kind, material, elsewhere }: KnownPart['sizes'][number]) {
  const feature: Feature = { id: '', jobId: '', kind, name: '', createdAt: 0 };
  return formOfReadings(kind, recordsElsewhere(feature, elsewhere), material);
}

/** Of readings that contradict each other nobody said yet which stand: that is settled where they were logged. */
function withoutDoubts(part: KnownPart): readonly KnownPart[] {
  const sizes = part.sizes.filter((size) => formOf(size)?.contradictions.length === 0);
  return sizes.length > 0 ? [{ ...part, sizes }] : [];
}

export async function soundPartsOf(store: Store, job: Job): Promise<readonly KnownPart[]> {
  return (await knownPartsOf(store, job)).flatMap(withoutDoubts);
}

const JOBS_AT_ONCE = 10;

export type KnownFound = { readonly parts: readonly KnownPart[]; readonly more: boolean };

/** The known parts of other jobs, those of the job last worked on first, as many as are asked for. */
export function useKnownParts(jobId: string, most: number): KnownFound | undefined {
  const store = useStore();
  const [found, setFound] = useState<KnownFound>();
  const [fault, setFault] = useState<{ readonly error: unknown }>();
  useEffect(() => {
    let isWanted = true;
    readKnown(store, jobId, most).then(
      (parts) => isWanted && setFound(parts),
      (error: unknown) => isWanted && setFault({ error }),
    );
    return () => {
      isWanted = false;
    };
  }, [store, jobId, most]);
  if (fault) throw fault.error;
  return found;
}

async function readKnown(store: Store, jobId: string, most: number): Promise<KnownFound> {
  const parts: KnownPart[] = [];
  let before: number | undefined;
  for (;;) {
    // Job by job, and no further than is wanted: there may be a thousand.
    // oxlint-disable-next-line no-await-in-loop
    const page = await listJobs(store, { limit: JOBS_AT_ONCE, ...(before !== undefined && { before }) });
    for (const job of page.jobs.filter(({ id }) => id !== jobId)) {
      // oxlint-disable-next-line no-await-in-loop
      parts.push(...(await soundPartsOf(store, job)));
      if (parts.length > most) return { parts: parts.slice(0, most), more: true };
    }
    before = page.jobs.at(-1)?.touchedAt;
    if (!page.more || before === undefined) return { parts, more: false };
  }
}
