import { roundToStep } from '../../length/length.ts';
import { show, showBand, withUnit, type ShownUnit } from '../../length/show.ts';
import { finest, type ThreadCutRefusal } from './thread-cut.ts';

/** Why it can't be cut or measured so, and what would do. */
export function sayThreadCutRefusal(refusal: ThreadCutRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'class-not-in-table':
      return `${refusal.thread.designation} has no limits in the tables here. Pick another pitch.`;
    case 'wire-sinks':
      return `A wire of ${show(refusal.wire, unit)} sinks in between the crests. Take ${sayWires(refusal, unit)}.`;
    case 'wire-on-crests':
      return `A wire of ${show(refusal.wire, unit)} sits on the crests. Take ${sayWires(refusal, unit)}.`;
    case 'wire-not-known':
      return `The wire is known to ${withUnit(showBand(refusal.halfWidth, unit), unit)}: three times that uses up the limits. Read it with a finer tool.`;
    case 'dial-too-coarse':
      return `One mark of the ${refusal.infeed === 'flank' ? 'compound' : 'cross slide'} takes ${show(refusal.step, unit)}, the limits are ${show(refusal.room, unit)} apart. Take a finer dial${refusal.infeed === 'straight' ? ', or feed along the flank' : ''}.`;
    case 'too-small':
      return `${show(refusal.outside, unit)} is too small for this thread: it wants ${show(refusal.least, unit)} at least.`;
    default:
      return refusal satisfies never;
  }
}

function sayWires(
  { range, best }: Extract<ThreadCutRefusal, { code: 'wire-sinks' | 'wire-on-crests' }>,
  unit: ShownUnit,
): string {
  const least = roundToStep(range.least, finest[unit], 'up');
  const most = roundToStep(range.most, finest[unit], 'down');
  return `one from ${show(least, unit)} to ${show(most, unit)}, best ${show(best, unit)}`;
}
