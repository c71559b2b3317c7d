import type { ComponentChildren } from 'preact';
import { isSafetyCritical } from '../../../engine/job/safety.ts';
import { type WorksheetKind, worksheets } from '../../../engine/worksheets/all-worksheets.ts';
import type { Field } from '../../../engine/worksheets/fields.ts';
import type { AnyWorksheet } from '../../../engine/worksheets/worksheet.ts';
import { hrefOf } from '../../address.ts';
import { Button } from '../../common/button.tsx';
import { Page } from '../../common/page.tsx';
import { Trouble } from '../../common/told.tsx';
import { drawings } from '../all-drawings.ts';
import { givenOf } from '../given-of.ts';
import { saySetAside } from '../read-again.tsx';
import { setAside, type WorksheetData } from '../worksheet-data.ts';
import { AnswerOnForm } from './answer-on-form.tsx';
import { FieldEntry } from './field-entry.tsx';
import type { DrawingBox } from './drawn.ts';
import { FormDrawing, useDrawingBox, useGivingWay } from './form-drawing.tsx';
import { partAt, partField, type PartPath } from '../spacer-stack/part-path.ts';
import { PartOnForm } from '../spacer-stack/part-on-form.tsx';
import { withTyped, type TypedPart } from './typed-part.ts';
import { useGiveField } from './use-give-field.ts';
import './worksheet-form.css';

type WorksheetFormProps = {
  readonly data: WorksheetData;
  readonly kind: WorksheetKind;
  /** The field that was pressed; without one the form asks for what it lacks, or gives its answer. */
  readonly pressed?: string | undefined;
};

/** A worksheet on one page: the drawing that is the form, the pad under it or the answer. */
export function WorksheetForm({ data, kind, pressed }: WorksheetFormProps) {
  const definition: AnyWorksheet = worksheets[kind];
  const given = givenOf(data);
  const fields = definition.fieldsFor(given);
  const part = partAt(data.worksheet, pressed);
  if (part) return <PartAsked key={pressed} data={data} kind={kind} path={part} />;
  const name = pressed !== undefined && Object.hasOwn(fields, pressed) ? pressed : definition.nextNeed(given);
  const field = name === undefined ? undefined : fields[name];
  return name === undefined || !field ? (
    <AnswerOnForm
      data={data}
      definition={definition}
      page={(parts) => <FormPage data={data} kind={kind} {...parts} />}
    />
  ) : (
    <AskedOnForm key={name} data={data} kind={kind} name={name} field={field} />
  );
}

type AskedProps = Pick<WorksheetFormProps, 'data' | 'kind'> & {
  readonly name: string;
  readonly field: Field;
};

/** What is asked for now: outlined in the drawing, its pad or its chips under it. */
function AskedOnForm({ data, kind, name, field }: AskedProps) {
  const give = useGiveField({ data, kind: worksheets[kind], name, field });
  const readBefore = setAside(data, [name]);
  return (
    <FieldEntry
      data={data}
      name={name}
      field={field}
      give={give}
      form={({ body, aside, typing }) => (
        <FormPage
          data={data}
          kind={kind}
          asked={{ at: name, ...asksOf(field) }}
          typing={typing}
          aside={aside}
        >
          {readBefore && <p class="form-asks">{saySetAside(readBefore, data.worksheet)}</p>}
          <Trouble>{give.trouble}</Trouble>
          {body}
        </FormPage>
      )}
    >
      {give.leaveOut && <Button onPress={give.leaveOut}>Leave out</Button>}
      {give.instead && <Button onPress={give.instead.say}>{give.instead.key}</Button>}
    </FieldEntry>
  );
}

/** A size that stands in the drawing is asked for there; what no drawing can ask is asked in words under it. */
function asksOf({ enter, ask }: Field): Pick<Asked, 'asks' | 'isSize'> {
  return { asks: ask, isSize: enter === 'size' || enter === 'parts' };
}

