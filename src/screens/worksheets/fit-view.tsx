import { mean } from '../../engine/reading/estimate.ts';
import type { Checked } from '../../engine/fit/fit-check.ts';
import type { FitLimits, Range } from '../../engine/fit/fits.ts';
import { sameLength, type Length } from '../../engine/length/length.ts';
import {
  limitFigure,
  sayClearance,
  sayFitClass,
  sayFitRefusal,
  sayLimits,
} from '../../engine/fit/say-fit.ts';
import { nominalName } from '../../engine/fit/nominal.ts';
import { sayDirectPlay } from '../../engine/worksheets/hole-and-pin/say-routes.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { legOf } from '../../engine/reading/settle.ts';
import {
  figure,
  knownFigure,
  show,
  showBand,
  signedFigure,
  type ShownUnit,
} from '../../engine/length/show.ts';
import { JOINT_CLASS_SOURCE } from '../../engine/fit/tables/joint-classes.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Row } from '../common/row.tsx';
import { VerdictMark } from '../common/verdict-band.tsx';
import { fitCuts } from './fit-cuts.ts';
import { FitDrawing } from './fit-drawing.tsx';
import { OWN_ZONES, systemFor } from './fit-fields.ts';
import { fitAnswer, fitQuestion, type FitAnswer, type FitQuestion } from './fit-question.ts';
import './fit-view.css';
import { InputRows } from './input-rows.tsx';
import { ReadAgain } from './read-again.tsx';
import { Lead, LeadNext, Why } from './lead.tsx';
import { ProofBefore, ProofLines } from './proof-lines.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { nextNeed } from './worksheet-plan.ts';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { WorksheetBand } from './said-assumed.tsx';

/** Limits of a class at a size, the verdict on measured parts, and the part that fits the one that is there. */
export function FitView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job, unit } = data;
  const question = fitQuestion(data);
  const answer = question && fitAnswer(question);
  const need = nextNeed(plan, worksheet);
  const next = hrefOf({
    at: 'worksheet',
    jobId: job.id,
    worksheetId: worksheet.id,
    field: need ?? 'nominal',
  });
  const iso = systemFor(data, 'nominal') === 'iso';
  const own = iso && worksheet.choices['isoClass'] === OWN_ZONES;
  return (
    <WorksheetPage
      data={data}
      subtitle={question ? `${question.fitClass} at ${show(question.nominal, unit)}` : plan.name}
      {...(need !== undefined && {
        foot: (
          <LinkButton kind="main" href={next}>
            Go on
          </LinkButton>
        ),
      })}
    >
      {!question && <EmptyLine>{plan.asks} It needs a nominal size and how the joint runs.</EmptyLine>}
      {answer?.ok === false && (
        <WorksheetBand kind="no-good" headline={sayFitRefusal(answer.refusal, unit)} />
      )}
      {question && answer?.ok === true && (
        <WorksheetAnswer>
          <Answer data={data} question={question} answer={answer.value} />
        </WorksheetAnswer>
      )}
      <ReadAgain data={data} names={['slop']} />
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={[
          'nominal',
          'joint',
          'system',
          iso ? 'isoClass' : 'ansiClass',
          ...(own ? ['holeLetter', 'holeGrade', 'pinLetter', 'pinGrade'] : []),
          'bore',
          'pin',
          'slop',
        ]}
        usual={{
          slop: 'not read; bore less pin counts',
          system: `${iso ? 'ISO 286' : 'ANSI B4.1'}, by the unit of the nominal size`,
          ...(question && {
            [iso ? 'isoClass' : 'ansiClass']: `usual: ${question.fitClass} (common practice, no source)`,
          }),
        }}
      />
    </WorksheetPage>
  );
}

