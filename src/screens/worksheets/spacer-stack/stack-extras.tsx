import { spacerStackWorksheet } from '../../../engine/worksheets/spacer-stack/worksheet.ts';
import { hrefOf } from '../../address.ts';
import { givenOf } from '../given-of.ts';
import type { WorksheetData } from '../worksheet-data.ts';
import { OnePart } from './one-part.tsx';
import { onePartId } from './one-part-way.ts';
import { ShimPick } from './shim-pick.tsx';

type ExtraProps = { readonly data: WorksheetData };

/** What the drawer gives for a stack with too much room. */
export function StackShims({ data }: ExtraProps) {
  const worked = spacerStackWorksheet.work(givenOf(data));
  return worked.is === 'answered' ? (
    <ShimPick data={data} question={worked.question} answer={worked.answer} />
  ) : null;
}

/** One part made in place of several of this stack. */
export function StackOnePart({ data }: ExtraProps) {
  const worked = spacerStackWorksheet.work(givenOf(data));
  if (worked.is !== 'answered') return null;
  const { job, worksheet, unit } = data;
  const cutAt = (places: readonly number[]) =>
    hrefOf({
      at: 'worksheet',
      jobId: job.id,
      worksheetId: worksheet.id,
      field: `cuts/${onePartId(places)}`,
    });
  return <OnePart parts={worked.question.parts} question={worked.question} unit={unit} cutAt={cutAt} />;
}
