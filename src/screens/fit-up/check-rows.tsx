import { asTyped, show, type ShownUnit } from '../../engine/length/show.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import '../worksheets/input-rows.css';
import type { KnownCheck } from './check-data.ts';

type CheckRowsProps = { readonly known: KnownCheck; readonly unit: ShownUnit };

/** The limits it is held against, each one press from being changed, and where they come from. */
export function CheckRows({ known: { check }, unit }: CheckRowsProps) {
  const { lower, upper, jobId, id } = check;
  const row = (side: 'lower' | 'upper', title: string, limit: Entry | undefined) => (
    <li>
      <Row
        href={hrefOf({ at: 'check', jobId, checkId: id, field: side })}
        title={title}
        {...(limit ? shownLimit(limit, unit) : { detail: 'no limit given' })}
      />
    </li>
  );
  return (
    <section class="input-rows">
      <h2>Limits</h2>
      <ul>
        {row('lower', 'Least', lower)}
        {row('upper', 'Most', upper)}
      </ul>
      {(lower || upper) && <p class="one-check-source">{`From: ${check.limitsFrom}`}</p>}
    </section>
  );
}

/** With its unit; as typed beside it, where that is another text. */
function shownLimit(limit: Entry, unit: ShownUnit) {
  const shown = show(limit.exact, unit);
  const typed = asTyped(limit);
  return { figure: shown, ...(typed !== shown && { detail: `typed ${typed}` }) };
}
