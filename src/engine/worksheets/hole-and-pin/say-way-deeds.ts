import type { CutOffer } from '../../cut/cut.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';
import { sameLength } from '../../length/length.ts';
import { capital } from '../../length/say-words.ts';
import { figure, withUnit, type ShownUnit } from '../../length/show.ts';
import type { Drill } from '../../thread/drill-series.ts';
import { tapName } from '../../thread/tap-name.ts';
import type { Route, RouteReason } from './hole-and-pin-routes.ts';

type Offers = readonly CutOffer[];

/** What a way takes, in one or two short sentences; its figures are the targets of its cuts. */
export function sayDeed(route: Route, offers: Offers, unit: ShownUnit): string {
  const size = (offer: CutOffer | undefined) => (offer ? withUnit(figure(offer.target, unit), unit) : '');
  const opening = openingOf(route, offers, unit);
  switch (route.kind) {
    case 'leave':
      return route.state === 'in' ? 'Nothing to cut.' : 'Too close to call: measure closer before you cut.';
    case 'thread-insert':
      return sayInsert(route, offers, unit);
    case 'larger-pin':
      return `${opening}. Open the parts it joins too.`;
    case 'bushing':
      return `${opening}, press in, finish ${size(lastOf(offers, 'bushing'))}.`;
    case 'sleeve':
      return saySleeve(opening, offers, size);
    case 'offset-bushing':
      return offers.length === 0
        ? 'How far is the hole off its place?'
        : `${opening}, press in, lock it. Bore ${size(lastOf(offers, 'bushing'))} where the hole belongs.`;
    case 'plug':
      return 'Nothing else can be done. Ask whoever answers for its strength.';
    default:
      return route.kind satisfies never;
  }
}

/** `Ream 9/16 (.5625)`, `Ream .501`, `Bore .5045`. */
export function sayOpening(
  { operation, target }: CutOffer,
  reamer: Reamer | undefined,
  unit: ShownUnit,
): string {
  const size = figure(target, unit);
  const deed = operation === 'ream' ? 'Ream' : 'Bore';
  const stamped = reamer && reamerName(reamer, unit);
  // What is stamped in the shop's own decimals is the figure itself.
  const isFigure = unit === 'in' ? stamped?.startsWith('.') : stamped?.endsWith(' mm');
  return stamped === undefined || isFigure === true
    ? `${deed} ${withUnit(size, unit)}`
    : `${deed} ${stamped} (${size})`;
}

/** As it is stamped, without the unit where that is the shop's own. */
export function reamerName({ name }: Reamer, unit: ShownUnit): string {
  return unit === 'in' ? name.replace(/ in$/, '') : name;
}

/** The hole opened, on its old axis first where it has to stand there. */
function openingOf({ steps }: Route, offers: Offers, unit: ShownUnit): string {
  const bores = offers.filter(({ part }) => part === 'bore');
  const [first] = bores;
  const last = bores.at(-1);
  if (!first || !last) return '';
  const reamer = steps
    .flatMap((step) => ('reamer' in step && step.reamer ? [step.reamer] : []))
    .find((one) => sameLength(one.size, last.target));
  const onAxis = first === last ? '' : `Bore ${withUnit(figure(first.target, unit), unit)} on its old axis. `;
  return `${onAxis}${sayOpening(last, reamer, unit)}`;
}

function saySleeve(opening: string, offers: Offers, size: (offer: CutOffer | undefined) => string): string {
  const turned = lastOf(offers, 'pin');
  const steps = [
    ...(opening === '' ? [] : [opening]),
    ...(turned ? [`turn the pin to ${size(turned)}`] : []),
    `bond a sleeve on, outside ${size(lastOf(offers, 'sleeve'))}`,
  ];
  return `${capital(steps.join(', '))}.`;
}

/** `Drill 29/64 (.4531), then STI tap 7/16-20 UNF. 75 % thread.` */
function sayInsert({ why, steps }: Route, offers: Offers, unit: ShownUnit): string {
  const thread = lastOf(offers, 'hole')?.thread;
  if (thread === undefined) return 'Which thread is it? Pick it from the list.';
  const tap = tapName(thread, 'insert');
  const hole = why.find((reason) => isOfHole(reason));
  const share = hole ? `${Math.floor(hole.percent)} % thread` : '';
  const [drill] = steps.flatMap((step) => (step.do === 'drill' ? [step.drill] : []));
  if (drill && hole?.code === 'drill-anyway')
    return `Run ${drillName(drill, unit)} through, then ${tap}. ${share}.`;
  if (drill) return `Drill ${drillName(drill, unit)}, then ${tap}. ${share}.`;
  return hole?.code === 'hole-over'
    ? `${capital(tap)}. The hole is over size: only ${share}.`
    : `${capital(tap)}. No drill: the hole is to size, ${share}.`;
}

type OfHole = Extract<
  RouteReason,
  { code: 'straight-to-tap' | 'drill-first' | 'drill-anyway' | 'hole-over' }
>;

function isOfHole(reason: RouteReason): reason is OfHole {
  return ['straight-to-tap', 'drill-first', 'drill-anyway', 'hole-over'].includes(reason.code);
}

function drillName({ name, size }: Drill, unit: ShownUnit): string {
  return name === `${figure(size, 'mm')} mm` ? name : `${name} (${figure(size, unit)})`;
}

function lastOf(offers: Offers, part: string): CutOffer | undefined {
  return offers.filter((offer) => offer.part === part).at(-1);
}
