import { sheetsOf } from '../../store/kept/sheets.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { useLive } from '../common/store-context.ts';
import type { Job } from '../../store/base/records.ts';
import { momentOf } from './sheet-words.ts';
import { useSignedSince } from './use-signed-since.ts';
import './frozen-sheet.css';

/** The signed sheets of a job, the newest first; nothing while it was never signed. */
export function FrozenSheetList({ job: { id: jobId, signedOff } }: { readonly job: Job }) {
  const since = useSignedSince(jobId);
  const sheets = useLive(`sheets/${jobId}`, ['sheets'], (store) => sheetsOf(store, jobId));
  if (!sheets || sheets.length === 0) return null;
  return (
    <section
      class="frozen-sheet-list not-printed"
      data-changed={since !== undefined}
      aria-label="Signed sheets"
    >
      <ul>
        {sheets.map(({ id, signedAt, signedBy, engineVersion }) => (
          <li key={id}>
            <Row
              href={hrefOf({ at: 'sheet', jobId, field: `signed/${id}` })}
              title={`Signed off ${momentOf(signedAt)} by ${signedBy}`}
              detail={
                since !== undefined && id === signedOff?.sheetId
                  ? `as it stood then; changed since: ${since}`
                  : `as it stood then, with Slipfit ${engineVersion}`
              }
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
