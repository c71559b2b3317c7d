import { hrefOf } from '../address.ts';
import { KeyButton } from '../common/pad-keys.tsx';
import './lathe-keys.css';

type LatheKeysProps = {
  readonly jobId: string;
  readonly cutId: string;
  /** To size: on to the next cut. */
  readonly isToSize?: boolean;
  /** The worksheet it came from still stands on the size of before: that comes first. */
  readonly onGive?: (() => void) | undefined;
  /** "Cut it, next" takes a press for a moment after the figure was touched. Left out where no pass is planned. */
  readonly next?: { readonly isLit: boolean; readonly onPress: (event: MouseEvent) => void };
  readonly aloud?: { readonly isOn: boolean; readonly change: (isOn: boolean) => void } | undefined;
};

/** The keys under the thumb at the lathe. */
export function LatheKeys({ jobId, cutId, isToSize = false, onGive, next, aloud }: LatheKeysProps) {
  const cut = { jobId, cutId } as const;
  return (
    <div class="lathe-keys">
      {onGive && (
        <KeyButton class="lathe-keys-main" label="Give the worksheet this size" onPress={onGive}>
          Give the worksheet this size
        </KeyButton>
      )}
      {isToSize && (
        <a
          class={onGive ? 'lathe-keys-key lathe-keys-whole' : 'lathe-keys-main'}
          href={hrefOf({ at: 'cuts', jobId })}
        >
          To the next cut
        </a>
      )}
      {next && (
        <>
          <button
            type="button"
            class="lathe-keys-key lathe-keys-next"
            data-lit={next.isLit}
            aria-describedby="lathe-keys-how"
            onPointerDown={(event) => event.preventDefault()}
            onClick={next.onPress}
          >
            Cut it, next
          </button>
          <span id="lathe-keys-how" class="unseen">
            Takes a finger for a moment after the figure was touched; a keyboard at any time.
          </span>
        </>
      )}
      {aloud && !isToSize && (
        <KeyButton
          class="lathe-keys-key"
          label="Say it aloud"
          chosen={aloud.isOn}
          onPress={() => aloud.change(!aloud.isOn)}
        >
          Say it aloud
        </KeyButton>
      )}
      <a class="lathe-keys-key lathe-keys-more" href={hrefOf({ at: 'cut', ...cut })}>
        More
      </a>
    </div>
  );
}
