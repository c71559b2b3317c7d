import { isBackupDue, sinceBackup } from '../../store/kept/last-backup.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import { backupWords } from './storage-words.ts';
import { capital } from '../../engine/length/say-words.ts';

/** A quiet line above the jobs, once the last backup is old and much was done since. Fetched after the list stands. */
export function BackupLine() {
  const since = useLive('since-backup', ['jobs', 'device'], sinceBackup);
  if (!since || !isBackupDue(since)) return null;
  const last = backupWords(since);
  const detail = since.at === undefined ? capital(last) : `The last one: ${last}`;
  return <Row href={hrefOf({ at: 'shop' })} title="Save a backup" detail={detail} />;
}
