import { useEffect, useState } from 'preact/hooks';
import type { BackupPreview } from '../../store/file/backup-preview.ts';
import { leavePreviewed, previewBackup, waitingPreview } from '../../store/file/backup-preview.ts';
import { applyPreviewed, type Restored } from '../../store/file/backup-restore.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { sayBackup } from '../../store/file/say-backup.ts';
import { announce } from '../common/announce.ts';

/** How far a file is on its way into the records. */
export type RestoreWork =
  | { readonly at: 'nothing' }
  | { readonly at: 'reading' | 'comparing' | 'putting'; readonly share: number }
  /** With why it was not put in when that was tried. */
  | { readonly at: 'shown'; readonly preview: BackupPreview; readonly trouble?: string }
  | { readonly at: 'in'; readonly restored: Restored }
  | { readonly at: 'refused'; readonly sentence: string };

// It goes on while other screens are open: leaving this one half-way must lose nothing.
let work: RestoreWork = { at: 'nothing' };
const watchers = new Set<(now: RestoreWork) => void>();

export function useRestoreWork(): RestoreWork {
  const [now, setNow] = useState(work);
  useEffect(() => {
    setNow(work);
    watchers.add(setNow);
    return () => {
      watchers.delete(setNow);
    };
  }, []);
  return now;
}

export function isUnderWay({ at }: RestoreWork): boolean {
  return at === 'reading' || at === 'comparing' || at === 'putting';
}

function become(next: RestoreWork): void {
  work = next;
  for (const watcher of watchers) watcher(next);
}

/** Steps of a hundredth: a file is told of thousands of times. */
function shareOf(at: 'reading' | 'comparing' | 'putting') {
  return (share: number) => {
    const rounded = Math.round(share * 100) / 100;
    if (work.at !== at || work.share !== rounded) become({ at, share: rounded });
  };
}

const UNREAD = 'The file could not be read. Nothing here was changed.';

/** Reads a file and shows what it would change. */
export async function readFile(store: Store, file: Blob): Promise<void> {
  if (isUnderWay(work)) return;
  become({ at: 'reading', share: 0 });
  const steps = { onRead: shareOf('reading'), onCompared: shareOf('comparing') };
  const preview = await previewBackup(store, file, steps).catch(() => undefined);
  if (!preview) refuseWith(UNREAD);
  else if (!preview.ok) refuseWith(sayBackup(preview.refusal));
  else become({ at: 'shown', preview: preview.value });
}

/** Shows the file that was read before and waits, perhaps since yesterday, as things stand now. */
export async function lookForWaiting(store: Store): Promise<void> {
  if (isUnderWay(work) || work.at === 'refused') return;
  const preview = await waitingPreview(store, shareOf('comparing')).catch(() => undefined);
  if (!preview) become({ at: 'nothing' });
  else if (!preview.ok) refuseWith(sayBackup(preview.refusal));
  else become({ at: 'shown', preview: preview.value });
}

/** What is no fault of the file: it goes on waiting, and the same press may put it in. */
const PASSING: ReadonlySet<string> = new Set(['full-disk', 'write-failed', 'connection-lost']);

/** Puts the shown file in. */
export async function putIn(store: Store): Promise<void> {
  const preview = work.at === 'shown' ? work.preview : undefined;
  become({ at: 'putting', share: 0 });
  const done = await applyPreviewed(store, shareOf('putting'), preview?.file).catch(() => undefined);
  if (done?.ok) {
    announce('The file is in.');
    return become({ at: 'in', restored: done.value });
  }
  const sentence = done ? sayBackup(done.refusal) : 'The file could not be put in. Nothing here was changed.';
  if (!preview || (done && !PASSING.has(done.refusal.code))) return refuseWith(sentence);
  announce(sentence);
  return become({ at: 'shown', preview, trouble: sentence });
}

/** Takes the file away unused, or what was said of the last one. */
export async function leaveIt(store: Store): Promise<void> {
  if (work.at === 'shown') await leavePreviewed(store);
  become({ at: 'nothing' });
}

function refuseWith(sentence: string): void {
  announce(sentence);
  become({ at: 'refused', sentence });
}
