import { bondedPair } from '../../press/bonded-sleeve.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { boredFirst } from '../bushing/cuts-of-bushing.ts';
import { followsHole, insertOffers } from '../thread-insert/cuts-of-insert.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { isMore } from '../../length/length.ts';
import type { Range } from '../../fit/fits.ts';
import { ON_OLD_AXIS, sayWhereOpened } from '../../fit/worn-axis.ts';
import { jointNominal, limitsInForce, pressParts } from './hole-and-pin-limits.ts';
import type { HoleAndPinAnswer, HoleAndPinQuestion } from './hole-and-pin.ts';
import type { Route, RouteStep } from './hole-and-pin-routes.ts';
import { jointLimits } from '../../fit/joint-limits.ts';
import { sizeStep, type Dial } from '../../length/metal-on.ts';
import { reamerBetween } from './route-larger-pin.ts';
import { ROUTE_NAMES } from './say-routes.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';
import { threadNamed } from '../../thread/threads.ts';

/**
 * What is cut on each route that cures a hole and its pin; the routes as they are ranked, each a way of its own.
 *
 * Units:   diameters, in the order of work. A reamed hole has the limits a reamer keeps, a bushing's outside those of the
 *          press, a finished bore those of the joint.
 * Range:   none for a route that is ruled out or takes no metal, so none where the joint is good. The holes of the parts a
 *          larger pin joins are not measured here and not offered. A bore that is too tight is opened for its own pin.
 * Source:  limits as the routes have them; a reamed hole: that of the class a bushing is pressed in with.
 */
export function cutsOfRoutes(
  q: HoleAndPinQuestion,
  { routes, axis }: Pick<HoleAndPinAnswer, 'routes' | 'axis'>,
  dial: Dial,
): readonly CutWay[] {
  const where = sayWhereOpened(axis, q.keepsAxis);
  return [
    ...routes.flatMap((route) => openedForItsPin(q, route, dial)),
    ...routes
      .filter(({ state }) => state !== 'out')
      .flatMap((route) =>
        wayOf({
          id: route.kind,
          name: ROUTE_NAMES[route.kind],
          offers: offersOf(q, route, { dial, where }),
          ...(route.state === 'ask' && { unsure: true }),
        }),
      ),
  ];
}

/** What a tight bore asks for, as long as it stands where it belongs. */
export const OPEN_THE_BORE = { id: 'open-bore', name: 'Open the bore' } as const;

function openedForItsPin(q: HoleAndPinQuestion, { why }: Route, dial: Dial): readonly CutWay[] {
  const tight = why.find((reason) => reason.code === 'too-tight');
  if (!tight || q.offBy || isMore(tight.boreLower, tight.boreUpper)) return [];
  const limits = { lower: tight.boreLower, upper: tight.boreUpper };
  const reamer = reamerBetween(limits.lower, limits.upper, q.shop);
  const { source } = limitsInForce(q, jointNominal(q).size);
  const offer = bored(q, { ...limits, ...(reamer && { reamer }) }, dial, {
    name: 'Bore',
    part: 'bore',
    limitsFrom: `the pin and how it runs (${source})`,
  });
  return [{ ...OPEN_THE_BORE, offers: [{ ...offer, present: mean(q.bore.tightest) }] }];
}

type Cutting = {
  readonly dial: Dial;
  /** Behind the name of the cut that opens a worn bore. */
  readonly where: string;
};

function offersOf(q: HoleAndPinQuestion, route: Route, { dial, where }: Cutting): readonly CutOffer[] {
  if (route.kind === 'thread-insert') return insertCuts(q, route);
  const opens = route.steps.find(({ do: deed }) => OPENS_THE_BORE.has(deed));
  return route.steps.flatMap((step) => {
    const offers = offerOf(q, step, dial);
    if (step !== opens) return offers;
    return offers.map((one) => ({
      ...one,
      name: one.name.endsWith(where) ? one.name : `${one.name}${where}`,
      present: mean(q.bore.tightest),
    }));
  });
}

const OPENS_THE_BORE: ReadonlySet<RouteStep['do']> = new Set([
  'bore-on-axis',
  'open-bore',
  'ream-for-bushing',
  'ream-true',
]);

function insertCuts({ bore }: HoleAndPinQuestion, { steps }: Route): readonly CutOffer[] {
  const drill = steps.find((step) => step.do === 'drill');
  const tap = steps.find((step) => step.do === 'tap-for-insert');
  const thread = tap && threadNamed(tap.thread);
  if (!thread) return [];
  return insertOffers({
    thread,
    ...(drill && { drill: drill.drill }),
    hole: { tightest: mean(bore.tightest), loosest: mean(bore.loosest) },
    follows: followsHole(thread, bore.loosest),
  });
}

