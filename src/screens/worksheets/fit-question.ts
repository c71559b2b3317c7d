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
  type MeasuredPart,
  type PartFor,
} from '../../engine/fit/fit-check.ts';
import type { IsoRefusal } from '../../engine/fit/fits-iso.ts';
import { fitLimits, type FitLimits } from '../../engine/fit/fits.ts';
import type { Joint } from '../../engine/fit/joint-limits.ts';
import type { Length } from '../../engine/length/length.ts';
import { nominalNear, nominalTyped } from '../../engine/fit/nominal.ts';
import { worked, type Result } from '../../engine/length/refusal.ts';
import { fitClassFor, isJoint, systemFor } from './fit-fields.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

export type FitQuestion = {
  readonly nominal: Length;
  /** The nominal as it was put in, before a dowel's or a measured size was taken for what it is. */
  readonly asGiven: Length;
  readonly joint: Joint;
  readonly fitClass: string;
  readonly bore?: MeasuredPart;
  readonly pin?: MeasuredPart;
  /** The clearance itself, read with an indicator: replaces bore less pin. */
  readonly slop?: MeasuredPart;
};

export type FitAnswer = {
  readonly fit: FitLimits;
  readonly bore?: Checked;
  readonly pin?: Checked;
  readonly clearance?: ClearanceChecked;
  /** For the part that is still to be made; left out once it is measured too. */
  readonly pinForBore?: Result<PartFor, FormRefusal>;
  readonly boreForPin?: Result<PartFor, FormRefusal>;
};

/** What a fit worksheet asks the engine, once the nominal size and how the joint runs are known. */
export function fitQuestion(data: WorksheetData): FitQuestion | undefined {
  const { sizes, choices } = data.worksheet;
  const asGiven = exactSize(data, sizes['nominal']);
  const { joint } = choices;
  if (!asGiven || !isJoint(joint)) return undefined;
  const system = systemFor(data, 'nominal');
  // A size that was read is never a nominal itself.
  const nominal = sizes['nominal']?.from === 'feature' ? nominalNear(asGiven, system) : nominalTyped(asGiven);
  const bore = knownSize(data, sizes['bore']);
  const pin = knownSize(data, sizes['pin']);
  const slop = knownSize(data, sizes['slop']);
  return {
    nominal,
    asGiven,
    joint,
    fitClass: fitClassFor(choices, joint, system),
    ...(bore && { bore }),
    ...(pin && { pin }),
    ...(slop && { slop }),
  };
}

/** Limits of the class, what the measured parts are against it, and what would fit the one that is there. */
export function fitAnswer({
  nominal,
  fitClass,
  bore,
  pin,
  slop,
}: FitQuestion): Result<FitAnswer, IsoRefusal> {
  const fit = fitLimits({ fitClass, nominal });
  if (!fit.ok) return fit;
  return worked({
    fit: fit.value,
    ...(bore && { bore: checkBore(fit.value, bore) }),
    ...(pin && { pin: checkPin(fit.value, pin) }),
    ...(bore && pin && { clearance: checkClearance(fit.value, { bore, pin }) }),
    ...(slop && { clearance: checkReadClearance(fit.value, slop) }),
    ...(bore && { pinForBore: pinForBore(fit.value, bore) }),
    ...(pin && { boreForPin: boreForPin(fit.value, pin) }),
  });
}
