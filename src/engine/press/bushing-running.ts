import type { BushingAnswer, BushingQuestion } from './bushing.ts';
import { isMore, plus, ratioOf, times, zero, type Length } from '../length/length.ts';
import { expansionPerCelsius, type Spread } from '../material/material.ts';

/** The least clearance on the pin at the hottest and the coldest that the joint sees; below zero it seizes. */
export type RunningInUse = { readonly hot?: Length; readonly cold?: Length };

type Pressed = Pick<BushingAnswer, 'hole' | 'inside' | 'insideFit' | 'stress' | 'interference'>;

/**
 * What heat and cold leave of the clearance that a bushing runs with.
 *
 * Units:   least of the class + ΔT · [Di(αi − αp) − k·d(αi − αo)]: the bushing's bore grows beside the pin, and closes by what
 *          its interference gains in a part that grows less; k is what it closes by a unit of interference. Of each
 *          expansion the end counts that leaves least.
 * Range:   only where the wall and the pin's metal are known, and the temperature was given.
 * Source:  linear expansion; Lamé for the closing-in, which goes with the interference.
 */
export function runningInUse(q: BushingQuestion, pressed: Pressed): RunningInUse | undefined {
  const { pinMetal, hotCelsius, coldestCelsius } = q;
  const { stress, insideFit } = pressed;
  if (!pinMetal || !stress || (hotCelsius === undefined && coldestCelsius === undefined)) return undefined;
  const at = (celsius: number): Length => {
    const degrees = celsius - q.shopCelsius;
    const changes = [...combinations(q, pinMetal)].map((ends) => degrees * perDegree(pressed, ends));
    return plus(insideFit.clearance.lower, times(pressed.inside.lower, Math.min(...changes).toFixed(15)));
  };
  return {
    ...(hotCelsius !== undefined && { hot: at(hotCelsius) }),
    ...(coldestCelsius !== undefined && { cold: at(coldestCelsius) }),
  };
}

type Ends = { readonly part: number; readonly bushing: number; readonly pin: number };

/** As a share of the bushing's bore. */
function perDegree({ hole, inside, stress, interference }: Pressed, { part, bushing, pin }: Ends): number {
  const { greatest } = interference;
  const closing = stress && isMore(greatest, zero) ? ratioOf(stress.closes.upper, greatest) : 0;
  return bushing - pin - closing * ratioOf(hole.upper, inside.lower) * (bushing - part);
}

function* combinations(
  { part, bushing }: BushingQuestion,
  pinMetal: NonNullable<BushingQuestion['pinMetal']>,
): Generator<Ends> {
  const ends = (spread: Spread) => [spread.low, spread.high];
  for (const ofPart of ends(expansionPerCelsius(part)))
    for (const ofBushing of ends(expansionPerCelsius(bushing)))
      for (const ofPin of ends(expansionPerCelsius(pinMetal)))
        yield { part: ofPart, bushing: ofBushing, pin: ofPin };
}
