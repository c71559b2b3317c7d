import { isMore, isNegative, minus, plus, zero, type Length } from '../../length/length.ts';
import type { LeastAndMost } from '../../material/hot-and-cold.ts';
import { materialNamed } from '../../material/tables/materials.ts';
import { mean, type Band } from '../../reading/estimate.ts';
import type { LegOfMetal, Warmed } from '../in-use.ts';
import type { BearingGiven } from './account-judged.ts';
import type { BearingAnswer } from './answer.ts';

/**
 * What heat and cold take from a sleeve between ball bearings, and from a bearing that stands proud of its recess or lies
 * below. Taper rollers are left out: their play goes by the cups' diameters too, and the maker's figure is for a cold hub.
 */
export function warmedBearing(answer: BearingAnswer, given: BearingGiven): Warmed | undefined {
  switch (answer.kind) {
    case 'ball':
      return ofSleeve(answer, given);
    case 'seat':
      return ofSeat(answer, given);
    case 'ring':
      return ofRingSeat(answer, given);
    case 'taper':
      return undefined;
    default:
      return answer satisfies never;
  }
}

type AnswerOf<Kind extends BearingAnswer['kind']> = Extract<BearingAnswer, { readonly kind: Kind }>;

/** The races' distance grows with the hub, the sleeve by its own metal: a steel sleeve in an alloy hub ends too short. */
function ofSleeve({ ask, found: { present } }: AnswerOf<'ball'>, given: BearingGiven): Warmed {
  const { limits } = ask.want;
  const between = mean(ask.between);
  const sleeveMetal = { metal: materialNamed(given.choice('sleeveMetal')), asks: 'sleeveMetal' };
  return {
    range: present ? within(present.value, present.band) : { least: limits.lower, most: limits.upper },
    legs: [
      { size: ask.sleeve ? mean(ask.sleeve) : between, coefficient: 1, ...sleeveMetal },
      { size: between, coefficient: -1, ...ofHub(given) },
    ],
    stays: 'above',
    quantity: 'excess length',
    fails: { surely: 'the nut side-loads the balls', perhaps: 'the nut may side-load the balls' },
  };
}

/** Only where it is to stand proud, so that a cover holds it, or to lie below, so that nothing touches it. */
function ofSeat({ ask, found: { proud, band } }: AnswerOf<'seat'>, given: BearingGiven): Warmed | undefined {
  const limits = ask.want?.limits;
  const steel = materialNamed('alloy-steel'); // ring steel grows by 12.5, this one by 12.3 millionths
  const isProud = limits && isMore(limits.lower, zero);
  if (!limits || (!isProud && !isNegative(limits.upper))) return undefined;
  const legs: readonly LegOfMetal[] = [
    ...ask.goesIn.map(({ size, count }) => ({
      size: mean(size),
      coefficient: count,
      metal: steel,
      asks: 'hubMetal',
    })),
    { size: mean(ask.depth), coefficient: -1, ...ofHub(given) },
  ];
  const range = within(proud, band);
  return isProud
    ? {
        range,
        legs,
        stays: 'above',
        quantity: 'projection',
        fails: { surely: 'nothing holds it', perhaps: 'it may stand free' },
      }
    : {
        range,
        legs,
        stays: 'below',
        quantity: 'depth below the face',
        fails: { surely: 'it stands proud', perhaps: 'it may stand proud' },
      };
}

/** A ring that the load goes round on has to grip, hot and cold; one that it stands still on may slide. */
function ofRingSeat({ ask, found }: AnswerOf<'ring'>, given: BearingGiven): Warmed | undefined {
  if (ask.load === 'stands') return undefined;
  const isShaft = ask.ring === 'inner';
  const { clearance, fit } = found;
  const seatMetal = isShaft
    ? { metal: materialNamed(given.choice('shaftMetal')), asks: 'shaftMetal' }
    : ofHub(given);
  const steel = { metal: materialNamed('alloy-steel'), asks: seatMetal.asks };
  return {
    range: clearance
      ? within(clearance.value, clearance)
      : { least: fit.clearance.lower, most: fit.clearance.upper },
    legs: [
      { size: ask.nominal, coefficient: 1, ...(isShaft ? steel : seatMetal) },
      { size: ask.nominal, coefficient: -1, ...(isShaft ? seatMetal : steel) },
    ],
    stays: 'below',
    quantity: 'grip',
    fails: { surely: 'the ring comes loose', perhaps: 'the ring may come loose' },
  };
}

function ofHub(given: BearingGiven): Pick<LegOfMetal, 'metal' | 'asks'> {
  return { metal: materialNamed(given.choice('hubMetal')), asks: 'hubMetal' };
}

function within(value: Length, { halfWidth }: Pick<Band, 'halfWidth'>): LeastAndMost {
  return { least: minus(value, halfWidth), most: plus(value, halfWidth) };
}