function offerOf(q: HoleAndPinQuestion, step: RouteStep, dial: Dial): readonly CutOffer[] {
  const { source } = limitsInForce(q, jointNominal(q).size);
  switch (step.do) {
    case 'open-bore':
      return [
        bored(q, step, dial, {
          name: 'Bore',
          part: 'bore',
          limitsFrom: `the new pin and how it runs (${source})`,
        }),
      ];
    case 'bore-on-axis':
      return [
        {
          ...boredFirst(step.before, sizeStep('bore', dial), step.atLeast),
          name: `Bore${ON_OLD_AXIS}`,
          part: 'bore',
          of: 'bore',
          ...(q.partMetal && { material: q.partMetal.id }),
        },
      ];
    case 'ream-for-bushing':
    case 'ream-true':
      return [reamed(q, step.reamer)];
    case 'press-bushing':
    case 'press-blank':
      return [pressed(q, step, dial)];
    case 'finish-bushing':
    case 'bore-offset':
      return [bored(q, step, dial, finished(step, source))];
    case 'turn-pin':
      return [turnedPin(q, step, dial)];
    case 'fit-sleeve':
      return sleeve(q, step, dial);
    case 'drill':
    case 'tap-for-insert':
    case 'fit-insert':
    case 'new-pin':
    case 'open-mating-holes':
      return [];
    default:
      return step satisfies never;
  }
}

type Opened = Range & { readonly reamer?: Reamer };
type Called = Pick<CutOffer, 'name' | 'part' | 'limitsFrom'>;

/** Reamed where a standard reamer falls inside the limits, else bored. */
function bored(
  q: HoleAndPinQuestion,
  { lower, upper, reamer }: Opened,
  dial: Dial,
  { name, part, limitsFrom }: Called,
): CutOffer {
  const material = part === 'bore' ? q.partMetal?.id : q.bushingMetal?.id;
  const sure = { part, of: 'bore', lower, upper, limitsFrom, ...(material && { material }) } as const;
  return reamer
    ? { name: `${name}, reamed ${reamer.name}`, operation: 'ream', target: reamer.size, ...sure }
    : {
        name: `${name}, bored to size`,
        operation: 'bore',
        target: targetBetween({ lower, upper }, 'bore', sizeStep('bore', dial)),
        ...sure,
      };
}

function finished(
  step: Extract<RouteStep, { do: 'finish-bushing' | 'bore-offset' }>,
  source: string,
): Called {
  return {
    name: step.do === 'bore-offset' ? 'Bushing, off its middle' : 'Bushing, once it is in',
    part: 'bushing',
    limitsFrom: `the pin and how it runs (${source})`,
  };
}

function reamed(question: HoleAndPinQuestion, { name, size }: Reamer): CutOffer {
  const { partMetal } = question;
  const { hole, holeSource } = pressParts(question, size);
  return {
    name: `Bore, reamed ${name}`,
    part: 'bore',
    operation: 'ream',
    of: 'bore',
    target: size,
    ...hole,
    limitsFrom: holeSource,
    ...(partMetal && { material: partMetal.id }),
  };
}

function pressed(
  question: HoleAndPinQuestion,
  step: Extract<RouteStep, { do: 'press-bushing' | 'press-blank' }>,
  dial: Dial,
): CutOffer {
  const limits = { lower: step.outsideLower, upper: step.outsideUpper };
  const { bushingMetal } = question;
  const { source } = pressParts(question, limits.upper);
  return {
    name: step.do === 'press-blank' ? 'Bushing blank, outside turned' : 'Bushing, outside turned',
    part: 'bushing',
    operation: 'turn',
    of: 'outside',
    target: targetBetween(limits, 'outside', sizeStep('outside', dial)),
    ...limits,
    limitsFrom: `the press (${source}) in a hole inside its limits; measure the hole first`,
    ...(bushingMetal && { material: bushingMetal.id }),
  };
}

function turnedPin(
  { pin }: HoleAndPinQuestion,
  { to, lower, upper }: Extract<RouteStep, { do: 'turn-pin' }>,
  dial: Dial,
): CutOffer {
  const limits = { lower, upper };
  return {
    name: 'Pin, turned down for the sleeve',
    part: 'pin',
    operation: 'turn',
    of: 'outside',
    present: mean(pin.tightest),
    target: targetBetween(limits, 'outside', sizeStep('outside', dial)),
    ...limits,
    limitsFrom: `half the room of the bond, its sleeve has the other (${bondedPair(to).source})`,
  };
}

function sleeve(
  q: HoleAndPinQuestion,
  { inside, outside }: Extract<RouteStep, { do: 'fit-sleeve' }>,
  dial: Dial,
): readonly CutOffer[] {
  const { source } = limitsInForce(q, jointNominal(q).size);
  return [
    {
      name: 'Sleeve, inside',
      part: 'sleeve',
      operation: 'bore',
      of: 'bore',
      target: targetBetween(inside, 'bore', sizeStep('bore', dial)),
      ...inside,
      limitsFrom: `the pin and room for the bond (${jointLimits('slides', inside.lower).source})`,
    },
    {
      name: 'Sleeve, outside once it is bonded on',
      part: 'sleeve',
      operation: 'turn',
      of: 'outside',
      target: targetBetween(outside, 'outside', sizeStep('outside', dial)),
      ...outside,
      limitsFrom: `the bore and how it runs (${source})`,
    },
  ];
}
