import type { Result } from '../../engine/length/refusal.ts';
import type { HalfTyped } from './pad-text.ts';
import { SizePad, type SizePadProps } from './size-pad.tsx';
import { troubleLine, type Answer } from './told.tsx';
import type { SizeDraft } from './use-draft.ts';
import { usePadSize } from './use-settings.ts';

type AskedPadProps<T> = Pick<SizePadProps, 'label' | 'number' | 'resting' | 'onNext' | 'children'> & {
  readonly draft: SizeDraft;
  /** Where it is said why it can't be taken or kept. */
  readonly answer: Answer;
  /** What was typed, or the sentence why it is none. */
  readonly read: (half: HalfTyped) => Result<T, string>;
  readonly onRead: (value: T) => unknown;
  readonly commit?: string | undefined;
  /** Asked about what was typed, until something else is. */
  readonly question?: { readonly asks: SizePadProps['message']; readonly drop: () => void };
};

/** The pad with a commit key: what is typed is read, and either taken or told why it can't be. */
export function AskedPad<T>(props: AskedPadProps<T>) {
  const { draft, answer, read, onRead, commit = 'Use it', question, ...pad } = props;
  const padSize = usePadSize();
  const take = () => {
    const typed = read(draft.half);
    return typed.ok ? onRead(typed.value) : answer.say(typed.refusal);
  };
  const change = (half: HalfTyped) => {
    answer.say('');
    question?.drop();
    draft.change(half);
  };
  return (
    <SizePad
      {...pad}
      half={draft.half}
      padSize={padSize}
      onChange={change}
      commit={{ text: commit, onPress: take }}
      message={question?.asks ?? troubleLine(answer.trouble)}
    />
  );
}
