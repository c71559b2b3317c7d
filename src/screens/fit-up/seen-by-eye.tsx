import { tick } from '../common/announce.ts';
import { TextField } from '../common/text-field.tsx';
import type { KnownTake } from './check-data.ts';
import './seen-by-eye.css';

type SeenNoteProps = {
  readonly take: KnownTake;
  readonly text: string;
  readonly onText: (text: string) => void;
};

/** What was seen, in words; kept with the press that says whether it holds. */
export function SeenNote({ take, text, onText }: SeenNoteProps) {
  return (
    <>
      {take.seenNote !== undefined && <p class="seen-by-eye-note">{take.seenNote}</p>}
      <TextField
        label={take.seenNote === undefined ? 'Note' : 'Another note'}
        hint="what was seen"
        text={text}
        onText={onText}
      />
    </>
  );
}

type SeenKeysProps = {
  readonly take: KnownTake;
  readonly onSeen: (seen: 'holds' | 'fails') => void;
};

/** Good or no good, not "it holds", which is the fault itself in a brake that should let go: two keys that a glove can't mistake. */
export function SeenKeys({ take: { seen }, onSeen }: SeenKeysProps) {
  const key = (says: 'holds' | 'fails', word: string) => (
    <button
      type="button"
      class={`seen-by-eye-key seen-by-eye-${says}`}
      aria-pressed={seen === says}
      onClick={() => {
        tick();
        onSeen(says);
      }}
    >
      {word}
    </button>
  );
  return (
    <div class="seen-by-eye-keys" role="group" aria-label="By eye">
      {key('holds', 'Good')}
      {key('fails', 'No good')}
    </div>
  );
}
