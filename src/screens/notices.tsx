import { useEffect } from 'preact/hooks';
import { Button } from './common/button.tsx';

// Chosen, not published: more than three lines beside its keys on a usual phone.
const LONG_SENTENCE = 85;
// Chosen, not published: long enough to be read twice.
const PASSING_MS = 6000;

export type Notice = {
  readonly id: string;
  readonly sentence: string;
  /** Goes by itself after a while, and lies over the names of the places meanwhile: nothing under a finger moves. */
  readonly passing?: boolean;
  /** Nothing can be kept until it is acted on: it can't be put away. */
  readonly staying?: boolean;
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
      {notices.map(({ id, sentence, action, passing = false, staying = false }) => (
        <div
          key={id}
          class="app-notice not-printed"
          data-passing={passing}
          data-long={!passing && sentence.length > LONG_SENTENCE}
        >
          <p>{sentence}</p>
          {passing && <Passing onPassed={() => onPutAway(id)} />}
          {action && <Button onPress={() => action.onPress()}>{action.text}</Button>}
          {!passing && !staying && (
            <Button label={`OK, put away: ${sentence}`} onPress={() => onPutAway(id)}>
              OK
            </Button>
          )}
        </div>
      ))}
    </section>
  );
}

/** From when it is drawn on, not from when it is found out: a first screen may be long in coming. */
function Passing({ onPassed }: { onPassed: () => void }) {
  useEffect(() => {
    const timer = setTimeout(onPassed, PASSING_MS);
    return () => clearTimeout(timer);
  }, []);
  return null;
}
