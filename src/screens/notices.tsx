import { Button } from './common/button.tsx';

export type Notice = {
  readonly id: string;
  readonly sentence: string;
  /** Goes by itself after a while, and lies over the names of the places meanwhile: nothing under a finger moves. */
  readonly passing?: boolean;
  readonly action?: { readonly text: string; readonly onPress: () => Promise<void> };
};

/** Quiet lines from the app itself: ready without signal, a new version waiting. */
export function Notices({
  notices,
  onPutAway,
}: {
  notices: readonly Notice[];
  onPutAway: (id: string) => void;
}) {
  if (notices.length === 0) return null;
  return (
    <section aria-label="From the app itself">
      {notices.map(({ id, sentence, action, passing = false }) => (
        <div key={id} class="app-notice not-printed" data-passing={passing}>
          <p>{sentence}</p>
          {action && <Button onPress={() => void action.onPress()}>{action.text}</Button>}
          {!passing && (
            <Button label={`Put away: ${sentence}`} onPress={() => onPutAway(id)}>
              OK
            </Button>
          )}
        </div>
      ))}
    </section>
  );
}
