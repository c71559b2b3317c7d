import { marked } from '../../length/decimal-text.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { PlateRefusal } from './plate.ts';
import type { JudgedPlace } from './webs.ts';

/** What is left there, as a verdict names it: `web A1 to B2`. */
export function sayPlace({ of, where }: Pick<JudgedPlace, 'of' | 'where'>): string {
  switch (of) {
    case 'web':
      return `web ${where}`;
    case 'edge':
      return `edge beside ${where}`;
    case 'bore':
      return `wall from ${where} to the middle`;
    case 'head':
      return `wall beside head ${where}`;
    case 'floor':
      return `floor under heads of ${where}`;
    case 'spacing':
      return `spacing of ${where}, off`;
    default:
      return of satisfies never;
  }
}

export function sayDegrees(degrees: number): string {
  return `${marked(Math.round(degrees * 100) / 100)}°`;
}

/** Why it can't be made so, and what would do. */
export function sayPlateRefusal(refusal: PlateRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'overlap': {
      const { holes, by, turn } = refusal;
      const cure = turn === undefined ? 'Move one of them.' : `Turn B to ${sayDegrees(turn)}.`;
      return `Holes ${holes.join(' and ')} run ${show(by, unit)} into each other. ${cure}`;
    }
    case 'off-plate':
      return `Hole ${refusal.hole} runs ${show(refusal.by, unit)} over the edge. Take a larger plate.`;
    case 'into-bore':
      return `Hole ${refusal.hole} runs ${show(refusal.by, unit)} into the middle hole. Make that smaller.`;
    case 'head-too-small': {
      const { pattern, head, hole } = refusal;
      return `Counterbore ${show(head, unit)} of ${pattern} is no wider than its hole, ${show(hole, unit)}.`;
    }
    case 'head-through': {
      const { pattern, deep, thick } = refusal;
      return `Counterbore of ${pattern}, ${show(deep, unit)} deep, goes through ${show(thick, unit)} of plate.`;
    }
    case 'no-edges':
      return 'Without an edge nothing can be set from one. Give the plate, or another zero.';
    default:
      return sayPatternRefusal(refusal, unit);
  }
}

type OfPattern = Extract<PlateRefusal, { pattern: string }>;

function sayPatternRefusal(
  refusal: Exclude<OfPattern, { code: 'head-too-small' | 'head-through' }>,
  unit: ShownUnit,
): string {
  const { pattern } = refusal;
  switch (refusal.code) {
    case 'in-line':
      return `Holes 1, 2 and 3 of ${pattern} stand in a line: no circle goes through them.`;
    case 'too-few':
      return `Pattern ${pattern} needs ${refusal.least} holes or more for a circle.`;
    case 'too-many-points':
      return `Pattern ${pattern} can have ${refusal.most} holes by x and y. Change how many.`;
    case 'plug-too-thick':
      return `${show(refusal.over, unit)} over plugs of ${show(refusal.plug, unit)} can’t be right in ${pattern}. Read both again.`;
    case 'does-not-close':
      return `Holes ${refusal.holes.join(', ')} of ${pattern} don’t close. Read the three distances again.`;
    default:
      return refusal satisfies never;
  }
}
