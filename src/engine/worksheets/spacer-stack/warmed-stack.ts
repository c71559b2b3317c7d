import { minus, plus } from '../../length/length.ts';
import { materialNamed } from '../../material/tables/materials.ts';
import { mean } from '../../reading/estimate.ts';
import { IT_SEIZES, type Warmed } from '../in-use.ts';
import type { Answered } from '../worksheet.ts';
import type { SpacerStackFields } from './fields.ts';
import type { StackAnswer, StackQuestion } from './spacer-stack.ts';

const WORDS = {
  float: { quantity: 'float', fails: IT_SEIZES },
  'end-play': { quantity: 'end play', fails: IT_SEIZES },
  clamp: {
    quantity: 'projection',
    fails: { surely: 'it clamps no more', perhaps: 'it may clamp no more' },
  },
} as const;

/** What heat and cold take from a stack: it has to float, play or clamp by something then too. */
export function warmedStack({
  given,
  question: { fixed, parts, want },
  answer: { wanted, band },
}: Answered<SpacerStackFields, StackQuestion, StackAnswer>): Warmed {
  // Float is what the opening has over its parts; what stands proud, what the parts have over it.
  const sign = want.kind === 'clamp' ? -1 : 1;
  const ofParts = { metal: materialNamed(given.choice('partsMetal')), asks: 'partsMetal' };
  return {
    range: { least: minus(wanted, band.halfWidth), most: plus(wanted, band.halfWidth) },
    legs: [
      {
        size: mean(fixed.length),
        coefficient: sign,
        metal: materialNamed(given.choice('fixedMetal')),
        asks: 'fixedMetal',
      },
      ...parts.map(({ thickness, count }) => ({
        size: mean(thickness),
        coefficient: -sign * count,
        ...ofParts,
      })),
    ],
    stays: 'above',
    ...WORDS[want.kind],
  };
}
