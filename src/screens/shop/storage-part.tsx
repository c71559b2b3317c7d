import { grouped } from '../../engine/length/decimal-text.ts';
import { useEffect, useState } from 'preact/hooks';
import { stagedFile } from '../../store/file/backup-staged.ts';
import { countsKept, sinceBackup } from '../../store/kept/last-backup.ts';
import { asksAPerson, megabytesKept } from '../../store/opening/persistence.ts';
import { sayStore, sayUnreadable } from '../../store/base/say-store.ts';
import { broughtUndo, undoBrought } from '../../store/file/undo-brought.ts';
import { unreadableOfShop } from '../../store/kept/unreadable.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { isTabOnIphone } from '../common/home-screen.ts';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useWaitedFor } from '../common/together.tsx';
import { usePersistenceAsked } from '../common/use-persistence.ts';
import { FileKey } from './file-key.tsx';
import { backupWords, keptWords, PROMISE } from './storage-words.ts';

/** Whether the records are safe on this phone, and the files they leave and come by. */
export function StoragePart() {
  const store = useStore();
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const tell = (sentence: string) => {
    setSaid(sentence);
    setBusy(false);
    announce(sentence);
  };
  const save = async () => {
    setBusy(true);
    setSaid('The backup is being written …');
    const giving = import('./backup-file.ts').then(({ giveBackup }) => giveBackup(store));
    tell(await giving.catch(() => 'The backup could not be written. Nothing here was changed.'));
  };
  return (
    <section class="shop-part">
      <h2>Records</h2>
      <p>They live in this browser on this phone, and nowhere else.</p>
      {isTabOnIphone() && <TwoPlaces />}
      <StorageRows />
      <UnreadableOfShop />
      <WaitingFile />
      {said !== '' && <p>{said}</p>}
      <div class="shop-part-keys">
        <Button disabled={busy} onPress={() => save()}>
          Save a backup
        </Button>
        <FileKey disabled={busy}>Add a backup or a job file</FileKey>
        <UndoBrought onSaid={tell} />
      </div>
    </section>
  );
}

function StorageRows() {
  const { persistence, ask } = usePersistenceAsked();
  const [room, setRoom] = useState<{ readonly megabytes: number | undefined }>();
  const counts = useLive('counts-kept', ['jobs', 'features', 'readings', 'photos'], countsKept);
  const since = useLive('since-backup', ['jobs', 'readings', 'photos', 'device'], sinceBackup);
  useEffect(() => {
    void megabytesKept().then((megabytes) => setRoom({ megabytes }));
  }, []);
  useWaitedFor(persistence !== undefined && room !== undefined);
  const megabytes = room?.megabytes;
  return (
    <ul>
      {counts && (
        <li>
          <Row
            title="Kept here"
            detail={keptWords(counts)}
            figure={megabytes === undefined ? undefined : `${grouped(megabytes)} MB`}
          />
        </li>
      )}
      {persistence && (
        <li>
          <Row {...PROMISE[persistence]} />
          {persistence === 'refused' && asksAPerson() && (
            <Button onPress={ask}>Ask the browser to keep them</Button>
          )}
        </li>
      )}
      {since && (
        <li>
          <Row title="Last backup" detail={backupWords(since)} />
        </li>
      )}
    </ul>
  );
}

function UnreadableOfShop() {
  const count = useLive('unreadable-of-shop', ['staging'], unreadableOfShop);
  return count ? <p>{sayUnreadable(count, 'the drawer or the tools')}</p> : null;
}

function WaitingFile() {
  const file = useLive('staged-file', ['staging'], async (store) => ({ is: await stagedFile(store) }));
  if (file?.is?.state !== 'ready') return null;
  return (
    <Row
      href={hrefOf({ at: 'restore' })}
      title="A file waits to be put in"
      detail="see what it would change"
    />
  );
}

/** For as long as it can be taken out again. */
function UndoBrought({ onSaid }: { onSaid: (sentence: string) => void }) {
  const store = useStore();
  const last = useLive('brought-undo', ['undo'], broughtUndo);
  if (last === undefined) return null;
  const undo = async () => {
    const undone = await undoBrought(store, last);
    onSaid(undone.ok ? `Undone: ${undone.value}.` : sayStore(undone.refusal));
  };
  return <Button onPress={() => undo()}>Undo: what the file brought</Button>;
}

/** In a tab on an iPhone; the Home Screen app keeps its own records. */
function TwoPlaces() {
  return (
    <Caution heading="Add Slipfit to the Home Screen.">
      This browser throws away what a tab keeps after seven days without a visit; the Home Screen app is left
      alone, and it keeps records of its own. To take along what is here: save a backup, add Slipfit to the
      Home Screen by the share key, open it there and add the file.
    </Caution>
  );
}
