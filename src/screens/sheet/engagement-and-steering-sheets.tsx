import { boltGrip } from '../../engine/bolt-grip.ts';
import { mean } from '../../engine/estimate.ts';
import { floatMm } from '../../engine/length.ts';
import {
  sayBottoming,
  sayEngagementRefusal,
  sayEngagementShare,
  sayEngagement,
  sayPastEnd,
  sayPlane,
} from '../../engine/say-engagement.ts';
import {
  saySteeringRefusal,
  STEERING_ROUNDED,
  sayTrailChange,
  sayTrailFeel,
  steeringFigure,
} from '../../engine/say-steering.ts';
import { show } from '../../engine/show.ts';
import { steeringGeometry } from '../../engine/steering-geometry.ts';
import { threadEngagement } from '../../engine/thread-engagement.ts';
import { otherTorques, sayTorque } from '../../engine/torque.ts';
import { VerdictBand } from '../common/verdict-band.tsx';
import { EngagementDrawing } from '../worksheets/engagement-drawing.tsx';
import { SteeringDrawing } from '../worksheets/steering-drawing.tsx';
import { BeforeAfter, TrailVerdict } from '../worksheets/steering-geometry-view.tsx';
import { steeringQuestion } from '../worksheets/steering-geometry-question.ts';
import {
  engagementQuestion,
  gripQuestion,
  parentStrength,
  torqueGiven,
} from '../worksheets/thread-engagement-question.ts';
import { EngagementCaution, SteeringCaution } from '../worksheets/worksheet-cautions.tsx';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';

type SheetProps = { readonly data: WorksheetData };

export function ThreadEngagementSheet({ data }: SheetProps) {
  const question = engagementQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const result = threadEngagement(question);
  if (!result.ok) return <p>{sayEngagementRefusal(result.refusal)}</p>;
  const answer = result.value;
  const grip = gripQuestion(data, answer.least.both);
  const gripAnswer = grip && boltGrip(grip);
  const torque = torqueGiven(data);
  const said = sayEngagement(answer, unit);
  return (
    <>
      {answer.engaged ? <VerdictBand kind={answer.engaged.verdict.kind} headline={said} /> : <p>{said}</p>}
      <EngagementDrawing
        thread={question.thread}
        answer={answer}
        grip={grip}
        gripAnswer={gripAnswer}
        unit={unit}
      />
      <p>
        {`${sayEngagementShare(answer)} Bolt: ${answer.strength.source}. Part: ${parentStrength(data)?.source ?? ''}.`.trim()}
      </p>
      {grip && gripAnswer && (
        <>
          <p>{`Length to buy ${show(gripAnswer.lengthToBuy, unit)}, at least ${show(gripAnswer.lengthLeast, unit)}.`}</p>
          <ul>
            {gripAnswer.planes.map((plane) => (
              <li key={plane.between.join()}>{sayPlane(plane, unit)}</li>
            ))}
          </ul>
          <p>
            {`${sayBottoming(gripAnswer, grip.held, unit)} ${sayPastEnd(gripAnswer, grip.held, unit)}`.trim()}
          </p>
        </>
      )}
      {torque && (
        <p>{`Torque from the service manual: ${sayTorque(torque.manual)} (${otherTorques(torque.manual).join(', ')}).`}</p>
      )}
      <EngagementCaution />
    </>
  );
}

export function SteeringGeometrySheet({ data }: SheetProps) {
  const question = steeringQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const result = steeringGeometry(question.before, question.change);
  if (!result.ok) return <p>{saySteeringRefusal(result.refusal)}</p>;
  const answer = result.value;
  const radius = question.change.frontRadius ?? mean(question.before.frontRadius);
  return (
    <>
      <p>
        <strong>{`Trail ${steeringFigure(answer.after.trail, unit)} ${unit}`}</strong>
        {`, ${sayTrailChange(answer, unit)}. ${sayTrailFeel(answer, unit)} ${STEERING_ROUNDED[unit]}`}
      </p>
      <TrailVerdict data={data} answer={answer} />
      <SteeringDrawing answer={answer} frontRadiusMm={floatMm(radius)} unit={unit} />
      <BeforeAfter answer={answer} unit={unit} />
      <SteeringCaution />
    </>
  );
}
