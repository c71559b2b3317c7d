import { STI_CAUTION, tapName } from '../../thread/tap-name.ts';
import type { HoleAndPinAnswer } from './hole-and-pin.ts';
import type { Route, RouteStep } from './hole-and-pin-routes.ts';
import { isZero, type Length } from '../../length/length.ts';
import { sayDrillSize } from '../thread-insert/say-insert.ts';
import { sayRouteReason } from './say-route-reason.ts';
import { sayStrengthOfWay } from '../../cut/say-strength.ts';
import { show, showBetween, type ShownUnit } from '../../length/show.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';

export type SaidRoute = {
  readonly title: string;
  /** Empty for a route that is ruled out. */
  readonly what: string;
  readonly why: string;
  /** What the cure does and doesn't give back; for every route that cuts a part. */
  readonly caution?: string;
  /** That metal comes off a part that carries load for it: never out of sight. */
  readonly strength?: string;
};

/** A route in a fitter's words: its name, what to do, why it is in, out or waiting, and what it doesn't restore. */
export function sayRoute(route: Route, unit: ShownUnit): SaidRoute {
  const caution = CAUTIONS[route.kind];
  const strength = route.state === 'out' ? '' : sayStrengthOfWay(takesOff(route));
  return {
    title: titleOf(route),
    what: whatToDo(route, unit),
    why: route.why.map((reason) => sayRouteReason(reason, unit)).join(' '),
    ...(caution !== undefined && { caution }),
    ...(strength !== '' && { strength }),
  };
}

function takesOff({ steps }: Pick<Route, 'steps'>): 'hole' | 'pin' | undefined {
  if (steps.some(({ do: does }) => OPENS_A_HOLE.has(does))) return 'hole';
  return steps.some(({ do: does }) => does === 'turn-pin') ? 'pin' : undefined;
}

const OPENS_A_HOLE: ReadonlySet<RouteStep['do']> = new Set([
  'drill',
  'tap-for-insert',
  'open-bore',
  'open-mating-holes',
  'ream-for-bushing',
  'ream-true',
]);

/** What the slop means at the arm's end, or why that can't be worked out; nothing where no arm was given. */
export function sayRock(
  { rock, rockRefusal }: Pick<HoleAndPinAnswer, 'rock' | 'rockRefusal'>,
  unit: ShownUnit,
): string | undefined {
  if (rockRefusal)
    return `The bell-mouth, ${show(rockRefusal.bellMouth, unit)}, takes all of the ${show(rockRefusal.boreLength, unit)} the pin is held in, so there is nothing left to work the rock from. Measure both again.`;
  if (!rock) return undefined;
  if (isZero(rock.inAll)) return "No rock at the arm's end: the pin has no clearance.";
  return `At the arm's end it rocks ±${show(rock.eachWay, unit)}, in all ${show(rock.inAll, unit)}.`;
}

/** What the clearance was read as. */
export function sayDirectPlay(direct: 'slop' | 'rock'): string {
  return direct === 'slop'
    ? 'Read with an indicator at the bore; it counts before bore less pin.'
    : 'From the rock read at the arm’s end; it counts before bore less pin.';
}

/** What each route is called. */
export const ROUTE_NAMES = {
  leave: 'Leave it as it is',
  'thread-insert': 'Thread insert',
  'larger-pin': 'Larger pin',
  bushing: 'Bushing',
  sleeve: 'Sleeve on the pin',
  'offset-bushing': 'Offset bushing',
  plug: 'Plug and re-bore',
} as const satisfies Record<Route['kind'], string>;

export const ROUTE_STATES = {
  in: 'possible',
  ask: 'not sure yet',
  out: 'ruled out',
} as const satisfies Record<Route['state'], string>;

const CAUTIONS: Partial<Record<Route['kind'], string>> = {
  'thread-insert':
    'An insert gives the part a good thread again. It gives back no metal: the part is weaker by what the tap takes, a crack stays a crack, and a bolt that is loose in the insert still works loose.',
  'larger-pin':
    'A larger pin takes the wear out. It gives back no metal: less is left round the hole, and every part the old pin went through has to be opened too.',
  bushing:
    'A bushing gives the hole its size and place again and can be renewed. It does not give back the strength of the metal that was cut away, and it carries only as well as it sits in the part.',
  sleeve:
    'A sleeve makes the pin fit the hole again and can be renewed. A pin that was turned down is weaker for good, and the bond does not take much heat.',
  'offset-bushing':
    'An offset bushing puts the hole where it belongs and gives it its size. It must be kept from turning, and it does not give back the strength of the metal that was cut away.',
  plug: 'A plug gives the hole a new start. Heat and weld can warp a part, draw it soft or crack it, and a pressed plug carries little.',
};

