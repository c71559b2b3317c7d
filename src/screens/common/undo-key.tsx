import { sayStore } from '../../store/base/say-store.ts';
import { latestUndo, undoHeldByOthers, undoLast } from '../../store/undo/undo.ts';
import { announce } from './announce.ts';
import { Button } from './button.tsx';
import { saidIfRefused } from './said-if-refused.ts';
import { useLive, useStore } from './store-context.ts';
import { undoWords } from './undo-words.ts';

type UndoKeyProps = {
  /** Of this job, or of anything. */
  readonly jobId?: string;
  /** Only an act whose words begin so. */
  readonly only?: string;
};

/**
 * The way back from the last act, however long ago it was, and then from the one before it. At the end it says what is
 * left as it is for another phone's sake.
 */
export function UndoKey({ jobId, only = '' }: UndoKeyProps) {
  const store = useStore();
  const found = useLive(`undo-key/${jobId ?? ''}`, ['undo'], async (from) => {
    const last = await latestUndo(from, jobId);
    return { last, held: last || jobId === undefined ? undefined : await undoHeldByOthers(from, jobId) };
  });
  const { last, held } = found ?? {};
  if (held?.startsWith(only)) return <p>{sayStore({ code: 'others-since', label: held })}</p>;
  if (!last?.label.startsWith(only)) return null;
  // What a file brought has a key of its own in Shop, beside the one that adds a file.
  if (last.brought && jobId === undefined) return null;
  const undo = async () => {
    const undone = await saidIfRefused(undoLast(store, last.id));
    if (undone.ok) announce(`Undone: ${undone.value}`);
  };
  return <Button onPress={() => undo()}>{undoWords(last.label)}</Button>;
}
