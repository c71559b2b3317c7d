import { minus, plus } from '../../length/length.ts';
import type { LeastAndMost } from '../../material/hot-and-cold.ts';
import { materialNamed } from '../../material/tables/materials.ts';
import { mean } from '../../reading/estimate.ts';
import { IT_SEIZES, type Warmed } from '../in-use.ts';
import type { Answered } from '../worksheet.ts';
import type { FitFields } from './fields.ts';
import type { FitAnswer } from './fit.ts';
import type { FitQuestion } from './question.ts';

const IT_COMES_LOOSE = { surely: 'it comes loose', perhaps: 'it may come loose' };

/**
 * What heat and cold take from a fit: of two measured parts their own clearance, else what the class leaves. A class that
 * may fall out either way, or two parts that may, are judged by neither.
 */
export function warmedFit({
  given,
  question,
  answer: { fit, clearance },
}: Answered<FitFields, FitQuestion, FitAnswer>): Warmed | undefined {
  if (fit.kind !== 'clearance' && fit.kind !== 'interference') return undefined;
  const range: LeastAndMost = clearance
    ? {
        least: minus(clearance.tightest, clearance.halfWidth),
        most: plus(clearance.loosest, clearance.halfWidth),
      }
    : { least: fit.clearance.lower, most: fit.clearance.upper };
  const { bore, pin, nominal } = question;
  const legs = [
    {
      size: bore ? mean(bore.tightest) : nominal,
      coefficient: 1,
      metal: materialNamed(given.choice('boreMetal')),
      asks: 'boreMetal',
    },
    {
      size: pin ? mean(pin.tightest) : nominal,
      coefficient: -1,
      metal: materialNamed(given.choice('pinMetal')),
      asks: 'pinMetal',
    },
  ];
  return fit.kind === 'clearance'
    ? { range, legs, stays: 'above', quantity: 'clearance', fails: IT_SEIZES }
    : { range, legs, stays: 'below', quantity: 'grip', fails: IT_COMES_LOOSE };
}
