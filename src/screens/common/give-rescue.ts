import { openDatabaseAsItIs, USUAL_NAME } from '../../store/opening/open-database.ts';
import { rescuePieces } from '../../store/file/rescue.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { dayInFileName } from './day-words.ts';
import { handOver } from './give-file.ts';

/** Hands over all that is in the database, in the form it has; says what happened. */
export async function giveRescue(): Promise<string> {
  const opened = await openDatabaseAsItIs(USUAL_NAME);
  if (!opened.ok) return sayStore(opened.refusal);
  try {
    const now = Date.now();
    const pieces: Blob[] = [];
    for await (const piece of rescuePieces(opened.value, now)) pieces.push(piece);
    // Text, not JSON: phones share .txt where they refuse .jsonl.
    const name = `slipfit-backup-${dayInFileName(now)}.txt`;
    return (await handOver(new File(pieces, name, { type: 'text/plain' }))).said;
  } catch {
    return 'The records could not be read out. Nothing was changed. Close the browser altogether and try again.';
  } finally {
    opened.value.close();
  }
}
