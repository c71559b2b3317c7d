import { goesHome, storeNames, type BackupStore, type StoreName } from '../base/stores.ts';

/** What is looked through for what home lacks: all that goes home as records. Pictures' bytes go their own way. */
export const sweptStores: readonly (BackupStore | 'conflicts')[] = storeNames.filter(isSwept);

function isSwept(name: StoreName): name is BackupStore | 'conflicts' {
  return goesHome(name) && name !== 'photoBytes';
}
