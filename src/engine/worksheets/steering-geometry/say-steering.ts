import { marked } from '../../length/decimal-text.ts';
import { absolute, decimalText, isNegative, minus, type Length } from '../../length/length.ts';
import { showBand, type ShownUnit } from '../../length/show.ts';
import {
  trailSign,
  type ChangeName,
  type SteeringAnswer,
  type SteeringRefusal,
} from './steering-geometry.ts';

/** An angle to a tenth of a degree: no level on a shop floor knows more. */
export function sayDegrees(degrees: number): string {
  return marked(`${(Math.round(degrees * 10) / 10 + 0).toFixed(1)}°`.replace('-', '−'));
}

/** A length of steering geometry as closely as it means anything: a tenth of a millimetre, a hundredth of an inch. */
export function steeringFigure(length: Length, unit: ShownUnit): string {
  const text = decimalText(length, unit, unit === 'mm' ? 1 : 2).replace('-', '−');
  return marked(text.replace(/^(−?)0\./, unit === 'in' ? '$1.' : '$10.'));
}

/** How closely its lengths are shown: they are worked in floating point. */
export function steeringRounded(unit: ShownUnit): string {
  return `Rounded to ${marked(unit === 'in' ? '.01 in' : '0.1 mm')}.`;
}

/** Trail after, beside what it was. */
export function sayTrailChange({ before, after }: SteeringAnswer, unit: ShownUnit): string {
  const by = minus(after.trail, before.trail);
  const was = `was ${steeringFigure(before.trail, unit)} ${unit}`;
  if (isNothing(by, unit)) return `${was}: the same`;
  return `${was}: ${steeringFigure(absolute(by), unit)} ${unit} ${isNegative(by) ? 'less' : 'more'}`;
}

/** That a trail is negative, or may be as far as it is known; nothing where it is certainly above nothing. */
export function sayTrailSign(answer: SteeringAnswer, unit: ShownUnit): string {
  const { trail } = answer.after;
  const is = `${steeringFigure(trail, unit)} ${unit}`;
  const sign = trailSign(answer);
  switch (sign) {
    case 'positive':
      return '';
    case 'negative':
      return `Negative trail, ${is}. Do not ride it.`;
    case 'may-be-negative':
      return `Trail possibly negative: ${is}, ${showBand(answer.trailHalfWidth, unit)}. Do not ride it.`;
    default:
      return sign satisfies never;
  }
}

/** What less or more trail is felt as, where it shows in the unit beside it. Common practice, no source. */
export function sayTrailFeel(answer: SteeringAnswer, unit: ShownUnit): string {
  const { before, after } = answer;
  const by = minus(after.trail, before.trail);
  const sign = trailSign(answer);
  if (sign === 'negative')
    return 'The tyre touches ahead of the steering axis. The wheel will not hold straight. Do not ride it.';
  if (sign === 'may-be-negative')
    return 'The tyre may touch ahead of the steering axis. Do not ride it. Measure rake, offset and axle height closer, or change the offset.';
  if (isNothing(by, unit)) return 'Trail is what it was.';
  return isNegative(by)
    ? 'Less trail turns easier and holds straight less; shake of the bars comes sooner.'
    : 'More trail holds straight better and turns heavier.';
}

const CHANGES: Readonly<Record<ChangeName, string>> = {
  forkLonger: 'Fork length',
  frontRadius: 'Front tyre',
  rearRadius: 'Rear tyre',
  rearHigher: 'Rear height',
  clampOffset: 'Clamp offset',
  extraAngleDegrees: 'Clamps’ extra angle',
  axleLead: 'Axle lead',
};

export function sayChange(name: ChangeName): string {
  return CHANGES[name];
}

/** How far one change moved the trail and the rake by itself. */
export function sayMoved({ trail, rakeDegrees }: SteeringAnswer['moved'][number], unit: ShownUnit): string {
  return `trail ${signed(trail, unit)} ${unit}, rake ${signedDegrees(rakeDegrees)} by itself`;
}

export function sayRise(rise: Length, unit: ShownUnit): string {
  if (isNothing(rise, unit)) return 'as it was';
  return `${steeringFigure(absolute(rise), unit)} ${unit} ${isNegative(rise) ? 'lower' : 'higher'}`;
}

export function saySteeringRefusal(refusal: SteeringRefusal): string {
  switch (refusal.code) {
    case 'rake-out-of-reach':
      return `A rake of ${sayDegrees(refusal.degrees)} is outside 0° to ${refusal.mostDegrees}° from the vertical. Given from the ground, subtract it from 90°.`;
    case 'fork-length-needed':
      return 'Leaning clamps put the axle out by the fork’s length. Give the length from the clamps to the axle.';
    case 'wheels-do-not-reach':
      return 'With these sizes the machine can’t stand on both wheels. Check the wheelbase, the tyre radius and the fork’s change.';
    default:
      return refusal satisfies never;
  }
}

function isNothing(length: Length, unit: ShownUnit): boolean {
  return !/[1-9]/.test(steeringFigure(length, unit));
}

function signed(length: Length, unit: ShownUnit): string {
  const text = steeringFigure(length, unit);
  return isNegative(length) || isNothing(length, unit) ? text : `+${text}`;
}

function signedDegrees(degrees: number): string {
  const text = sayDegrees(degrees);
  return text.startsWith('−') || !/[1-9]/.test(text) ? text : `+${text}`;
}
