import { sayContradiction } from '../../engine/reading/say-readings.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { doubtsOf, type WorksheetData } from './worksheet-data.ts';
import './reading-doubts.css';

/** Above everything that was worked out from them: sizes whose readings contradict each other, one press from being settled. */
export function ReadingDoubts({ data }: { data: WorksheetData }) {
  const { job, worksheet, unit } = data;
  const doubts = doubtsOf(data);
  if (doubts.length === 0) return null;
  return (
    <section class="reading-doubts" role="alert" aria-label="Readings that contradict each other">
      <ul>
        {doubts.flatMap(({ feature, contradictions }) =>
          contradictions.map((contradiction) => {
            const question = sayContradiction(contradiction, unit);
            return (
              <li key={`${feature.id} ${question}`}>
                <Row
                  href={hrefOf({
                    at: 'feature',
                    jobId: job.id,
                    featureId: feature.id,
                    choosing: `for/${worksheet.id}`,
                  })}
                  title={feature.name}
                  detail={`${question} Strike the other out.`}
                />
              </li>
            );
          }),
        )}
      </ul>
    </section>
  );
}
