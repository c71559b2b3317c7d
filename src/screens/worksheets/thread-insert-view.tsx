import { LEAST_FLOOR } from '../../engine/thread/insert-lengths.ts';
import { STI_CAUTION, tapName } from '../../engine/thread/tap-name.ts';
import type { Thread } from '../../engine/thread/threads.ts';
import { legOf } from '../../engine/reading/settle.ts';
import { figure, show, showBand, type ShownUnit } from '../../engine/length/show.ts';

import { mean } from '../../engine/reading/estimate.ts';
import { absolute, minus, zero } from '../../engine/length/length.ts';
import { sayInsertRefusal } from '../../engine/worksheets/thread-insert/say-insert-refusal.ts';
import {
  FLOOR_UNKNOWN,
  sayDrillSize,
  sayInsertDrill,
  sayInsertHole,
  sayInsertLength,
  sayInsertWall,
  sayPercent,
} from '../../engine/worksheets/thread-insert/say-insert.ts';
import {
  threadInsert,
  type InsertAnswer,
  type InsertQuestion,
} from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import type { Verdict } from '../../engine/reading/verdict.ts';
import { sayInsertAxis, wornAxis } from '../../engine/fit/worn-axis.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Row } from '../common/row.tsx';
import { VerdictMark, type VerdictKind } from '../common/verdict-band.tsx';
import { InputRows } from './input-rows.tsx';
import { verdictOfHole } from './insert-verdict.ts';
import { InsertDrawing } from './insert-drawing.tsx';
import { Lead, LeadNext, Why } from './lead.tsx';
import { ProofLines } from './proof-lines.tsx';
import { threadInsertQuestion } from './thread-insert-question.ts';
import { nextNeed } from './worksheet-plan.ts';
import { InsertCaution } from './worksheet-cautions.tsx';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { AssumedLead, WorksheetBand } from './said-assumed.tsx';

/** Which drill, or none, which tap, what length, what wall is left. */
export function ThreadInsertView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job, unit } = data;
  const question = threadInsertQuestion(data);
  const result = question && threadInsert(question);
  const need = nextNeed(plan, worksheet);
  const blind = worksheet.choices['bottom'] === 'blind';
  const next = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: need ?? 'hole' });
  return (
    <WorksheetPage
      data={data}
      subtitle={
        question ? `${question.thread.designation.replace('x', ' × ')} in ${question.metal}` : plan.name
      }
      {...(need !== undefined && {
        foot: (
          <LinkButton kind="main" href={next}>
            {need === 'hole' ? 'Give the hole as it is' : 'Go on'}
          </LinkButton>
        ),
      })}
    >
      {!question && <EmptyLine>{plan.asks} It needs a thread.</EmptyLine>}
      {result?.ok === false && (
        <WorksheetBand kind="no-good" headline={sayInsertRefusal(result.refusal, unit)} />
      )}
      {question && result?.ok === true && (
        <WorksheetAnswer>
          <Answer data={data} question={question} answer={result.value} />
        </WorksheetAnswer>
      )}
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={[
          'thread',
          'hole',
          'metal',
          'thickness',
          'wall',
          'centreToEdge',
          'leastWall',
          'bottom',
          ...(blind ? ['tap', 'leastFloor'] : []),
        ]}
        usual={{
          hole: 'solid metal',
          leastWall: 'usual: half the bolt’s diameter (common practice, no source)',
          leastFloor: `usual: ${show(LEAST_FLOOR, unit)} (common practice, no source)`,
        }}
      />
      <InsertCaution />
    </WorksheetPage>
  );
}

type AnswerProps = {
  readonly data: WorksheetViewProps['data'];
  readonly question: InsertQuestion;
  readonly answer: InsertAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const kind = verdictOfHole(answer);
  // A hole larger than the bolt was its clearance hole once.
  const axis =
    question.hole && wornAxis({ loosest: question.hole.loosest, nominal: question.thread.major, most: zero });
  const { hole, limits } = answer;
  const range = { lower: limits.minorLeast, upper: limits.minorMost, source: limits.minorMostSource };
  const { tightest, loosest, band } = hole;
  const shown = hole.state === 'over' ? loosest : tightest;
  return (
    <>
      <InsertLead answer={answer} thread={question.thread} hangs={kind === undefined} />
      {kind && shown && band && (
        <WorksheetBand
          kind={kind}
          headline={sayVerdict(holeVerdict(kind, answer), {
            quantity: 'hole',
            unit,
            limits: range,
            value: shown,
            halfWidth: band.halfWidth,
          })}
        >
          <p>{sayInsertHole(answer, unit)}</p>
        </WorksheetBand>
      )}
      {axis && <p class="worksheet-said">{sayInsertAxis(axis, unit)}</p>}
      <InsertDrawing answer={answer} thread={question.thread.designation} unit={unit} />
      {kind && shown && band && (
        <>
          <NumberLine
            value={shown}
            halfWidth={band.halfWidth}
            limits={range}
            verdict={kind}
            unit={unit}
            label="hole"
          />
          {hole.state === 'run-drill-through-anyway' && (
            <ProofLines
              data={data}
              limits={range}
              value={shown}
              halfWidth={band.halfWidth}
              verdict={{ kind: 'too-close', near: 'lower', short: band.halfWidth }}
              legs={question.hole ? [legOf('bore', question.hole.tightest, 1)] : []}
            />
          )}
        </>
      )}
      <AnswerRows answer={answer} unit={unit} />
      <Why lines={whyLines(question, answer, unit)} />
    </>
  );
}

