import type { StoreName } from './stores.ts';
import type { StoreRefusal } from './store-refusal.ts';

type OwnNotes = 'device' | 'outbox' | 'home';

/** The phone's own notes apart, which are all called one thing. */
const nouns: Readonly<Record<Exclude<StoreName, OwnNotes>, string> & Partial<Record<OwnNotes, string>>> = {
  jobs: 'job',
  parts: 'part',
  features: 'feature',
  readings: 'reading',
  worksheets: 'worksheet',
  cuts: 'cut',
  checks: 'check',
  steps: 'assembly step',
  rechecks: 're-check',
  photos: 'photo',
  photoBytes: 'picture of a photo',
  money: 'line of money',
  sheets: 'signed sheet',
  drawer: 'piece in the drawer',
  drawerCounts: 'count in the drawer',
  tools: 'measuring tool',
  settings: 'setting',
  drafts: 'half-typed number',
  undo: 'step to undo',
  staging: 'record of a file',
  brought: 'note of what a file brought',
  conflicts: 'difference between two phones',
  words: 'note that a job is found by',
};

/** What one record of a store is called. */
export function nounOf(store: StoreName): string {
  return nouns[store] ?? 'note about this phone';
}

/** The sentence for what could not be opened or kept: what is wrong, what became of the data, what can be done. */
export function sayStore(refusal: StoreRefusal): string {
  switch (refusal.code) {
    case 'no-storage':
      return 'This browser lets no page keep anything here, a private window perhaps. Open Slipfit in a usual window, so that readings can be kept.';
    case 'newer-database':
      return 'Your data was last opened with a newer Slipfit. Nothing was touched. Close every Slipfit window and open it again to get the newer one.';
    case 'held-by-another-tab':
      return 'Another window holds Slipfit’s data in an older form. Nothing was lost. Close the other windows and try again.';
    case 'upgrade-failed':
      return `Your data could not be moved to the form this Slipfit needs (step ${refusal.step}). Nothing was lost: it is all still there as it was. Try again; if it stays so, don't clear the browser's data.`;
    case 'opening-hung':
      return 'The browser does not answer when asked for your data. Nothing was lost. Close the browser altogether and open Slipfit again.';
    case 'opening-failed':
      return 'The browser could not open your data. Nothing was deleted. Close the browser altogether and open Slipfit again; after that the last backup is the way back.';
    case 'full-disk':
      return 'The phone is full, so this was not kept. Everything logged before is still there. Make room, then press again.';
    case 'store-lost':
      return `The browser has damaged your data: the place of each ${nounOf(refusal.store)} is gone or broken. The rest was not touched. Save a backup, clear this site’s data in the browser, then add the file.`;
    case 'nothing-kept':
      return 'Nothing of Slipfit is kept in this browser. Look in the one, or the Home Screen app, where you logged.';
    case 'closed':
      return 'Slipfit’s data is closed in this window. Nothing was lost. Open Slipfit again.';
    case 'closed-by-newer-version':
      return 'A newer Slipfit was opened in another window, so this one has stopped writing. Nothing was lost. Open this window again.';
    case 'thrown-away':
      return 'The browser has thrown Slipfit’s data away while it was open. Open Slipfit again and restore the last backup; put Slipfit on the home screen so that it is kept.';
    case 'connection-lost':
      return 'The browser dropped the line to your data, so this was not kept. Everything logged before is still there. Open Slipfit again.';
    case 'write-failed':
      return 'The browser would not keep this. Everything logged before is still there. Try once more; if it stays so, close the browser altogether and open Slipfit again.';
    case 'gone':
      return `That ${nounOf(refusal.store)} was removed in the meantime, so this was not kept.`;
    case 'record-unreadable':
      return `That ${nounOf(refusal.store)} can't be read. It is left as it is and goes into the backup; it does not count in any result.`;
    case 'cannot-keep':
      return `This ${nounOf(refusal.store)} can't be kept: ${fieldWords(refusal.field)} is missing, too long or out of reach. Shorten or correct it, then try again.`;
    case 'drawn-is-old':
      return 'Something was changed in another window meanwhile, so this was not signed. Look over the sheet as it is now, then sign.';
    case 'nothing-to-undo':
      return 'There is nothing to undo here.';
    case 'changed-since':
      return `“${refusal.label}” can't be undone any more: what it changed has been changed again since.`;
    case 'others-since':
      return `“${refusal.label}” can't be undone any more: work from another phone is in it, and would go with it.`;
    default:
      return refusal satisfies never;
  }
}

/** For a place that leaves records out because they don't parse. */
export function sayUnreadable(count: number, of: 'this job' | 'the drawer or the tools'): string {
  return count === 1
    ? `One record of ${of} can’t be read by this version. It is kept as it is and goes into every backup.`
    : `${count} records of ${of} can’t be read by this version. They are kept as they are and go into every backup.`;
}

function fieldWords(field: string): string {
  return field === ''
    ? 'something in it'
    : `its ${field
        .replaceAll('.', ' ')
        .replace(/([A-Z])/g, ' $1')
        .toLowerCase()}`;
}
