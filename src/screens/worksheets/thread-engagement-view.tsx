import { boltGrip, usualNutHeight } from '../../engine/thread/bolt-grip.ts';
import { clampNewtons, preloadsAtOneTorqueKn, torqueNewtonMetres } from '../../engine/thread/bolt-torque.ts';
import { PSI_PER_MPA } from '../../engine/material/material.ts';
import {
  sayEngagement,
  sayEngagementRefusal,
  sayEngagementShare,
  sayForce,
  forceFigure,
} from '../../engine/worksheets/thread-engagement/say-engagement.ts';
import { figure, show, showBand, type ShownUnit } from '../../engine/length/show.ts';
import {
  ENGAGEMENT_SOURCE,
  engagementLegs,
  threadEngagement,
  type EngagementAnswer,
  type EngagementQuestion,
} from '../../engine/worksheets/thread-engagement/thread-engagement.ts';
import { stressAreaSquareInches } from '../../engine/thread/thread-strength.ts';
import { otherTorques, sayTorque, sayWorkedTorque, torqueIn } from '../../engine/thread/torque.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Row } from '../common/row.tsx';
import { EngagementDrawing } from './engagement-drawing.tsx';
import { GripRows, GripVerdict, gripWhy } from './grip-rows.tsx';
import { InputRows } from './input-rows.tsx';
import { LeadNext, Why } from './lead.tsx';
import { ProofLines } from './proof-lines.tsx';
import { boltFields } from './thread-engagement-plan.ts';
import {
  engagementQuestion,
  gripQuestion,
  heldOf,
  parentStrength,
  torqueGiven,
} from './thread-engagement-question.ts';
import { sayAssumed } from '../../engine/reading/say-assumed.ts';
import { capital } from '../../engine/length/say-words.ts';
import { isDryAssumed } from './assumed-choices.ts';
import { nextNeed } from './worksheet-plan.ts';
import { EngagementCaution } from './worksheet-cautions.tsx';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { AssumedLead, WorksheetBand } from './said-assumed.tsx';

type Data = WorksheetViewProps['data'];

