import { bandOf } from '../../../engine/reading/estimate.ts';
import { isZero } from '../../../engine/length/length.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import { showBand } from '../../../engine/length/show.ts';
import { numberInShop } from '../../../engine/worksheets/number-in-shop.ts';
import type { Field } from '../../../engine/worksheets/fields.ts';
import { shownPlace } from '../../../engine/worksheets/shown-place.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { AnyWorksheet } from '../../../engine/worksheets/worksheet.ts';
import { hrefOf } from '../../address.ts';
import { Row } from '../../common/row.tsx';
import { assumedFor } from '../assumed-choices.ts';
import { givenOf } from '../given-of.ts';
import { PartList } from '../spacer-stack/part-list.tsx';
import { missingWords, type WorksheetData } from '../worksheet-data.ts';

/** All that an answer stands on, each line one press from being changed. */
export function SizeRows({ data, kind }: { data: WorksheetData; kind: AnyWorksheet }) {
  const given = givenOf(data);
  const usual = kind.usual(given);
  return (
    <ul>
      {Object.entries(kind.fieldsFor(given)).map(([name, field]) =>
        field.enter === 'parts' ? (
          <PartList key={name} data={data} />
        ) : (
          <li key={name}>
            <SizeRow data={data} kind={kind} name={name} field={field} usual={usual[name]} />
          </li>
        ),
      )}
    </ul>
  );
}

/** How many sizes and choices an answer stands on; each part of a stack is one. */
export function countGiven(kind: AnyWorksheet, given: AnyGiven): number {
  return Object.entries(kind.fieldsFor(given)).reduce(
    (so, [name, { enter }]) => so + (enter === 'parts' ? given.parts.length : Number(given.has(name))),
    0,
  );
}

type SizeRowProps = {
  readonly data: WorksheetData;
  readonly kind: AnyWorksheet;
  readonly name: string;
  readonly field: Field;
  readonly usual: string | undefined;
};

function SizeRow({ data, kind, name, field, usual }: SizeRowProps) {
  const { words, figure } =
    field.enter === 'size' ? sizeGiven(data, name, kind) : choiceGiven(data, name, field);
  return (
    <Row
      href={hrefOf({ at: 'worksheet', jobId: data.job.id, worksheetId: data.worksheet.id, field: name })}
      title={field.label}
      detail={words ?? assumedFor(data, name) ?? usual ?? 'not given'}
      {...(figure !== undefined && { figure })}
    />
  );
}

type Said = { readonly words?: string | undefined; readonly figure?: preact.ComponentChild };

/** The place that the verdict goes by: what floats goes by its sleeve's shortest. */
function sizeGiven(data: WorksheetData, name: string, kind: AnyWorksheet): Said {
  const given = givenOf(data);
  const known = given.size(name);
  const shown = shownPlace(kind, given, name);
  if (!known || !shown) return { words: missingWords(data, data.worksheet.sizes[name]) };
  const { size, which, also } = shown;
  const { halfWidth } = bandOf(size);
  const places = [
    ...(which === undefined ? [] : [`at its ${which}`]),
    ...(also ? [`${also.which} ${sizeFigure(also.size, data.unit)}`] : []),
  ];
  return {
    words: [...places, known.words].join('; '),
    figure: (
      <>
        {sizeFigure(size, data.unit)}
        {!isZero(halfWidth) && <small class="row-detail">{showBand(halfWidth, data.unit)}</small>}
      </>
    ),
  };
}

function choiceGiven(data: WorksheetData, name: string, field: Field): Said {
  const value = data.worksheet.choices[name];
  if (value === undefined || !givenOf(data).has(name)) return {};
  if (field.enter === 'choice')
    return { words: field.options.find((option) => option.value === value)?.words ?? value };
  if (field.enter === 'number') return { words: '', figure: numberInShop(value, field.unit, data.unit) };
  return { words: value.replace('x', ' × ') };
}
