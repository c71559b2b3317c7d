import { cutsOfBearing } from './answer.ts';
import { FACED_SHIM } from './cuts-of-bearing-seat.ts';
import { LEAVE_IT, NUT_STEPS, sayGoodBetween, sayNotYet, sayPlayToChange } from './say-bearing-seat.ts';
import { absolute, isNegative } from '../../length/length.ts';
import { figure, figureBetween, type ShownUnit } from '../../length/show.ts';
import type { Block } from '../account.ts';
import { type Blocks, type AnswerOf, type Asked, judged, shimLead, apartSaid } from './account-judged.ts';

/** What is said of a pair of taper bearings: their end play, and the shim or the turn of the nut that sets it. */
export function ofTaper(answer: AnswerOf<'taper'>, asked: Asked): Blocks {
  const { ask, found } = answer;
  const { unit } = asked.given;
  const { value, verdict, apart } = found;
  const isToBeSet = verdict.kind === 'no-good' && !apart;
  return [
    ...judged({ ...found, limits: ask.want.limits, quantity: 'end play', label: 'now' }, asked, [
      ...(isToBeSet ? taperRemedy(answer, unit) : []),
      ...(isToBeSet ? taperAsk(answer) : []),
      isNegative(value) ? { is: 'said', sentence: 'Below zero is preload.' } : undefined,
      ...taperSteps(answer, isToBeSet),
      apartSaid(apart, ask.setBy === 'nut' ? 'turn of the nut' : 'shim', unit),
    ]),
    isToBeSet && found.newShim && found.provable ? { is: 'extra', name: 'bearing-shims' } : undefined,
  ];
}

function taperRemedy(answer: AnswerOf<'taper'>, unit: ShownUnit): Blocks {
  const { newShim, shimThicker, turnDegrees, change, provable } = answer.found;
  const toChange = sayPlayToChange({ change }, unit);
  const [faced] = cutsOfBearing(answer).flatMap(({ offers }) => offers);
  if (faced) {
    const target = figureBetween(faced.target, faced.lower, faced.upper, unit);
    return [
      {
        is: 'lead',
        label: 'Face the shim',
        figure: target,
        unit,
        change: faced.present && `${figure(faced.present, unit)} → ${target}, for ${toChange}`,
        limits: sayGoodBetween({ lower: faced.lower, upper: faced.upper }, unit),
        cut: FACED_SHIM,
      },
    ];
  }
  if (newShim)
    return [shimLead(newShim, 'Shim to fit', unit, provable), { is: 'said', sentence: `For ${toChange}.` }];
  if (shimThicker)
    return [
      {
        is: 'lead',
        label: isNegative(shimThicker.aim) ? 'Make the shim thinner' : 'Make the shim thicker',
        figure: figure(absolute(shimThicker.aim), unit),
        unit,
        change: toChange,
      },
    ];
  const deed = isNegative(change.aim) ? 'Slacken the nut' : 'Tighten the nut';
  return turnDegrees === undefined
    ? [{ is: 'lead', label: deed, figure: figure(absolute(change.aim), unit), unit, change: toChange }]
    : [
        {
          is: 'lead',
          label: deed,
          figure: `${Math.abs(turnDegrees).toFixed(0)}°`,
          unit: 'turn',
          change: toChange,
        },
      ];
}

/** What has to be given before nut or shim can be set by a figure. */
function taperAsk({ ask, found }: AnswerOf<'taper'>): Blocks {
  if (ask.setBy === 'nut')
    return ask.pitch
      ? []
      : [
          {
            is: 'ask',
            sentence: 'The nut’s thread says how far to turn it.',
            field: 'thread',
            key: 'Give the thread',
          },
        ];
  return found.newShim
    ? []
    : [
        {
          is: 'ask',
          sentence: 'The shim in it now gives the one to fit.',
          field: 'shim',
          key: 'Give the shim',
        },
      ];
}

function taperSteps({ ask: { setBy }, found: { verdict } }: AnswerOf<'taper'>, isToBeSet: boolean): Blocks {
  if (verdict.kind === 'good') return [{ is: 'said', sentence: LEAVE_IT }];
  if (verdict.kind === 'too-close') return [{ is: 'said', sentence: sayNotYet(setBy) }];
  return isToBeSet && setBy === 'nut' ? NUT_STEPS.map((sentence): Block => ({ is: 'said', sentence })) : [];
}
