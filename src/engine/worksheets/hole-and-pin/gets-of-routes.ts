import type { GetOffer } from '../../job/get-list.ts';
import { stockFor } from '../../job/stock.ts';
import type { ShownUnit } from '../../length/show.ts';
import { RETAINING_COMPOUND } from '../../job/retaining-compound.ts';
import { insertToGet } from '../thread-insert/gets-of-insert.ts';
import type { HoleAndPinAnswer, HoleAndPinQuestion } from './hole-and-pin.ts';
import type { RouteStep } from './hole-and-pin-routes.ts';

/** What the way that is gone takes besides its drills, taps and reamers, which its cuts ask for; nothing before one is gone. */
export function getsOfRoute(
  q: HoleAndPinQuestion,
  { routes }: Pick<HoleAndPinAnswer, 'routes'>,
  way: string | undefined,
  unit: ShownUnit,
): readonly GetOffer[] {
  const gone = routes.find(({ kind }) => kind === way);
  return (gone?.steps ?? []).flatMap((step) => getsOfStep(q, step, unit));
}

function getsOfStep(q: HoleAndPinQuestion, step: RouteStep, unit: ShownUnit): readonly GetOffer[] {
  const metal = q.bushingMetal?.name;
  switch (step.do) {
    case 'fit-insert':
      return [insertToGet(step.thread, step.length, unit)];
    case 'new-pin':
      return [
        { kind: 'bolt', what: `${q.pinThread === undefined ? 'pin' : 'bolt'} ${step.shank.name}`, count: 1 },
      ];
    case 'press-bushing':
    case 'press-blank':
      return [stockFor({ part: 'bushing', outside: step.outsideUpper, length: step.length, metal }, unit)];
    case 'fit-sleeve':
      return [
        stockFor({ part: 'sleeve', outside: step.outside.upper, length: step.length }, unit),
        RETAINING_COMPOUND,
      ];
    case 'drill':
    case 'tap-for-insert':
    case 'open-bore':
    case 'open-mating-holes':
    case 'bore-on-axis':
    case 'ream-for-bushing':
    case 'ream-true':
    case 'finish-bushing':
    case 'bore-offset':
    case 'turn-pin':
      return [];
    default:
      return step satisfies never;
  }
}
