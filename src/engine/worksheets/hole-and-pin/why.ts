import { mean, type Estimate } from '../../reading/estimate.ts';
import type { Limits } from '../../reading/verdict.ts';
import { figure, finerFigure, showBand, signedFigure, type ShownUnit } from '../../length/show.ts';
import type { WhyLine } from '../account.ts';
import type { HoleAndPinAnswer, HoleAndPinQuestion } from './hole-and-pin.ts';
import type { Route } from './hole-and-pin-routes.ts';
import { ROUTE_NAMES, ROUTE_STATES, sayRoute } from './say-routes.ts';

/** How the slop, its limits and the rock came about, then every way in full, with what it needs and gives back. */
export function whyLines(
  { bore, pin, arm }: HoleAndPinQuestion,
  answer: HoleAndPinAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const { rock } = answer;
  const size = (length: Parameters<typeof figure>[0]) => figure(length, unit);
  return [
    ...(answer.direct ? readLines(answer, unit) : workedLines({ bore, pin }, answer, unit)),
    { what: 'Limits', how: limitsWords(answer.limits, unit), source: answer.limits.source },
    {
      what: 'Band',
      how: 'Scatter of the readings and the error limits of the tools, at 95 %. Good only if the band lies inside the limits; no good only if it lies outside.',
      source: 'JCGM 100:2008; ISO 14253-1',
    },
    ...(arm && rock
      ? [
          {
            what: 'Rock at the end of the arm',
            how: `± slop · reach / bore length = ${size(answer.loosest)} · ${size(arm.reach)} / ${size(arm.boreLength)}${arm.bellMouth ? ` less ${size(arm.bellMouth)}` : ''} = ±${size(rock.eachWay)}, known to ${showBand(rock.eachWayHalfWidth, unit)}. End play comes on top.`,
            source: 'geometry of a pin that touches at both ends',
          },
        ]
      : []),
    ...answer.routes.flatMap((route) => routeLines(route, unit)),
  ];
}

function routeLines(route: Route, unit: ShownUnit): readonly WhyLine[] {
  const { title, what, why, caution } = sayRoute(route, unit);
  return [
    {
      way: route.kind,
      what: `${title}: ${ROUTE_STATES[route.state]}`,
      how: [what, why].filter((part) => part !== '').join(' '),
    },
    ...(route.state !== 'out' && caution !== undefined
      ? [{ way: route.kind, what: `${ROUTE_NAMES[route.kind]}: what it gives back`, how: caution }]
      : []),
  ];
}

function readLines({ direct, loosest, band }: HoleAndPinAnswer, unit: ShownUnit): readonly WhyLine[] {
  const how = direct === 'rock' ? 'rock · bore length / (2 · reach)' : 'read with an indicator at the bore';
  return [
    { what: 'Slop', how: `${how} = ${figure(loosest, unit)} ${unit}, ${showBand(band.halfWidth, unit)}` },
  ];
}

function workedLines(
  { bore, pin }: Pick<HoleAndPinQuestion, 'bore' | 'pin'>,
  answer: HoleAndPinAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const read = (estimate: Estimate) => finerFigure(mean(estimate), unit);
  return [
    {
      what: 'Slop, at the loosest place',
      how: `bore − pin = ${read(bore.loosest)} − ${read(pin.loosest)} = ${figure(answer.loosest, unit)} ${unit}, ${showBand(answer.band.halfWidth, unit)}`,
    },
    {
      what: 'Clearance, at the tightest place',
      how: `${read(bore.tightest)} − ${read(pin.tightest)} = ${figure(answer.tightest, unit)} ${unit}, ${showBand(answer.tightestBand.halfWidth, unit)}`,
    },
  ];
}

export function limitsWords({ lower, upper }: Limits, unit: ShownUnit): string {
  if (lower && upper) return `${signedFigure(lower, unit)} to ${signedFigure(upper, unit)} ${unit}`;
  if (lower) return `${signedFigure(lower, unit)} ${unit} or more`;
  return upper ? `${signedFigure(upper, unit)} ${unit} or less` : 'none';
}
