import { moneyTotal } from '../../engine/job/money.ts';
import { LINES_ROUNDED, showHours, showMoney } from '../../engine/job/say-money.ts';
import { minorPlaces } from '../../engine/job/tables/minor-units.ts';
import { moneyOf } from '../../store/kept/money.ts';
import type { Job, MoneyLine } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import { useJob } from '../jobs/use-job.ts';
import { CurrencyScreen } from './currency-screen.tsx';
import { LineScreen } from './line-screen.tsx';
import { lineWords } from './line-words.ts';
import { MoneyPadScreen } from './money-pad-screen.tsx';
import { NewLineScreen } from './new-line-screen.tsx';
import { useCurrency } from './use-currency.ts';
import './money-screen.css';

type MoneyScreenProps = {
  readonly jobId: string;
  /** `new-amount`, `new-hours`, `currency`, a line's id, or a line's id and what of it is typed anew. */
  readonly field?: string;
};

/** What a job's parts cost and its hours come to: lines and a total. No invoice is made of it. */
export function MoneyScreen({ jobId, field }: MoneyScreenProps) {
  const { job, missing } = useJob(jobId);
  const sign = useCurrency();
  const lines = useLive(`money/${jobId}`, ['money'], (store) => moneyOf(store, jobId));
  if (missing) return <NotHere what="job" />;
  if (!job || !lines || sign === undefined) return <Page title=" ">{null}</Page>;
  if (field === undefined) return <AllLines job={job} lines={lines} sign={sign} />;
  if (field === 'currency') return <CurrencyScreen job={job} sign={sign} />;
  if (field === 'new-amount' || field === 'new-hours')
    return (
      <NewLineScreen
        key={field}
        job={job}
        sign={sign}
        field={field === 'new-amount' ? 'amount' : 'hours'}
        rate={lines.findLast(({ rate }) => rate !== undefined)?.rate}
      />
    );
  const [lineId, asked] = field.split('/');
  const line = lines.find(({ id }) => id === lineId);
  if (!line) return <NotHere what="line" />;
  if (asked === 'amount' || asked === 'hours' || asked === 'rate')
    return <MoneyPadScreen key={field} job={job} line={line} field={asked} sign={sign} />;
  return <LineScreen key={line.id} job={job} line={line} sign={sign} />;
}

type AllLinesProps = { readonly job: Job; readonly lines: readonly MoneyLine[]; readonly sign: string };

function AllLines({ job, lines, sign }: AllLinesProps) {
  const here = { at: 'money', jobId: job.id } as const;
  return (
    <Page
      title="Money and time"
      subtitle={job.name}
      back={{ href: hrefOf({ at: 'job', jobId: job.id }), to: 'the job' }}
      foot={
        <>
          <LinkButton kind="main" href={hrefOf({ ...here, field: 'new-amount' })}>
            Part or cost
          </LinkButton>
          <LinkButton href={hrefOf({ ...here, field: 'new-hours' })}>Hours</LinkButton>
        </>
      }
    >
      {lines.length === 0 && (
        <EmptyLine>
          A line for each part and for the hours goes here; the total stands on the sheet.
        </EmptyLine>
      )}
      <ul>
        {lines.map((line) => {
          const { what, how, money } = lineWords(line, sign);
          return (
            <li key={line.id}>
              <Row
                href={hrefOf({ ...here, field: line.id })}
                title={what}
                {...(how !== '' && { detail: how })}
                figure={money}
              />
            </li>
          );
        })}
      </ul>
      {lines.length > 0 && <Total lines={lines} sign={sign} />}
      <div class="money-currency">
        <Row
          href={hrefOf({ ...here, field: 'currency' })}
          title="Currency sign"
          {...(sign === '' ? { detail: 'none' } : { figure: sign })}
        />
      </div>
    </Page>
  );
}

function Total({ lines, sign }: Omit<AllLinesProps, 'job'>) {
  const { total, hours, leftOut, differsFromLines } = moneyTotal(lines, minorPlaces(sign));
  return (
    <section class="money-total" aria-label="Total">
      <p class="money-total-line">
        <span>Total</span> <strong>{showMoney(total, sign)}</strong>
      </p>
      {hours.top > 0n && <p>{`${showHours(hours)} of work`}</p>}
      {leftOut > 0 && (
        <p class="money-left-out">
          {leftOut === 1 ? 'One line does not count yet: ' : `${leftOut} lines do not count yet: `}
          its hours have no rate.
        </p>
      )}
      <p class="money-rule">
        Added up exactly and rounded once, at the end: half of the smallest coin goes to the even one.
        {differsFromLines && ` ${LINES_ROUNDED}`}
      </p>
    </section>
  );
}
