import { closeStore, openStoreAsItIs } from '../../store/open-store.ts';
import { sayStore } from '../../store/say-store.ts';
import { handOver } from '../common/give-file.ts';
import { backupFile } from './backup-file.ts';

/** Hands over a backup of records that this Slipfit can't open, in the form they have; says what happened. */
export async function giveRescue(): Promise<string> {
  const opened = await openStoreAsItIs();
  if (!opened.ok) return sayStore(opened.refusal);
  try {
    return (await handOver(await backupFile(opened.value))).said;
  } catch {
    return 'The records could not be read out. Nothing was changed. Close the browser altogether and try again.';
  } finally {
    closeStore(opened.value);
  }
}
