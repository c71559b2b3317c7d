import { useState } from 'preact/hooks';
import { keptWords } from '../../store/base/plain-words.ts';
import { TextField } from './text-field.tsx';

type KeptFieldProps = {
  readonly label: string;
  readonly hint?: string;
  readonly long?: boolean;
  /** What the record says. */
  readonly kept: string;
  /** At every letter; the words are kept without the blanks around them, or not at all. Says whether they were. */
  readonly onWords: (words: string) => Promise<boolean>;
};

type Sent = { readonly words: string };

/** `sent` has what was given to be kept and has not been seen in the record yet. */
type Held = { readonly kept: string; readonly text: string; readonly sent: readonly Sent[] };

/**
 * Words of a record, kept at every letter. While the store still writes, the field shows what was typed; it follows the
 * record once that says something else than was typed here, as after an undo or in another tab.
 */
export function KeptField({ kept, onWords, ...field }: KeptFieldProps) {
  const [held, setHeld] = useState<Held>({ kept, text: kept, sent: [] });
  const now = held.kept === kept ? held : following(held, kept);
  if (now !== held) setHeld(now);
  const type = async (text: string) => {
    const words = text.trim();
    const one = { words: keptWords(words) };
    setHeld((before) => ({ ...before, text, sent: [...before.sent, one] }));
    if (await onWords(words)) return;
    setHeld((before) => ({ ...before, sent: before.sent.filter((other) => other !== one) }));
  };
  return <TextField {...field} text={now.text} onText={(text) => void type(text)} />;
}

function following({ text, sent }: Held, kept: string): Held {
  const seen = sent.findIndex(({ words }) => words === keptWords(kept).trim());
  return seen < 0 ? { kept, text: kept, sent: [] } : { kept, text, sent: sent.slice(seen + 1) };
}
