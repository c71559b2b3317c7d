import { backupPieces } from '../../store/file/backup.ts';
import { actsSoFar, noteBackup } from '../../store/kept/last-backup.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Job } from '../../store/base/records.ts';
import { dayInFileName } from '../common/day-words.ts';
import { handOver } from '../common/give-file.ts';
import { fileName } from '../sheet/file-names.ts';

/** Hands a backup of everything over, notes that it was, and says what happened. */
export async function giveBackup(store: Store): Promise<string> {
  const acts = await actsSoFar(store);
  const { given, said } = await handOver(await backupFile(store));
  if (given) await noteBackup(store, acts);
  return said;
}

/** Everything as one file, named by the day. */
export async function backupFile(store: Store): Promise<File> {
  return fileOf(store, ['slipfit backup', dayInFileName(Date.now())]);
}

/** Hands one job over as a file, for another phone. */
export async function giveJob(store: Store, { id, name }: Pick<Job, 'id' | 'name'>): Promise<string> {
  const { said } = await handOver(await fileOf(store, [name, 'job', dayInFileName(Date.now())], id));
  return said;
}

async function fileOf(store: Store, words: readonly string[], jobId?: string): Promise<File> {
  const pieces: Blob[] = [];
  for await (const piece of backupPieces(store, jobId)) pieces.push(piece);
  // Text, not JSON: phones share .txt where they refuse .jsonl.
  return new File(pieces, fileName(words, 'txt'), { type: 'text/plain' });
}
