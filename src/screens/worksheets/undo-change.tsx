import { latestUndo, undoLast } from '../../store/undo/undo.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { saidIfRefused } from '../common/said-if-refused.ts';
import { useLive, useStore } from '../common/store-context.ts';
import { undoWords } from '../common/undo-words.ts';
import './worksheet-page.css';

/** The way back from the last change, at the end of the answer. */
export function UndoChange({ jobId }: { jobId: string }) {
  const store = useStore();
  const last = useLive(`undo-change/${jobId}`, ['undo'], (from) => latestUndo(from, jobId));
  if (!last?.label.startsWith('Changed')) return null;
  const undo = async () => {
    const undone = await saidIfRefused(undoLast(store, last.id));
    if (undone.ok) announce(`Undone: ${last.label}`);
  };
  return (
    <div class="worksheet-remove not-printed">
      <Button onPress={() => undo()}>{undoWords(last.label)}</Button>
    </div>
  );
}
