import { marked } from '../../engine/length/decimal-text.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { asTyped } from '../../engine/length/show.ts';
import { saySizeSlip, type SizeSlip } from '../../engine/reading/size-slip.ts';
import { Button } from './button.tsx';
import type { TypedBy } from './hands-free.ts';
import './slip-question.css';

export type Slip = { readonly question: SizeSlip; readonly typed: Entry; readonly by: TypedBy };

type SlipQuestionProps = {
  readonly slip: Slip;
  readonly onMeant: (entry: Entry, by: TypedBy) => unknown;
};

/** What may have been meant by a size that looks like a slip; what was typed is kept where that is confirmed. */
export function SlipQuestion({ slip: { question, typed, by }, onMeant }: SlipQuestionProps) {
  return (
    <>
      <p role="alert">{saySizeSlip(question, typed)}</p>
      <p class="slip-question">
        {question.meant.map((entry) => (
          <Button key={entry.typed} onPress={() => onMeant(entry, by)}>
            {marked(entry.typed)}
          </Button>
        ))}
        <Button onPress={() => onMeant(typed, by)}>Keep {asTyped(typed)}</Button>
      </p>
    </>
  );
}
