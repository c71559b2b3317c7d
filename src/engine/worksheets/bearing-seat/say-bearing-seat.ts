import type { Between, SeatAnswer, SeatCut, SleeveRefusal, TaperAnswer } from './bearing-seat.ts';
import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import type { Refusal, Result } from '../../length/refusal.ts';
import { say } from '../../length/say.ts';
import { withUnit, figure, figureBetween, show, showBetween, type ShownUnit } from '../../length/show.ts';
/** What a bearing of which the real one isn't there yet can prove. */
export const MOCK_UP_SENTENCE =
  'It was measured with a mock-up bearing. Its width and its play are not those of the real one: fit the real bearing and measure again before anything is signed off.';

/** Beside a verdict that comes from a reading in place, not from a sum. */
export const READ_DIRECTLY = 'Read in place; it counts before the sum.';

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

/** `.0054 in, good from .0034 to .0074`. */
export function sayShimBetween(shim: Between, unit: ShownUnit): string {
  const aim = figureBetween(shim.aim, shim.lower, shim.upper, unit);
  return `${aim} ${unit}, ${sayGoodBetween(shim, unit)}`;
}

export function sayGoodBetween({ lower, upper }: Pick<Between, 'lower' | 'upper'>, unit: ShownUnit): string {
  return `good from ${withUnit(showBetween(lower, upper, unit), unit)}`;
}

/** End play, or preload where it is below zero. */
export function sayPlay(value: Length, unit: ShownUnit): string {
  return isNegative(value)
    ? `preload ${withUnit(figure(absolute(value), unit), unit)}`
    : `end play ${withUnit(figure(value, unit), unit)}`;
}

/** What to do with the nut or the shim: `Tighten the nut 54°: .003 of end play to lose.` */
export function sayTaper(answer: TaperAnswer, unit: ShownUnit): string {
  const { change, turnDegrees, shimThicker, verdict } = answer;
  if (verdict.kind === 'good') return 'Leave it as it is set.';
  if (verdict.kind === 'too-close')
    return `Too close to call: read it again before touching the ${shimThicker ? 'shim' : 'nut'}.`;
  const by = withUnit(figure(absolute(change.aim), unit), unit);
  const isPlayToLose = !isNegative(change.aim);
  const why = `${by} of end play to ${isPlayToLose ? 'lose' : 'gain'}`;
  if (shimThicker) {
    const thicker = isNegative(shimThicker.aim) ? 'thinner' : 'thicker';
    return `Make the shim ${by} ${thicker}: ${why}.`;
  }
  const turn = turnDegrees === undefined ? '' : ` ${Math.abs(turnDegrees).toFixed(0)}°`;
  return `${isPlayToLose ? 'Tighten' : 'Slacken'} the nut${turn}: ${why}. Spin the bearing while you do. Then to a cotter-pin slot as the manual says, and read it again.`;
}

export function saySleeveRefusal(refusal: SleeveRefusal | Refusal, unit: ShownUnit): string {
  return refusal.code === 'sleeve-would-side-load'
    ? `A sleeve ${show(absolute(refusal.lower), unit)} shorter than the distance lets the nut pull the inner races together and load the balls sideways. Want zero or more.`
    : say(refusal, unit);
}
