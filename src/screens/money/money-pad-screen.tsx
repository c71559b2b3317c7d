import type { MoneyField } from '../../engine/job/money.ts';
import { changeMoney } from '../../store/kept/money.ts';
import type { Job, MoneyLine } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { PadScreen } from '../common/pad-screen.tsx';
import { useStore } from '../common/store-context.ts';
import { useTold } from '../common/told.tsx';
import { hoursAsTyped, lineWords, shownMoney } from './line-words.ts';
import { MoneyPad } from './money-pad.tsx';

type MoneyPadScreenProps = {
  readonly job: Job;
  readonly line: MoneyLine;
  readonly field: MoneyField;
  readonly sign: string;
};

const ASKS: Record<MoneyField, string> = {
  amount: 'Which amount?',
  hours: 'How many hours?',
  rate: 'What does an hour cost?',
};

/** One figure of a line, typed anew. */
export function MoneyPadScreen({ job, line, field, sign }: MoneyPadScreenProps) {
  const store = useStore();
  const draftKey = `money/${line.id}/${field}`;
  const here = { at: 'money', jobId: job.id, field: line.id } as const;
  const isFirstRate = field === 'rate' && line.rate === undefined;
  const answer = useTold();
  const change = (text: string) =>
    answer.told(changeMoney(store, line.id, { [field]: text }, draftKey), () =>
      // Asked right after the first hours were put down, it leads on to all lines.
      goInstead(isFirstRate ? { at: 'money', jobId: job.id } : here),
    );
  const now = line[field];
  const shown = now === undefined ? '' : field === 'hours' ? hoursAsTyped(now) : shownMoney(now, sign);
  return (
    <PadScreen
      title={ASKS[field]}
      subtitle={`${lineWords(line, sign).what}${shown === '' ? '' : ` · now ${shown}`}`}
      back={{ href: hrefOf(here), to: 'the line' }}
    >
      <MoneyPad
        label={ASKS[field]}
        field={field}
        sign={sign}
        draftKey={draftKey}
        answer={answer}
        onText={change}
      />
    </PadScreen>
  );
}
