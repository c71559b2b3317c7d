import { bandOf, mean } from '../../engine/reading/estimate.ts';
import { isZero } from '../../engine/length/length.ts';
import {
  ring,
  type RingAnswer,
  type RingQuestion,
  type RingSize,
} from '../../engine/worksheets/ring/ring.ts';
import type { RingCut } from '../../engine/worksheets/ring/ring-blank.ts';
import {
  RING_NOT_PROVED,
  sayBlank,
  sayGood,
  sayHolding,
  sayProud,
  sayRingCut,
  sayRingDeed,
  sayRingRefusal,
  sayWhyNot,
} from '../../engine/worksheets/ring/say-ring.ts';
import { withUnit, figure, show, showBand, type ShownUnit } from '../../engine/length/show.ts';
import { legOf } from '../../engine/reading/settle.ts';
import { leastRing } from '../../engine/worksheets/ring/tables/ring-practice.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { LatheCaution } from '../common/lathe-caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Row } from '../common/row.tsx';
import { VerdictBand } from '../common/verdict-band.tsx';
import { InputRows } from './input-rows.tsx';
import { Lead, LeadNext, Why } from './lead.tsx';
import { ProofBefore, ProofLines } from './proof-lines.tsx';
import { RingDrawing } from './ring-drawing.tsx';
import { TakeBlank } from './take-blank.tsx';
import { ringClearances, ringQuestion } from './ring-question.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import { nextNeed } from './worksheet-plan.ts';
import type { WorksheetViewProps } from './worksheet-views.tsx';

/** A ring or shield for a recess: its sizes, the washer it comes from, and the cuts in their order. */
export function RingView({ data, plan }: WorksheetViewProps) {
  const question = ringQuestion(data);
  const need = nextNeed(plan, data.worksheet);
  const address = { at: 'worksheet', jobId: data.job.id, worksheetId: data.worksheet.id } as const;
  return (
    <WorksheetPage
      data={data}
      subtitle={
        data.worksheet.choices['locates'] === 'stem' ? 'the stem locates it' : 'the recess locates it'
      }
      {...(!question &&
        need !== undefined && {
          foot: (
            <LinkButton kind="main" href={hrefOf({ ...address, field: need })}>
              Go on
            </LinkButton>
          ),
        })}
    >
      {question ? (
        <WorksheetAnswer>
          <Answer data={data} question={question} />
        </WorksheetAnswer>
      ) : (
        <>
          <EmptyLine>{`${plan.asks} It needs the bore of the recess and the stem.`}</EmptyLine>
          <ProofBefore data={data} kind={data.worksheet.sizes['recess'] ? 'pin' : 'bore'} />
        </>
      )}
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={plan.fields.map(({ name }) => name)}
        usual={usualWords(data)}
      />
    </WorksheetPage>
  );
}

function Answer({ data, question }: { data: WorksheetData; question: RingQuestion }) {
  const { unit } = data;
  const result = ring(question);
  if (!result.ok)
    return (
      <VerdictBand kind="no-good" headline={sayRingRefusal(result.refusal, unit)}>
        {null}
      </VerdictBand>
    );
  const answer = result.value;
  const { best } = answer.fromBlanks;
  return (
    <>
      <NotProved data={data} question={question} answer={answer} />
      {best && <p class="worksheet-said">{sayBlank(best)}</p>}
      {best && <TakeBlank data={data} pieceId={best.blank.id} name={best.blank.name} />}
      {best ? (
        best.cuts.map((cut) => <CutLead key={cut.kind} cut={cut} unit={unit} />)
      ) : (
        <Sizes answer={answer} unit={unit} />
      )}
      <p class="worksheet-said">{`${sayProud(answer, unit)} Wall ${show(answer.wall, unit)}.`}</p>
      <RingDrawing question={question} answer={answer} unit={unit} />
      {best?.holding.map((holding) => (
        <p key={holding} class="worksheet-said">
          {sayHolding(holding)}
        </p>
      ))}
      <LatheCaution />
      <Blanks answer={answer} unit={unit} />
      <Why lines={whyLines(question, answer, unit)} />
    </>
  );
}

/** Readings too wide for the clearance, and the tool that would do. */
function NotProved({
  data,
  question,
  answer,
}: {
  data: WorksheetData;
  question: RingQuestion;
  answer: RingAnswer;
}) {
  const sides = [
    {
      size: answer.outside,
      limits: question.outsideClearance,
      of: question.recess.tightest,
      kind: 'bore' as const,
    },
    {
      size: answer.inside,
      limits: question.insideClearance,
      of: question.stem.tightest,
      kind: 'pin' as const,
    },
  ].filter(({ size }) => !size.provable);
  if (sides.length === 0) return null;
  return (
    <VerdictBand kind="too-close" headline={RING_NOT_PROVED}>
      {sides.map(({ size, limits, of, kind }) => (
        <ProofLines
          key={kind}
          data={data}
          limits={limits}
          value={limits.aim}
          halfWidth={size.band.halfWidth}
          verdict={{ kind: 'good' }}
          legs={[legOf(kind, of, 1)]}
        />
      ))}
    </VerdictBand>
  );
}