type AnswerProps = {
  readonly data: WorksheetData;
  readonly question: FitQuestion;
  readonly answer: FitAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const { fit, clearance } = answer;
  return (
    <>
      {clearance ? (
        <ClearanceVerdict
          answer={answer}
          checked={clearance}
          isRead={question.slop !== undefined}
          unit={unit}
        />
      ) : (
        <ClassLead data={data} answer={answer} />
      )}
      {!sameLength(question.nominal, question.asGiven) && (
        <p class="worksheet-said">{`The class goes by ${nominalName(question.nominal, unit)}: ${show(question.asGiven, unit)} is such a pin’s own size.`}</p>
      )}
      <FitDrawing fit={fit} bore={question.bore} pin={question.pin} unit={unit} />
      {clearance && (
        <>
          <NumberLine
            value={clearance.value}
            halfWidth={clearance.halfWidth}
            limits={clearance.limits}
            verdict={clearance.verdict.kind}
            unit={unit}
            label="clearance"
          />
          {!question.slop && (
            <ProofLines
              data={data}
              limits={clearance.limits}
              value={clearance.value}
              halfWidth={clearance.halfWidth}
              verdict={clearance.verdict}
              legs={[
                ...(question.bore ? [legOf('bore', question.bore.loosest, 1)] : []),
                ...(question.pin ? [legOf('pin', question.pin.loosest, -1)] : []),
              ]}
            />
          )}
        </>
      )}
      {!clearance && <ProofBefore data={data} kind={answer.bore ? 'pin' : 'bore'} />}
      <LimitRows answer={answer} unit={unit} />
      <Why lines={whyLines(question, answer, unit)} />
    </>
  );
}

function ClearanceVerdict({
  answer: { fit, bore, pin },
  checked,
  isRead,
  unit,
}: {
  answer: FitAnswer;
  checked: NonNullable<FitAnswer['clearance']>;
  isRead: boolean;
  unit: ShownUnit;
}) {
  const { verdict, value, halfWidth, limits } = checked;
  const offSize = [bore, pin].some((part) => part?.verdict.kind === 'no-good');
  return (
    <WorksheetBand
      kind={verdict.kind}
      headline={sayVerdict(verdict, { quantity: 'clearance', unit, limits, value, halfWidth })}
    >
      {isRead && <p>{sayDirectPlay('slop')}</p>}
      {verdict.kind === 'good' && offSize && (
        <p>{`As a pair they run as ${fit.fitClass} wants, though not each to its own size.`}</p>
      )}
    </WorksheetBand>
  );
}

/** What to make, where one part is there: its cut's own target; else what the class is. */
function ClassLead({ data, answer }: Pick<AnswerProps, 'data' | 'answer'>) {
  const { unit } = data;
  const { fit, bore, pinForBore, boreForPin } = answer;
  const made = bore ? pinForBore : boreForPin;
  const cut = fitCuts(data).flatMap(({ offers }) => offers)[0];
  if (cut)
    return (
      <Lead label={bore ? 'Make the pin' : 'Make the bore'} figure={figure(cut.target, unit)} unit={unit}>
        <LeadNext>{sayLimits(cut, unit)}</LeadNext>
        {made?.ok === true && !made.value.sure && (
          <p>
            These readings can’t prove it. Measure closer, or try the parts together before the last pass.
          </p>
        )}
      </Lead>
    );
  const [name = '', meaning] = sayFitClass(fit).split(': ');
  return (
    <Lead label={name.charAt(0).toUpperCase() + name.slice(1)} figure={fit.fitClass}>
      <LeadNext>{sayClearance(fit, unit)}</LeadNext>
      {meaning !== undefined && <p class="worksheet-lead-more">{meaning}</p>}
    </Lead>
  );
}

function LimitRows({ answer, unit }: { answer: FitAnswer; unit: ShownUnit }) {
  const { fit, bore, pin, pinForBore, boreForPin } = answer;
  return (
    <section class="input-rows">
      <h2>{`Limits of ${fit.fitClass}`}</h2>
      <ul>
        <li>
          <LimitRow title="Hole" limits={fit.hole} checked={bore} unit={unit} />
        </li>
        <li>
          <LimitRow title="Pin" limits={fit.pin} checked={pin} unit={unit} />
        </li>
        <li>
          <Row title={clearanceTitle(fit)} detail={sayClearance(fit, unit)} />
        </li>
        {pinForBore && (
          <li>
            <MadeRow title="Pin for this bore" made={pinForBore} unit={unit} />
          </li>
        )}
        {boreForPin && (
          <li>
            <MadeRow title="Bore for this pin" made={boreForPin} unit={unit} />
          </li>
        )}
      </ul>
    </section>
  );
}

