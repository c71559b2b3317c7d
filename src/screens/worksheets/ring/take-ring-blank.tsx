import { ringWorksheet } from '../../../engine/worksheets/ring/worksheet.ts';
import { givenOf } from '../given-of.ts';
import { TakeBlank } from '../take-blank.tsx';
import type { WorksheetData } from '../worksheet-data.ts';

/** The washer that the ring is cut from, where it lies in the drawer. */
export function TakeRingBlank({ data }: { data: WorksheetData }) {
  const worked = ringWorksheet.work(givenOf(data));
  const best = worked.is === 'answered' ? worked.answer.fromBlanks.best : undefined;
  return best ? <TakeBlank data={data} pieceId={best.blank.id} name={best.blank.name} /> : null;
}
