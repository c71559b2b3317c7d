import {
  boreForPin,
  checkBore,
  checkClearance,
  checkPin,
  checkReadClearance,
  pinForBore,
  type Checked,
  type ClearanceChecked,
  type FormRefusal,
  type PartFor,
} from '../../fit/fit-check.ts';
import type { IsoRefusal } from '../../fit/fits-iso.ts';
import { fitLimits, type FitLimits, type FitSystem } from '../../fit/fits.ts';
import { keptClass, type KeptClass } from '../../fit/kept-class.ts';
import { worked, type Result } from '../../length/refusal.ts';
import type { FitQuestion } from './question.ts';

export type FitAnswer = {
  readonly fit: FitLimits;
  readonly bore?: Checked;
  readonly pin?: Checked;
  readonly clearance?: ClearanceChecked;
  /** Which classes of either standard the two keep, whatever was wanted of them. */
  readonly kept?: Readonly<Record<FitSystem, KeptClass>>;
  /** For the part that is still to be made, or made again. */
  readonly pinForBore?: Result<PartFor, FormRefusal>;
  readonly boreForPin?: Result<PartFor, FormRefusal>;
};

/**
 * Limits of the class, what the measured parts are against it and which class they keep, and what would fit the one that
 * is there.
 *
 * Units:   as `fitLimits`, `checkClearance`, `pinForBore`, `keptClass`.
 * Refuses: no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ISO 286-1; ANSI B4.1; ISO 14253-1 idea.
 */
export function fitAnswer(q: FitQuestion): Result<FitAnswer, IsoRefusal> {
  const { nominal, fitClass, bore, pin, slop } = q;
  const fit = fitLimits({ fitClass, nominal });
  if (!fit.ok) return fit;
  return worked({
    fit: fit.value,
    ...(bore && { bore: checkBore(fit.value, bore), pinForBore: pinForBore(fit.value, bore) }),
    ...(pin && { pin: checkPin(fit.value, pin), boreForPin: boreForPin(fit.value, pin) }),
    ...(bore && pin && { clearance: checkClearance(fit.value, { bore, pin }) }),
    ...(slop && { clearance: checkReadClearance(fit.value, slop) }),
    ...(bore && pin && { kept: keptIn({ nominal, bore, pin, slop }) }),
  });
}

function keptIn(pair: Omit<Parameters<typeof keptClass>[0], 'system'>): NonNullable<FitAnswer['kept']> {
  return { ansi: keptClass({ ...pair, system: 'ansi' }), iso: keptClass({ ...pair, system: 'iso' }) };
}
