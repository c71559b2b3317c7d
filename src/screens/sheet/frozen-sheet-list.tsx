import { sheetsOf } from '../../store/sheets.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import { momentOf } from './sheet-words.ts';
import './frozen-sheet.css';

/** The signed sheets of a job, the newest first; nothing while it was never signed. */
export function FrozenSheetList({ jobId }: { readonly jobId: string }) {
  const sheets = useLive(`sheets/${jobId}`, ['sheets'], (store) => sheetsOf(store, jobId));
  if (!sheets || sheets.length === 0) return null;
  return (
    <section class="frozen-sheet-list not-printed" aria-label="Signed sheets">
      <ul>
        {sheets.map(({ id, signedAt, signedBy, engineVersion }) => (
          <li key={id}>
            <Row
              href={hrefOf({ at: 'sheet', jobId, field: `signed/${id}` })}
              title={`Signed off ${momentOf(signedAt)} by ${signedBy}`}
              detail={`as it stood then, with Slipfit ${engineVersion}`}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
