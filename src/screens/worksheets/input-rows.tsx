import { bandOf } from '../../engine/reading/estimate.ts';
import { isZero } from '../../engine/length/length.ts';
import { sizeFigure } from '../../engine/reading/say-readings.ts';
import { showBand } from '../../engine/length/show.ts';
import { hrefOf } from '../address.ts';
import { Row } from '../common/row.tsx';
import { knownSize, missingWords, type WorksheetData } from './worksheet-data.ts';
import { fieldNamed, type FieldPlan, type WorksheetPlan } from './worksheet-plan.ts';
import { assumedFor } from './assumed-choices.ts';
import './input-rows.css';

type InputRowsProps = {
  readonly data: WorksheetData;
  readonly plan: WorksheetPlan;
  readonly title: string;
  readonly names: readonly string[];
  /** What stands in for a field that was not given: the usual limits, say. */
  readonly usual?: Readonly<Record<string, string>>;
};

/** What the answer stands on, each line one press from being changed. */
export function InputRows({ data, plan, title, names, usual = {} }: InputRowsProps) {
  const fields = names.flatMap((name) => fieldNamed(plan, name) ?? []);
  return (
    <section class="input-rows">
      <h2>{title}</h2>
      <ul>
        {fields.map((field) => (
          <li key={field.name}>
            <InputRow data={data} field={field} usual={usual[field.name]} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function InputRow({
  data,
  field,
  usual,
}: {
  data: WorksheetData;
  field: FieldPlan;
  usual: string | undefined;
}) {
  const href = hrefOf({
    at: 'worksheet',
    jobId: data.job.id,
    worksheetId: data.worksheet.id,
    field: field.name,
  });
  const given = field.enter === 'size' ? sizeGiven(data, field.name) : choiceGiven(data, field);
  const assumed = assumedFor(data, field.name);
  return (
    <Row
      href={href}
      title={field.label}
      detail={given.words ?? assumed ?? usual ?? 'not given'}
      {...(given.figure !== undefined && { figure: given.figure })}
    />
  );
}

type Given = { readonly words?: string | undefined; readonly figure?: preact.ComponentChild };

function sizeGiven(data: WorksheetData, name: string): Given {
  const input = data.worksheet.sizes[name];
  const known = knownSize(data, input);
  if (!known) return { words: missingWords(data, input) };
  const { halfWidth } = bandOf(known.tightest);
  const band = isZero(halfWidth) ? '' : showBand(halfWidth, data.unit);
  return {
    words: known.words,
    figure: (
      <>
        {sizeFigure(known.tightest, data.unit)}
        {band !== '' && <small class="row-detail">{band}</small>}
      </>
    ),
  };
}

function choiceGiven(data: WorksheetData, field: FieldPlan): Given {
  const value = data.worksheet.choices[field.name];
  if (value === undefined) return {};
  if (field.enter === 'choice')
    return { words: field.options.find((option) => option.value === value)?.words ?? value };
  if (field.enter === 'number') return { words: '', figure: `${value} ${field.unit}` };
  return { words: value.replace('x', ' × ') };
}
