import { changeMoney, removeMoney } from '../../store/kept/money.ts';
import type { Job, MoneyLine } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import { hoursAsTyped, lineWords, shownMoney } from './line-words.ts';

type LineScreenProps = { readonly job: Job; readonly line: MoneyLine; readonly sign: string };

/** One line: what it is for, its figures, and the way to take it away. */
export function LineScreen({ job, line, sign }: LineScreenProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const all = { at: 'money', jobId: job.id } as const;
  const write = async (what: string) =>
    // A line without a name can't be told from another: the last one stays until there is a new one.
    what !== '' && told(changeMoney(store, line.id, { what }));
  const remove = () => told(removeMoney(store, line.id), () => goInstead(all));
  const at = (field: string) => hrefOf({ ...all, field: `${line.id}/${field}` });
  const { amount, hours, rate } = line;
  return (
    <Page
      title={lineWords(line, sign).what}
      subtitle={job.name}
      back={{ href: hrefOf(all), to: 'money and time' }}
    >
      <KeptField label="What for" kept={line.what} onWords={write} />
      {amount !== undefined && <Row href={at('amount')} title="Amount" figure={shownMoney(amount, sign)} />}
      {hours !== undefined && (
        <>
          <Row href={at('hours')} title="Hours" figure={hoursAsTyped(hours)} />
          <Row
            href={at('rate')}
            title="An hour costs"
            {...(rate === undefined ? { detail: 'not given yet' } : { figure: shownMoney(rate, sign) })}
          />
          <Row title="Comes to" figure={lineWords(line, sign).money} />
        </>
      )}
      <Trouble>{trouble}</Trouble>
      <div class="money-remove">
        <Button onPress={() => remove()}>Remove this line</Button>
      </div>
    </Page>
  );
}