function titleOf(route: Route): string {
  const details = route.steps.flatMap((step) => {
    if (step.do === 'tap-for-insert') return [step.thread];
    if (step.do === 'new-pin') return [step.shank.name];
    return step.do === 'ream-for-bushing' ? [`${step.reamer.name} outside`] : [];
  });
  return [ROUTE_NAMES[route.kind], ...details].join(', ');
}

function whatToDo(route: Route, unit: ShownUnit): string {
  if (route.state === 'out') return '';
  if (route.kind === 'leave') return { in: 'Nothing to cut.', ask: 'Cut nothing yet.' }[route.state];
  const steps = route.steps.map((step) => sayStep(step, unit)).join(' ');
  return steps === '' ? 'Answer the question first.' : steps;
}

function sayStep(step: RouteStep, unit: ShownUnit): string {
  const between = (lower: Length, upper: Length): string => `${showBetween(lower, upper, unit)} ${unit}`;
  switch (step.do) {
    case 'drill':
      return `Drill ${sayDrillSize(step.drill)}.`;
    case 'tap-for-insert':
      return `Tap with the ${tapName(step.thread, 'insert')}. ${STI_CAUTION}`;
    case 'fit-insert':
      return step.length
        ? `Wind in an insert ${step.length.times} long, ${show(step.length.nominal, unit)}${step.length.trimOff ? `, ${show(step.length.trimOff, unit)} longer than the metal: trim it` : ''}.`
        : 'Wind in an insert as long as the metal is thick; say how thick it is to get its length.';
    case 'new-pin':
      return `Get a pin or bolt of ${step.shank.name} (${show(step.shank.size, unit)})${step.otherFamily ? `, or ${step.otherFamily.name} (${show(step.otherFamily.size, unit)})` : ''}, and measure its shank before cutting: it may be a little less.`;
    case 'open-bore':
      return `Open the bore to ${between(step.lower, step.upper)}, ${withReamer(step.reamer, unit)}.`;
    case 'bore-on-axis':
      return `Bore it on its old axis first, from a located centre, to ${show(step.to, unit)}.`;
    case 'open-mating-holes':
      return 'Open the holes of the parts it joins to suit.';
    case 'ream-for-bushing':
      return `Ream the part ${reamerText(step.reamer, unit)}.`;
    case 'press-bushing':
      return `Turn a bushing ${between(step.outsideLower, step.outsideUpper)} outside, wall ${show(step.wall, unit)}${step.length ? `, ${show(step.length, unit)} long` : ''}, and press it in.`;
    case 'finish-bushing':
      return `Then finish its inside to ${between(step.lower, step.upper)}, ${withReamer(step.reamer, unit)}.`;
    case 'ream-true':
      return `Ream the bore true first, ${reamerText(step.reamer, unit)}.`;
    case 'turn-pin':
      return `Turn the pin down to ${show(step.to, unit)} (${showBetween(step.lower, step.upper, unit)}) where the sleeve sits.`;
    case 'fit-sleeve':
      return `Make a sleeve ${between(step.inside.lower, step.inside.upper)} inside${step.length ? `, ${show(step.length, unit)} long` : ''}, bond it on with retaining compound, and finish its outside to ${between(step.outside.lower, step.outside.upper)}.`;
    case 'press-blank':
      return `Turn a bushing blank ${between(step.outsideLower, step.outsideUpper)} outside${step.length ? `, ${show(step.length, unit)} long` : ''}, press it in, and lock it with a peg or a screw so that it can't turn.`;
    case 'bore-offset':
      return `Then bore it in place, ${show(step.by, unit)} off its middle and where the hole belongs, to ${between(step.lower, step.upper)}${step.reamer ? `, last cut with reamer ${reamerText(step.reamer, unit)}` : ''}.`;
    default:
      return step satisfies never;
  }
}

function withReamer(reamer: Reamer | undefined, unit: ShownUnit): string {
  return reamer
    ? `reamer ${reamerText(reamer, unit)}`
    : 'bored or with an adjustable reamer, as no standard reamer falls between';
}

function reamerText({ name, size }: Reamer, unit: ShownUnit): string {
  const shown = show(size, unit);
  return shown === name ? name : `${name} (${shown})`;
}
