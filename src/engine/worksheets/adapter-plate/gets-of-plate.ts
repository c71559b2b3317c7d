import type { GetOffer } from '../../job/get-list.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { mean, type Estimate } from '../../reading/estimate.ts';
import type { Outline, PlateQuestion } from './plate-question.ts';

/** The plate it is made from; its drills and reamers are asked for by its cuts. Nothing while nobody said how large it is. */
export function getsOfPlate(
  { outline, thick }: Pick<PlateQuestion, 'outline' | 'thick'>,
  unit: ShownUnit,
): readonly GetOffer[] {
  const across = sayOutline(outline, unit);
  if (across === undefined) return [];
  const deep = thick ? [`${show(mean(thick), unit)} thick`] : [];
  return [{ kind: 'stock', what: ['plate', across, ...deep].join(', '), count: 1 }];
}

function sayOutline(outline: Outline, unit: ShownUnit): string | undefined {
  const size = (length: Estimate) => show(mean(length), unit);
  switch (outline.is) {
    case 'none':
      return undefined;
    case 'round':
      return `${size(outline.across)} round`;
    case 'rectangle':
      return `${size(outline.wide)} by ${size(outline.high)}`;
    default:
      return outline satisfies never;
  }
}
