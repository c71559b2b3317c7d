import { sayFinding } from '../../engine/job/say-sign-off.ts';
import { signOffOf } from '../assembly/sign-off-data.ts';
import type { SheetData } from './sheet-data.ts';
import { SheetTable } from './sheet-table.tsx';
import { dayOf } from './sheet-words.ts';

/** What would stop the signing, and why it may stand as the fitter wrote it. */
export function ReasonsSheet({ data, today }: { readonly data: SheetData; readonly today: number }) {
  const written = writtenReasons(data, today);
  if (written.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Stands by a written reason</h3>
      <SheetTable
        heads={['What', 'Why it may stand', 'Written']}
        rows={written.map(({ key, what, why, by, at }) => ({
          key,
          cells: [
            what,
            why,
            [by, at === undefined ? '' : dayOf(at)].filter((word) => word !== '').join(', '),
          ],
        }))}
      />
    </section>
  );
}

export type WrittenReasonLine = {
  readonly key: string;
  readonly what: string;
  readonly why: string;
  readonly by: string;
  readonly at?: number;
};

/** The reasons that hold: one that was written about something as it no longer stands is none. */
export function writtenReasons(data: SheetData, today: number): readonly WrittenReasonLine[] {
  if (!data.job.reasons) return [];
  const { standing } = signOffOf(data, { now: today, unreadable: 0 });
  return standing.map((one) => {
    const { what, todo } = sayFinding(one);
    const kept = data.job.reasons?.[one.key];
    return {
      key: one.key,
      what: `${what}. ${todo}`,
      why: one.why,
      by: kept?.by ?? '',
      ...(kept && { at: kept.at }),
    };
  });
}
