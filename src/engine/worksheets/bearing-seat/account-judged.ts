import type { BearingAnswer } from './answer.ts';
import type { Between, SeatCut } from './seat-cuts.ts';
import type { BearingFields } from './fields.ts';
import { bearingLegs, type BearingQuestion } from './question.ts';
import { sayApart, sayBySizesBetween, sayGoodBetween } from './say-bearing-seat.ts';
import type { Band } from '../../reading/estimate.ts';
import type { Length } from '../../length/length.ts';
import type { Result } from '../../length/refusal.ts';
import { say } from '../../length/say.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { figure, figureBetween, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Limits, Verdict } from '../../reading/verdict.ts';
import type { Block, LeadBlock } from '../account.ts';
import type { Given } from '../given.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';

export type BearingGiven = Given<BearingFields>;

export type BearingAnswered = Answered<BearingFields, BearingQuestion, BearingAnswer>;

export type Blocks = readonly (Block | undefined)[];

export type AnswerOf<Kind extends BearingAnswer['kind']> = Extract<BearingAnswer, { readonly kind: Kind }>;

export type Asked = { readonly question: BearingQuestion; readonly given: BearingGiven };

type Judged = {
  readonly value: Length;
  readonly band: Pick<Band, 'halfWidth'>;
  readonly verdict: Verdict;
  readonly limits: Limits;
  readonly quantity: string;
  readonly label: string;
};

/** The verdict, what is done about it, and how far it is proved. */
export function judged(
  { value, band: { halfWidth }, verdict, limits, quantity, label }: Judged,
  { question, given }: Asked,
  done: Blocks,
): Blocks {
  const { unit } = given;
  return [
    {
      is: 'verdict',
      kind: verdict.kind,
      headline: sayVerdict(verdict, { quantity, unit, limits, value, halfWidth }),
    },
    ...done,
    proofOf({ verdict, value, halfWidth, limits, legs: bearingLegs(question) }, given),
    { is: 'line', label, value, halfWidth, limits, verdict: verdict.kind },
  ];
}

/** The cut that puts it right, where it can be given to its limits. */
export function cutLead(
  label: string,
  cut: string,
  result: Result<SeatCut> | undefined,
  unit: ShownUnit,
): LeadBlock | undefined {
  if (result?.ok !== true) return undefined;
  const { from, to, take, lower, upper } = result.value;
  const target = figureBetween(to, lower, upper, unit);
  return {
    is: 'lead',
    label,
    figure: target,
    unit,
    change: `${figure(from, unit)} → ${target}, ${withUnit(figure(take, unit), unit)} off`,
    limits: sayGoodBetween(result.value, unit),
    cut,
  };
}

/** The shim that puts it right, where one is missing; its limits are no proof where the readings can give none. */
export function shimLead(
  shim: Between | undefined,
  label: string,
  unit: ShownUnit,
  provable = true,
): LeadBlock | undefined {
  return (
    shim && {
      is: 'lead',
      label,
      figure: figureBetween(shim.aim, shim.lower, shim.upper, unit),
      unit,
      limits: provable ? sayGoodBetween(shim, unit) : sayBySizesBetween(shim, unit),
    }
  );
}

/** Why a cut can't be given. */
export function refused(cut: Result<SeatCut> | undefined, unit: ShownUnit): Block | undefined {
  return cut?.ok === false ? { is: 'said', sentence: say(cut.refusal, unit) } : undefined;
}

/** That no one remedy does, where its places are too far from each other. */
export function apartSaid(apart: Length | undefined, remedies: string, unit: ShownUnit): Block | undefined {
  return apart && { is: 'said', sentence: sayApart(apart, remedies, unit) };
}
