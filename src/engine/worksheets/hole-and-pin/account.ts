import { isZero } from '../../length/length.ts';
import { sayNominal } from '../../fit/nominal.ts';
import { sayWornAxis } from '../../fit/worn-axis.ts';
import { HOLE_WEAKER, sayWeaker } from '../../cut/say-strength.ts';
import { figure, showBand, type ShownUnit } from '../../length/show.ts';
import type { Block, RowsBlock, WhyLine } from '../account.ts';
import { OWN_LIMITS } from '../own-limits.ts';
import { proofOf } from '../proof.ts';
import { strengthBlocks } from '../strength.ts';
import type { Answered } from '../worksheet.ts';
import { askFirst, asksOf, sayStillAsked } from './asks-of-ways.ts';
import { decidingClearance, sayClearance } from './clearance-said.ts';
import { cutsOfRoutes, OPEN_THE_BORE } from './cuts-of-routes.ts';
import type { HoleAndPinFields } from './fields.ts';
import type { HoleAndPinAnswer, HoleAndPinQuestion } from './hole-and-pin.ts';
import type { Route } from './hole-and-pin-routes.ts';
import { clearanceLegs } from './question.ts';
import { sayDirectPlay, sayRock } from './say-routes.ts';
import { sayOpenBore, sayWay } from './say-ways.ts';
import { limitsWords, whyLines } from './why.ts';

type HoleAnswered = Answered<HoleAndPinFields, HoleAndPinQuestion, HoleAndPinAnswer>;

/** What is said of a hole and its pin: how loose it is, the ways to cure it by rank, what has to be given first. */
export function holeAndPinAccount(worked: HoleAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const { direct, limits, axis, verdict } = answer;
  const deciding = decidingClearance(answer);
  const ranked = rankedRoutes(answer);
  const ask = askFirst(answer, ranked, unit);
  const rock = sayRock(answer, unit);
  const proof = direct ? undefined : proofOf({ ...deciding, legs: clearanceLegs(question) }, given);
  return [
    { is: 'verdict', kind: verdict.kind, headline: sayClearance(answer, unit) },
    ...(verdict.kind === 'good' ? [] : waysOf(worked, ranked)),
    ask,
    verdict.kind === 'no-good' ? undefined : proof,
    // Before how it rocks: where the hole goes is decided here, and on a small phone two sentences stand.
    axis && { is: 'said', sentence: sayWornAxis(axis, question.keepsAxis, unit) },
    direct && { is: 'said', sentence: sayDirectPlay(direct) },
    rock === undefined ? undefined : { is: 'said', sentence: rock },
    limits.source === OWN_LIMITS ? undefined : { is: 'said', sentence: sayNominal(answer.nominal, unit) },
    verdict.kind === 'good' ? undefined : { is: 'extra', name: 'routes' },
    ...(verdict.kind === 'good' ? [] : weaker(answer)),
    clearanceRows(answer, unit),
    { is: 'line', label: deciding.quantity, ...deciding, verdict: verdict.kind },
    { is: 'why', lines: [...whyLines(question, answer, unit), ...proofOfNoGood(verdict.kind, proof)] },
  ];
}

/** The best first; what is ruled out last, and leaving it as it is behind all of it where that can't be. */
function rankedRoutes({ routes }: HoleAndPinAnswer): readonly Route[] {
  const isOutAsItIs = ({ kind, state }: Route) => kind === 'leave' && state === 'out';
  return [...routes.filter((route) => !isOutAsItIs(route)), ...routes.filter(isOutAsItIs)];
}

/** Ranked, as the answer itself: a joint that fits needs none. */
function waysOf({ question, answer, given, unit }: HoleAnswered, ranked: readonly Route[]): readonly Block[] {
  const cuts = cutsOfRoutes(question, answer, given.dial);
  const isBolt = question.pinThread !== undefined;
  const open = cuts.find(({ id }) => id === OPEN_THE_BORE.id);
  const ask = askFirst(answer, ranked, unit);
  const before = open ? 1 : 0;
  return [
    ...(open ? [{ is: 'way', stands: 'open', rank: 1, ...sayOpenBore(open, unit) } as const] : []),
    ...ranked.map((route, place): Block => {
      const said = sayWay(route, { cuts, isBolt, unit });
      const still = sayStillAsked(route, ask);
      return {
        is: 'way',
        ...said,
        detail: still === '' ? said.detail : `${said.detail} ${still}`,
        stands: STANDS[route.state],
        asks: asksOf(route)[0]?.field,
        rank: place + 1 + before,
      };
    }),
  ];
}

const STANDS = { in: 'open', ask: 'asks', out: 'out' } as const satisfies Record<Route['state'], string>;

/** That metal comes off a part or its pin for a way that is open, also where it has no cut of its own yet. */
function weaker({ routes }: HoleAndPinAnswer): readonly Block[] {
  const open = routes.filter(({ state }) => state !== 'out');
  const opensHole = open.some(({ takes }) => !isZero(takes));
  const turnsPin = open.some(({ turnsPin: turned }) => turned !== undefined);
  return strengthBlocks([opensHole ? HOLE_WEAKER : '', turnsPin ? sayWeaker('pin') : '']);
}

// What is surely no good needs no closer readings before it is cured; how well they know it stands with the rest.
function proofOfNoGood(
  kind: HoleAndPinAnswer['verdict']['kind'],
  proof: ReturnType<typeof proofOf>,
): readonly WhyLine[] {
  return kind === 'no-good' && proof ? [{ what: 'Proof', how: proof.sentence }] : [];
}

function clearanceRows(answer: HoleAndPinAnswer, unit: ShownUnit): RowsBlock {
  const { tightest, loosest, band, tightestBand, limits } = answer;
  const row = (what: string, size: typeof tightest, { halfWidth }: typeof band) => ({
    what,
    figure: `${figure(size, unit)} ${unit}`,
    ...(!isZero(halfWidth) && { more: showBand(halfWidth, unit) }),
  });
  return {
    is: 'rows',
    title: 'Clearance',
    rows: [
      row('At the loosest place', loosest, band),
      row('At the tightest place', tightest, tightestBand),
      { what: 'Wanted', figure: limitsWords(limits, unit), more: limits.source },
    ],
  };
}
