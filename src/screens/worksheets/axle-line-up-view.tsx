import type { AxleLayoutName } from '../../engine/worksheets/axle-line-up/axle-layout.ts';
import { isNegative } from '../../engine/length/length.ts';
import {
  lineUp,
  type LineUpAnswer,
  type LineUpQuestion,
} from '../../engine/worksheets/axle-line-up/line-up.ts';
import {
  lineUpVerdict,
  sayCheck,
  sayLineUp,
  sayLineUpRefusal,
  sayNotJudged,
} from '../../engine/worksheets/axle-line-up/say-line-up.ts';
import { isShared, sayWorst } from '../../engine/worksheets/axle-line-up/say-line-up-shared.ts';
import { figure } from '../../engine/length/show.ts';
import { axleLayouts } from '../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { isReadOfTheWhole } from '../../store/parts-changed.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { VerdictBand } from '../common/verdict-band.tsx';
import { AxleDrawing } from './axle-drawing.tsx';
import { isAxleLayout } from './axle-line-up-plan.ts';
import { axleLimits, axleLineUpQuestion } from './axle-line-up-question.ts';
import { axleWhy } from './axle-line-up-why.ts';
import { settled } from './axle-settler.ts';
import { AxleGives, AxleSpacerList } from './axle-spacer-list.tsx';
import { useCutSince } from './cut-since.ts';
import { InputRows } from './input-rows.tsx';
import { Why } from './lead.tsx';
import { ProofBefore } from './proof-lines.tsx';
import { ReadAgain } from './read-again.tsx';
import { SinceCut, SinceCutAction } from './since-cut.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { nextNeed } from './worksheet-plan.ts';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { WorksheetBand } from './said-assumed.tsx';

/** The lengths of all spacers on an axle, what can't hold, and what would have to give. */
export function AxleLineUpView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job } = data;
  const question = axleLineUpQuestion(data);
  const result = question && lineUp(question);
  const need = nextNeed(plan, worksheet);
  const address = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const since = useCutSince(data);
  const names = plan.fields.map(({ name }) => name);
  const isOnHand = (name: string) => name.startsWith('onHand-');
  // What is read on the machine comes last and comes from Fit-up; until then it would only lengthen the list.
  const isUnread = (name: string) => name.endsWith('Read') && worksheet.sizes[name] === undefined;
  return (
    <WorksheetPage
      data={data}
      subtitle={layoutWords(data) ?? plan.name}
      {...(need !== undefined
        ? {
            foot: (
              <LinkButton kind="main" href={hrefOf({ ...address, field: need })}>
                Go on
              </LinkButton>
            ),
          }
        : since && since.notGiven.length > 0 && { foot: <SinceCutAction data={data} since={since} /> })}
    >
      {question && result?.ok === true && (
        <WorksheetAnswer>
          {since && since.notGiven.length > 0 && <SinceCut data={data} since={since} />}
          <ReadAgain data={data} names={names.filter((name) => isReadOfTheWhole(worksheet, name))} />
          <Answer data={data} question={question} answer={result.value} />
        </WorksheetAnswer>
      )}
      {result?.ok === false && <EmptyLine>{sayLineUpRefusal(result.refusal)}</EmptyLine>}
      {!result && (
        <>
          <EmptyLine>{`${plan.asks} It needs ${plan.needs.length > 1 ? 'the sizes below' : 'to know what sits on the axle'}.`}</EmptyLine>
          <ProofBefore data={data} kind="length" />
        </>
      )}
      {names.some(isOnHand) && (
        <InputRows
          data={data}
          plan={plan}
          title="Spacers on hand"
          names={names.filter(isOnHand)}
          usual={Object.fromEntries(names.filter(isOnHand).map((name) => [name, 'none: make it'] as const))}
        />
      )}
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={names.filter((name) => !isOnHand(name) && !isUnread(name))}
        usual={usualWords(data)}
      />
    </WorksheetPage>
  );
}

