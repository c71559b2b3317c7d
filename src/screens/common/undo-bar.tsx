import { useEffect, useState } from 'preact/hooks';
import { canBeNow } from '../../store/base/clock.ts';
import { latestUndo, undoLast } from '../../store/undo/undo.ts';
import { announce } from './announce.ts';
import { Button } from './button.tsx';
import type { Address } from '../address.ts';
import { saidIfRefused } from './said-if-refused.ts';
import { useLive, useStore } from './store-context.ts';
import './undo-bar.css';

// Chosen, not published: older acts are still in the log, but their line would only be in the way.
const OFFERED_FOR_MS = 2 * 60_000;

/**
 * The way back from the last thing a finger did, on every screen and across a reload; put away by a press, or by going on
 * working in the job.
 */
export function UndoBar({ address }: { address: Address }) {
  const store = useStore();
  const jobId = 'jobId' in address ? address.jobId : undefined;
  const last = useLive(`undo/${jobId ?? ''}`, ['undo', 'jobs'], (from) => latestUndo(from, jobId));
  const [dismissed, setDismissed] = useState<string>();
  const isOffered =
    last !== undefined &&
    !last.workedSince &&
    (last.brought === true ? !hasItsOwnKey.has(address.at) : tookAway(last.label, jobId)) &&
    isJustNow(last.at);
  useEffect(() => {
    if (last && isOffered) announce(`${last.label}. Undo is offered below.`);
  }, [last?.id]);
  if (!last || !isOffered || last.id === dismissed) return null;
  const undo = async () => {
    const undone = await saidIfRefused(undoLast(store, last.id));
    if (undone.ok) announce(`Undone: ${undone.value}`);
  };
  return (
    <aside class="undo-bar not-printed" aria-label="Taken away just now">
      <p>{last.label}</p>
      <Button onPress={() => undo()}>Undo</Button>
      <Button kind="quiet" label="Put this line away" onPress={() => setDismissed(last.id)}>
        ✕
      </Button>
    </aside>
  );
}

/** A phone that has lost its date can't tell how long ago it was: there the way back stays. */
function isJustNow(at: number): boolean {
  const now = Date.now();
  return !canBeNow(now) || now - at < OFFERED_FOR_MS;
}

/** Places where what a file brought is undone by a key of their own. */
const hasItsOwnKey: ReadonlySet<Address['at']> = new Set<Address['at']>(['shop', 'restore']);

/** Whether an act took something away; a reading struck out is only offered back inside its job. */
function tookAway(label: string, jobId: string | undefined): boolean {
  return /^(Removed|Took)/.test(label) || (jobId !== undefined && label.startsWith('Struck out'));
}
