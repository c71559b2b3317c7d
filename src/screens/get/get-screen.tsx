import { signedStores } from '../../store/base/stores.ts';
import { counted, sayGetList } from '../../engine/job/say-get.ts';
import type { Job } from '../../store/base/records.ts';
import { addToGet, dropToGet, setGot } from '../../store/kept/to-get.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { giveText } from '../common/give-text.ts';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { unbroken } from '../common/unbroken.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { JobPage } from '../jobs/job-page.tsx';
import { readSheet } from '../sheet/sheet-data.ts';
import { getLines, type GetLine } from './get-data.ts';
import './get-screen.css';

/** What has to be bought or found for a job, each ticked when it is there. */
export function GetScreen({ jobId }: { jobId: string }) {
  const found = useLive(
    `get/${jobId}`,
    [...signedStores, 'drawer', 'drawerCounts', 'settings'],
    async (store) => {
      const data = await readSheet(store, jobId);
      return { job: data?.job, lines: data ? getLines(data) : [] };
    },
  );
  if (!found) return <Page title=" ">{null}</Page>;
  return found.job ? <GetPage job={found.job} lines={found.lines} /> : <NotHere what="job" />;
}

function GetPage({ job, lines }: { job: Job; lines: readonly GetLine[] }) {
  const store = useStore();
  const own = useTextDraft(`get/${job.id}/own`);
  const { trouble, told, say } = useTold();
  const add = () => {
    const words = own.text.trim();
    if (words === '') return say('Say what is to be got.');
    return told(addToGet(store, job.id, words, `get/${job.id}/own`), own.clear);
  };
  const missing = lines.filter(({ isThere }) => !isThere);
  const share = async () => announce(await giveText(sayGetList(job.name, missing)));
  return (
    <JobPage
      job={job}
      here="get"
      {...(missing.length > 0 && {
        foot: (
          <Button kind="main" onPress={() => share()}>
            Share as text
          </Button>
        ),
      })}
    >
      {lines.length === 0 && (
        <EmptyLine>
          Taps, drills, inserts, bolts, stock and lockers of this job gather here from its worksheets, cuts
          and steps.
        </EmptyLine>
      )}
      <ul class="get">
        {lines.map((line) => (
          <li key={line.key}>
            <GetRow
              line={line}
              onTick={() => told(setGot(store, job.id, line, !line.isThere))}
              onDrop={() => told(dropToGet(store, job.id, line.what))}
            />
          </li>
        ))}
      </ul>
      <div class="get-own">
        <TextField label="Something else" hint="Brake fluid, say" text={own.text} onText={own.change} />
        <Button onPress={() => add()}>Put it on the list</Button>
      </div>
      <Trouble>{trouble}</Trouble>
    </JobPage>
  );
}

type GetRowProps = {
  readonly line: GetLine;
  readonly onTick: () => unknown;
  readonly onDrop: () => unknown;
};

function GetRow({ line: { what, count, kind, purposes, isThere }, onTick, onDrop }: GetRowProps) {
  const words = counted(count, what);
  return (
    <div class="get-row">
      <button
        type="button"
        role="checkbox"
        class="get-tick"
        aria-checked={isThere}
        onClick={() => void onTick()}
      >
        <svg viewBox="0 0 32 32" width="32" height="32" aria-hidden="true">
          <rect class="get-box" x="4" y="4" width="24" height="24" rx="4" />
          {isThere && <path class="get-check" d="M9 17l5 5l10-12" />}
        </svg>
        <span class="get-words" data-there={isThere}>
          <strong>{unbroken(words)}</strong>
          {purposes.length > 0 && <small>{unbroken(`for ${purposes.join(', ')}`)}</small>}
        </span>
      </button>
      {kind === 'own' && (
        <Button label={`Take ${what} off the list`} onPress={onDrop}>
          Take off
        </Button>
      )}
    </div>
  );
}
