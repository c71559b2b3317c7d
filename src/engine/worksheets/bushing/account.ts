import type { BushingAnswer, BushingQuestion } from '../../press/bushing.ts';
import { sayBushingWarning } from '../../press/say-bushing.ts';
import { sayWarningShort } from '../../press/say-warning-short.ts';
import { sayLimits } from '../../fit/say-fit.ts';
import { sayNominal } from '../../fit/nominal.ts';
import { sayWasOpened, sayWornAxis } from '../../fit/worn-axis.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { sameLength, type Length } from '../../length/length.ts';
import { say } from '../../length/say.ts';
import { uncapital } from '../../length/say-words.ts';
import { figure, figureBetween, show, type ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { legOf, type Leg } from '../../reading/settle.ts';
import type { Block, LeadBlock, SaidBlock, VerdictBlock, WhyLine } from '../account.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { cutsOfBushing, openedFirst, reamerOf } from './cuts-of-bushing.ts';
import type { BushingFields } from './fields.ts';
import { cutRows, pressedRows, pressItIn, waysNotGone } from './rows-of-bushing.ts';
import { bushingWhy } from './why-of-bushing.ts';

export type BushingAnswered = Answered<BushingFields, BushingQuestion, BushingAnswer>;

/** What is said of a bushing: what must stop it, the next cut, how it goes in, what speaks against it. */
export function bushingAccount(worked: BushingAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const judged = answer.measured && { ...answer.measured, legs: legsOf(question) };
  return [
    ...verdictsOf(answer, unit),
    nextCut(worked),
    pressItIn(answer, unit),
    judged && proofOf(judged, given),
    ...saidOf(worked),
    judged && { is: 'line', label: 'interference', ...judged, verdict: judged.verdict.kind },
    { is: 'caution', of: 'bushing' },
    ...waysNotGone(answer, unit),
    cutRows(answer, unit),
    pressedRows(answer, unit),
    { is: 'why', lines: [...warningLines(answer, unit), ...bushingWhy(question, answer, unit)] },
  ];
}

function legsOf({ outside, reamed }: BushingQuestion): readonly Leg[] {
  return outside && reamed ? [legOf('pin', outside.loosest, 1), legOf('bore', reamed.loosest, -1)] : [];
}

/** What must be put right first, said before any cut; then the grip as it was measured. */
function verdictsOf({ warnings, measured }: BushingAnswer, unit: ShownUnit): readonly VerdictBlock[] {
  const stops = warnings
    .filter(({ weighs }) => weighs === 'stop')
    .map((warning): VerdictBlock => ({
      is: 'verdict',
      kind: 'no-good',
      headline: sayWarningShort(warning, unit),
    }));
  if (!measured) return stops;
  const headline = sayVerdict(measured.verdict, { ...measured, quantity: 'interference', unit });
  return [...stops, { is: 'verdict', kind: measured.verdict.kind, headline }];
}

/** The next cut, as it is read from the lathe: the figure of its cut. */
function nextCut(worked: BushingAnswered): LeadBlock {
  const { answer, unit } = worked;
  const { next, ream, reamTakes, inside, insideTo, measured } = answer;
  if (measured?.verdict.kind === 'no-good')
    return turned(worked, measured.verdict.way === 'over' ? 'Turn it down to' : 'Turn a new one to');
  switch (next) {
    case 'ream':
      return {
        is: 'lead',
        label: openTo(worked),
        figure: figure(ream.size, unit),
        unit,
        ...(reamerOf(answer) && { change: `${reamerOf(answer)?.name} reamer` }),
        limits: `takes ${show(reamTakes, unit)}, then measure it`,
        ...cutNamed(worked, ({ part, target }) => part === 'bore' && sameLength(target, ream.size)),
      };
    case 'turn':
      return turned(worked, 'Turn the bushing to');
    case 'press':
      return {
        is: 'lead',
        label: 'Press it, then bore to',
        figure: figureBetween(insideTo, inside.lower, inside.upper, unit),
        unit,
        limits: sayLimits(inside, unit),
        ...cutNamed(worked, ({ part, of }) => part === 'bushing' && of === 'bore'),
      };
    default:
      return next satisfies never;
  }
}

/** Reamed or bored, and of a worn bore where: `Bore on its old axis, ream to`. */
function openTo({ question: { keepsAxis }, answer }: BushingAnswered): string {
  const deed = reamerOf(answer) ? 'Ream' : 'Bore';
  if (!answer.axis) return `${deed} to`;
  if (keepsAxis !== true) return `${deed} where the wear is, to`;
  return deed === 'Bore' ? 'Bore on its old axis to' : 'Bore on its old axis, ream to';
}

function turned(worked: BushingAnswered, label: string): LeadBlock {
  const { turn, turnTo } = worked.answer;
  return {
    is: 'lead',
    label,
    figure: figureBetween(turnTo, turn.lower, turn.upper, worked.unit),
    unit: worked.unit,
    limits: sayLimits(turn, worked.unit),
    ...cutNamed(worked, ({ of }) => of === 'outside'),
  };
}

function cutNamed({ question, answer, given }: BushingAnswered, is: (offer: CutOffer) => boolean) {
  const offer = cutsOfBushing(question, answer, given.dial)
    .flatMap(({ offers }) => offers)
    .find(is);
  return offer && { cut: offer.name };
}

function saidOf(worked: BushingAnswered): readonly SaidBlock[] {
  const { question, answer, unit } = worked;
  const { next, turnTarget, insideTarget, measured, axis, nominal, warnings } = answer;
  const isTurned = next === 'turn' || measured?.verdict.kind === 'no-good';
  const target = isTurned ? turnTarget : next === 'press' ? insideTarget : undefined;
  const minds = warnings.filter(({ weighs }) => weighs === 'mind');
  const first = next === 'ream' ? openedFirst(question, answer, question.step) : undefined;
  return [
    ...(first ? [sayFirst(worked, first.target)] : []),
    ...(target && !target.ok ? [say(target.refusal, unit)] : []),
    ...minds.map((warning) => sayWarningShort(warning, unit)),
    ...(axis && next === 'ream' ? [sayWornAxis(axis, question.keepsAxis, unit)] : []),
    sayNominal(nominal, unit),
    `${question.bushing.name} in ${uncapital(question.part.name)}.`,
    ...(axis && next !== 'ream' ? [sayWasOpened(axis, question.keepsAxis, unit)] : []),
  ].map((sentence): SaidBlock => ({ is: 'said', sentence }));
}

/** A drill follows the wear as a reamer does: on the old axis nothing but boring does it. */
function sayFirst({ question: { keepsAxis }, unit }: BushingAnswered, to: Length): string {
  return keepsAxis === true
    ? `Bore it to ${show(to, unit)} on its old axis first: a reamer follows the wear.`
    : `Drill or bore it to ${show(to, unit)} first: a reamer only sizes.`;
}

/** Each warning whole, with where its figures come from. */
function warningLines({ warnings }: BushingAnswer, unit: ShownUnit): readonly WhyLine[] {
  return warnings.flatMap((warning, index) => {
    const how = sayBushingWarning(warning, unit);
    return how === sayWarningShort(warning, unit)
      ? []
      : [{ what: `What speaks against it, ${index + 1}`, how }];
  });
}
