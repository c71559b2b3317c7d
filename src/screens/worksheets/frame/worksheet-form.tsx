import { sayStrengthOfCuts } from '../../../engine/cut/say-strength.ts';
import { isSafetyCritical } from '../../../engine/job/safety.ts';
import { nextNeed, type WorksheetKind, worksheets } from '../../../engine/worksheets/all-worksheets.ts';
import { blocksOf } from '../../../engine/worksheets/account.ts';
import type { Field } from '../../../engine/worksheets/fields.ts';
import type { AnyWorksheet } from '../../../engine/worksheets/worksheet.ts';
import { hrefOf } from '../../address.ts';
import { Button, LinkButton } from '../../common/button.tsx';
import { SafetyCaution } from '../../common/caution.tsx';
import { Page } from '../../common/page.tsx';
import { WorksheetChecks } from '../../fit-up/worksheet-checks.tsx';
import { drawings } from '../all-drawings.ts';
import { extras } from '../all-extras.ts';
import { givenOf } from '../given-of.ts';
import { doubtsOf, type WorksheetData } from '../worksheet-data.ts';
import { ReadingDoubts } from '../reading-doubts.tsx';
import { WithAssumed } from '../said-assumed.tsx';
import { WarmthKey } from '../warm-sizes-screen.tsx';
import { UndoChange } from '../worksheet-page.tsx';
import { AccountOnPhone } from './account-on-phone.tsx';
import { FieldEntry } from './field-entry.tsx';
import { FormDrawing, useDrawingBox } from './form-drawing.tsx';
import { SizeRows } from './size-rows.tsx';
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
  const of: AnyWorksheet = worksheets[kind];
  const given = givenOf(data);
  const { job, worksheet } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const asked = pressed !== undefined && pressed in of.fields ? pressed : nextNeed(of, worksheet);
  const box = useDrawingBox(asked !== undefined);
  const drawn = drawings[kind](given, box);
  const critical = isSafetyCritical(job);
  const ways = of.cuts(given);
  const account = of.account(given);
  // What was worked out from readings that contradict each other is not handed to the machine.
  const canBeCut = ways.length > 0 && doubtsOf(data).length === 0;
  return (
    <div class={asked === undefined ? 'form' : 'form pad-screen'}>
      <Page
        title={worksheet.title}
        subtitle={[of.name.toLowerCase(), ...(critical ? ['safety-critical'] : [])].join(' · ')}
        back={{ href: hrefOf({ at: 'worksheets', jobId: job.id }), to: 'the worksheets' }}
        aside={<LinkButton href={hrefOf({ ...here, field: 'about' })}>About</LinkButton>}
        {...(asked === undefined &&
          canBeCut && {
            foot: (
              <LinkButton kind="main" href={hrefOf({ ...here, field: 'cuts' })}>
                Cut it
              </LinkButton>
            ),
          })}
      >
        <div class="form-panel">
          <FormDrawing
            drawn={drawn}
            box={box}
            asked={asked}
            hrefFor={(field) => hrefOf({ ...here, field })}
          />
        </div>
        {asked === undefined ? (
          <>
            <ReadingDoubts data={data} />
            <WithAssumed data={data}>
              <AccountOnPhone
                account={account}
                sizes={{ count: Object.keys(of.fields).length, rows: <SizeRows data={data} kind={of} /> }}
              />
            </WithAssumed>
            <WarmthKey data={data} />
            {blocksOf(account, 'extra').map(({ name }) => {
              const Extra = extras[name];
              return Extra && <Extra key={name} data={data} />;
            })}
            {sayStrengthOfCuts(ways.flatMap(({ offers }) => offers)).map((sentence) => (
              <p key={sentence} class="account-said">
                {sentence}
              </p>
            ))}
            <WorksheetChecks data={data} />
            {(critical || of.canKill) && <SafetyCaution />}
            <UndoChange jobId={job.id} />
          </>
        ) : (
          <AskedField key={asked} data={data} kind={of} name={asked} />
        )}
      </Page>
    </div>
  );
}

type AskedFieldProps = { readonly data: WorksheetData; readonly kind: AnyWorksheet; readonly name: string };

function AskedField({ data, kind, name }: AskedFieldProps) {
  const field = kind.fields[name];
  return field ? <GivenField data={data} kind={kind} name={name} field={field} /> : null;
}

function GivenField({ data, kind, name, field }: AskedFieldProps & { readonly field: Field }) {
  const give = useGiveField({ data, kind, name, field });
  return (
    <>
      {give.trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {give.trouble}
        </p>
      )}
      <FieldEntry data={data} name={name} field={field} give={give}>
        {give.leaveOut && <Button onPress={give.leaveOut}>Leave out</Button>}
      </FieldEntry>
    </>
  );
}
