import { boltGrip } from '../../engine/thread/bolt-grip.ts';
import { lengthToBuy } from '../../engine/thread/bolt-length.ts';
import { mean } from '../../engine/reading/estimate.ts';
import { floatMm } from '../../engine/length/length.ts';
import {
  sayEngagementRefusal,
  sayEngagementShare,
  sayEngagement,
} from '../../engine/worksheets/thread-engagement/say-engagement.ts';
import {
  sayBottoming,
  sayHoleEnd,
  sayLengthRange,
  sayLengthToBuy,
  sayPastEnd,
  sayPlane,
} from '../../engine/thread/say-grip.ts';
import {
  saySteeringRefusal,
  STEERING_ROUNDED,
  sayTrailChange,
  sayTrailFeel,
  steeringFigure,
} from '../../engine/worksheets/steering-geometry/say-steering.ts';
import { steeringGeometry } from '../../engine/worksheets/steering-geometry/steering-geometry.ts';
import { threadEngagement } from '../../engine/worksheets/thread-engagement/thread-engagement.ts';
import { otherTorques, sayTorque } from '../../engine/thread/torque.ts';
import { EngagementDrawing } from '../worksheets/engagement-drawing.tsx';
import { GripVerdict } from '../worksheets/grip-rows.tsx';
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
import { useWithAssumed, WorksheetBand } from '../worksheets/said-assumed.tsx';

type SheetProps = { readonly data: WorksheetData };

export function ThreadEngagementSheet({ data }: SheetProps) {
  const withAssumed = useWithAssumed();
  const question = engagementQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const result = threadEngagement(question);
  if (!result.ok) return <p>{sayEngagementRefusal(result.refusal)}</p>;
  const answer = result.value;
  const grip = gripQuestion(data, answer.least.both);
  const gripAnswer = grip && boltGrip(grip);
  const length = grip && lengthToBuy(grip);
  const torque = torqueGiven(data);
  const said = sayEngagement(answer, unit);
  return (
    <>
      {answer.engaged ? (
        <WorksheetBand kind={answer.engaged.verdict.kind} headline={said} />
      ) : (
        <p>{withAssumed(said)}</p>
      )}
      {grip && gripAnswer && <GripVerdict grip={grip} answer={gripAnswer} unit={unit} />}
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
          {length && (
            <p>{`Length to buy ${sayLengthToBuy(length, unit)}. ${sayLengthRange(length, grip.held, unit).join(' ')}`}</p>
          )}
          <ul>
            {gripAnswer.planes.map((plane) => (
              <li key={plane.between.join()}>{sayPlane(plane, unit)}</li>
            ))}
          </ul>
          <p>
            {[
              sayBottoming(gripAnswer, grip.held, unit),
              sayPastEnd(gripAnswer, grip.held, unit),
              sayHoleEnd(gripAnswer, unit, grip.held),
            ]
              .join(' ')
              .trim()}
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
  const withAssumed = useWithAssumed();
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
        {`, ${withAssumed(`${sayTrailChange(answer, unit)}.`)} ${sayTrailFeel(answer, unit)} ${STEERING_ROUNDED[unit]}`}
      </p>
      <TrailVerdict data={data} answer={answer} />
      <SteeringDrawing answer={answer} frontRadiusMm={floatMm(radius)} unit={unit} />
      <BeforeAfter answer={answer} unit={unit} />
      <SteeringCaution />
    </>
  );
}
