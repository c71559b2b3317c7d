import { absolute, isNegative } from '../../../engine/length/length.ts';
import { capital } from '../../../engine/length/say-words.ts';
import { show, type ShownUnit } from '../../../engine/length/show.ts';
import { sayCheck } from '../../../engine/worksheets/axle-line-up/say-line-up.ts';
import { sayDeed } from '../../../engine/worksheets/axle-line-up/say-deeds.ts';
import { sizeName, spacerName } from '../../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import type { AxleSketch } from './axle-sketch.ts';

/** The axle in words, from left to right, with what is to be done for each spacer and where wheel and disc lie. */
export function axleWords({ question, answer, isSketch }: AxleSketch, unit: ShownUnit): string {
  if (isSketch) return 'An axle from leg to leg, its spacers not worked out yet.';
  const parts = answer.parts
    .map(({ name, length }) => {
      const spacer = answer.spacers.find((one) => one.name === name);
      if (!spacer) return `${partName(name)} ${show(length, unit)}`;
      const what = spacerName(spacer.name, question).toLowerCase();
      if (spacer.deed.kind === 'last') return `${what}, ${sayDeed(spacer, unit).act}`;
      if (isNegative(spacer.fitted)) return `${what} ${show(absolute(spacer.fitted), unit)} short`;
      return `${what} ${show(spacer.fitted, unit)}, ${sayDeed(spacer, unit).act}`;
    })
    .join('; ');
  const sleeves = answer.spacers
    .filter(({ name }) => !answer.parts.some((part) => part.name === name))
    .map(({ name, fitted }) => ` ${spacerName(name, question)} ${show(fitted, unit)}.`)
    .join('');
  const planes = answer.planes
    .filter(({ name }) => !name.includes('slot'))
    .map(({ name, at }) => ` ${capital(name)} ${show(at, unit)} from the left.`)
    .join('');
  const lines = answer.checks
    .filter(({ kind }) => kind === 'line')
    .map((check) => ` ${sayCheck(check, unit)}`)
    .join('');
  return `From left to right: ${parts}.${sleeves}${planes}${lines}`;
}

function partName(name: string): string {
  return name.includes('float') ? 'half the float' : sizeName(name);
}