function CutLead({ cut, unit }: { cut: RingCut; unit: ShownUnit }) {
  return (
    <Lead label={sayRingDeed(cut)} figure={figure(cut.to, unit)} unit={unit}>
      <LeadNext>{`${figure(cut.take, unit)} off ${withUnit(figure(cut.from, unit), unit)}`}</LeadNext>
      <p>{sayGood(cut, unit)}</p>
    </Lead>
  );
}

/** Without a washer to cut it from: the sizes themselves. */
function Sizes({ answer: { outside, inside, thickness }, unit }: { answer: RingAnswer; unit: ShownUnit }) {
  const named: readonly (readonly [string, RingSize])[] = [
    ['Outside', outside],
    ['Inside', inside],
    ...(thickness ? [['Thickness, at most', thickness] as const] : []),
  ];
  return (
    <>
      {named.map(([label, size]) => (
        <Lead key={label} label={label} figure={figure(size.target, unit)} unit={unit}>
          <p>{sayGood(size, unit)}</p>
        </Lead>
      ))}
    </>
  );
}

function Blanks({ answer: { fromBlanks }, unit }: { answer: RingAnswer; unit: ShownUnit }) {
  const { best, others, ruledOut } = fromBlanks;
  const unmeasured = ruledOut.filter(({ why }) => why === 'not-measured').length;
  const wrong = ruledOut.filter(({ why }) => why !== 'not-measured');
  if (!best && wrong.length === 0 && unmeasured === 0)
    return (
      <p class="worksheet-said">
        The drawer holds no washer. Type the sizes of the one in hand below, and the cuts are worked out.
      </p>
    );
  return (
    <section class="input-rows">
      <h2>What it could be cut from</h2>
      <ul>
        {[...(best ? [best] : []), ...others].map(({ blank, cuts }) => (
          <li key={blank.id}>
            <Row
              title={blank.name}
              detail={
                cuts.length === 0
                  ? 'goes in as it is'
                  : cuts.map((cut) => `${sayRingDeed(cut)}: ${sayRingCut(cut, unit)}`).join(' ')
              }
            />
          </li>
        ))}
        {wrong.map(({ blank, why }) => (
          <li key={blank.id}>
            <Row title={blank.name} detail={`ruled out: ${sayWhyNot(why)}`} />
          </li>
        ))}
        {unmeasured > 0 && (
          <li>
            <Row
              title={unmeasured === 1 ? 'One more piece' : `${unmeasured} more pieces`}
              detail={sayWhyNot('not-measured')}
            />
          </li>
        )}
      </ul>
    </section>
  );
}

function usualWords(data: WorksheetData): Readonly<Record<string, string>> {
  const { outside, inside } = ringClearances(data);
  const usual = (size: Parameters<typeof figure>[0], source: string) =>
    `usual: ${figure(size, data.unit)} (${source})`;
  return {
    outLeast: usual(outside.lower, outside.source),
    outMost: usual(outside.upper, outside.source),
    inLeast: usual(inside.lower, inside.source),
    inMost: usual(inside.upper, inside.source),
    depth: 'not given; then nothing limits the thickness',
    stayFree: 'nothing; it may fill the recess',
    leastThickness: usual(leastRing, 'common practice, no source'),
  };
}

function whyLines(q: RingQuestion, answer: RingAnswer, unit: ShownUnit) {
  const size = (length: Parameters<typeof figure>[0]) => figure(length, unit);
  const known = (band: { readonly halfWidth: Parameters<typeof figure>[0] }) =>
    isZero(band.halfWidth)
      ? ''
      : ` The size it comes from is known to ${showBand(band.halfWidth, unit)}: its limits allow for that.`;
  return [
    {
      what: 'Outside',
      how: `recess bore − clearance = ${size(mean(q.recess.tightest))} − ${size(q.outsideClearance.aim)} = ${size(answer.outside.aim)} ${unit}, left full to the dial’s step: ${size(answer.outside.target)}.${known(bandOf(q.recess.tightest))}`,
      source: `clearance: ${q.outsideClearance.source}`,
    },
    {
      what: 'Inside',
      how: `stem + clearance = ${size(mean(q.stem.tightest))} + ${size(q.insideClearance.aim)} = ${size(answer.inside.aim)} ${unit}, cut shy to the dial’s step: ${size(answer.inside.target)}.${known(bandOf(q.stem.tightest))}`,
      source: `clearance: ${q.insideClearance.source}`,
    },
    ...(q.depth && answer.thickness
      ? [
          {
            what: 'Thickness',
            how: `at most depth − what must stay free = ${size(mean(q.depth))} − ${q.stayFree ? size(q.stayFree) : '0'}${isZero(bandOf(q.depth).halfWidth) ? '' : ` − ${size(bandOf(q.depth).halfWidth)} of band`} = ${size(answer.thickness.upper)} ${unit}`,
            source: 'geometry',
          },
        ]
      : []),
    {
      what: 'Which washer',
      how: 'the one with the fewest cuts, then with the least to come off',
      source: 'common practice, no source',
    },
  ];
}
