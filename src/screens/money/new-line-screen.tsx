import { addMoney } from '../../store/kept/money.ts';
import type { Job } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { PadScreen } from '../common/pad-screen.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTold } from '../common/told.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { nameOfLine, shownMoney } from './line-words.ts';
import { MoneyPad } from './money-pad.tsx';
import './money-screen.css';

type NewLineScreenProps = {
  readonly job: Job;
  readonly field: 'amount' | 'hours';
  readonly sign: string;
  /** What an hour cost on the job's last line of hours. */
  readonly rate: string | undefined;
};

/** A new line: what it is for and its figure. Hours go at the rate of the line before; the first asks for it next. */
export function NewLineScreen({ job, field, sign, rate }: NewLineScreenProps) {
  const store = useStore();
  const draftKey = `money/${job.id}/new-${field}`;
  const what = useTextDraft(`${draftKey}/what`);
  const here = { at: 'money', jobId: job.id } as const;
  const answer = useTold();
  const add = (text: string) => {
    const line = {
      jobId: job.id,
      what: what.text.trim() || nameOfLine(field),
      [field]: text,
      ...(field === 'hours' && rate !== undefined && { rate }),
    };
    return answer.told(addMoney(store, line, draftKey), ({ id }) => {
      what.clear();
      announce('The line is kept.');
      const asksRate = field === 'hours' && rate === undefined;
      goInstead(asksRate ? { ...here, field: `${id}/rate` } : here);
    });
  };
  const subtitle =
    field === 'hours' && rate !== undefined ? `${job.name} · at ${shownMoney(rate, sign)} an hour` : job.name;
  return (
    <PadScreen
      title={field === 'hours' ? 'Hours worked' : 'A part or a cost'}
      subtitle={subtitle}
      back={{ href: hrefOf(here), to: 'money and time' }}
    >
      <div class="money-what">
        <TextField
          label="What for"
          hint={field === 'hours' ? 'Machining the spacers, say' : 'Two wheel bearings, say'}
          text={what.text}
          onText={what.change}
        />
      </div>
      <MoneyPad
        label={field === 'hours' ? 'Hours' : 'Amount'}
        field={field}
        sign={sign}
        draftKey={draftKey}
        commit="Put it down"
        answer={answer}
        onText={add}
      />
    </PadScreen>
  );
}
