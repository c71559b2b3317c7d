import { bandOf, mean } from '../../engine/reading/estimate.ts';
import { floatMm, lengthOf, roundForShow, zero, type Length } from '../../engine/length/length.ts';
import {
  sayChange,
  sayDegrees,
  sayMoved,
  sayRise,
  saySteeringRefusal,
  STEERING_ROUNDED,
  sayTrailChange,
  sayTrailFeel,
  sayTrailSign,
  steeringFigure,
} from '../../engine/worksheets/steering-geometry/say-steering.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { showBand, type ShownUnit } from '../../engine/length/show.ts';
import {
  steeringGeometry,
  TRAIL_SOURCE,
  trailSign,
  trailVerdict,
  type SteeringAnswer,
} from '../../engine/worksheets/steering-geometry/steering-geometry.ts';
import { verdictOf, type Limits } from '../../engine/reading/verdict.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Row } from '../common/row.tsx';
import { InputRows } from './input-rows.tsx';
import { LeadNext, Why } from './lead.tsx';
import { SteeringDrawing } from './steering-drawing.tsx';
import { CHANGE_FIELD_NAMES, NOW_NAMES } from './steering-geometry-plan.ts';
import {
  steeringQuestion,
  USUAL_RAKE_WITHIN_DEGREES,
  type SteeringQuestion,
} from './steering-geometry-question.ts';
import { ownLimits } from './worksheet-data.ts';
import { nextNeed } from './worksheet-plan.ts';
import { SteeringCaution } from './worksheet-cautions.tsx';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { AssumedLead, WorksheetBand } from './said-assumed.tsx';

/** Rake, trail and ride height before and after a swap, and which change moved them. */
export function SteeringGeometryView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job } = data;
  const question = steeringQuestion(data);
  const result = question && steeringGeometry(question.before, question.change);
  const need = nextNeed(plan, worksheet);
  const address = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  return (
    <WorksheetPage
      data={data}
      subtitle={question ? `rake now ${sayDegrees(question.before.rakeDegrees)}` : plan.name}
      {...(need !== undefined && {
        foot: (
          <LinkButton kind="main" href={hrefOf({ ...address, field: need })}>
            Go on
          </LinkButton>
        ),
      })}
    >
      {!question && (
        <EmptyLine>
          {plan.asks} It needs rake, both axles’ heights, the clamps’ offset and the wheelbase.
        </EmptyLine>
      )}
      {result?.ok === false && <WorksheetBand kind="no-good" headline={saySteeringRefusal(result.refusal)} />}
      {question && result?.ok === true && (
        <WorksheetAnswer>
          <Answer data={data} question={question} answer={result.value} />
        </WorksheetAnswer>
      )}
      <InputRows
        data={data}
        plan={plan}
        title="As it stands"
        names={NOW_NAMES}
        usual={{
          axleLead: 'none',
          extraAngle: 'none: the fork leans as the steering axis does',
          rakeWithin: `usual: ${USUAL_RAKE_WITHIN_DEGREES} degrees, a digital level (common practice, no source)`,
        }}
      />
      <InputRows
        data={data}
        plan={plan}
        title="What is changed"
        names={CHANGE_FIELD_NAMES}
        usual={Object.fromEntries(CHANGE_FIELD_NAMES.map((name) => [name, 'as it is']))}
      />
      <InputRows data={data} plan={plan} title="Trail wanted" names={['lower', 'upper']} />
      <SteeringCaution />
    </WorksheetPage>
  );
}

type AnswerProps = {
  readonly data: WorksheetViewProps['data'];
  readonly question: SteeringQuestion;
  readonly answer: SteeringAnswer;
};

function Answer({ data, question, answer }: AnswerProps) {
  const { unit } = data;
  const radius = question.change.frontRadius ?? mean(question.before.frontRadius);
  return (
    <>
      <AssumedLead label="Trail" figure={steeringFigure(answer.after.trail, unit)} unit={unit}>
        <LeadNext>{sayTrailChange(answer, unit)}</LeadNext>
      </AssumedLead>
      <TrailVerdict data={data} answer={answer} />
      <SteeringDrawing answer={answer} frontRadiusMm={floatMm(radius)} unit={unit} />
      <p class="worksheet-said">{`${sayTrailFeel(answer, unit)} ${STEERING_ROUNDED[unit]} Rake ${sayDegrees(answer.after.rakeDegrees)}, known to ±${question.before.rakeWithinDegrees}°.`}</p>
      <BeforeAfter answer={answer} unit={unit} />
      <Why lines={whyLines(question, answer, unit)} />
    </>
  );
}

/**
 * Against limits that were given, as there is no trail that is right for every machine; and against nothing: one that is or
 * may be negative is never good.
 */
