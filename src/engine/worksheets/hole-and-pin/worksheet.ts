import { mean } from '../../reading/estimate.ts';
import { lengthOf, type Length } from '../../length/length.ts';
import { signedFigure } from '../../length/show.ts';
import type { CutKind } from '../../length/metal-on.ts';
import type { Given } from '../given.ts';
import { holeRunsWith, metalsOf, type RunsWith } from '../runs-with.ts';
import { worksheet } from '../worksheet.ts';
import { holeAndPinAccount } from './account.ts';
import { besidesThread } from './besides.ts';
import { checksOfHoleAndPin } from './checks-of-hole-and-pin.ts';
import { cutsOfRoutes } from './cuts-of-routes.ts';
import { holeAndPinFields, type HoleAndPinFields } from './fields.ts';
import { getsOfRoute } from './gets-of-routes.ts';
import { jointNominal, limitsAsked } from './hole-and-pin-limits.ts';
import { holeAndPin } from './hole-and-pin.ts';
import { holeAndPinQuestion, jointOf, wantedClearance } from './question.ts';

type HoleGiven = Given<HoleAndPinFields>;

// Stands in for a size nothing is known of yet; it only decides which tools' range is asked for.
const SOME_SIZE = lengthOf('1/2 in');

/** How much slop a pin has in its hole, what it means, and every way to cure it, ranked. */
export const holeAndPinWorksheet = worksheet({
  name: 'Hole and pin',
  asks: 'How much slop, what does it mean at the end of the arm, and what cures it?',
  fields: holeAndPinFields,
  needs: (given) => (given.has('thread') ? ['bore', 'pin'] : ['bore', 'pin', 'joint']),
  starts: {},
  lacks: 'It needs a bore, a pin and how the joint runs.',
  question: holeAndPinQuestion,
  answer: (question) => ({ ok: true, value: holeAndPin(question) }),
  // Nothing that can be measured has no answer here.
  sayRefusal: (refusal: never) => refusal,
  assumed: (given) => (given.has('thread') ? [{ field: 'joint', words: 'held by its nut' }] : []),
  besides: besidesThread,
  usual: usualWords,
  account: holeAndPinAccount,
  cuts: ({ question, answer, given }) => cutsOfRoutes(question, answer, given.dial),
  checks: ({ question, unit }) =>
    checksOfHoleAndPin(question, limitsAsked(question, jointNominal(question).size), unit),
  gets: ({ question, answer, unit }, way) => getsOfRoute(question, answer, way, unit),
  runsWith,
  wanted: (given) => {
    const limits = wantedClearance(given);
    const size = sizeOf(given);
    return (
      limits && {
        limits,
        legs: [
          { kind: 'bore', size, coefficient: 1 },
          { kind: 'pin', size, coefficient: -1 },
        ],
      }
    );
  },
  demo: {
    title: 'Shock link on its bolt',
    sizes: { bore: '.4487 in', pin: '.4370 in', wall: '.310 in', thickness: '.750 in' },
    choices: { thread: '7/16-20 UNF', joint: 'located', shankPasses: 'no', facesCarry: 'yes' },
  },
});

function runsWith(given: HoleGiven, of: CutKind): RunsWith {
  const question = holeAndPinQuestion(given);
  const joint = jointOf(given);
  const wall = given.exact('wall');
  const depth = given.exact('boreLength');
  return {
    ...holeRunsWith(given, of),
    ...metalsOf(given),
    ...(joint && { joint }),
    ...(question?.fitSystem && { system: question.fitSystem }),
    ...(wall && { wall }),
    ...(depth && { depth }),
  };
}

function sizeOf(given: HoleGiven): Length {
  const known = given.has('pin') ? given.size('pin') : given.size('bore');
  return known ? mean(known.tightest) : SOME_SIZE;
}

function usualWords(given: HoleGiven): Readonly<Partial<Record<keyof HoleAndPinFields, string>>> {
  const limits = wantedClearance(given);
  const side = (size: Length | undefined, none: string) =>
    size ? `usual: ${signedFigure(size, given.unit)} (${limits?.source ?? ''})` : none;
  return {
    ...(limits && { lower: side(limits.lower, 'no least'), upper: side(limits.upper, 'no most') }),
    fitSystem: 'usual: common practice, no source',
    nominal: 'usual: the bolt’s, else the size nearest the pin (common practice, no source)',
    partMetal: 'not said yet; asked for a bushing',
    bushingMetal: 'not said yet; asked for a bushing',
    axis: 'usual: where the wear is, as a reamer goes',
    rockInAll: 'not read; bore less pin counts',
    slop: 'not read; bore less pin counts',
    leastWall: 'usual: half the hole (common practice, no source)',
  };
}
