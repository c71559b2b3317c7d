import { isSafetyCritical } from '../../engine/job/safety.ts';
import { SafetyCaution } from '../common/caution.tsx';
import { touchWords } from '../common/system-names.ts';
import { Picture } from '../photos/picture.tsx';
import { photoSays } from '../photos/use-photos.ts';
import type { SheetData } from './sheet-data.ts';
import { SheetFacts, SheetTable } from './sheet-table.tsx';
import { dayOf, ORIGINS } from './sheet-words.ts';
import { canBeNow } from '../../store/base/clock.ts';

/** What the job is, and when. The day of printing is the day it is drawn. */
export function HeadSheet({
  data: { job, photos, unit, shopName },
  today,
}: {
  data: SheetData;
  today: number;
}) {
  const photo = photos.at(-1);
  const odometer = job.odometer;
  return (
    <header class="sheet-head">
      {photo && (
        <Picture
          class="sheet-photo"
          bytes={photo.preview}
          mime={photo.mime}
          says={photoSays(photo, photos)}
          size={{ width: photo.width, height: photo.height }}
        />
      )}
      <div>
        {shopName !== '' && <p class="sheet-shop">{shopName}</p>}
        <h2 class="sheet-name">{job.name}</h2>
        {job.what !== '' && <p>{job.what}</p>}
        {job.customerNote !== '' && <p>{job.customerNote}</p>}
        <SheetFacts
          facts={[
            ...(job.customer ? [['Customer', job.customer] as const] : []),
            ...(job.machine ? [['Machine', job.machine] as const] : []),
            ['Touches', touchWords(job)],
            ['Begun', dayOf(job.createdAt)],
            ['Printed', canBeNow(Date.now()) ? dayOf(today) : 'day not known, the phone’s clock was wrong'],
            ['Sizes in', unit === 'in' ? 'inches' : 'millimetres'],
            ...(odometer
              ? [['Odometer', `${odometer.reading} ${odometer.unit}, ${dayOf(odometer.at)}`] as const]
              : []),
            ...(job.state === 'closed' ? [['Job', 'closed'] as const] : []),
          ]}
        />
      </div>
      {isSafetyCritical(job) && <SafetyCaution />}
    </header>
  );
}

/** Every part with where it comes from; a mock-up says whether it is out again. */
export function PartsSheet({ data: { parts } }: { data: SheetData }) {
  if (parts.length === 0) return null;
  return (
    <section class="sheet-section">
      <h3>Parts</h3>
      <SheetTable
        heads={['Part', 'Origin', 'Mock-up']}
        rows={parts.map(({ id, name, origin, swapped }) => ({
          key: id,
          cells: [
            name,
            ORIGINS[origin],
            swapped ? (
              `out since ${dayOf(swapped.at)}: ${swapped.by}`
            ) : origin === 'mock-up' ? (
              <strong>still in</strong>
            ) : (
              ''
            ),
          ],
        }))}
      />
    </section>
  );
}