export function TrailVerdict({ data, answer }: Omit<AnswerProps, 'question'>) {
  const limits = ownLimits(data);
  const verdict = trailVerdict(answer, limits);
  const sign = sayTrailSign(answer, data.unit);
  if (!verdict) return null;
  return (
    <>
      {sign !== '' && (
        <WorksheetBand
          isSecond
          kind={trailSign(answer) === 'negative' ? 'no-good' : 'too-close'}
          headline={sign}
        />
      )}
      <AgainstLimits
        answer={answer}
        // Without limits of one's own it is held against nothing, and the line shows how near it comes.
        limits={limits ?? { lower: zero, source: 'a wheel trails' }}
        unit={data.unit}
        isSaid={sign !== '' && (!limits || verdict.kind !== 'no-good')}
      />
    </>
  );
}

type AgainstLimitsProps = {
  readonly answer: SteeringAnswer;
  readonly limits: Limits;
  readonly unit: ShownUnit;
  /** What it comes to is said already, by its sign. */
  readonly isSaid: boolean;
};

function AgainstLimits({ answer, limits, unit, isSaid }: AgainstLimitsProps) {
  const value = answer.after.trail;
  const halfWidth = answer.trailHalfWidth;
  const verdict = trailVerdict(answer, limits) ?? verdictOf({ value, halfWidth, limits });
  const shown = roundForShow(value, lengthOf(unit === 'mm' ? '.1 mm' : '.01 in'));
  return (
    <>
      {!isSaid && (
        <WorksheetBand
          isSecond
          kind={verdict.kind}
          headline={sayVerdict(verdict, { quantity: 'trail', unit, limits, value: shown, halfWidth })}
        />
      )}
      <NumberLine
        value={shown}
        halfWidth={halfWidth}
        limits={limits}
        verdict={verdict.kind}
        unit={unit}
        label="trail"
      />
    </>
  );
}

export function BeforeAfter({ answer, unit }: { answer: SteeringAnswer; unit: ShownUnit }) {
  const { before, after, rise } = answer;
  const size = (length: Length) => steeringFigure(length, unit);
  return (
    <section class="input-rows">
      <h2>Before and after</h2>
      <ul>
        <li>
          <Row
            title="Rake"
            detail={`was ${sayDegrees(before.rakeDegrees)}`}
            figure={sayDegrees(after.rakeDegrees)}
          />
        </li>
        <li>
          <Row
            title="Trail, square to the axis"
            detail={`was ${size(before.normalTrail)} ${unit}`}
            figure={`${size(after.normalTrail)} ${unit}`}
          />
        </li>
        <li>
          <Row
            title="Wheelbase"
            detail={`was ${size(before.wheelbase)} ${unit}`}
            figure={`${size(after.wheelbase)} ${unit}`}
          />
        </li>
        <li>
          <Row
            title="Ride height, half-way"
            detail={`front ${sayRise(rise.front, unit)}, rear ${sayRise(rise.rear, unit)}`}
            figure={sayRise(rise.middle, unit)}
          />
        </li>
      </ul>
      {answer.moved.length > 0 && (
        <>
          <h2>Which change moved it</h2>
          <ul>
            {answer.moved.map((moved) => (
              <li key={moved.name}>
                <Row title={sayChange(moved.name)} detail={sayMoved(moved, unit)} />
              </li>
            ))}
            {answer.moved.length > 1 && (
              <li>
                <Row
                  title="Together"
                  detail="what they do to each other beyond their sum"
                  figure={`${size(answer.together)} ${unit}`}
                />
              </li>
            )}
          </ul>
        </>
      )}
    </section>
  );
}

function whyLines({ before, change }: SteeringQuestion, answer: SteeringAnswer, unit: ShownUnit) {
  const { after } = answer;
  const radius = change.frontRadius ?? mean(before.frontRadius);
  const size = (length: Length) => steeringFigure(length, unit);
  return [
    {
      what: 'Rounding',
      how: `Sines and cosines can’t be exact, as the lengths of other worksheets are. ${STEERING_ROUNDED[unit]}`,
    },
    {
      what: 'Trail',
      how: `(R sin ρ − o) / cos ρ = (${size(radius)} · sin ${sayDegrees(after.rakeDegrees)} − ${size(after.offset)}) / cos ${sayDegrees(after.rakeDegrees)} = ${size(after.trail)} ${unit}`,
      source: TRAIL_SOURCE,
    },
    {
      what: 'Known to',
      how: `${showBand(answer.trailHalfWidth, unit)} ${unit}: rake ±${before.rakeWithinDegrees}°, front axle’s height ${showBand(bandOf(before.frontRadius).halfWidth, unit)}, offset ${showBand(bandOf(before.clampOffset).halfWidth, unit)}`,
      source: 'JCGM 100:2008 5.1',
    },
    {
      what: 'Whole offset',
      how: 'clamps + axle lead · cos δ + fork length · sin δ, δ the clamps’ extra angle',
      source: 'geometry',
    },
    {
      what: 'Tilt of the frame',
      how: 'A longer fork drops the axle by ΔL·cos ρ in the frame; the frame then tilts over the wheelbase until both wheels stand on the ground. The frame is taken as rigid, the springs as sitting where they sat.',
      source: 'geometry',
    },
  ];
}