type PartAskedProps = Pick<WorksheetFormProps, 'data' | 'kind'> & { readonly path: PartPath };

/** A part that is in the stack already, pressed to be typed or measured again. */
function PartAsked({ data, kind, path }: PartAskedProps) {
  return (
    <PartOnForm
      data={data}
      path={path}
      form={({ body, aside, typing }) => (
        <FormPage data={data} kind={kind} asked={askedOfPart(path)} typing={typing} aside={aside}>
          {body}
        </FormPage>
      )}
    />
  );
}

/** The drawing has a place for its size alone. */
function askedOfPart(path: PartPath): Asked {
  if (path.asked !== 'leastLength') return { at: partField(path), isPad: path.asked === 'size' };
  return { at: `part/${path.id}/leastLength`, asks: `${path.part.name}, least length` };
}

type Asked = {
  /** The size that stands outlined in the drawing. */
  readonly at: string;
  /** What is asked, said in words where the drawing has no place for it. */
  readonly asks?: string;
  /** It stands in the drawing, if it has a place there. */
  readonly isSize?: boolean;
  /** Under the drawing stands the pad, and nothing scrolls; so it is unless this is false. */
  readonly isPad?: boolean;
};

/** What it is, where its name doesn't say that already. */
function subtitleOf({ job, worksheet }: WorksheetData, of: AnyWorksheet): string {
  return [
    ...(worksheet.title.startsWith(of.name) ? [] : [of.name.toLowerCase()]),
    ...(isSafetyCritical(job) ? ['safety-critical'] : []),
  ].join(' · ');
}

type FormPageProps = Pick<WorksheetFormProps, 'data' | 'kind'> & {
  readonly asked?: Asked;
  readonly typing?: TypedPart | undefined;
  readonly aside?: ComponentChildren;
  readonly foot?: ComponentChildren;
  /** Lengths to make or buy stand under it: they count more than the drawing's height. */
  readonly hasRows?: boolean;
  readonly children?: ComponentChildren;
};

/** The heading in one line, the drawing, and what stands under it. */
function FormPage({ data, kind, asked, typing, aside, foot, hasRows = false, children }: FormPageProps) {
  const definition: AnyWorksheet = worksheets[kind];
  const { job, worksheet } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const hasPad = asked !== undefined && asked.isPad !== false;
  // The keys that say what a part is have a row of their own over the digits.
  const usual = useDrawingBox(hasPad, hasRows || typing !== undefined);
  const crowded = useDrawingBox(hasPad, true);
  const drawIn = (room: DrawingBox) => drawings[kind](withTyped(givenOf(data), typing), room);
  const roomy = drawIn(usual);
  const isDrawn = asked?.isSize === true && roomy.sizes.some(({ field }) => field === asked.at);
  // So does a question that the drawing has no place for.
  const isAskedInWords = hasPad && asked?.asks !== undefined && !isDrawn;
  const { form, box } = useGivingWay(isAskedInWords ? crowded : usual, hasPad);
  const drawn = box.height === usual.height ? roomy : drawIn(box);
  return (
    <div
      ref={form}
      class={hasPad ? 'form pad-screen' : 'form'}
      data-asks={isAskedInWords ? 'in-words' : 'in-field'}
    >
      <Page
        title={worksheet.title}
        subtitle={subtitleOf(data, definition)}
        back={{ href: hrefOf({ at: 'worksheets', jobId: job.id }), to: 'the worksheets' }}
        {...(aside !== undefined && { aside })}
        {...(foot !== undefined && { foot })}
      >
        <div class="form-panel">
          <FormDrawing
            drawn={drawn}
            box={box}
            asked={asked?.at}
            hrefFor={(field) => hrefOf({ ...here, field })}
          />
          {asked?.asks !== undefined && !isDrawn && <p class="form-asks">{asked.asks}</p>}
        </div>
        {children}
      </Page>
    </div>
  );
}
