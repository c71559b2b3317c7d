import { lineMoney, moneyTotal, roundMoney } from '../../engine/job/money.ts';
import { LINES_ROUNDED, showHours, showMoney } from '../../engine/job/say-money.ts';
import { minorPlaces } from '../../engine/job/tables/minor-units.ts';
import type { MoneyLine } from '../../store/base/records.ts';
import type { SheetData } from './sheet-data.ts';
import { SheetTable } from './sheet-table.tsx';
import { counted } from './sheet-words.ts';

/** What the job comes to, line by line. */
export function MoneySheet({ data: { money, currency } }: { data: SheetData }) {
  if (money.length === 0) return null;
  const places = minorPlaces(currency);
  const { total, hours, leftOut, differsFromLines } = moneyTotal(money, places);
  const amountOf = (line: MoneyLine) => {
    const amount = lineMoney(line);
    return amount ? showMoney(roundMoney(amount, places), currency) : '';
  };
  return (
    <section class="sheet-section">
      <h3>Money and time</h3>
      <SheetTable
        heads={['For', 'Hours', 'Amount']}
        rows={money.map((line) => ({
          key: line.id,
          cells: [line.what, line.hours === undefined ? '' : `${line.hours} h`, amountOf(line)],
        }))}
      />
      <p>
        <strong>{`Total ${showMoney(total, currency)}`}</strong>
        {hours.top === 0n ? '' : `, ${showHours(hours)} of work`}
        {leftOut === 0 ? '.' : `. ${counted(leftOut, 'line')} without a rate not counted.`}
        {differsFromLines && ` ${LINES_ROUNDED}`}
      </p>
    </section>
  );
}
