import { combine, typedEstimate, type Estimate, type Term } from '../reading/estimate.ts';
import { zero, type Length } from '../length/length.ts';
import type { GripQuestion } from './grip-question.ts';

type Which = 'thickness' | 'thickest';

/** Everything between head or part and nut, legs at their thinnest or thickest place. */
export function allClamped(q: GripQuestion, which: Which): readonly Term[] {
  return [
    { estimate: typedEstimate(headWasherOf(q)), coefficient: 1 },
    ...legTerms(q, which),
    { estimate: typedEstimate(nutWasherOf(q)), coefficient: 1 },
  ];
}

/** How far the last plane between two clamped parts lies from the head or the part's face, and the terms that make it. */
export function lastPlane(q: GripQuestion): readonly Term[] | undefined {
  if (q.held === 'stud') return headTo(q, q.legs.length - 1);
  return q.legs.length > 1 ? headTo(q, q.legs.length - 1) : undefined;
}

function headWasherOf(q: GripQuestion): Length {
  return q.held === 'stud' ? zero : (q.headWasher ?? zero);
}

function nutWasherOf(q: GripQuestion): Length {
  return q.held === 'tapped' ? zero : (q.nutWasher ?? zero);
}

function legTerms(q: GripQuestion, which: Which, count = q.legs.length): readonly Term[] {
  return q.legs.slice(0, count).map((leg) => ({
    estimate: which === 'thickest' ? (leg.thickest ?? leg.thickness) : leg.thickness,
    coefficient: 1,
  }));
}

/** The shank must reach past the thickest place of each leg. */
export function headTo(q: GripQuestion, legs: number): readonly Term[] {
  return [
    { estimate: typedEstimate(headWasherOf(q)), coefficient: 1 },
    ...legTerms(q, 'thickest', Math.max(0, legs)),
  ];
}

/** A length less all that stands in its way, with the band of the whole. */
export function whatIsLeft(estimate: Estimate, terms: readonly Term[]) {
  return combine([
    { estimate, coefficient: 1 },
    ...terms.map((term) => ({ ...term, coefficient: -term.coefficient })),
  ]);
}
