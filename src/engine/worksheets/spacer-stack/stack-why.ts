import { absolute, isNegative } from '../../length/length.ts';
import { sizeFigure } from '../../reading/say-readings.ts';
import { figure, showBand, showBetween, type ShownUnit } from '../../length/show.ts';
import type { StackAnswer, StackQuestion } from './spacer-stack.ts';

/** How a stack's figures came about. */
export function stackWhy({ fixed, parts, want }: StackQuestion, answer: StackAnswer, unit: ShownUnit) {
  const terms = parts
    .map(({ thickness, count }) => `${count > 1 ? `${count} · ` : ''}${sizeFigure(thickness, unit)}`)
    .join(' − ');
  return [
    answer.direct
      ? { what: 'Gap', how: `read directly: ${figure(answer.gap, unit)}` }
      : {
          what: 'Gap',
          how: `${fixed.name} − parts = ${sizeFigure(fixed.length, unit)} − ${terms} = ${figure(answer.gap, unit)} ${unit}`,
        },
    ...(want.kind === 'clamp'
      ? [
          {
            what: 'Clamp',
            how: `the parts stand ${isNegative(answer.gap) ? 'proud' : 'below'} by ${figure(absolute(answer.wanted), unit)}`,
          },
        ]
      : []),
    {
      what: 'Wanted',
      how: `${showBetween(want.limits.lower, want.limits.upper, unit)}, aim ${figure(want.aim, unit)}`,
      source: want.limits.source,
    },
    {
      what: 'Band',
      how: `${showBand(answer.band.halfWidth, unit)} at 95 %; a tool’s own error is common to all it read`,
      source: 'JCGM 100:2008',
    },
    {
      what: 'By root-sum-square, and worst case',
      how: `${showBand(answer.rss, unit)} and ${showBand(answer.worstCase, unit)}`,
      source: 'tolerance chain, common practice',
    },
    {
      what: 'Trim',
      how: 'length − (aim − gap), left full to the dial’s next step; its limits are what the band leaves of the want',
    },
  ];
}
