import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import type { Result } from '../../engine/length/refusal.ts';
import { sayEntry } from '../../engine/length/say.ts';
import type { SizeSlip } from '../../engine/reading/size-slip.ts';
import { AskedPad } from './asked-pad.tsx';
import type { HalfTyped } from './pad-text.ts';
import type { SizePadProps } from './size-pad.tsx';
import { SlipQuestion, type Slip } from './slip-question.tsx';
import type { Answer } from './told.tsx';
import type { SizeDraft } from './use-draft.ts';

type AskedSizeProps = Pick<SizePadProps, 'label' | 'resting' | 'children'> & {
  readonly draft: SizeDraft;
  readonly answer: Answer;
  /** Whether it looks like a slip: then that is asked first. */
  readonly slip?: (entry: Entry) => SizeSlip | undefined;
  /** The size as it was typed, or as it was meant. */
  readonly onSize: (entry: Entry) => unknown;
  readonly commit?: string;
};

/** The pad for a size: a slip is asked about before it is taken. */
export function AskedSize({ slip, onSize, ...asked }: AskedSizeProps) {
  const [slipped, setSlipped] = useState<Slip>();
  const drop = () => setSlipped(undefined);
  const read = (typed: Entry) => {
    const question = slip?.(typed);
    return question ? setSlipped({ question, typed, by: 'finger' }) : onSize(typed);
  };
  const take = (entry: Entry) => {
    drop();
    return onSize(entry);
  };
  return (
    <AskedPad
      {...asked}
      read={readSize}
      onRead={read}
      {...(slipped && { question: { asks: <SlipQuestion slip={slipped} onMeant={take} />, drop } })}
    />
  );
}

function readSize({ typed, unit }: HalfTyped): Result<Entry, string> {
  const entry = readEntry(typed, { unit });
  return entry.ok ? entry : { ok: false, refusal: sayEntry(entry.refusal) };
}