type AnswerProps = {
  readonly data: WorksheetData;
  readonly question: LineUpQuestion;
  readonly answer: LineUpAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const { layout, side, sizes } = question;
  const headline = sayLineUp(answer, { layout, side, unit });
  const notJudged = sayNotJudged(answer).filter((said) => said !== headline);
  const isShort = answer.spacers.some(({ value, deed }) => isNegative(value) || deed.kind === 'too-short');
  return (
    <>
      <WorksheetBand kind={lineUpVerdict(answer)} headline={headline} />
      {isShort && <AxleGives title="One of these has to give" gives={answer.gives} unit={unit} />}
      <AxleSpacerList data={data} question={question} answer={answer} />
      <AxleDrawing question={question} answer={answer} unit={unit} />
      {layout.discs.length > 0 && (
        <p class="axle-said">
          Cut the spacer between bracket and leg last. Enter the others as you measured them: it is cut to
          them.
        </p>
      )}
      {notJudged.map((said) => (
        <VerdictBand key={said} kind="too-close" headline={said} />
      ))}
      <AtTheWorst answer={answer} unit={unit} />
      {[...answer.checks, ...answer.shared.filter(({ verdict }) => verdict.kind !== 'good')].map((check) => {
        const said = sayCheck(check, unit);
        return (
          <section key={`${check.kind} ${check.terms[0]?.of ?? ''} ${check.name}`}>
            {said !== headline && <VerdictBand kind={check.verdict.kind} headline={said} />}
            <NumberLine
              value={check.value}
              halfWidth={check.band.halfWidth}
              limits={check.limits}
              verdict={check.verdict.kind}
              unit={unit}
              label={LINE_LABELS[check.kind] ?? check.name}
            />
            {check.verdict.kind === 'too-close' && (
              <p class="axle-said">
                {settled(data, question, { ...check, sizes: { ...sizes, ...question.onHand } })}
              </p>
            )}
            {check.kind === 'line' && check.verdict.kind === 'no-good' && (
              <AxleGives title="For both to hold, one of these" gives={check.gives} unit={unit} />
            )}
          </section>
        );
      })}
      {question.slides === 'caliper' && layout.discs.length > 0 && (
        <p class="axle-said">
          The caliper follows its pads by itself, so the bracket’s float is only freedom to turn.
        </p>
      )}
      <Anchor data={data} question={question} />
      <Why lines={axleWhy(question, answer, unit)} />
    </>
  );
}

/** What all parts share, when every one of them is off the worst way at once. */
function AtTheWorst({ answer, unit }: { answer: LineUpAnswer; unit: AnswerProps['data']['unit'] }) {
  const lines = answer.shared
    .filter(isShared)
    .filter(({ verdict }) => verdict.kind === 'good')
    .map((check) => sayWorst(check, unit));
  if (lines.length === 0) return null;
  return (
    <section class="axle-gives axle-worst">
      <h2>At the worst of what is allowed</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

const LINE_LABELS: Readonly<Record<string, string>> = {
  line: 'off by',
  'pad-wear': 'left',
  'disc-in-slot': 'room',
  'side-play': 'side play',
  'wheel-centre': 'differ by',
  opening: 'room left',
  float: 'float',
  'wheel-place': 'off by',
  'slot-middle': 'off by',
};

/** A bracket on a sleeve turns with the wheel unless something holds it. */
function Anchor({ data, question }: { data: WorksheetData; question: LineUpQuestion }) {
  const { anchor } = data.worksheet.choices;
  if (question.layout.discs.length === 0) return null;
  if (anchor !== undefined && anchor !== 'none') return null;
  return (
    <Caution heading="What holds the bracket?">
      A bracket on a sleeve is free to turn. Name the torque arm or lug that holds it, and keep its bolt
      through metal on both sides.
    </Caution>
  );
}

const LAYOUT_WORDS: Readonly<Record<AxleLayoutName, string>> = {
  'front-one-disc': 'Front, one disc',
  'front-two-discs': 'Front, two discs',
  drum: 'Drum brake',
  'rear-sprocket': 'Rear, sprocket',
  'trailer-hub': 'Trailer hub',
};

function layoutWords({ worksheet: { choices } }: WorksheetData): string | undefined {
  const { layout, side } = choices;
  if (!isAxleLayout(layout)) return undefined;
  return axleLayouts[layout].hasSide && side !== undefined
    ? `${LAYOUT_WORDS[layout]}, ${side}`
    : LAYOUT_WORDS[layout];
}

/** What stands in for what was not given. */
function usualWords(data: WorksheetData): Readonly<Record<string, string>> {
  const { spacer, opening, line, wearMargin, discClearance, discRunout } = axleLimits(data);
  const limit = ({ by, source }: typeof spacer) => `usual: ±${figure(by, data.unit)} (${source})`;
  return {
    offset: 'none: in the middle',
    ...Object.fromEntries(
      ['Slot', 'Bracket', 'Float'].map((name) => [`right${name}`, 'as on the left'] as const),
    ),
    first: 'the wheel on its centre',
    ...(data.worksheet.choices['slides'] === 'bracket' && { padWear: 'needed to judge the float' }),
    spacerLimit: limit(spacer),
    openingLimit: limit(opening),
    lineLimit: limit(line),
    wearMargin: `usual: ${figure(wearMargin.by, data.unit)} (${wearMargin.source})`,
    discClearance: `usual: ${figure(discClearance.by, data.unit)} (${discClearance.source})`,
    ...Object.fromEntries(
      ['discRunout', 'leftDiscRunout', 'rightDiscRunout'].map(
        (name) => [name, `not read: ${figure(discRunout.by, data.unit)} is counted`] as const,
      ),
    ),
    ...Object.fromEntries(
      ['', 'left', 'right'].flatMap((side) =>
        ['slotWidth', 'discThickness'].map(
          (name) =>
            [
              side === '' ? name : side + name.charAt(0).toUpperCase() + name.slice(1),
              'needed: the disc may rub',
            ] as const,
        ),
      ),
    ),
    anchor: 'not named yet',
  };
}
