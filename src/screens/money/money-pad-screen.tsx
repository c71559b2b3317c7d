import type { MoneyField } from '../../engine/job/money.ts';
import { changeMoney } from '../../store/money.ts';
import type { Job, MoneyLine } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
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
  const change = async (text: string): Promise<string> => {
    const changed = await changeMoney(store, line.id, { [field]: text }, draftKey);
    if (!changed.ok) return sayStore(changed.refusal);
    // Asked right after the first hours were put down, it leads on to all lines.
    goInstead(isFirstRate ? { at: 'money', jobId: job.id } : here);
    return '';
  };
  const now = line[field];
  const shown = now === undefined ? '' : field === 'hours' ? hoursAsTyped(now) : shownMoney(now, sign);
  return (
    <div class="pad-screen">
      <Page
        title={ASKS[field]}
        subtitle={`${lineWords(line, sign).what}${shown === '' ? '' : ` · now ${shown}`}`}
        back={{ href: hrefOf(here), to: 'the line' }}
      >
        <MoneyPad
          label={ASKS[field]}
          field={field}
          sign={sign}
          draftKey={draftKey}
          commit="Use it"
          onText={change}
        />
      </Page>
    </div>
  );
}
