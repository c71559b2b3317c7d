import {
  bearingInSeat,
  innerSleeve,
  taperSetting,
} from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import type {
  SeatQuestion,
  SleeveQuestion,
  TaperQuestion,
} from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import { mean } from '../../engine/reading/estimate.ts';
import { absolute, isNegative } from '../../engine/length/length.ts';
import {
  MOCK_UP_SENTENCE,
  READ_DIRECTLY,
  sayGoodBetween,
  sayPlay,
  saySeat,
  saySeatCut,
  saySleeveRefusal,
  sayTaper,
} from '../../engine/worksheets/bearing-seat/say-bearing-seat.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { figure, show, showBand, type ShownUnit } from '../../engine/length/show.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { SeatDrawing, SleeveDrawing, TaperDrawing } from './bearing-drawing.tsx';
import { bearingLegs, bearingQuestion, sleeveWant, type BearingQuestion } from './bearing-seat-question.ts';
import { seatWhy, sleeveWhy, taperWhy } from './bearing-seat-why.ts';
import { ReadAgain } from './read-again.tsx';
import { DrawerShims } from './drawer-shims.tsx';
import { InputRows } from './input-rows.tsx';
import { Lead, LeadNext, Why } from './lead.tsx';
import { ProofBefore, ProofLines } from './proof-lines.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import { nextNeed } from './worksheet-plan.ts';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { WorksheetBand } from './said-assumed.tsx';

const ASKED: Readonly<Record<string, string>> = {
  ball: 'ball bearings, the sleeve between',
  taper: 'taper rollers, end play or preload',
  seat: 'how it sits in its recess',
};

/** The sleeve between ball bearings, the setting of taper rollers, or what stands proud of a recess. */
export function BearingSeatView({ data, plan }: WorksheetViewProps) {
  const { worksheet, job, unit } = data;
  const question = bearingQuestion(data);
  const need = nextNeed(plan, worksheet);
  const address = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  return (
    <WorksheetPage
      data={data}
      subtitle={ASKED[worksheet.choices['bearing'] ?? ''] ?? plan.name}
      {...(!question &&
        need !== undefined && {
          foot: (
            <LinkButton kind="main" href={hrefOf({ ...address, field: need })}>
              Go on
            </LinkButton>
          ),
        })}
    >
      {worksheet.choices['mockUp'] === 'yes' && (
        <Caution heading="Mock-up bearing.">{MOCK_UP_SENTENCE}</Caution>
      )}
      {question?.kind === 'ball' && (
        <WorksheetAnswer>
          <SleevePart data={data} ask={question.ask} />
        </WorksheetAnswer>
      )}
      {question?.kind === 'taper' && (
        <WorksheetAnswer>
          <TaperPart data={data} ask={question.ask} />
        </WorksheetAnswer>
      )}
      {question?.kind === 'seat' && (
        <WorksheetAnswer>
          <SeatPart data={data} ask={question.ask} />
        </WorksheetAnswer>
      )}
      {!question && (
        <>
          <EmptyLine>{plan.asks}</EmptyLine>
          <ProofBefore data={data} kind={firstRead(worksheet.choices['bearing'])} />
        </>
      )}
      <ReadAgain data={data} names={['direct', 'directProud', 'directBelow', 'endPlay']} />
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={plan.fields.map(({ name }) => name)}
        usual={{
          ...(worksheet.choices['bearing'] === 'ball' && usualExcess(data)),
          mockUp: 'not said; taken as the real one',
          sleeve: 'none yet; it is made new',
          thread: 'not given; then the turn is not worked out',
          alsoIn: 'nothing else',
          direct: 'not read; sleeve less distance counts',
          directProud: 'not read; the sum counts',
          directBelow: 'not read; the sum counts',
          ...usualAim(question, unit),
        }}
      />
    </WorksheetPage>
  );
}

/** What is read first for each question. */
function firstRead(asked: string | undefined): FeatureKind {
  if (asked === 'taper') return 'gap';
  return asked === 'seat' ? 'depth' : 'length';
}

type PartProps<Ask> = { readonly data: WorksheetData; readonly ask: Ask };

function SleevePart({ data, ask }: PartProps<SleeveQuestion>) {
  const { unit } = data;
  const result = innerSleeve(ask);
  if (!result.ok)
    return (
      <WorksheetBand kind="no-good" headline={saySleeveRefusal(result.refusal, unit)}>
        {null}
      </WorksheetBand>
    );
  const { make, present } = result.value;
  const trim = present?.trim;
  const said = present && {
    quantity: 'excess length',
    unit,
    limits: ask.want.limits,
    value: present.value,
    halfWidth: present.band.halfWidth,
  };
  return (
    <>
      {present && said && (
        <WorksheetBand kind={present.verdict.kind} headline={sayVerdict(present.verdict, said)}>
          {present.direct && <p>{READ_DIRECTLY}</p>}
          {isNegative(present.value) && <p>Too short: the nut would load the balls sideways.</p>}
        </WorksheetBand>
      )}
      <SleeveDrawing
        between={mean(ask.between)}
        sleeve={ask.sleeve ? mean(ask.sleeve) : make.target}
        {...(present && { excess: present.value })}
        unit={unit}
      />
      {trim?.ok && (
        <Lead label="Face off the sleeve" figure={figure(trim.value.take, unit)} unit={`${unit} off`}>
          <LeadNext>{`${figure(trim.value.from, unit)} → ${figure(trim.value.to, unit)}`}</LeadNext>
          <p>{sayGoodBetween(trim.value, unit)}</p>
        </Lead>
      )}
      {trim && !trim.ok && <p class="worksheet-said">{saySeatCut(trim, 'off', unit)}</p>}
      {present?.shim && <DrawerShims data={data} label="Shim beside the sleeve" shim={present.shim} />}
      {!present && (
        <Lead label="Make the sleeve" figure={figure(make.target, unit)} unit={unit}>
          <p>{sayGoodBetween(make, unit)}</p>
        </Lead>
      )}
      {present && present.verdict.kind !== 'good' && make.provable && (
        <p class="worksheet-said">
          {`Or make it new: ${show(make.target, unit)}, ${sayGoodBetween(make, unit)}.`}
        </p>
      )}
      {present && (
        <>
          <NumberLine
            value={present.value}
            halfWidth={present.band.halfWidth}
            limits={ask.want.limits}
            verdict={present.verdict.kind}
            unit={unit}
            label="longer by"
          />
          <ProofLines
            data={data}
            limits={ask.want.limits}
            value={present.value}
            halfWidth={present.band.halfWidth}
            verdict={present.verdict}
            legs={bearingLegs({ kind: 'ball', ask })}
          />
        </>
      )}
      <Why lines={sleeveWhy(ask, result.value, unit)} />
    </>
  );
}

