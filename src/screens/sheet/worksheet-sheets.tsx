import { isZero } from '../../engine/length/length.ts';
import { holeAndPin } from '../../engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { sizeFigure } from '../../engine/reading/say-readings.ts';
import { sayInsertRefusal } from '../../engine/worksheets/thread-insert/say-insert-refusal.ts';
import {
  sayDrillNeighbours,
  sayInsertDrill,
  sayInsertHole,
  sayInsertLength,
  sayInsertWall,
} from '../../engine/worksheets/thread-insert/say-insert.ts';
import { ROUTE_STATES, sayRock, sayRoute } from '../../engine/worksheets/hole-and-pin/say-routes.ts';
import {
  sayLongerPart,
  sayNeeded,
  sayNewPart,
  sayShared,
  sayShim,
  sayStack,
  sayStackBand,
  sayTrim,
  sayUnproved,
} from '../../engine/worksheets/spacer-stack/say-stack.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { spacerStack } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { show, showBand, showBetween, showLimits } from '../../engine/length/show.ts';
import { threadInsert } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { BoreDrawing } from '../worksheets/bore-drawing.tsx';
import { clearanceSaid } from '../worksheets/clearance-said.ts';
import { holeAndPinQuestion } from '../worksheets/hole-and-pin-question.ts';
import { InsertDrawing } from '../worksheets/insert-drawing.tsx';
import { spacerStackQuestion } from '../worksheets/spacer-stack-question.ts';
import { StackDrawing } from '../worksheets/stack-drawing.tsx';
import { threadInsertQuestion } from '../worksheets/thread-insert-question.ts';
import { InsertCaution } from '../worksheets/worksheet-cautions.tsx';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';
import { useWithAssumed, WorksheetBand } from '../worksheets/said-assumed.tsx';

type SheetProps = { readonly data: WorksheetData };

export function SpacerStackSheet({ data }: SheetProps) {
  const question = spacerStackQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const answer = spacerStack(question);
  const { limits, aim } = question.want;
  const isGood = answer.verdict.kind === 'good' || isZero(answer.needed.aim);
  return (
    <>
      <WorksheetBand kind={answer.verdict.kind} headline={sayStack(answer, question.want, unit)} />
      <StackDrawing question={question} answer={answer} changing={answer.trims[0]?.part} unit={unit} />
      <ol class="sheet-parts">
        {question.parts.map((part) => (
          <li
            key={part.name}
          >{`${part.name}: ${part.count > 1 ? `${part.count} × ` : ''}${sizeFigure(part.thickness, unit)} ${unit}`}</li>
        ))}
      </ol>
      <p>{`Wanted ${showBetween(limits.lower, limits.upper, unit)} ${unit}, aim ${show(aim, unit)} (${limits.source}).`}</p>
      <p>{sayStackBand(answer, unit)}</p>
      {answer.trims.map((trim) => (
        <p key={trim.part}>{sayTrim(trim, unit)}</p>
      ))}
      {answer.shared && answer.trims.length > 1 && <p>{sayShared(answer.shared, unit)}</p>}
      {!isGood && answer.trims.length === 0 && !answer.shim && <p>{sayNeeded(answer, unit)}</p>}
      {answer.shim && <p>{sayShim(answer.shim, unit)}</p>}
      {answer.longerParts.map((part) => (
        <p key={part.part}>{sayLongerPart(part, unit)}</p>
      ))}
      {answer.newPart && <p>{sayNewPart(answer.newPart, unit)}</p>}
      {!isGood && !answer.needed.proved && (
        <p>{sayUnproved(answer.needed, question.want, answer.direct, unit)}</p>
      )}
    </>
  );
}

export function HoleAndPinSheet({ data }: SheetProps) {
  const question = holeAndPinQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const answer = holeAndPin(question);
  const rock = sayRock(answer, unit);
  return (
    <>
      <WorksheetBand
        kind={answer.verdict.kind}
        headline={sayVerdict(answer.verdict, clearanceSaid(answer, unit))}
      />
      <BoreDrawing
        bore={question.bore.loosest}
        pin={question.pin.loosest}
        clearance={answer.loosest}
        unit={unit}
        good={answer.verdict.kind === 'good'}
      />
      <p>{`Clearance ${showLimits(answer.tightest, answer.loosest, unit)} ${unit}, ${showBand(answer.band.halfWidth, unit)}. Limits: ${answer.limits.source}.`}</p>
      {rock !== undefined && <p>{rock}</p>}
      <ul>
        {answer.routes.map((route) => {
          const { title, what, why, caution, strength } = sayRoute(route, unit);
          return (
            <li key={route.kind}>
              <strong>{`${title}, ${ROUTE_STATES[route.state]}.`}</strong> {what} {why}
              {route.state !== 'out' && caution !== undefined && ` ${caution}`}
              {strength !== undefined && ` ${strength}`}
            </li>
          );
        })}
      </ul>
    </>
  );
}

export function ThreadInsertSheet({ data }: SheetProps) {
  const said = useWithAssumed();
  const question = threadInsertQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const result = threadInsert(question);
  if (!result.ok) return <p>{sayInsertRefusal(result.refusal, unit)}</p>;
  const answer = result.value;
  return (
    <>
      <p>
        <strong>{`${question.thread.designation.replace('x', ' × ')} in ${question.metal}.`}</strong>{' '}
        {said(sayInsertHole(answer, unit))}
      </p>
      <InsertDrawing answer={answer} thread={question.thread.designation} unit={unit} />
      <p>{`${sayInsertDrill(answer, unit)} ${sayDrillNeighbours(answer.drill)}`}</p>
      {answer.wallLeft && <p>{sayInsertWall(answer.wallLeft, unit)}</p>}
      <p>{sayInsertLength(answer, unit)}</p>
      <InsertCaution />
    </>
  );
}