/** The drill, as large as it is stamped; or none. */
function InsertLead({
  answer: { hole, drill },
  thread,
  hangs,
}: {
  answer: InsertAnswer;
  thread: Thread;
  /** No verdict stands beside it that says what was assumed. */
  hangs: boolean;
}) {
  const tap = tapName(thread.designation, 'insert');
  if (hole.state === 'straight-to-tap') {
    return (
      <Lead label="No drill" figure="tap it">
        <LeadNext>{`The hole is to size: ${tap}`}</LeadNext>
        <p>{STI_CAUTION}</p>
      </Lead>
    );
  }
  if (hole.state === 'over') {
    return (
      <Lead label="Hole over size" figure={sayPercent(hole.percent ?? 0)}>
        <LeadNext>of thread is left</LeadNext>
      </Lead>
    );
  }
  const percent = hole.percentAfterDrill ?? drill.percent;
  const Figure = hangs ? AssumedLead : Lead;
  return (
    <Figure
      label={hole.state === 'run-drill-through-anyway' ? 'Run through anyway' : 'Drill'}
      figure={drill.drill.name}
    >
      <LeadNext>{`then the ${tap} · ${sayPercent(percent)}`}</LeadNext>
      <p>{STI_CAUTION}</p>
    </Figure>
  );
}

/** The hole's verdict against its limits, in the engine's terms. */
function holeVerdict(
  kind: VerdictKind,
  { hole: { state, tightest, overBy }, limits }: InsertAnswer,
): Verdict {
  if (kind === 'good') return { kind: 'good' };
  if (state === 'over' && overBy) return { kind: 'no-good', way: 'over', by: overBy };
  const short = tightest ? absolute(minus(limits.minorLeast, tightest)) : zero;
  return kind === 'too-close'
    ? { kind: 'too-close', near: state === 'straight-to-tap' ? 'upper' : 'lower', short }
    : { kind: 'no-good', way: 'under', by: short };
}

function AnswerRows({ answer, unit }: { answer: InsertAnswer; unit: ShownUnit }) {
  const { drill, wallLeft, lengths, limits, blindDepth } = answer;
  const neighbours = [
    drill.below,
    { drill: drill.drill, percent: drill.percent, insideLimits: drill.insideLimits, listed: true },
    drill.above,
  ];
  return (
    <section class="input-rows">
      <h2>Drill</h2>
      <ul>
        {neighbours.map(
          (neighbour) =>
            neighbour && (
              <li key={neighbour.drill.name}>
                <Row
                  title={
                    'listed' in neighbour
                      ? `${sayDrillSize(neighbour.drill)}, this one`
                      : sayDrillSize(neighbour.drill)
                  }
                  detail={neighbour.insideLimits ? 'inside the hole’s limits' : 'outside the hole’s limits'}
                  figure={sayPercent(neighbour.percent)}
                />
              </li>
            ),
        )}
        <li>
          <Row
            title="Hole before the tap"
            detail={limits.minorMostSource}
            figure={`${figure(limits.minorLeast, unit)} to ${figure(limits.minorMost, unit)}`}
          />
        </li>
      </ul>
      {wallLeft && (
        <>
          <h2>Wall</h2>
          <Row
            title={wallLeft.enough ? 'Left after tapping' : 'Too thin after tapping'}
            detail={sayInsertWall(wallLeft, unit)}
            figure={figure(wallLeft.wall, unit)}
            mark={<VerdictMark kind={wallLeft.enough ? 'good' : 'no-good'} />}
          />
        </>
      )}
      {blindDepth?.floorMissing && (
        <WorksheetBand kind="no-good" headline="The floor under the hole is too thin." />
      )}
      {blindDepth && !blindDepth.floor && <WorksheetBand kind="too-close" headline={FLOOR_UNKNOWN} />}
      <h2>Insert</h2>
      <p class="worksheet-said">{sayInsertLength(answer, unit)}</p>
      <ul>
        {lengths.map((length) => (
          <li key={length.times}>
            <Row
              title={`${length.times}${length.chosen ? ', this one' : ''}`}
              detail={
                length.trimOff
                  ? `${show(length.trimOff, unit)} longer than the metal`
                  : `${figure(length.installedLeast, unit)} to ${figure(length.installedMost, unit)} when it is in`
              }
              figure={show(length.nominal, unit)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

function whyLines({ thread, hole }: InsertQuestion, answer: InsertAnswer, unit: ShownUnit) {
  const { limits, drill } = answer;
  const size = (length: Parameters<typeof show>[0]) => show(length, unit);
  return [
    {
      what: 'Least hole',
      how: `D + 0.216506 P = ${size(thread.major)} + 0.216506 · ${size(thread.pitch)} = ${size(limits.minorLeast)}`,
      source: 'ASME B18.29.1, B18.29.2M, note 3',
    },
    { what: 'Greatest hole', how: size(limits.minorMost), source: limits.minorMostSource },
    {
      what: 'Tapped',
      how: `pitch diameter at least ${size(limits.pitchLeast)}, major at least ${size(limits.majorLeast)}`,
      source: 'ASME B18.29.1, B18.29.2M, note 3',
    },
    { what: 'Drill', how: sayInsertDrill(answer, unit) },
    {
      what: 'Percent of thread',
      how: `(major − hole) / (1.299038 P) = ${sayPercent(drill.percent)} with the drill`,
      source: 'handbook formula',
    },
    ...(hole
      ? [
          {
            what: 'Hole now',
            how: `tightest ${size(mean(hole.tightest))}, loosest ${size(mean(hole.loosest))}${answer.hole.band ? `, ${showBand(answer.hole.band.halfWidth, unit)}` : ''}`,
            source: 'your readings; JCGM 100:2008; ISO 14253-1',
          },
        ]
      : []),
  ];
}
