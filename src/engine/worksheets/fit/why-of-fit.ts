import type { FormRefusal } from '../../fit/fit-check.ts';
import type { IsoRefusal } from '../../fit/fits-iso.ts';
import { STANDARDS, systemOf } from '../../fit/fits.ts';
import { nominalName } from '../../fit/nominal.ts';
import { limitFigure, sayFitClass, sayLimits } from '../../fit/say-fit.ts';
import { JOINT_CLASS_SOURCE } from '../../fit/tables/joint-classes.ts';
import { sameLength, type Length } from '../../length/length.ts';
import { show, showBand, signedFigure, type ShownUnit } from '../../length/show.ts';
import { mean } from '../../reading/estimate.ts';
import type { WhyBlock, WhyLine } from '../account.ts';
import type { FitAnswer } from './fit.ts';
import type { FitQuestion } from './question.ts';
import { sayAllKept } from './say-kept.ts';

/** How the limits of a fit come about, from nominal to clearance, each with its source. */
export function whyOfFit(q: FitQuestion, answer: FitAnswer, unit: ShownUnit): readonly WhyLine[] {
  const { fit, kept } = answer;
  const size = (length: Length) => limitFigure(length, unit);
  return [
    nominalLine(q, unit),
    {
      what: 'Limits',
      how: `nominal ${size(q.nominal)}; hole ${sayLimits(fit.hole, unit)}, pin ${sayLimits(fit.pin, unit)}`,
      source: fit.source,
    },
    {
      what: 'Clearance',
      how: `least: smallest hole − largest pin = ${size(fit.hole.lower)} − ${size(fit.pin.upper)} = ${signedFigure(fit.clearance.lower, unit)}; greatest: ${size(fit.hole.upper)} − ${size(fit.pin.lower)} = ${signedFigure(fit.clearance.upper, unit)}`,
    },
    { what: 'Class', how: `${fit.fitClass}: ${sayFitClass(fit)}`, source: JOINT_CLASS_SOURCE },
    ...ofThesePair(q, answer, unit),
    ...(kept
      ? [
          {
            what: 'Classes that they keep',
            how: `${sayAllKept(kept[q.system])}; the one with the least room is named`,
            source: STANDARDS[q.system],
          },
        ]
      : []),
    ...(q.bore && !q.pin
      ? [
          {
            what: 'Pin for this bore',
            how: 'largest = tightest bore − least clearance; smallest = loosest bore − greatest clearance',
          },
        ]
      : []),
    ...(q.pin && !q.bore
      ? [
          {
            what: 'Bore for this pin',
            how: 'smallest = largest pin + least clearance; largest = smallest pin + greatest clearance',
          },
        ]
      : []),
  ];
}

/** Whose table it is that has no such class or size; parts out of true are no table's affair. */
export function whyOfRefusedFit(refusal: IsoRefusal | FormRefusal): readonly WhyBlock[] {
  if (refusal.code === 'form-eats-class') return [];
  const source =
    refusal.code === 'size-outside-fit-table' ? refusal.standard : STANDARDS[systemOf(refusal.fitClass)];
  const lines = [{ what: 'Table', how: 'which classes there are, and for which sizes', source }];
  return [{ is: 'why', lines }];
}

/** Which size the class goes by: never a measured one. */
function nominalLine({ nominal, asGiven, nominalFrom }: FitQuestion, unit: ShownUnit): WhyLine {
  const name = nominalName(nominal, unit);
  if (nominalFrom !== 'given')
    return {
      what: 'Nominal size',
      how: `${name}, the preferred size nearest to the ${nominalFrom}, ${show(asGiven, unit)}`,
      source: 'common practice, no source',
    };
  return {
    what: 'Nominal size',
    how: sameLength(nominal, asGiven)
      ? `${name}, as you gave it`
      : `The class goes by ${name}: ${show(asGiven, unit)} is such a pin’s own size.`,
  };
}

function ofThesePair(
  { bore, pin, slop }: FitQuestion,
  { clearance }: FitAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  if (slop)
    return [
      {
        what: 'Clearance of these two',
        how: 'Read with an indicator at the bore; it counts before bore less pin.',
        source: 'your readings',
      },
    ];
  if (!clearance || !bore || !pin) return [];
  const size = (length: Length) => limitFigure(length, unit);
  return [
    {
      what: 'Clearance of these two',
      how: `tightest ${size(mean(bore.tightest))} − ${size(mean(pin.tightest))} = ${signedFigure(clearance.tightest, unit)}; loosest ${size(mean(bore.loosest))} − ${size(mean(pin.loosest))} = ${signedFigure(clearance.loosest, unit)}; ${showBand(clearance.halfWidth, unit)}`,
      source: 'your readings; JCGM 100:2008; ISO 14253-1',
    },
  ];
}
