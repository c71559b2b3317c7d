import { isZero } from '../../engine/length/length.ts';
import {
  sayLongerPart,
  sayNeeded,
  sayNewPart,
  sayShared,
  sayShim,
  sayTrim,
  sayUnproved,
  shimFigure,
} from '../../engine/worksheets/spacer-stack/say-stack.ts';
import { sayStrength } from '../../engine/cut/say-strength.ts';
import { say } from '../../engine/length/say.ts';
import { figure, showBetween, type ShownUnit } from '../../engine/length/show.ts';
import type { StackAnswer, StackQuestion } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { Lead, LeadNext } from './lead.tsx';
import './proof-lines.css';

type RemedyProps = {
  readonly question: StackQuestion;
  readonly answer: StackAnswer;
  readonly unit: ShownUnit;
};

/** What has to give: a trim where it is too tight, a shim or a longer part where it is too loose. The figure always stands. */
export function StackRemedy({ question: { parts, want }, answer, unit }: RemedyProps) {
  const { trims, shared, shim, longerParts, newPart, needed } = answer;
  const faced = trims.flatMap(({ result, figure: off }) => (result.ok ? [result.value] : (off ?? [])));
  const others = trims.filter(({ result }) => !result.ok);
  const nobodySaid = !parts.some(({ adjustable }) => adjustable);
  const asked = [...faced, ...(shim ? [shim] : []), ...others.flatMap(({ instead }) => instead ?? [])];
  const isBad = answer.verdict.kind !== 'good';
  const unproved =
    asked.find(({ proved }) => !proved) ?? (isBad && !answer.provable ? answer.band : undefined);
  return (
    <>
      {nobodySaid && isBad && !isZero(needed.aim) && !shim && (
        <Lead label="Off the parts, in all" figure={figure(needed.aim, unit)} unit={unit}>
          <p>{sayNeeded(answer, unit)}</p>
        </Lead>
      )}
      {faced.map((trim) => (
        <Lead
          key={trim.place}
          label={`Face off ${trim.part}`}
          figure={figure(trim.take, unit)}
          unit={`${unit} off`}
        >
          <LeadNext>{`${figure(trim.from, unit)} → ${figure(trim.to, unit)}`}</LeadNext>
          {sayStrength(trim.part) !== '' && <p>{sayStrength(trim.part)}</p>}
          <p>{`${trim.proved ? 'good' : 'by the sizes alone'} from ${showBetween(trim.lower, trim.upper, unit)} ${unit}`}</p>
        </Lead>
      ))}
      {shim && (
        <Lead label="Add shims of" figure={shimFigure(shim, unit)} unit={unit}>
          <p>{sayShim(shim, unit)}</p>
        </Lead>
      )}
      {unproved && <p class="proof-lines">{sayUnproved(unproved, want, answer.direct, unit)}</p>}
      {others.map((offer) => (
        <p key={offer.place} class="worksheet-said">
          {offer.figure && !offer.result.ok ? say(offer.result.refusal, unit) : sayTrim(offer, unit)}
        </p>
      ))}
      {shared && (shared.trims.length > 1 || trims.length > 1) && (
        <p class="worksheet-said">{sayShared(shared, unit)}</p>
      )}
      {longerParts.map((part) => (
        <p key={part.place} class="worksheet-said">
          {sayLongerPart(part, unit)}
        </p>
      ))}
      {newPart && <p class="worksheet-said">{sayNewPart(newPart, unit)}</p>}
    </>
  );
}
