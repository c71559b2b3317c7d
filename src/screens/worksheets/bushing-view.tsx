import type { BushingWarning } from '../../engine/press/bushing-warnings.ts';
import { openedFirst } from '../../engine/worksheets/bushing/cuts-of-bushing.ts';
import { bushing, type BushingAnswer, type BushingQuestion } from '../../engine/press/bushing.ts';
import { say } from '../../engine/length/say.ts';
import { sayBushingRefusal, sayBushingWarning, sayForce } from '../../engine/press/say-bushing.ts';
import { sayLimits } from '../../engine/fit/say-fit.ts';
import { sayNominal } from '../../engine/fit/nominal.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import { isMore } from '../../engine/length/length.ts';
import { legOf } from '../../engine/reading/settle.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { mostReamed } from '../../engine/press/tables/press-practice.ts';
import { sayWornAxis } from '../../engine/fit/worn-axis.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { BushingDrawing } from './bushing-drawing.tsx';
import { bushingQuestion, pressClassFor } from './bushing-question.ts';
import { CutRows, PressRows } from './bushing-rows.tsx';
import { bushingWhy } from './bushing-why.ts';
import { systemFor } from './fit-fields.ts';
import { InputRows } from './input-rows.tsx';
import { Lead, LeadNext, Why } from './lead.tsx';
import { ProofBefore, ProofLines } from './proof-lines.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { nextNeed } from './worksheet-plan.ts';
import { BushingCaution } from './worksheet-cautions.tsx';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { AssumedLead, WorksheetBand } from './said-assumed.tsx';

/** What to ream, turn and bore next, how hard it presses, and whether it holds. */
export function BushingView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job, unit } = data;
  const question = bushingQuestion(data);
  const answer = question && bushing(question);
  const need = nextNeed(plan, worksheet);
  const next = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: need ?? 'bore' });
  return (
    <WorksheetPage
      data={data}
      subtitle={
        question ? `${shortName(question.bushing)} in ${uncapital(shortName(question.part))}` : plan.name
      }
      {...(need !== undefined && {
        foot: (
          <LinkButton kind="main" href={next}>
            Go on
          </LinkButton>
        ),
      })}
    >
      {!question && (
        <EmptyLine>
          {plan.asks} It needs the worn bore, its pin, the wall, and what both are made of.
        </EmptyLine>
      )}
      {answer?.ok === false && (
        <WorksheetBand kind="no-good" headline={sayBushingRefusal(answer.refusal, unit)} />
      )}
      {question && answer?.ok === true && (
        <WorksheetAnswer>
          <Answer data={data} question={question} answer={answer.value} />
        </WorksheetAnswer>
      )}
      <Inputs data={data} plan={plan} question={question} />
      <BushingCaution />
    </WorksheetPage>
  );
}

function Inputs({
  data,
  plan,
  question,
}: WorksheetViewProps & { readonly question: BushingQuestion | undefined }) {
  const system = systemFor(data, 'bore');
  const [inside, press] = system === 'iso' ? ['isoClass', 'isoPress'] : ['ansiClass', 'ansiPress'];
  const names = [
    'bore',
    'pin',
    'nominal',
    'joint',
    'axis',
    'wall',
    'thickWall',
    'length',
    'partMetal',
    'bushingMetal',
    'reamTo',
    'reamed',
    'outside',
  ];
  const more = [
    'plating',
    'finish',
    'condition',
    'cold',
    'shopTemperature',
    'hotTemperature',
    'coldTemperature',
    'pinMetal',
  ];
  const own = ['leastWall', 'leastBushingWall', 'partYield', 'bushingYield'];
  return (
    <InputRows
      data={data}
      plan={plan}
      title="Worked out from"
      names={[...names, 'system', inside, press, ...more, ...own]}
      usual={{
        nominal: 'usual: the size nearest the pin (common practice, no source)',
        axis: 'usual: where the wear is, as a reamer goes',
        thickWall: 'usual: solid all round, the hardest to press into',
        reamTo: 'usual: the next standard reamer',
        system: `${system === 'iso' ? 'ISO 286' : 'ANSI B4.1'}, by the unit of the worn bore`,
        ...(question && { [inside]: `usual: ${question.insideClass} (common practice, no source)` }),
        [press]: `usual: ${pressClassFor(data, system)} (common practice, no source)`,
        plating: 'none',
        hotTemperature: 'not said; then nothing is judged hot',
        coldTemperature: 'not said; then nothing is judged cold',
        pinMetal: 'not said; asked for the clearance hot and cold',
        finish: 'usual: reamed and finely turned',
        condition: 'usual: neither hardened nor plated',
        cold: 'usual: a freezer',
        shopTemperature: 'usual: 20 °C',
        leastWall: 'usual: half the hole (common practice, no source)',
        leastBushingWall: 'usual: .060 in (common practice, no source)',
        partYield: yieldWords(question?.part.yieldMpa?.low),
        bushingYield: yieldWords(question?.bushing.yieldMpa?.low),
      }}
    />
  );
}

