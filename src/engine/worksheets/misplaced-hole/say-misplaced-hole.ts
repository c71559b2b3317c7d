import { marked } from '../../length/decimal-text.ts';
import { finest } from '../../length/finest.ts';
import { isMore, isZero, roundToStep, zero, type Length } from '../../length/length.ts';
import { figure, show, showBand, withUnit, type ShownUnit } from '../../length/show.ts';
import { sayBushingRefusal } from '../../press/say-bushing.ts';
import type { Lock, MisplacedHoleAnswer, MisplacedHoleRefusal } from './misplaced-hole.ts';

/** Why it can't be done so, and the size that would do. */
export function sayMisplacedHoleRefusal(refusal: MisplacedHoleRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'not-off':
      return 'The hole is in its place: a plain bushing does. Check how far it is off.';
    case 'thin-side': {
      const { opened, thin, wants, least } = refusal;
      const said = isMore(thin, zero)
        ? `At ${show(opened, unit)} the thin side is ${show(thin, unit)}: want ${show(wants, unit)}.`
        : `At ${show(opened, unit)} the bushing breaks out on its thin side.`;
      return `${said} Open it to ${sayAtLeast(least, unit)} or more.`;
    }
    case 'not-clean':
      return `${show(refusal.opened, unit)} leaves some of the old hole. Open it to ${sayAtLeast(refusal.least, unit)} or more.`;
    default:
      return sayBushingRefusal(refusal, unit);
  }
}

/** A least size, never shown below what it is. */
export function sayAtLeast(least: Length, unit: ShownUnit): string {
  return show(roundToStep(least, finest[unit], 'up'), unit);
}

/** How closely the right place is known, against how close the hole has to come. */
export function sayPlace({ judgedPlace, close }: MisplacedHoleAnswer, unit: ShownUnit): string {
  const { verdict, halfWidth } = judgedPlace;
  const want = `want it within ${withUnit(figure(close.within, unit), unit)}`;
  const known = isZero(halfWidth)
    ? 'its place as given'
    : `its place to ${withUnit(showBand(halfWidth, unit), unit)}`;
  return `${verdict.kind === 'good' ? 'Good' : 'Too close to call'}: ${known}, ${want}.`;
}

/** The same of a most. */
export function sayAtMost(most: Length, unit: ShownUnit): string {
  return show(roundToStep(most, finest[unit], 'down'), unit);
}

/** A direction as on a clock's face: `12 o’clock`, `40° up from 3 o’clock`. */
export function sayToward(degrees: number | undefined): string {
  if (degrees === undefined) return 'its right place';
  const turned = ((Math.round(degrees * 10) % 3600) + 3600) % 3600;
  const quarter = ['3', '12', '9', '6'][turned / 900];
  if (quarter !== undefined) return `${quarter}\u00a0o’clock`;
  const isRight = turned < 900 || turned > 2700;
  const off = isRight ? Math.min(turned, 3600 - turned) : Math.abs(1800 - turned);
  return `${marked(off / 10)}° ${turned < 1800 ? 'up' : 'down'} from ${isRight ? 3 : 9}\u00a0o’clock`;
}

/** What a direction may be off, never shown wider than it is. */
export function sayWithinDegrees(degrees: number): string {
  return `±${marked((Math.floor(degrees * 10) / 10).toFixed(1))}°`;
}

export const LOCK_IT = 'Mark it and lock it: turned, it takes the hole along.';

/** How it is locked, as a step. */
export const LOCKED: Readonly<Record<Lock, string>> = {
  dowel: 'Drive a dowel into the joint of bushing and part; its hole weakens both',
  screw: 'Set a screw through the part into the bushing’s thick side',
  bond: 'Leave the retaining compound to cure before anything turns it',
};
