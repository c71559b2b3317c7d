import { grouped } from '../../engine/length/decimal-text.ts';
import type { countsKept, SinceBackup } from '../../store/kept/last-backup.ts';
import type { Persistence } from '../../store/opening/persistence.ts';
import { counted } from './restore-words.ts';

type Words = { readonly title: string; readonly detail: string };

/** What the browser said when it was asked to keep the records. */
export const PROMISE: Readonly<Record<Persistence, Words>> = {
  granted: { title: 'This browser has promised to keep them', detail: 'also when the phone runs full' },
  refused: {
    title: 'This browser has not promised to keep them',
    detail:
      'It may throw them away when the phone runs full, and in a private window when that is closed. Put Slipfit on the home screen, and save a backup often.',
  },
  unknown: { title: 'This browser can’t be asked to keep them', detail: 'Save a backup often.' },
};

export function keptWords({ jobs, readings, photos }: Awaited<ReturnType<typeof countsKept>>): string {
  const words = [...counted(jobs, 'job'), ...counted(readings, 'reading'), ...counted(photos, 'photo')];
  return words.length === 0 ? 'nothing yet' : words.join(', ');
}

/** "12 days ago, 40 changes since". */
export function backupWords({ at, days, changes }: SinceBackup): string {
  const [since = 'nothing'] = counted(changes, 'change');
  if (at === undefined)
    return changes === 0 ? 'none yet, and nothing to save' : `none yet: ${since} only here`;
  const when = days === 0 ? 'today' : days === 1 ? 'yesterday' : `${grouped(days)} days ago`;
  return changes === 0 ? `${when}, nothing changed since` : `${when}, ${since} since`;
}
