import { backupStores } from '../../src/store/base/stores.ts';
import { restoreBackup, backupLines, backupPieces } from '../../src/store/file/backup.ts';
import { previewBackup } from '../../src/store/file/backup-preview.ts';
import { applyPreviewed } from '../../src/store/file/backup-restore.ts';
import { sweepStaged } from '../../src/store/file/backup-staged.ts';
import { closeStore, openStore } from '../../src/store/opening/open-store.ts';
import { sayBackup } from '../../src/store/file/say-backup.ts';
import { latestUndo, undoLast } from '../../src/store/undo/undo.ts';
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