function clearanceTitle({ kind }: FitLimits): string {
  if (kind === 'clearance') return 'Always leaves room';
  return kind === 'interference' ? 'Always grips' : 'Room or grip, as they fall out';
}

type LimitRowProps = {
  readonly title: string;
  readonly limits: Range;
  readonly checked: Checked | undefined;
  readonly unit: ShownUnit;
};

function LimitRow({ title, limits, checked, unit }: LimitRowProps) {
  return (
    <Row
      title={title}
      {...(checked && {
        detail: `measured ${knownFigure(checked.value, checked.halfWidth, unit)} ${showBand(checked.halfWidth, unit)}`,
        mark: <VerdictMark kind={checked.verdict.kind} />,
      })}
      figure={<TwoLimits limits={limits} unit={unit} />}
    />
  );
}

function MadeRow({
  title,
  made,
  unit,
}: {
  title: string;
  made: NonNullable<FitAnswer['pinForBore']>;
  unit: ShownUnit;
}) {
  if (!made.ok)
    return (
      <Row title={title} detail={sayFitRefusal(made.refusal, unit)} mark={<VerdictMark kind="no-good" />} />
    );
  const { sure } = made.value;
  return (
    <Row
      title={title}
      detail={sure ? `sure from ${sayLimits(sure, unit)}` : 'the readings are too coarse to be sure of any'}
      figure={<TwoLimits limits={made.value} unit={unit} />}
    />
  );
}

/** The larger limit over the smaller, as a drawing has them. */
function TwoLimits({ limits, unit }: { limits: Range; unit: ShownUnit }) {
  return (
    <span class="fit-limits">
      <span>{limitFigure(limits.upper, unit)}</span>
      <span>{limitFigure(limits.lower, unit)}</span>
    </span>
  );
}

function whyLines({ nominal, bore, pin, slop }: FitQuestion, { fit, clearance }: FitAnswer, unit: ShownUnit) {
  const size = (length: Length) => limitFigure(length, unit);
  return [
    {
      what: 'Limits',
      how: `nominal ${size(nominal)}; hole ${sayLimits(fit.hole, unit)}, pin ${sayLimits(fit.pin, unit)}`,
      source: fit.source,
    },
    {
      what: 'Clearance',
      how: `least: smallest hole − largest pin = ${size(fit.hole.lower)} − ${size(fit.pin.upper)} = ${signedFigure(fit.clearance.lower, unit)}; greatest: ${size(fit.hole.upper)} − ${size(fit.pin.lower)} = ${signedFigure(fit.clearance.upper, unit)}`,
    },
    { what: 'Class', how: `${fit.fitClass}: ${sayFitClass(fit)}`, source: JOINT_CLASS_SOURCE },
    ...(clearance && bore && pin && !slop
      ? [
          {
            what: 'Clearance of these two',
            how: `tightest ${size(mean(bore.tightest))} − ${size(mean(pin.tightest))} = ${signedFigure(clearance.tightest, unit)}; loosest ${size(mean(bore.loosest))} − ${size(mean(pin.loosest))} = ${signedFigure(clearance.loosest, unit)}; ${showBand(clearance.halfWidth, unit)}`,
            source: 'your readings; JCGM 100:2008; ISO 14253-1',
          },
        ]
      : []),
    ...(bore && !pin
      ? [
          {
            what: 'Pin for this bore',
            how: 'largest = tightest bore − least clearance; smallest = loosest bore − greatest clearance',
          },
        ]
      : []),
    ...(pin && !bore
      ? [
          {
            what: 'Bore for this pin',
            how: 'smallest = largest pin + least clearance; largest = smallest pin + greatest clearance',
          },
        ]
      : []),
  ];
}