/** Whether the bolt breaks before its thread strips, and what bolt the legs want. */
export function ThreadEngagementView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job, unit } = data;
  const { choices } = worksheet;
  const question = engagementQuestion(data);
  const result = question && threadEngagement(question);
  const need = nextNeed(plan, worksheet);
  const address = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const held = heldOf(choices['held']);
  return (
    <WorksheetPage
      data={data}
      subtitle={question ? question.thread.designation.replace('x', ' × ') : plan.name}
      {...(need !== undefined && {
        foot: (
          <LinkButton kind="main" href={hrefOf({ ...address, field: need })}>
            {need === 'engaged' ? 'Give what is engaged' : 'Go on'}
          </LinkButton>
        ),
      })}
    >
      {!question && (
        <EmptyLine>{plan.asks} It needs a thread, the bolt’s grade and the part’s metal.</EmptyLine>
      )}
      {result?.ok === false && (
        <WorksheetBand kind="no-good" headline={sayEngagementRefusal(result.refusal)} />
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
        names={['thread', 'grade', 'parent', 'parentTensile', 'engaged', 'insert', 'held']}
        usual={{ parentTensile: 'usual: the metal’s least figure' }}
      />
      <InputRows
        data={data}
        plan={plan}
        title="Legs and bolt"
        names={boltFields(held, choices['hole'])}
        usual={{
          ...(question && { nutHeight: `usual: ${show(usualNutHeight(question.thread), unit)}` }),
        }}
      />
      <InputRows
        data={data}
        plan={plan}
        title="Torque"
        names={['torquePoundFeet', 'torqueNewtonMetres', 'nutFactor']}
        usual={{ nutFactor: capital(sayAssumed(['dry'])) }}
      />
      <EngagementCaution />
    </WorksheetPage>
  );
}

type AnswerProps = {
  readonly data: Data;
  readonly question: EngagementQuestion;
  readonly answer: EngagementAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const grip = gripQuestion(data, answer.least.both);
  const gripAnswer = grip && boltGrip(grip);
  return (
    <>
      <EngagementLead answer={answer} unit={unit} />
      {grip && gripAnswer && <GripVerdict grip={grip} answer={gripAnswer} unit={unit} />}
      <EngagementDrawing
        thread={question.thread}
        answer={answer}
        grip={grip}
        gripAnswer={gripAnswer}
        unit={unit}
      />
      <EngagementProof data={data} question={question} answer={answer} />
      {grip && gripAnswer && <GripRows grip={grip} answer={gripAnswer} unit={unit} />}
      <TorqueRows data={data} question={question} answer={answer} />
      <Why
        lines={[
          ...whyLines(data, question, answer),
          ...(grip && gripAnswer ? gripWhy({ grip, answer: gripAnswer, unit }) : []),
        ]}
      />
    </>
  );
}

export function EngagementLead({ answer, unit }: { answer: EngagementAnswer; unit: ShownUnit }) {
  const { engaged, least } = answer;
  if (!engaged) {
    return (
      <AssumedLead label="Engage at least" figure={figure(least.both, unit)} unit={unit}>
        <LeadNext>and the bolt breaks first</LeadNext>
      </AssumedLead>
    );
  }
  return (
    <WorksheetBand kind={engaged.verdict.kind} headline={sayEngagement(answer, unit)}>
      <p>{sayEngagementShare(answer)}</p>
    </WorksheetBand>
  );
}

function EngagementProof({ data, question, answer }: AnswerProps) {
  const { engaged, least } = answer;
  if (!engaged || !question.engaged) return null;
  const limits = { lower: least.both, source: ENGAGEMENT_SOURCE };
  return (
    <>
      <NumberLine
        value={engaged.length}
        halfWidth={engaged.band.halfWidth}
        limits={limits}
        verdict={engaged.verdict.kind}
        unit={data.unit}
        label="engaged"
      />
      <ProofLines
        data={data}
        limits={limits}
        value={engaged.length}
        halfWidth={engaged.band.halfWidth}
        verdict={engaged.verdict}
        legs={engagementLegs(question.engaged)}
      />
    </>
  );
}

/** Never a torque of our own: an estimate stands only beside the manual's figure. */
function TorqueRows({ data, question, answer }: AnswerProps) {
  const given = torqueGiven(data);
  if (!given) return null;
  const { unit } = data;
  const { major } = question.thread;
  const clampN = clampNewtons({ torqueNewtonMetres: given.newtonMetres, major, nutFactor: given.nutFactor });
  const proofN = answer.strength.proofMpa * answer.stressAreaSquareMm;
  const byRuleNm = torqueNewtonMetres({ clampN: 0.75 * proofN, major, nutFactor: given.nutFactor });
  return (
    <section class="input-rows">
      <h2>Torque</h2>
      <ul>
        <li>
          <Row
            title="The manual’s figure rules"
            detail={`from the service manual; ${otherTorques(given.manual).join(' · ')}`}
            figure={sayTorque(given.manual)}
          />
        </li>
        <li>
          <Row
            title={
              isDryAssumed(data)
                ? `Estimate of its clamp load, ${sayAssumed(['dry'])}`
                : 'Estimate of its clamp load'
            }
            detail={`${((100 * clampN) / proofN).toFixed(0)} % of the bolt’s proof load; ten bolts at one torque came out from ${Math.min(...preloadsAtOneTorqueKn)} to ${Math.max(...preloadsAtOneTorqueKn)} kN (Shigley table 8-14)`}
            figure={forceFigure(clampN, unit)}
          />
        </li>
        <li>
          <Row
            title="Estimate for ¾ of proof load"
            detail={`T = K·d·F, K = ${given.nutFactor.toFixed(2)}${isDryAssumed(data) ? ', dry assumed' : ''}. Only to see whether the manual’s figure was read right.`}
            figure={sayWorkedTorque(torqueIn(byRuleNm, 'Nm', given.manual.unit), given.manual.unit)}
          />
        </li>
      </ul>
    </section>
  );
}

function whyLines(data: Data, question: EngagementQuestion, answer: EngagementAnswer) {
  const { unit } = data;
  const { strength, least, engaged } = answer;
  const parent = parentStrength(data);
  return [
    {
      what: 'Tensile stress area',
      how: `${stressAreaSquareInches(question.thread).toFixed(4)} in², ${answer.stressAreaSquareMm.toFixed(1)} mm²`,
      source: 'ASME B1.1: 0.7854 (D − 0.9743/n)²; ISO 898-1: 0.7854 (d − 0.9382P)²',
    },
    {
      what: 'Bolt, at its strongest',
      how: `${sayStress(strength.tensileMostMpa)} · area = ${sayForce(answer.breaksAtMostN)}`,
      source: strength.source,
    },
    ...(parent
      ? [
          {
            what: 'Part, at its weakest',
            how: `${sayStress(parent.tensileMpa)}; half of it in shear`,
            source: parent.source,
          },
        ]
      : []),
    {
      what: 'Shear areas',
      how: `bolt ${answer.boltShearSquareMmPerMm.toFixed(2)} mm², ${question.withInsert ? 'part at the insert’s thread' : 'part'} ${answer.parentShearSquareMmPerMm.toFixed(2)} mm² for each mm engaged`,
      source: ENGAGEMENT_SOURCE,
    },
    {
      what: 'Least engagement',
      how: `bolt’s thread ${show(least.bolt, unit)}, part’s thread ${show(least.parent, unit)}; the longer counts`,
    },
    ...(engaged
      ? [
          {
            what: 'Engaged',
            how: `${show(engaged.length, unit)} ${showBand(engaged.band.halfWidth, unit)}${question.withInsert ? ', ¾ of a pitch less than the insert’s length' : ''}: bolt’s thread holds ${sayForce(engaged.boltThreadsHoldN)}, part’s ${sayForce(engaged.parentThreadsHoldN)}`,
            source: 'your readings; JCGM 100:2008; ISO 14253-1',
          },
        ]
      : []),
  ];
}

function sayStress(megapascals: number): string {
  return `${megapascals.toFixed(0)} MPa (${((megapascals * PSI_PER_MPA) / 1000).toFixed(0)} ksi)`;
}
