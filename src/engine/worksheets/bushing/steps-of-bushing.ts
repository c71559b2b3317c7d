import type { BushingAnswer } from '../../press/bushing.ts';
import { capital } from '../../length/say-words.ts';
import type { ShownUnit } from '../../length/show.ts';
import { sayHeatWay } from '../../press/say-bushing.ts';
import type { StepOffer } from '../worksheet.ts';

/** How a bushing goes in: cleaned, dropped in hot or cold where that may be, else pressed, and its bore read again. */
export function stepsOfBushing(
  { heat, mostHeat }: Pick<BushingAnswer, 'heat' | 'mostHeat'>,
  unit: ShownUnit,
): readonly StepOffer[] {
  const way = heat.find(({ allowed }) => allowed);
  const drop = way && sayHeatWay(way, mostHeat, unit).title;
  return [
    { text: 'Deburr and clean the reamed bore and the bushing', drawn: true },
    drop === undefined
      ? { text: 'Press the bushing in, square and in one go' }
      : {
          text: `${capital(drop)} and drop the bushing in`,
          orientation: 'insulated gloves on; square, oil hole over oil hole where it has one',
        },
    { text: 'Let it come back to shop temperature, then measure the bore again' },
  ];
}
