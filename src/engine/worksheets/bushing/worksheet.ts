import { bushing, type BushingQuestion } from '../../press/bushing.ts';
import { sayBushingRefusal } from '../../press/say-bushing.ts';
import { leastBushingWall } from '../../fit/tables/least-walls.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { targetBetween } from '../../length/target-between.ts';
import { negate } from '../../length/length.ts';
import type { CutKind } from '../../length/metal-on.ts';
import type { Given } from '../given.ts';
import { inUseUsual } from '../in-use.ts';
import { holeRunsWith, metalsOf, type RunsWith } from '../runs-with.ts';
import { numberInShop } from '../number-in-shop.ts';
import { worksheet, type Wanted } from '../worksheet.ts';
import { bushingAccount } from './account.ts';
import { checksOfBushing } from './checks-of-bushing.ts';
import { cutsOfBushing } from './cuts-of-bushing.ts';
import { bushingFields, type BushingFields } from './fields.ts';
import { getsOfBushing } from './gets-of-bushing.ts';
import { bushingFieldsFor, bushingQuestion, pressClassOf, systemOf } from './question.ts';
import { stepsOfBushing } from './steps-of-bushing.ts';

/** A worn bore bushed back to size: what to ream, turn, press and bore, and what that does to both parts. */
export const bushingWorksheet = worksheet({
  name: 'Bushing',
  asks: 'What do I ream, turn and bore, how hard does it press, and does it hold?',
  fields: bushingFields,
  fieldsFor: bushingFieldsFor,
  // Neither how it runs nor a metal of what carries load is taken for granted: fit, heat, stress and hold hang on them.
  needs: ['bore', 'pin', 'joint', 'wall', 'partMetal', 'bushingMetal'],
  starts: {},
  lacks: 'It needs the worn bore, its pin, the wall, and what both are made of.',
  question: bushingQuestion,
  answer: bushing,
  sayRefusal: sayBushingRefusal,
  usual: bushingUsual,
  assumed: () => [{ field: 'condition', words: 'not hardened or plated' }],
  account: bushingAccount,
  cuts: ({ question, answer, given }) => cutsOfBushing(question, answer, given.dial),
  checks: ({ answer }) => checksOfBushing(answer),
  // As it is turned: its outside, and its bore before it is pressed in where that is known.
  makes: ({ question: { length, step }, answer: { turnTo, insideTo, insideBefore } }) => [
    {
      name: 'Bushing',
      outside: turnTo,
      inside: insideBefore ? targetBetween(insideBefore, 'bore', step) : insideTo,
      ...(length && { length }),
    },
  ],
  runsWith: bushingRunsWith,
  steps: ({ answer, unit }) => stepsOfBushing(answer, unit),
  gets: ({ question, answer, unit }) => getsOfBushing(question, answer, unit),
  wanted: (given, _kind, field) => gripWanted(given, field),
  demo: {
    title: 'Bushing for the link',
    sizes: { bore: '.4487 in', pin: '.4372 in', wall: '.400 in', length: '1.500 in' },
    choices: { joint: 'turns-under-load', partMetal: 'low-carbon-steel', bushingMetal: 'bearing-bronze' },
  },
});

/** The grip of the bushing in its reamed bore; the worn bore and the pin that is there only have to be known roughly. */
function gripWanted(given: Given<BushingFields>, field: string | undefined): Wanted | undefined {
  if (field !== undefined && field !== 'reamed' && field !== 'outside') return undefined;
  const question = bushingQuestion(given);
  const answer = question && bushing(question);
  if (answer?.ok !== true) return undefined;
  const { clearance, nominal, source } = answer.value.pressFit;
  return {
    limits: { lower: negate(clearance.upper), upper: negate(clearance.lower), source },
    legs: [
      { kind: 'bore', size: nominal, coefficient: 1 },
      { kind: 'pin', size: nominal, coefficient: -1 },
    ],
  };
}

/** What the part and the bushing run with: the ways out of a cut gone past its limit go by it. */
export function bushingRunsWith(given: Given<BushingFields>, of: CutKind): RunsWith {
  const wall = given.exact('wall');
  const depth = given.exact('length');
  return {
    ...holeRunsWith(given, of),
    ...metalsOf(given),
    ...(wall && { wall }),
    ...(depth && { depth }),
  };
}

/** What stands in for a field of a bushing that isn't given. */
export function bushingUsual(
  given: Given<BushingFields>,
): Readonly<Partial<Record<keyof BushingFields, string>>> {
  const system = systemOf(given);
  const question = bushingQuestion(given);
  const press = `usual: ${pressClassOf(given)} (common practice, no source)`;
  return {
    nominal: 'usual: the size nearest the pin (common practice, no source)',
    axis: 'usual: where the wear is, as a reamer goes',
    thickWall: 'usual: solid all round, the hardest to press into',
    reamTo: 'usual: the next standard reamer',
    system: `${system === 'iso' ? 'ISO 286' : 'ANSI B4.1'}, by the unit of the worn bore`,
    ...(question && insideWords(system, question)),
    isoPress: press,
    ansiPress: press,
    plating: 'none',
    ...inUseUsual,
    pinMetal: 'not said; asked for the clearance hot and cold',
    finish: 'usual: reamed and finely turned',
    condition: 'usual: neither hardened nor plated',
    cold: 'usual: a freezer',
    shopTemperature: `usual: ${numberInShop('20', '°C', given.unit)}`,
    leastWall: 'usual: half the hole (common practice, no source)',
    leastBushingWall: `usual: ${show(leastBushingWall[given.unit], given.unit)} (common practice, no source)`,
    partYield: yieldWords(question?.part.yieldMpa?.low, given.unit),
    bushingYield: yieldWords(question?.bushing.yieldMpa?.low, given.unit),
  };
}

function insideWords(system: 'iso' | 'ansi', { insideClass }: BushingQuestion) {
  const usual = `usual: ${insideClass} (common practice, no source)`;
  return system === 'iso' ? { isoClass: usual } : { ansiClass: usual };
}

function yieldWords(mpa: number | undefined, unit: ShownUnit): string {
  return mpa === undefined ? 'not given' : `usual: ${numberInShop(String(mpa), 'MPa', unit)} (from memory)`;
}