function TaperPart({ data, ask }: PartProps<TaperQuestion>) {
  const { unit } = data;
  const answer = taperSetting(ask);
  const { value, band, verdict } = answer;
  const { limits } = ask.want;
  const isToBeSet = verdict.kind === 'no-good';
  const headline = sayVerdict(verdict, {
    quantity: 'end play',
    unit,
    limits,
    value,
    halfWidth: band.halfWidth,
  });
  return (
    <>
      <WorksheetBand kind={verdict.kind} headline={headline}>
        {isNegative(value) && <p>Below zero is preload.</p>}
      </WorksheetBand>
      <TaperDrawing said={`${sayPlay(value, unit)} now`} setBy={ask.setBy} />
      {isToBeSet && answer.newShim && <DrawerShims data={data} label="Shim to fit" shim={answer.newShim} />}
      {isToBeSet && answer.turnDegrees !== undefined && (
        <Lead
          label={answer.turnDegrees < 0 ? 'Slacken the nut' : 'Tighten the nut'}
          figure={`${Math.abs(answer.turnDegrees).toFixed(0)}°`}
        />
      )}
      <p class="worksheet-said">{sayTaper(answer, unit)}</p>
      {isToBeSet && answer.shimThicker && !answer.newShim && (
        <p class="worksheet-said">Give the shim that is in it now, and the one to fit is worked out.</p>
      )}
      <NumberLine
        value={value}
        halfWidth={band.halfWidth}
        limits={limits}
        verdict={verdict.kind}
        unit={unit}
        label="now"
      />
      <ProofLines
        data={data}
        limits={limits}
        value={value}
        halfWidth={band.halfWidth}
        verdict={verdict}
        legs={bearingLegs({ kind: 'taper', ask })}
      />
      <Why lines={taperWhy(ask, answer, unit)} />
    </>
  );
}

function SeatPart({ data, ask }: PartProps<SeatQuestion>) {
  const { unit } = data;
  const answer = bearingInSeat(ask);
  const { proud, band, verdict, shim, deepen } = answer;
  const limits = ask.want?.limits;
  const known = { value: proud, halfWidth: band.halfWidth };
  return (
    <>
      {verdict && limits && (
        <WorksheetBand
          kind={verdict.kind}
          headline={sayVerdict(verdict, { quantity: 'projection', unit, limits, ...known })}
        >
          <p>{answer.direct ? `${READ_DIRECTLY} ${saySeat(answer, unit)}` : saySeat(answer, unit)}</p>
        </WorksheetBand>
      )}
      {!verdict && (
        <Lead
          label={isNegative(proud) ? 'Lies below the face' : 'Stands proud'}
          figure={figure(absolute(proud), unit)}
          unit={unit}
        >
          <p>{`known to ${showBand(band.halfWidth, unit)}. Give a lower and an upper limit, and it is judged.`}</p>
        </Lead>
      )}
      <SeatDrawing proud={proud} unit={unit} />
      {shim && (
        <DrawerShims
          data={data}
          label="Shim behind it"
          shim={shim}
          {...(data.worksheet.sizes['alsoIn'] === undefined && { becomes: 'alsoIn' })}
        />
      )}
      {deepen?.ok && (
        <Lead label="Make the recess deeper" figure={figure(deepen.value.take, unit)} unit={unit}>
          <LeadNext>{`${figure(deepen.value.from, unit)} → ${figure(deepen.value.to, unit)}`}</LeadNext>
          <p>{sayGoodBetween(deepen.value, unit)}</p>
        </Lead>
      )}
      {deepen && !deepen.ok && <p class="worksheet-said">{saySeatCut(deepen, 'deeper', unit)}</p>}
      {verdict && limits && (
        <>
          <NumberLine {...known} limits={limits} verdict={verdict.kind} unit={unit} label="proud" />
          <ProofLines
            data={data}
            limits={limits}
            {...known}
            verdict={verdict}
            legs={bearingLegs({ kind: 'seat', ask })}
          />
        </>
      )}
      <Why lines={seatWhy(ask, answer, unit)} />
    </>
  );
}

function usualAim(question: BearingQuestion | undefined, unit: ShownUnit): Readonly<Record<string, string>> {
  const want = question?.ask.want;
  if (!question || question.kind === 'ball') return {};
  return want
    ? { aim: `half-way: ${figure(want.aim, unit)}` }
    : { lower: 'not given; then it is not judged' };
}

function usualExcess(data: WorksheetData): Readonly<Record<string, string>> {
  const { limits, aim } = sleeveWant(data);
  const words = (size: typeof aim) => `usual: ${figure(size, data.unit)} longer (${limits.source})`;
  return { lower: words(limits.lower), upper: words(limits.upper), aim: words(aim) };
}
