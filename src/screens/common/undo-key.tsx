import { latestUndo, undoLast } from '../../store/undo.ts';
import { announce } from './announce.ts';
import { Button } from './button.tsx';
import { useLive, useStore } from './store-context.ts';

type UndoKeyProps = {
  /** Of this job, or of anything. */
  readonly jobId?: string;
  /** Only an act whose words begin so. */
  readonly only?: string;
};

/** The way back from the last act, however long ago it was, and then from the one before it. */
export function UndoKey({ jobId, only = '' }: UndoKeyProps) {
  const store = useStore();
  const last = useLive(`undo-key/${jobId ?? ''}`, ['undo'], (from) => latestUndo(from, jobId));
  if (!last?.label.startsWith(only)) return null;
  // What a file brought has a key of its own in Shop, beside the one that adds a file.
  if (last.brought && jobId === undefined) return null;
  const undo = async () => {
    const undone = await undoLast(store, last.id);
    announce(undone.ok ? `Undone: ${undone.value}` : 'That could not be undone.');
  };
  return <Button onPress={() => void undo()}>{`Undo: ${lowered(last.label)}`}</Button>;
}

function lowered(label: string): string {
  return `${label.slice(0, 1).toLowerCase()}${label.slice(1)}`;
}
