import { absolute, isNegative } from '../../length/length.ts';
import { sizeFigure } from '../../reading/say-readings.ts';
import { legOf, type Leg } from '../../reading/settle.ts';
import { show, showBetween } from '../../length/show.ts';
import type { Block, RowsBlock, VerdictBlock } from '../account.ts';
import { withInUse } from '../in-use.ts';
import { proofOf } from '../proof.ts';
import { strengthBlocks } from '../strength.ts';
import type { Answered } from '../worksheet.ts';
import type { SpacerStackFields } from './fields.ts';
import { canBeCut } from './may-cut.ts';
import { readInPlaceName } from './question.ts';
import { sayReadGap, sayReadItAgain, sayStack, sayStackBand, sayUnproved } from './say-stack.ts';
import { sayStrength } from '../../cut/say-strength.ts';
import type { StackAnswer, StackQuestion } from './spacer-stack.ts';
import type { Trim } from './stack-trim.ts';
import { stackWhy } from './stack-why.ts';
import { whatGives, facedOf } from './account-gives.ts';
import { warmedStack } from './warmed-stack.ts';

export type StackAnswered = Answered<SpacerStackFields, StackQuestion, StackAnswer>;

/** What is said of a stack: whether it does what is wanted, what has to give, by how much, and how far that is proved. */
export function stackAccount(worked: StackAnswered): readonly (Block | undefined)[] {
  return withInUse(atTwenty(worked), worked.given, warmedStack(worked));
}

function atTwenty(worked: StackAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const { want } = question;
  const before = given.readBefore(readInPlaceName(want));
  if (before?.byItsAnswer === true) return readAgainFirst(worked, before.why);
  return [
    verdictOf(worked),
    ...whatGives(worked),
    ...proofLines(worked),
    ...saidOnPaper(worked),
    ...strengthOfParts(worked),
    answer.shim && { is: 'extra', name: 'drawer-shims' },
    piecesIn(question) > 1 ? { is: 'extra', name: 'one-part' } : undefined,
    partRows(worked),
    numberLine(worked),
    { is: 'why', lines: stackWhy(question, answer, unit) },
  ];
}

/** The gap was read, and what it asked for was done: the sum, which it had shown to be wrong, never stands in for it. */
function readAgainFirst({ question, answer, unit }: StackAnswered, why: string): readonly Block[] {
  return [
    { is: 'verdict', kind: 'too-close', headline: sayReadItAgain(why) },
    {
      is: 'ask',
      sentence: sayReadGap(question.want),
      field: readInPlaceName(question.want),
      key: 'Read it again',
    },
    { is: 'why', lines: stackWhy(question, answer, unit) },
  ];
}

function verdictOf({ question, answer, unit }: StackAnswered): VerdictBlock {
  return {
    is: 'verdict',
    kind: answer.verdict.kind,
    headline: sayStack(answer, question.want, unit),
  };
}

/** To what these sizes prove the figure and which check settles it; else which tool would call it. */
function proofLines(worked: StackAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const { want, direct } = question;
  const judged = {
    verdict: answer.verdict,
    value: answer.wanted,
    halfWidth: answer.band.halfWidth,
    limits: want.limits,
    legs: legsOf(worked),
  };
  const settles = proofOf(judged, given);
  const unproved = unprovedOf(worked);
  if (!unproved) return [settles, ...readTheGap(worked)];
  return [
    {
      is: 'proof',
      sentence: sayUnproved({ ...unproved, sizes: sizesIn(worked) }, want, direct !== undefined, unit),
    },
    settles && { is: 'said', sentence: settles.sentence },
    ...readTheGap(worked),
  ];
}

function unprovedOf({ answer }: StackAnswered): { readonly halfWidth: Trim['halfWidth'] } | undefined {
  if (answer.verdict.kind === 'good') return undefined;
  const asked = [
    ...answer.trims.flatMap((offer) => facedOf(offer) ?? offer.instead ?? []),
    ...(answer.shim ? [answer.shim] : []),
  ];
  return asked.find(({ proved }) => !proved) ?? (answer.provable ? undefined : answer.band);
}

function readTheGap({ answer }: StackAnswered): readonly Block[] {
  if (answer.direct || answer.verdict.kind !== 'too-close' || !answer.provable) return [];
  return [
    {
      is: 'said',
      sentence: 'Put it together and feeler the gap: that beats any sum.',
    },
    { is: 'said', sentence: 'Or measure the stack clamped together as one.' },
  ];
}

function sizesIn({ question: { fixed, parts, direct } }: StackAnswered) {
  return direct ? [direct] : [fixed.length, ...parts.map(({ thickness }) => thickness)];
}

function legsOf({ question: { fixed, parts, want, direct }, answer }: StackAnswered): readonly Leg[] {
  if (direct) {
    const readAs = want.kind === 'clamp' ? 'depth' : 'gap';
    return [{ ...legOf(readAs, direct, 1), size: absolute(answer.gap) }];
  }
  return [
    legOf('length', fixed.length, 1),
    ...parts.map((part) => legOf('length', part.thickness, -part.count)),
  ];
}

/** What the phone's page has no room for, or says with its own keys. */
function saidOnPaper({ question: { want }, answer, unit }: StackAnswered): readonly Block[] {
  const { limits, aim } = want;
  return [
    {
      is: 'said',
      on: 'paper',
      sentence: `Wanted ${showBetween(limits.lower, limits.upper, unit)} ${unit}, aim ${show(aim, unit)} (${limits.source}).`,
    },
    { is: 'said', on: 'paper', sentence: sayStackBand(answer, unit) },
  ];
}

/** Of every part that may be faced, whether it was said that it may or is only one of those to choose from. */
function strengthOfParts({ question, answer, given }: StackAnswered): readonly Block[] {
  if (answer.verdict.kind === 'good' || isNegative(answer.needed.aim)) return [];
  const faced = answer.trims.map(({ part }) => part);
  const isAsked = faced.length === 0 && given.choice('mayCut') !== 'none';
  const toChoose = isAsked ? question.parts.map(({ name }) => name).filter(canBeCut) : [];
  return strengthBlocks([...faced, ...toChoose].map(sayStrength));
}

function partRows({ question, unit }: StackAnswered): RowsBlock {
  return {
    is: 'rows',
    title: 'Parts, from the left',
    rows: question.parts.map(({ name, count, adjustable, thickness }, place) => ({
      what: `${place + 1} ${count > 1 ? `${count} × ` : ''}${name}`,
      figure: sizeFigure(thickness, unit),
      ...(adjustable && { more: 'may be cut' }),
    })),
  };
}

function numberLine({ question: { want }, answer }: StackAnswered): Block {
  return {
    is: 'line',
    label: 'now',
    value: answer.wanted,
    halfWidth: answer.band.halfWidth,
    limits: want.limits,
    verdict: answer.verdict.kind,
  };
}

function piecesIn({ parts }: StackQuestion): number {
  return parts.reduce((so, { count }) => so + count, 0);
}
