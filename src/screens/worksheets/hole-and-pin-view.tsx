import { mean, type Estimate } from '../../engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinAnswer,
  type HoleAndPinQuestion,
} from '../../engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { sayNominal } from '../../engine/fit/nominal.ts';
import { sayDirectPlay, sayRock } from '../../engine/worksheets/hole-and-pin/say-routes.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { figure, finerFigure, showBand, signedFigure, type ShownUnit } from '../../engine/length/show.ts';
import { sayWornAxis } from '../../engine/fit/worn-axis.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { BoreDrawing } from './bore-drawing.tsx';
import { clearanceSaid } from './clearance-said.ts';
import { clearanceLegs, holeAndPinQuestion } from './hole-and-pin-question.ts';
import { InputRows } from './input-rows.tsx';
import { ReadAgain } from './read-again.tsx';
import { Why } from './lead.tsx';
import { ProofBefore, ProofLines } from './proof-lines.tsx';
import { RouteRows } from './route-rows.tsx';
import { OWN_LIMITS } from './worksheet-data.ts';
import { nextNeed } from './worksheet-plan.ts';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { WorksheetBand } from './said-assumed.tsx';

/** How much slop, what it means at the arm's end, and every route to cure it, ranked. */
export function HoleAndPinView({ data, plan }: WorksheetViewProps) {
  const question = holeAndPinQuestion(data);
  const { choices } = data.worksheet;
  const subtitle = [choices['thread'], jointWords(choices['joint'])]
    .filter((part) => part !== undefined)
    .join(', ');
  const need = nextNeed(plan, data.worksheet);
  const address = { at: 'worksheet', jobId: data.job.id, worksheetId: data.worksheet.id } as const;
  const answer = question && holeAndPin(question);
  return (
    <WorksheetPage
      data={data}
      subtitle={subtitle === '' ? plan.name : subtitle}
      {...(!question &&
        need !== undefined && {
          foot: (
            <LinkButton kind="main" href={hrefOf({ ...address, field: need })}>
              Go on
            </LinkButton>
          ),
        })}
    >
      {question && answer ? (
        <WorksheetAnswer>
          <Answer data={data} question={question} answer={answer} />
        </WorksheetAnswer>
      ) : (
        <>
          <EmptyLine>{plan.asks} It needs a bore, a pin and how the joint runs.</EmptyLine>
          <ProofBefore data={data} kind="bore" />
        </>
      )}
      <ReadAgain data={data} names={['rockInAll', 'slop']} />
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={[
          'bore',
          'pin',
          'nominal',
          'thread',
          'joint',
          'fitSystem',
          'lower',
          'upper',
          'boreLength',
          'reach',
          'bellMouth',
          'rockInAll',
          'slop',
          'wall',
          'leastWall',
          'thickness',
          'facesCarry',
          'shankPasses',
          'pinSkin',
          'axis',
          'holeOff',
          'offBy',
          'partMetal',
          'bushingMetal',
        ]}
        usual={{
          fitSystem: 'usual: common practice, no source',
          nominal: 'usual: the bolt’s, else the size nearest the pin (common practice, no source)',
          partMetal: 'not said yet; asked for a bushing',
          bushingMetal: 'not said yet; asked for a bushing',
          axis: 'usual: where the wear is, as a reamer goes',
          rockInAll: 'not read; bore less pin counts',
          slop: 'not read; bore less pin counts',
          leastWall: 'usual: half the hole (common practice, no source)',
          ...(answer && usualLimits(answer, data.unit)),
        }}
      />
    </WorksheetPage>
  );
}

