import type { Between, SeatCut } from './seat-cuts.ts';
import type { SeatAnswer } from './bearing-seat.ts';
import type { BearingRefusal } from './answer.ts';
import type { SleeveRefusal } from './inner-sleeve.ts';
import { sayFitRefusal } from '../../fit/say-fit.ts';
import type { TaperAnswer, TaperSetting } from './taper-setting.ts';
import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import type { Refusal, Result } from '../../length/refusal.ts';
import { say } from '../../length/say.ts';
import { withUnit, figure, show, sayFromTo, type ShownUnit } from '../../length/show.ts';
/** What a bearing of which the real one isn't there yet can prove. */
export const MOCK_UP_SENTENCE = 'Measured with a mock-up bearing: fit the real bearing and measure again.';
export const MOCK_UP_WHY =
  'its width and its play are not those of the real one; measure with that in before anything is signed off';

/** What was read in place was read of other parts than are in it now. */
export const READ_IT_AGAIN = 'Read it again: a part was changed since.';

export const TOO_SHORT = 'The nut would load the balls sideways.';

/** `Its places are .009 in apart: no one shim or cut suits all.` */
export function sayApart(apart: Length, remedies: string, unit: ShownUnit): string {
  return `Its places are ${show(apart, unit)} apart: no one ${remedies} suits all. Find out why first.`;
}

/** What the sizes alone would make of it, while the reading in place has to be taken again. */
export function sayBySum(value: Length, kind: 'ball' | 'seat', unit: ShownUnit): string {
  const by = show(absolute(value), unit);
  if (kind === 'seat')
    return `By the sizes alone it ${isNegative(value) ? 'lies' : 'stands'} ${by} ${isNegative(value) ? 'below the face' : 'proud'}.`;
  return `By the sizes alone the sleeve is ${by} ${isNegative(value) ? 'short' : 'longer'}.`;
}

/** How it stands: `It stands .004 in proud of the face.` */
export function saySeat({ proud }: Pick<SeatAnswer, 'proud'>, unit: ShownUnit): string {
  if (isZero(proud)) return 'It stands level with the face.';
  const by = show(absolute(proud), unit);
  return isNegative(proud) ? `It lies ${by} below the face.` : `It stands ${by} proud of the face.`;
}

/** `.052 → .056, .004 deeper; good from .054 to .058.`, or why it can't be cut. */
export function saySeatCut(cut: Result<SeatCut>, deed: string, unit: ShownUnit): string {
  if (!cut.ok) return say(cut.refusal, unit);
  const { from, to, take } = cut.value;
  return `${figure(from, unit)} → ${figure(to, unit)}, ${withUnit(figure(take, unit), unit)} ${deed}; ${sayGoodBetween(cut.value, unit)}.`;
}

export function sayGoodBetween({ lower, upper }: Pick<Between, 'lower' | 'upper'>, unit: ShownUnit): string {
  return `good ${sayFromTo(lower, upper, unit)}`;
}

/** Where the readings can prove no size: what the sizes alone would have. */
export function sayBySizesBetween(
  { lower, upper }: Pick<Between, 'lower' | 'upper'>,
  unit: ShownUnit,
): string {
  return `by the sizes alone ${sayFromTo(lower, upper, unit)}`;
}

/** End play, or preload where it is below zero. */
export function sayPlay(value: Length, unit: ShownUnit): string {
  return isNegative(value)
    ? `preload ${withUnit(figure(absolute(value), unit), unit)}`
    : `end play ${withUnit(figure(value, unit), unit)}`;
}

/** `.003 of end play to lose`. */
export function sayPlayToChange({ change }: Pick<TaperAnswer, 'change'>, unit: ShownUnit): string {
  const by = withUnit(figure(absolute(change.aim), unit), unit);
  return `${by} of end play to ${isNegative(change.aim) ? 'gain' : 'lose'}`;
}

export const LEAVE_IT = 'Leave it as it is set.';
/** What is done while a nut is turned, and after. */
export const NUT_STEPS = [
  'Spin the bearing while you turn it.',
  'Then to a cotter-pin slot as the manual says, and read it again.',
] as const;

/** Nothing is touched on a verdict that can't be called. */
export function sayNotYet(setBy: TaperSetting): string {
  return `Read it again before touching the ${setBy === 'nut' ? 'nut' : 'shim'}.`;
}

export function sayBearingRefusal(refusal: BearingRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'no-such-class':
    case 'class-not-at-size':
    case 'size-outside-fit-table':
      return sayFitRefusal(refusal, unit);
    default:
      return saySleeveRefusal(refusal, unit);
  }
}

export function saySleeveRefusal(refusal: SleeveRefusal | Refusal, unit: ShownUnit): string {
  return refusal.code === 'sleeve-would-side-load'
    ? `A sleeve ${show(absolute(refusal.lower), unit)} too short lets the nut load the balls sideways. It pulls the inner races together. Want zero or more.`
    : say(refusal, unit);
}
