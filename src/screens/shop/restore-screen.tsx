import { grouped } from '../../engine/length/decimal-text.ts';
import { useEffect, useState } from 'preact/hooks';
import type { BackupPreview } from '../../store/file/backup-preview.ts';
import type { Restored } from '../../store/file/backup-restore.ts';
import { phoneMark } from '../../store/kept/last-backup.ts';
import { broughtUndo, undoBrought } from '../../store/file/undo-brought.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { go, hrefOf } from '../address.ts';
import { BothLine } from '../both/both-line.tsx';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble } from '../common/told.tsx';
import { FileKey } from './file-key.tsx';
import {
  isUnderWay,
  leaveIt,
  lookForWaiting,
  putIn,
  useRestoreWork,
  type RestoreWork,
} from './restore-work.ts';
import {
  apartWords,
  broughtWords,
  counted,
  isSame,
  jobWords,
  originWords,
  oddWords,
  otherWords,
  settingsWords,
  unreadableWords,
} from './restore-words.ts';
import './restore-screen.css';

/** A backup or a job file on its way in: what it would change, job by job, before anything is put in. */
export function RestoreScreen() {
  const store = useStore();
  const work = useRestoreWork();
  useEffect(() => void lookForWaiting(store), []);
  return (
    <Page
      title="Add a file"
      subtitle="a backup, or a job from another phone"
      back={{ href: hrefOf({ at: 'shop' }), to: 'the shop' }}
      foot={<Foot work={work} />}
    >
      <div class="restore">
        <Inside work={work} />
      </div>
    </Page>
  );
}

function Inside({ work }: { work: RestoreWork }) {
  switch (work.at) {
    case 'nothing':
      return <p>You see what a file would change before anything of it is put in.</p>;
    case 'reading':
      return <UnderWay words="The file is read and checked" share={work.share} more={WHILE_READ} />;
    case 'comparing':
      return <UnderWay words="It is compared with what is here" share={work.share} more={WHILE_READ} />;
    case 'putting':
      return <UnderWay words="It is put in" share={work.share} more={WHILE_PUT_IN} />;
    case 'shown':
      return (
        <>
          <Trouble>{work.trouble ?? ''}</Trouble>
          <Preview preview={work.preview} />
        </>
      );
    case 'in':
      return <PutIn restored={work.restored} />;
    case 'refused':
      return <p role="alert">{work.sentence}</p>;
    default:
      return work satisfies never;
  }
}

const WHILE_READ = 'Nothing is changed by this. You can go on working meanwhile.';
const WHILE_PUT_IN =
  'All of it goes in at once, or nothing. What you log meanwhile waits until it is in: a minute for a hundred thousand readings.';

function UnderWay({ words, share, more }: { words: string; share: number; more: string }) {
  return (
    <>
      <label class="restore-share">
        {words}: {Math.round(share * 100)} %
        <progress max={1} value={share} />
      </label>
      <p>{more}</p>
    </>
  );
}

function isNothing({ total: { added, changed }, apart }: BackupPreview): boolean {
  return added + changed + apart === 0;
}

const JOBS_AT_FIRST = 30;

function Preview({ preview }: { preview: BackupPreview }) {
  const own = useLive('phone-mark', [], async (store) => ({ mark: await phoneMark(store) }));
  const [shown, setShown] = useState(JOBS_AT_FIRST);
  const { jobs, file } = preview;
  const changing = jobs.filter((job) => !isSame(job));
  const removed = jobs.filter((job) => job.staysRemoved).length;
  const same = jobs.length - changing.length - removed;
  const settings = settingsWords(preview);
  const apart = apartWords(preview);
  const unreadable = unreadableWords(preview);
  return (
    <>
      <p>
        {own && <strong>{originWords(file.from, own.mark)}.</strong>}{' '}
        {isNothing(preview)
          ? 'Nothing would change here.'
          : file.from.job !== undefined
            ? 'It is one job, handed over.'
            : 'What is here stays; what both have changed keeps the later change.'}
      </p>
      {/* Before the list: below it they could be out of sight when the key is pressed. */}
      {oddWords(preview).map((words) => (
        <p key={words}>
          <strong>{words}</strong>
        </p>
      ))}
      <ul class="restore-jobs" aria-label="What would change">
        {changing.slice(0, shown).map((job) => (
          <li key={job.id}>
            <Row title={job.name || 'A job that can’t be read'} detail={jobWords(job)} />
          </li>
        ))}
        {otherWords(preview).map((words) => (
          <li key={words}>
            <Row title={words} />
          </li>
        ))}
      </ul>
      {changing.length > shown && (
        <Button onPress={() => setShown(shown + 10 * JOBS_AT_FIRST)}>
          Show more of the {grouped(changing.length)} jobs
        </Button>
      )}
      {removed > 0 && (
        <p>
          {counted(removed, 'job was', 'jobs were')} removed here after this was written, and a file doesn’t
          bring back what was removed.
        </p>
      )}
      {same > 0 && <p>{counted(same, 'job is', 'jobs are')} the same here.</p>}
      {apart !== undefined && <p>{apart}</p>}
      {unreadable !== undefined && <p>{unreadable}</p>}
      {settings !== undefined && <p>{settings}</p>}
    </>
  );
}

function PutIn({ restored }: { restored: Restored }) {
  const { added, changed, canUndo } = restored;
  const store = useStore();
  const last = useLive('brought-undo', ['undo'], broughtUndo);
  const [said, setSaid] = useState('');
  const undo = async (id: string) => {
    const undone = await undoBrought(store, id);
    const sentence = undone.ok ? `Undone: ${undone.value}.` : sayStore(undone.refusal);
    setSaid(sentence);
    announce(sentence);
  };
  if (said !== '') return <p role="status">{said}</p>;
  return (
    <>
      <p>The file is in: {broughtWords(restored)}.</p>
      <BothLine />
      {last !== undefined && <Button onPress={() => undo(last)}>Undo: what the file brought</Button>}
      {!canUndo && added + changed > 0 && (
        <p>It changed too much to be undone as one. An earlier backup is the way back.</p>
      )}
    </>
  );
}

function Foot({ work }: { work: RestoreWork }) {
  const store = useStore();
  if (isUnderWay(work)) return null;
  if (work.at === 'shown') {
    return (
      <>
        <Button onPress={() => leaveIt(store).then(() => go({ at: 'shop' }))}>Leave it out</Button>
        {!isNothing(work.preview) && (
          <Button kind="main" onPress={() => putIn(store)}>
            Put it in
          </Button>
        )}
      </>
    );
  }
  if (work.at === 'in')
    return (
      <LinkButton kind="main" href={hrefOf({ at: 'jobs' })}>
        To the jobs
      </LinkButton>
    );
  return <FileKey kind="main">Choose a file</FileKey>;
}