type AnswerProps = {
  readonly data: WorksheetViewProps['data'];
  readonly question: HoleAndPinQuestion;
  readonly answer: HoleAndPinAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const deciding = clearanceSaid(answer, unit);
  const rock = sayRock(answer, unit);
  const headline = sayVerdict(answer.verdict, deciding);
  return (
    <>
      <WorksheetBand kind={answer.verdict.kind} headline={headline}>
        {answer.direct && <p>{sayDirectPlay(answer.direct)}</p>}
        {rock !== undefined && <p>{rock}</p>}
        {answer.limits.source !== OWN_LIMITS && <p>{sayNominal(answer.nominal, unit)}</p>}
      </WorksheetBand>
      <BoreDrawing
        bore={question.bore.loosest}
        pin={question.pin.loosest}
        clearance={answer.loosest}
        unit={unit}
        good={answer.verdict.kind === 'good'}
      />
      <NumberLine
        value={deciding.value}
        halfWidth={deciding.halfWidth}
        limits={answer.limits}
        verdict={answer.verdict.kind}
        unit={unit}
        label={deciding.quantity}
      />
      {!answer.direct && (
        <ProofLines
          data={data}
          limits={answer.limits}
          value={deciding.value}
          halfWidth={deciding.halfWidth}
          verdict={answer.verdict}
          legs={clearanceLegs(question)}
        />
      )}
      {answer.axis && <p class="worksheet-said">{sayWornAxis(answer.axis, question.keepsAxis, unit)}</p>}
      <RouteRows data={data} routes={answer.routes} />
      <Why lines={whyLines(question, answer, unit)} />
    </>
  );
}

function jointWords(joint: string | undefined): string | undefined {
  const words: Readonly<Record<string, string>> = {
    located: 'fixed by its nut',
    turns: 'turns',
    'turns-under-load': 'turns under load',
    slides: 'slides by hand',
    pressed: 'pressed',
  };
  return joint === undefined ? undefined : words[joint];
}

function usualLimits({ limits }: HoleAndPinAnswer, unit: ShownUnit): Readonly<Record<string, string>> {
  return {
    lower: limits.lower ? `usual: ${signedFigure(limits.lower, unit)} (${limits.source})` : 'no least',
    upper: limits.upper ? `usual: ${signedFigure(limits.upper, unit)} (${limits.source})` : 'no most',
  };
}

function whyLines({ bore, pin, arm }: HoleAndPinQuestion, answer: HoleAndPinAnswer, unit: ShownUnit) {
  const size = (length: Parameters<typeof figure>[0]) => figure(length, unit);
  return [
    ...(answer.direct ? readLines(answer, unit) : workedLines({ bore, pin }, answer, unit)),
    { what: 'Limits', how: limitsWords(answer, unit), source: answer.limits.source },
    {
      what: 'Band',
      how: 'Scatter of the readings and the error limits of the tools, at 95 %. Good only if the band lies inside the limits; no good only if it lies outside.',
      source: 'JCGM 100:2008; ISO 14253-1',
    },
    ...(arm && answer.rock
      ? [
          {
            what: 'Rock at the end of the arm',
            how: `± slop · reach / bore length = ${size(answer.loosest)} · ${size(arm.reach)} / ${size(arm.boreLength)}${arm.bellMouth ? ` less ${size(arm.bellMouth)}` : ''} = ±${size(answer.rock.eachWay)}`,
            source: 'geometry of a pin that touches at both ends',
          },
        ]
      : []),
  ];
}

function readLines({ direct, loosest, band }: HoleAndPinAnswer, unit: ShownUnit) {
  const how = direct === 'rock' ? 'rock · bore length / (2 · reach)' : 'read with an indicator at the bore';
  return [
    { what: 'Slop', how: `${how} = ${figure(loosest, unit)} ${unit}, ${showBand(band.halfWidth, unit)}` },
  ];
}

function workedLines(
  { bore, pin }: Pick<HoleAndPinQuestion, 'bore' | 'pin'>,
  answer: HoleAndPinAnswer,
  unit: ShownUnit,
) {
  const read = (estimate: Estimate) => finerFigure(mean(estimate), unit);
  return [
    {
      what: 'Slop, at the loosest place',
      how: `bore − pin = ${read(bore.loosest)} − ${read(pin.loosest)} = ${figure(answer.loosest, unit)} ${unit}, ${showBand(answer.band.halfWidth, unit)}`,
    },
    {
      what: 'Clearance, at the tightest place',
      how: `${read(bore.tightest)} − ${read(pin.tightest)} = ${figure(answer.tightest, unit)} ${unit}, ${showBand(answer.tightestBand.halfWidth, unit)}`,
    },
  ];
}

function limitsWords({ limits: { lower, upper } }: HoleAndPinAnswer, unit: ShownUnit): string {
  if (lower && upper) return `${signedFigure(lower, unit)} to ${signedFigure(upper, unit)} ${unit}`;
  if (lower) return `${signedFigure(lower, unit)} ${unit} or more`;
  return upper ? `${signedFigure(upper, unit)} ${unit} or less` : 'none';
}
