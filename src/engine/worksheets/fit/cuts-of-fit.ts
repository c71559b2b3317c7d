import type { CutOffer } from '../../cut/cut.ts';
import { LESS_THE_BAND, wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { placesOf, surest, type FormRefusal, type MeasuredPart, type PartFor } from '../../fit/fit-check.ts';
import type { FitLimits } from '../../fit/fits.ts';
import { isLess, isMore, type Length } from '../../length/length.ts';
import { sizeStep, type Dial } from '../../length/metal-on.ts';
import type { Result } from '../../length/refusal.ts';
import type { Verdict } from '../../reading/verdict.ts';
import type { FitAnswer } from './fit.ts';
import type { FitQuestion } from './question.ts';

export type FitToCut = {
  readonly fit: FitLimits;
  readonly bore?: MeasuredPart;
  readonly pin?: MeasuredPart;
  /** Where both are measured. */
  readonly verdict?: Verdict;
  readonly pinForBore?: Result<PartFor, FormRefusal>;
  readonly boreForPin?: Result<PartFor, FormRefusal>;
};

/**
 * What is cut for a fit: the pin for the bore that is there, or the bore for the pin, each a way of its own.
 *
 * Units:   diameters; the limits that are sure after the readings' band, or all of them where none is.
 * Range:   none where both are measured and the verdict is good. A pin with metal left is turned down, else it is made
 *          new; a bore that is too wide already can't be cut.
 */
export function cutsOfFit(q: FitToCut, dial: Dial): readonly CutWay[] {
  if (q.verdict?.kind === 'good') return [];
  const unsure = q.verdict?.kind === 'too-close' && ({ unsure: true } as const);
  return [
    ...(q.pinForBore?.ok === true
      ? wayOf({
          id: 'pin',
          name: 'The pin for this bore',
          offers: [pinCut(q, q.pinForBore.value, dial)],
          ...unsure,
        })
      : []),
    ...(q.boreForPin?.ok === true
      ? wayOf({
          id: 'bore',
          name: 'The bore for this pin',
          offers: boreCut(q, q.boreForPin.value, dial),
          ...unsure,
        })
      : []),
  ];
}

/** The same of a worksheet's answer. */
export function cutsOfFitAnswer(
  { bore, pin }: FitQuestion,
  { fit, clearance, pinForBore, boreForPin }: FitAnswer,
  dial: Dial,
): readonly CutWay[] {
  return cutsOfFit(
    {
      fit,
      ...(bore && { bore }),
      ...(pin && { pin }),
      ...(clearance && { verdict: clearance.verdict }),
      ...(pinForBore && { pinForBore }),
      ...(boreForPin && { boreForPin }),
    },
    dial,
  );
}

function pinCut({ fit, pin }: FitToCut, made: PartFor, dial: Dial): CutOffer {
  const limits = surest(made);
  const target = targetBetween(limits, 'outside', sizeStep('outside', dial));
  const present = pin && mean(pin.tightest);
  const hasMetal = present !== undefined && isMore(present, target);
  return {
    name: hasMetal ? 'Pin, turned down' : 'Pin, made new',
    part: 'pin',
    operation: 'turn',
    of: 'outside',
    ...(hasMetal && { present }),
    target,
    ...limits,
    limitsFrom: source(fit, made, 'bore'),
  };
}

function boreCut({ fit, bore }: FitToCut, made: PartFor, dial: Dial): readonly CutOffer[] {
  const limits = surest(made);
  const target = targetBetween(limits, 'bore', sizeStep('bore', dial));
  const present = bore && mean(bore.tightest);
  if (bore && !hasRoomToOpen(bore, target)) return [];
  return [
    {
      name: bore ? 'Bore, opened' : 'Bore, to size',
      part: 'bore',
      operation: 'bore',
      of: 'bore',
      ...(present && { present }),
      target,
      ...limits,
      limitsFrom: source(fit, made, 'pin'),
    },
  ];
}

/** Some place is still to be opened, and none is past the target: neither is told by the band of a coarse reading. */
function hasRoomToOpen(bore: MeasuredPart, target: Length): boolean {
  const sizes = placesOf(bore).map(mean);
  return sizes.some((size) => isLess(size, target)) && !sizes.some((size) => isMore(size, target));
}

function source({ source: from }: FitLimits, { sure }: PartFor, measured: 'bore' | 'pin'): string {
  const told = `${from}, to the ${measured} as measured`;
  return sure ? `${told}, ${LESS_THE_BAND}` : `${told}; the readings are too coarse to be sure of any`;
}
