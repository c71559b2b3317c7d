import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { bandOf } from '../../engine/reading/estimate.ts';
import { absolute } from '../../engine/length/length.ts';
import { sizeFigure } from '../../engine/reading/say-readings.ts';
import { sayStack, sayStackBand } from '../../engine/worksheets/spacer-stack/say-stack.ts';
import { legOf } from '../../engine/reading/settle.ts';
import { figure } from '../../engine/length/show.ts';
import {
  spacerStack,
  type StackAnswer,
  type StackQuestion,
} from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { newId } from '../../store/new-id.ts';
import { sayStore } from '../../store/say-store.ts';
import { setPart } from '../../store/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { bandWords } from '../common/band-words.ts';
import { EmptyLine } from '../common/empty-line.tsx';
import { NumberLine } from '../common/number-line.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { useCutSince, type CutSince } from './cut-since.ts';
import { InputRows } from './input-rows.tsx';
import { Why } from './lead.tsx';
import { MadeSinceLead } from './made-since.tsx';
import { OnePart } from './one-part.tsx';
import { ProofBefore, ProofLines } from './proof-lines.tsx';
import { ShimPick } from './shim-pick.tsx';
import { ReadAgain } from './read-again.tsx';
import { SinceCut, SinceCutAction } from './since-cut.tsx';
import { onePartId } from './spacer-stack-cuts.ts';
import { stackWhy } from './spacer-stack-why.ts';
import {
  readInPlaceName,
  spacerStackQuestion,
  stackParts,
  stackWant,
  type KnownPart,
} from './spacer-stack-question.ts';
import { StackRemedy } from './stack-remedy.tsx';
import { StackDrawing } from './stack-drawing.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import { WorksheetAnswer, WorksheetPage } from './worksheet-page.tsx';
import type { WorksheetViewProps } from './worksheet-views.tsx';
import { WorksheetBand } from './said-assumed.tsx';

const WANTS: Readonly<Record<string, string>> = {
  float: 'wants float',
  'end-play': 'wants end play',
  clamp: 'wants to clamp',
};

/** Does the stack float, have end play or clamp, and what must be trimmed or shimmed. */
export function SpacerStackView({ data, plan }: WorksheetViewProps) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const { worksheet, job, unit } = data;
  const question = spacerStackQuestion(data);
  const answer = question && spacerStack(question);
  const parts = stackParts(data);
  const want = stackWant(data);
  const since = useCutSince(data);
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const needsCut =
    answer && answer.verdict.kind !== 'good' && !question.parts.some((part) => part.adjustable);
  const addPart = async () => {
    const id = newId();
    const order = Math.max(0, ...parts.map((part) => part.input.order)) + 1;
    const made = await setPart(store, worksheet.id, id, {
      name: `part ${parts.length + 1}`,
      order,
      count: 1,
      adjustable: false,
    });
    if (made.ok) go({ ...here, field: `part/${id}/size` });
    else setTrouble(sayStore(made.refusal));
  };
  return (
    <WorksheetPage
      data={data}
      subtitle={WANTS[want.kind] ?? ''}
      {...(!answer
        ? { foot: <AddPart main onPress={() => addPart()} /> }
        : since && isCutSince(since) && { foot: <SinceCutAction data={data} since={since} /> })}
    >
      {question && answer ? (
        <WorksheetAnswer>
          <Answer data={data} question={question} answer={answer} since={since}>
            {needsCut && <NothingMayBeCut onAddPart={() => addPart()} />}
          </Answer>
        </WorksheetAnswer>
      ) : (
        <StillMissing data={data} parts={parts} />
      )}
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      <PartRows data={data} parts={parts} />
      {answer && !needsCut && <AddPart onPress={() => addPart()} />}
      {parts.reduce((so, { input }) => so + input.count, 0) > 1 && (
        <OnePart
          parts={parts.flatMap(({ part }) => part ?? [])}
          question={question}
          unit={unit}
          cutAt={(places) => hrefOf({ ...here, field: `cuts/${onePartId(places)}` })}
        />
      )}
      <InputRows
        data={data}
        plan={plan}
        title="Worked out from"
        names={['fixed', 'want', 'lower', 'upper', 'aim', readInPlaceName(want)]}
        usual={{
          lower: `usual: ${figure(want.limits.lower, unit)} (${want.limits.source})`,
          upper: `usual: ${figure(want.limits.upper, unit)} (${want.limits.source})`,
          aim: figure(want.aim, unit),
          direct: 'not read; the sum counts',
          directProud: 'not read; the sum counts',
        }}
      />
    </WorksheetPage>
  );
}

function AddPart({ main = false, onPress }: { main?: boolean; onPress: () => unknown }) {
  return main ? (
    <Button kind="main" onPress={onPress}>
      Add a part
    </Button>
  ) : (
    <div class="worksheet-act">
      <Button onPress={onPress}>Add a part</Button>
    </div>
  );
}

