import { asTyped } from '../../engine/length/show.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import type { Worksheet } from '../../store/base/records.ts';
import { setAside, type SetAside, type WorksheetData } from './worksheet-data.ts';

type ReadAgainProps = { readonly data: WorksheetData; readonly names: readonly string[] };

/** What was read of the parts put together before one of them was changed: marked, said, and one press reads it again. */
export function ReadAgain({ data, names }: ReadAgainProps) {
  const aside = setAside(data, names);
  if (!aside) return null;
  return (
    <>
      <Caution heading="Reading set aside.">{saySetAside(aside, data.worksheet)}</Caution>
      <div class="worksheet-act not-printed">
        <LinkButton href={whereToRead(data, aside)}>Read it again</LinkButton>
      </div>
    </>
  );
}

/** `It was read before this: washer taken out. Until it is read again the sum counts.` */
export function saySetAside({ input, why }: SetAside, { kind }: Pick<Worksheet, 'kind'>): string {
  const what = input.from === 'typed' ? `${asTyped(input)} was` : 'It was';
  // End play is no sum of sizes, and how a bearing stands was read as its sizes didn't say it: nothing stands in for them.
  const until = kind === 'bearing-seat' ? 'Read it again.' : 'Until it is read again the sum counts.';
  return `${what} read before this: ${why}. ${until}`;
}

type Read = Pick<SetAside, 'name' | 'input'>;

/** The check it came from, the pad of its readings, or the field it was typed in. */
export function whereToRead(data: WorksheetData, read: Read): string {
  const { job, worksheet } = data;
  const jobId = job.id;
  const feature = featureOf(data, read);
  if (feature?.checkId !== undefined) return hrefOf({ at: 'check', jobId, checkId: feature.checkId });
  if (feature)
    return hrefOf({ at: 'feature', jobId, featureId: feature.id, choosing: `for/${worksheet.id}` });
  return hrefOf({ at: 'worksheet', jobId, worksheetId: worksheet.id, field: read.name });
}

export function isOfACheck(data: WorksheetData, read: Read): boolean {
  return featureOf(data, read)?.checkId !== undefined;
}

function featureOf({ features }: WorksheetData, { input }: Read) {
  return input.from === 'feature' ? features.find(({ id }) => id === input.featureId) : undefined;
}
