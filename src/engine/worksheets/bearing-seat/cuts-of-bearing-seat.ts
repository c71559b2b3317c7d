import type { SeatAnswer, SeatQuestion, SettingWant } from './bearing-seat.ts';
import type { SleeveAnswer, SleeveQuestion } from './inner-sleeve.ts';
import type { SeatCut } from './seat-cuts.ts';
import type { TaperAnswer, TaperQuestion } from './taper-setting.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { LESS_THE_BAND, wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { isLess, isMore, zero, type Length } from '../../length/length.ts';

/** The cuts' names, which the leads that show their targets give too. */
export const MADE_SLEEVE = 'Sleeve, made new';
export const FACED_SLEEVE = 'Sleeve, faced to length';
export const RECESS_DEEPER = 'Recess, made deeper';
export const FACED_SHIM = 'Shim, faced to thickness';

/**
 * What is cut for the sleeve between two ball bearings: the one there is faced, or one made new.
 *
 * Units:   as `innerSleeve`.
 * Range:   none for a sleeve that is good. One that is too short is only made new.
 */
export function cutsOfSleeve({ want }: SleeveQuestion, { make, present }: SleeveAnswer): readonly CutWay[] {
  if (present?.verdict.kind === 'good') return [];
  const made = {
    name: MADE_SLEEVE,
    ...ofSleeve(want),
    target: make.target,
    lower: make.lower,
    upper: make.upper,
  };
  const isDoubtful = present?.verdict.kind === 'too-close';
  return [
    ...(present?.trim?.ok === true
      ? wayOf({
          id: 'trim',
          name: 'Face the sleeve there is',
          offers: [{ name: FACED_SLEEVE, ...ofSleeve(want), ...reached(present.trim.value) }],
          ...(isDoubtful && { unsure: true }),
        })
      : []),
    ...wayOf({
      id: 'make',
      name: 'Make the sleeve new',
      offers: [made],
      ...(isDoubtful && { unsure: true }),
    }),
  ];
}

/**
 * What is cut where a bearing stands too proud: its recess made deeper.
 *
 * Range:   none where it is good, lies too deep, or the cut was refused.
 */
export function cutsOfSeat({ want }: SeatQuestion, { deepen, verdict }: SeatAnswer): readonly CutWay[] {
  if (!want || deepen?.ok !== true) return [];
  const offer: CutOffer = {
    name: RECESS_DEEPER,
    part: 'recess',
    operation: 'bore',
    of: 'recess-depth',
    ...reached(deepen.value),
    limitsFrom: `how far it should stand proud (${want.limits.source}), ${LESS_THE_BAND}`,
  };
  return wayOf({
    id: 'deepen',
    name: 'Make the recess deeper',
    offers: [offer],
    ...(verdict?.kind === 'too-close' && { unsure: true }),
  });
}

/**
 * What is cut where taper rollers are set by a spacer that has to become thinner: it is faced.
 *
 * Units:   `step` of the dial, for lengths.
 * Range:   none where it is good, set by a nut, has to become thicker, or where the readings can't prove any thickness.
 */
export function cutsOfTaper(
  { shim, want }: TaperQuestion,
  { newShim, provable, verdict }: TaperAnswer,
  step: Length,
): readonly CutWay[] {
  if (!shim || !newShim || !provable || !isLess(newShim.aim, mean(shim)) || !isMore(newShim.lower, zero))
    return [];
  const { aim, lower, upper } = newShim;
  const target = targetBetween({ aim, lower, upper }, 'length', step);
  if (!isLess(target, mean(shim))) return [];
  const offer: CutOffer = {
    name: FACED_SHIM,
    part: 'shim',
    operation: 'face',
    of: 'length',
    present: mean(shim),
    target,
    lower,
    upper,
    limitsFrom: `end play wanted (${want.limits.source}), ${LESS_THE_BAND}`,
  };
  return wayOf({
    id: 'shim',
    name: 'Face the shim there is',
    offers: [offer],
    ...(verdict.kind === 'too-close' && { unsure: true }),
  });
}

function ofSleeve({ limits }: SettingWant) {
  return {
    part: 'sleeve',
    operation: 'face',
    of: 'length',
    limitsFrom: `how much longer than the distance it should be (${limits.source}), ${LESS_THE_BAND}`,
  } as const;
}

function reached({ from: present, to: target, lower, upper }: SeatCut) {
  return { present, target, lower, upper };
}