/** The stack isn't all in yet, or nobody has said what may be cut: the two ways on from here. */
function NothingMayBeCut({ onAddPart }: { onAddPart: () => unknown }) {
  return (
    <>
      <p class="worksheet-said">
        Is there another part in the stack? Add it. If not, say which part may be cut: press it in the list
        below.
      </p>
      <AddPart onPress={onAddPart} />
    </>
  );
}

function StillMissing({ data, parts }: { data: WorksheetData; parts: readonly KnownPart[] }) {
  const nameless = parts.filter(({ part }) => !part).map(({ input }) => input.name);
  const missing = !data.worksheet.sizes['fixed']
    ? 'It needs the length of the sleeve, or of the opening between the faces.'
    : parts.length === 0
      ? 'Now add the parts that go into it, from left to right.'
      : nameless.length > 0
        ? `Still without a size: ${nameless.join(', ')}.`
        : 'The sleeve or opening has no reading yet.';
  return (
    <>
      <EmptyLine>{missing}</EmptyLine>
      <ProofBefore data={data} kind="length" />
    </>
  );
}

function PartRows({ data, parts }: { data: WorksheetData; parts: readonly KnownPart[] }) {
  return (
    <section class="input-rows">
      <h2>Parts, from left to right</h2>
      <ol>
        {parts.map(({ id, input, part }, index) => (
          <li key={id}>
            <Row
              href={hrefOf({
                at: 'worksheet',
                jobId: data.job.id,
                worksheetId: data.worksheet.id,
                field: `part/${id}`,
              })}
              title={`${index + 1}  ${input.name}`}
              detail={[input.count > 1 ? `${input.count} of them` : '', input.adjustable ? 'may be cut' : '']
                .filter((word) => word !== '')
                .join(', ')}
              figure={
                part ? (
                  <>
                    {sizeFigure(part.thickness, data.unit)}
                    <small class="row-detail">{bandWords(bandOf(part.thickness).halfWidth, data.unit)}</small>
                  </>
                ) : (
                  'no size'
                )
              }
            />
          </li>
        ))}
      </ol>
    </section>
  );
}

type AnswerProps = {
  readonly data: WorksheetData;
  readonly question: StackQuestion;
  readonly answer: StackAnswer;
  readonly since: CutSince | undefined;
  /** Stands before what has to give. */
  readonly children?: ComponentChildren;
};

function Answer({ data, question, answer, since, children }: AnswerProps) {
  const { unit } = data;
  const trim = answer.trims.find(({ result }) => result.ok) ?? answer.trims[0];
  const { want } = question;
  const summed = [
    legOf('length', question.fixed.length, 1),
    ...question.parts.map((part) => legOf('length', part.thickness, -part.count)),
  ];
  const readAs = want.kind === 'clamp' ? ('depth' as const) : ('gap' as const);
  const { direct } = question;
  const legs = direct ? [{ ...legOf(readAs, direct, 1), size: absolute(answer.gap) }] : summed;
  return (
    <>
      <StackDrawing
        question={question}
        answer={answer}
        changing={trim?.part ?? answer.longerParts[0]?.part}
        unit={unit}
      />
      <WorksheetBand kind={answer.verdict.kind} headline={sayStack(answer, want, unit)}>
        <p>{sayStackBand(answer, unit)}</p>
      </WorksheetBand>
      <MadeSinceLead data={data} />
      {!since?.gapReadBefore && <ReadAgain data={data} names={[readInPlaceName(want)]} />}
      {children}
      {since && isCutSince(since) ? (
        <SinceCut data={data} since={since} />
      ) : (
        since && (
          <>
            <StackRemedy question={question} answer={answer} unit={unit} />
            <ShimPick data={data} question={question} answer={answer} />
          </>
        )
      )}
      <NumberLine
        value={answer.wanted}
        halfWidth={answer.band.halfWidth}
        limits={want.limits}
        verdict={answer.verdict.kind}
        unit={unit}
        label="now"
      />
      <ProofLines
        data={data}
        limits={want.limits}
        value={answer.wanted}
        halfWidth={answer.band.halfWidth}
        verdict={answer.verdict}
        legs={legs}
      />
      {!answer.direct && answer.verdict.kind === 'too-close' && answer.provable && (
        <p class="worksheet-said">
          Reading the gap itself beats any sum: put it together and use a feeler or an indicator, or measure
          the stack clamped together as one.
        </p>
      )}
      <Why lines={stackWhy(question, answer, unit)} />
    </>
  );
}

/** Until that is in, what the answer asks for may have been cut already. */
function isCutSince({ notGiven, gapReadBefore }: CutSince): boolean {
  return notGiven.length > 0 || gapReadBefore !== undefined;
}
