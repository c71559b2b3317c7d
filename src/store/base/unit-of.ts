import type { Kept } from './kept.ts';
import { isPlainObject } from './paths.ts';
import type { BackupStore } from './stores.ts';

/** The job, piece or tool that a record belongs to: what is undone together, and told together. */
export function unitOf(store: BackupStore | 'conflicts', record: Kept): string {
  const jobId = store === 'jobs' ? record.id : record['jobId'];
  if (typeof jobId === 'string') return `jobs/${jobId}`;
  if (store === 'drawerCounts') return `drawer/${String(record['pieceId'])}`;
  const owner = store === 'photos' ? record['owner'] : undefined;
  return isPlainObject(owner) ? `${String(owner['store'])}/${String(owner['id'])}` : `${store}/${record.id}`;
}
