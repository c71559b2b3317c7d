import { grouped, marked } from '../../length/decimal-text.ts';
import { NEWTON_PER_LBF } from '../../material/material.ts';
import { showAgainst } from '../../length/show-limits.ts';
import { show, showBand, type ShownUnit } from '../../length/show.ts';
import type { EngagementAnswer, EngagementRefusal } from './thread-engagement.ts';

/** Which gives first, and how much engagement there is over what it takes. */
export function sayEngagement({ engaged, least }: EngagementAnswer, unit: ShownUnit): string {
  if (!engaged)
    return `${show(least.both, unit)} of full thread makes the bolt break before either thread strips.`;
  const { values, lower: wanted = '' } = showAgainst([engaged.length], { lower: least.both }, unit);
  const have = values[0] ?? '';
  switch (engaged.verdict.kind) {
    case 'good':
      return `Good: ${have} engaged, ${wanted} ${unit} is enough. The bolt breaks before either thread strips.`;
    case 'no-good':
      return `No good: ${have} engaged, want ${wanted} ${unit}. ${STRIPS[engaged.first]} first.`;
    case 'too-close':
      return `Too close to call: ${have} ${showBand(engaged.band.halfWidth, unit)} engaged, ${wanted} ${unit} is just enough.`;
    default:
      return engaged.verdict satisfies never;
  }
}

const STRIPS = {
  bolt: 'The thread strips',
  'bolt-threads': 'The bolt’s thread strips',
  'parent-threads': 'The part’s thread strips',
} as const;

/** By how much: the weaker thread against the strongest bolt of its grade. */
export function sayEngagementShare({ engaged }: EngagementAnswer): string {
  if (!engaged) return '';
  // Down: .996 is not enough, and 1.00 would say that it is.
  const share = marked((Math.floor(engaged.timesTheBolt * 100 + 1e-9) / 100).toFixed(2));
  return engaged.timesTheBolt >= 1
    ? `The weaker thread holds ${share} times what breaks the strongest bolt of its grade.`
    : `The weaker thread holds only ${share} of what the strongest bolt of its grade can pull.`;
}

/** A force, in pounds and in newtons. */
export function sayForce(newtons: number): string {
  return `${forceFigure(newtons, 'in')} (${forceFigure(newtons, 'mm')})`;
}

/** A force in the unit that goes with inches or with millimetres. */
export function forceFigure(newtons: number, unit: ShownUnit): string {
  if (unit === 'in') return `${grouped(Math.round(newtons / NEWTON_PER_LBF))} lbf`;
  return newtons < 1000 ? `${Math.round(newtons)} N` : `${marked((newtons / 1000).toFixed(1))} kN`;
}

export function sayEngagementRefusal(refusal: EngagementRefusal): string {
  switch (refusal.code) {
    case 'no-insert-for-thread':
      return `No wire insert is usually made for ${refusal.thread.replace('x', ' × ')}. Leave the insert out, or take another thread.`;
    case 'nothing-engaged':
      return 'Nothing of the thread is engaged. Measure how deep the bolt goes in; an insert holds about ¾ of a pitch less than its length.';
    default:
      return refusal satisfies never;
  }
}
