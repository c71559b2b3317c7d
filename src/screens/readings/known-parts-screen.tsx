import { useEffect, useState } from 'preact/hooks';
import { getJob } from '../../store/kept/jobs.ts';
import type { KnownPart } from '../../store/kept/known-parts.ts';
import type { JobSearch } from '../../store/search/job-search.ts';
import { hasEveryWord } from '../../store/search/word-index.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useJobSearch } from '../find/use-job-search.ts';
import { useJob } from '../jobs/use-job.ts';
import { KnownRows, soundPartsOf, useKnownParts } from './known-rows.tsx';

const PAGE = 20;
// Chosen, not published: more are no list that anybody goes through.
const MOST_JOBS = 30;

/** What was measured in other jobs, to be brought into this one: the latest first, or what is looked for. */
export function KnownPartsScreen({ jobId }: { jobId: string }) {
  const { job, missing } = useJob(jobId);
  const { text, change } = useTextDraft('known-parts');
  if (missing) return <NotHere what="job" />;
  if (!job) return <Page title=" ">{null}</Page>;
  return (
    <Page
      title="Measured before"
      subtitle="Another one’s sizes, until each is read here"
      back={{ href: hrefOf({ at: 'readings', jobId }), to: 'the readings' }}
    >
      <TextField label="Part, job or size" hint="hub" text={text} onText={change} />
      {text.trim() === '' ? <Latest jobId={jobId} /> : <LookedFor jobId={jobId} text={text} />}
    </Page>
  );
}

function Latest({ jobId }: { jobId: string }) {
  const [shown, setShown] = useState(PAGE);
  const found = useKnownParts(jobId, shown);
  if (!found) return null;
  if (found.parts.length === 0)
    return <EmptyLine>What is measured in one job can be brought into the next from here.</EmptyLine>;
  return (
    <>
      <KnownRows jobId={jobId} parts={found.parts} />
      {found.more && <Button onPress={() => setShown(shown + PAGE)}>Show older</Button>}
    </>
  );
}

function LookedFor({ jobId, text }: { jobId: string; text: string }) {
  const store = useStore();
  const search = useJobSearch();
  const [parts, setParts] = useState<readonly KnownPart[]>();
  useEffect(() => {
    let isWanted = true;
    if (search) void partsFound(store, search, { jobId, text }).then((found) => isWanted && setParts(found));
    return () => {
      isWanted = false;
    };
  }, [store, search, jobId, text]);
  if (!parts) return null;
  return (
    <>
      {parts.length === 0 && <EmptyLine>Nothing measured has these words.</EmptyLine>}
      <KnownRows jobId={jobId} parts={parts} />
    </>
  );
}

type Asked = { readonly jobId: string; readonly text: string };

/** Of the jobs that have the words, the parts that have them too, with their job’s name and sizes. */
async function partsFound(
  store: Store,
  { index }: JobSearch,
  { jobId, text }: Asked,
): Promise<readonly KnownPart[]> {
  const ids = index.find(text, MOST_JOBS).found.map(({ job }) => job.id);
  const all = ids
    .filter((id) => id !== jobId)
    .map(async (id) => {
      const job = await getJob(store, id);
      return job ? soundPartsOf(store, job) : [];
    });
  return (await Promise.all(all)).flat().filter((part) => hasEveryWord(text, wordsOf(part)));
}

function wordsOf({ name, sizes }: KnownPart) {
  const read = sizes.flatMap(({ elsewhere }) => elsewhere.readings);
  return {
    text: [name, ...sizes.map((size) => size.name), sizes[0]?.elsewhere.jobName ?? ''].join(' '),
    read,
  };
}
