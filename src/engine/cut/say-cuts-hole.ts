import { tapFor, tapName } from '../thread/tap-name.ts';
import type { HoleStep } from './pass-plan-holes.ts';
import { inShopWords } from '../length/american-words.ts';
import { show, type ShownUnit } from '../length/show.ts';

/** One tool run through the hole, in a few words. */
export function sayHoleStep(step: HoleStep, unit: ShownUnit): string {
  switch (step.do) {
    case 'centre-drill':
      return inShopWords('Centre drill', unit);
    case 'pilot':
      return `Pilot drill ${step.drill.name} (${show(step.drill.size, unit)})`;
    case 'drill':
      return `Drill ${step.drill.name} (${show(step.drill.size, unit)})`;
    case 'bore':
      return `Bore to ${show(step.to, unit)}: no drill does it`;
    case 'ream':
      return `Ream to ${show(step.to, unit)}: the reamer takes ${show(step.takes, unit)}${step.isLittle ? ', so little that it may rub' : ''}`;
    case 'tap':
      return `${capital(sayTap(step))}: the hole should be ${show(step.hole, unit)}`;
    default:
      return step satisfies never;
  }
}

function sayTap({ thread, hole }: Extract<HoleStep, { readonly do: 'tap' }>): string {
  return thread === undefined ? 'tap' : tapName(thread, tapFor(thread, hole));
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
