import { restoreBackup, backupLines, backupPieces } from '../../src/store/backup.ts';
import { backupStores } from '../../src/store/backup-format.ts';
import { previewBackup } from '../../src/store/backup-preview.ts';
import { applyPreviewed } from '../../src/store/backup-restore.ts';
import { sweepStaged } from '../../src/store/backup-staged.ts';
import { closeStore, openStore } from '../../src/store/open-store.ts';
import { sayBackup } from '../../src/store/say-backup.ts';
import { latestUndo, undoLast } from '../../src/store/undo.ts';
import { playHistory } from './merge-history.ts';
import { startFuzz } from './fuzz-in-page.ts';

/**
 * What a trial can reach in a real browser: the app's own store, built as the app is, without its screens. The trial
 * talks to it by `page.evaluate`.
 */
const reachable = {
  openStore,
  closeStore,
  restoreBackup,
  backupLines,
  backupPieces,
  backupStores,
  previewBackup,
  applyPreviewed,
  sweepStaged,
  latestUndo,
  undoLast,
  sayBackup,
  playHistory,
  startFuzz,
};

export type StorePage = typeof reachable;

declare global {
  interface Window {
    slipfitStore: StorePage;
  }
}

window.slipfitStore = reachable;