function shortName({ name }: BushingQuestion['part']): string {
  return name.replace(/ \(.*/, '');
}

function yieldWords(mpa: number | undefined): string {
  return mpa === undefined ? 'not given' : `usual: ${mpa} MPa (from memory)`;
}

type AnswerProps = {
  readonly data: WorksheetData;
  readonly question: BushingQuestion;
  readonly answer: BushingAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const { measured, warnings } = answer;
  const minds = warnings.filter(({ weighs }) => weighs === 'mind');
  return (
    <>
      <Stops warnings={warnings} unit={unit} />
      {measured && (
        <WorksheetBand
          kind={measured.verdict.kind}
          headline={sayVerdict(measured.verdict, { ...measured, quantity: 'interference', unit })}
        />
      )}
      <NextCut answer={answer} step={question.step} unit={unit} />
      <BushingDrawing answer={answer} unit={unit} />
      <p class="worksheet-said">{sayNominal(answer.nominal, unit)}</p>
      {answer.axis && answer.next === 'ream' && (
        <p class="worksheet-said">{sayWornAxis(answer.axis, question.keepsAxis, unit)}</p>
      )}
      {measured && question.reamed && question.outside && (
        <>
          <NumberLine {...measured} verdict={measured.verdict.kind} unit={unit} label="interference" />
          <ProofLines
            data={data}
            {...measured}
            legs={[legOf('pin', question.outside.loosest, 1), legOf('bore', question.reamed.loosest, -1)]}
          />
        </>
      )}
      {!measured && <ProofBefore data={data} kind={question.reamed ? 'pin' : 'bore'} />}
      {minds.map((warning) => (
        <p key={`${warning.code} ${sayBushingWarning(warning, unit)}`} class="proof-lines">
          {sayBushingWarning(warning, unit)}
        </p>
      ))}
      <CutRows answer={answer} unit={unit} />
      <PressRows answer={answer} unit={unit} />
      <Why lines={bushingWhy(question, answer, unit)} />
    </>
  );
}

/** What must be put right first: said before any cut. */
function Stops({ warnings, unit }: { warnings: readonly BushingWarning[]; unit: ShownUnit }) {
  const [first, ...others] = warnings.filter(({ weighs }) => weighs === 'stop');
  if (!first) return null;
  return (
    <WorksheetBand kind="no-good" headline={sayBushingWarning(first, unit)}>
      {others.map((warning) => (
        <p key={warning.code}>{sayBushingWarning(warning, unit)}</p>
      ))}
    </WorksheetBand>
  );
}

/** The next cut, as large as it is read from the lathe. */
function NextCut({
  answer,
  step,
  unit,
}: {
  answer: BushingAnswer;
  step: BushingQuestion['step'];
  unit: ShownUnit;
}) {
  const { next, ream, reamTakes, inside, insideTarget, insideTo, stress, measured } = answer;
  if (measured?.verdict.kind === 'no-good')
    return (
      <TurnLead
        label={measured.verdict.way === 'over' ? 'Turn it down to' : 'Turn a new one to'}
        answer={answer}
        unit={unit}
      />
    );
  switch (next) {
    case 'ream':
      return (
        <AssumedLead label="Ream to" figure={ream.name === '' ? show(ream.size, unit) : ream.name}>
          <LeadNext>{`takes ${show(reamTakes, unit)}, then measure it`}</LeadNext>
          {isMore(reamTakes, mostReamed) && (
            <p>{`Drill or bore it to ${show(openedFirst(ream.size, step), unit)} first: a reamer only sizes.`}</p>
          )}
        </AssumedLead>
      );
    case 'turn':
      return <TurnLead label="Turn the bushing to" answer={answer} unit={unit} />;
    case 'press':
      return (
        <Lead label="Press it, then bore to" figure={figure(insideTo, unit)} unit={unit}>
          <LeadNext>{sayLimits(inside, unit)}</LeadNext>
          {!insideTarget.ok && <p>{say(insideTarget.refusal, unit)}</p>}
          {stress?.force && <p>{`It takes up to ${sayForce(stress.force.pressN, unit)} on the press.`}</p>}
        </Lead>
      );
    default:
      return next satisfies never;
  }
}

function TurnLead({
  label,
  answer: { turn, turnTo, turnTarget, measured },
  unit,
}: {
  label: string;
  answer: BushingAnswer;
  unit: ShownUnit;
}) {
  const Figure = measured ? Lead : AssumedLead;
  return (
    <Figure label={label} figure={figure(turnTo, unit)} unit={unit}>
      <LeadNext>{sayLimits(turn, unit)}</LeadNext>
      {!turnTarget.ok && <p>{say(turnTarget.refusal, unit)}</p>}
    </Figure>
  );
}
