import { bandOf } from '../../../engine/reading/estimate.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { GivenPart } from '../../../engine/worksheets/given.ts';
import { hrefOf } from '../../address.ts';
import { bandWords } from '../../common/band-words.ts';
import { Row } from '../../common/row.tsx';
import { givenOf } from '../given-of.ts';
import { missingWords, type WorksheetData } from '../worksheet-data.ts';
import { partField } from './part-path.ts';
import { atRulingPlaces } from './ruling-sizes.ts';

/** The parts from left to right among the sizes, each one press from being changed, and one more. */
export function PartList({ data }: { data: WorksheetData }) {
  const { job, worksheet } = data;
  const at = (field: string) => hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field });
  return (
    <>
      {atRulingPlaces(givenOf(data)).parts.map((part, place) => (
        <li key={part.id}>
          <PartRow data={data} part={part} place={place} href={at(partField(part))} />
        </li>
      ))}
      <li>
        <Row href={at('parts')} title="Add a part" detail="behind the last one" />
      </li>
    </>
  );
}

type PartRowProps = {
  readonly data: WorksheetData;
  readonly part: GivenPart;
  readonly place: number;
  readonly href: string;
};

function PartRow({ data, part: { id, name, count, adjustable, size }, place, href }: PartRowProps) {
  const said = [
    count > 1 ? `${count} of them` : '',
    adjustable ? 'may be cut' : '',
    size?.words ?? missingWords(data, data.worksheet.parts[id]?.size) ?? '',
  ].filter((word) => word !== '');
  return (
    <Row
      href={href}
      title={`${place + 1}  ${name}`}
      detail={said.join(', ')}
      figure={
        size ? (
          <>
            {sizeFigure(size.most, data.unit)}
            <small class="row-detail">{bandWords(bandOf(size.most).halfWidth, data.unit)}</small>
          </>
        ) : (
          'no size'
        )
      }
    />
  );
}
