import { bearingAccount } from './account.ts';
import { bearingAnswer, cutsOfBearing, type BearingAnswer } from './answer.ts';
import { checksOfRingSeat, checksOfSeat, checksOfSleeve, checksOfTaper } from './checks-of-bearing.ts';
import { bearingFields, bearingFieldsFor, bearingNeeds, type BearingFields } from './fields.ts';
import { getsOfBearing } from './gets-of-bearing.ts';
import { bearingQuestion, ownWant, sleeveWant, type BearingQuestion } from './question.ts';
import { sayBearingRefusal } from './say-bearing-seat.ts';
import type { CheckOffer } from '../../reading/check-offer.ts';
import type { CutWay } from '../../cut/cuts-of-way.ts';
import { ringFit } from '../../fit/ring-fit.ts';
import { mean } from '../../reading/estimate.ts';
import { lengthOf, type Length } from '../../length/length.ts';
import type { FeatureKind } from '../../reading/measuring-tool.ts';
import type { Leg } from '../../reading/settle.ts';
import { figure } from '../../length/show.ts';
import type { Given } from '../given.ts';
import { inUseUsual } from '../in-use.ts';
import { worksheet, type Answered, type Wanted } from '../worksheet.ts';

type BearingGiven = Given<BearingFields>;
type BearingAnswered = Answered<BearingFields, BearingQuestion, BearingAnswer>;

// Stands in for a size nothing is known of yet; it only decides which tools' range is asked for.
const SOME_SIZE = lengthOf('1/2 in');

// A seat goes by the bearing's nominal size and class; what stands in for it while it is made changes neither.
const MOCK_UP_COUNTS: ReadonlySet<string> = new Set(['ball', 'taper', 'seat']);

/** The sleeve between ball bearings, the setting of taper rollers, or what stands proud of a recess. */
export const bearingSeatWorksheet = worksheet({
  name: 'Bearing seat',
  asks: 'How long is the sleeve between the bearings, how are they set, what stands proud, what seat do they want?',
  fields: bearingFields,
  fieldsFor: bearingFieldsFor,
  needs: bearingNeeds,
  starts: {},
  lacks: 'Choose what is asked, then give its sizes.',
  canKill: true,
  question: bearingQuestion,
  answer: bearingAnswer,
  sayRefusal: sayBearingRefusal,
  assumed: (given) =>
    MOCK_UP_COUNTS.has(given.choice('bearing') ?? '') ? [{ field: 'mockUp', words: 'the real bearing' }] : [],
  usual: usualWords,
  account: bearingAccount,
  cuts: cutsToMake,
  checks: checksToMake,
  makes: ({ question, answer }) =>
    answer.kind === 'ball' && !question.aside
      ? [{ name: 'Inner sleeve', length: answer.found.make.target }]
      : [],
  gets: (answered, way) =>
    answered.question.aside
      ? []
      : getsOfBearing(answered.answer, cutsToMake(answered), { way, unit: answered.unit }),
  cutPlaces: () => [
    { field: 'sleeve', part: 'sleeve' },
    { field: 'depth', part: 'recess' },
    { field: 'shim', part: 'shim' },
    { field: 'shaft', part: 'shaft' },
    { field: 'housing', part: 'housing' },
  ],
  usualLimits: (given) => (given.choice('bearing') === 'ball' ? sleeveWant(given).limits : undefined),
  wanted,
  demo: {
    title: 'Sleeve between the bearings',
    sizes: { between: '2.4500 in', sleeve: '2.4580 in' },
    choices: { bearing: 'ball', mockUp: 'no' },
  },
});

/** None by a sum that a reading showed to be something else; unsure by a bearing that isn't the real one. */
function cutsToMake({ question, answer, given }: BearingAnswered): readonly CutWay[] {
  if (question.aside) return [];
  const ways = cutsOfBearing(answer);
  return given.choice('mockUp') === 'yes' ? ways.map((way) => ({ ...way, unsure: true })) : ways;
}

function checksToMake({ question }: BearingAnswered): readonly CheckOffer[] {
  switch (question.kind) {
    case 'ball':
      return checksOfSleeve(question.ask.want);
    case 'taper':
      return checksOfTaper(question.ask.want);
    case 'seat':
      return question.ask.want ? checksOfSeat(question.ask.want) : [];
    case 'ring':
      return checksOfRingSeat(question.ask);
    default:
      return question satisfies never;
  }
}

function usualWords(given: BearingGiven): Readonly<Partial<Record<keyof BearingFields, string>>> {
  return {
    ...(given.choice('bearing') === 'ball' ? usualExcess(given) : usualAim(given)),
    mockUp: 'not said; taken as the real one',
    sleeve: 'none yet; it is made new',
    thread: 'not given; then the turn is not worked out',
    alsoIn: 'nothing else',
    direct: 'not read; sleeve less distance counts',
    directProud: 'not read; the sum counts',
    directBelow: 'not read; the sum counts',
    shaft: 'not there yet; it is turned to its limits',
    housing: 'not there yet; it is bored to its limits',
    ringBore: 'not measured; the normal class counts',
    ringOutside: 'not measured; the normal class counts',
    ...inUseUsual,
  };
}

function usualExcess(given: BearingGiven) {
  const { limits, aim } = sleeveWant(given);
  const words = (size: Length) => `usual: ${figure(size, given.unit)} longer (${limits.source})`;
  return { lower: words(limits.lower), upper: words(limits.upper), aim: words(aim) };
}

function usualAim(given: BearingGiven) {
  const want = ownWant(given, '');
  return want
    ? { aim: `half-way: ${figure(want.aim, given.unit)}` }
    : { lower: 'not given; then it is not judged' };
}

function wanted(given: BearingGiven, kind: FeatureKind): Wanted | undefined {
  const own = ownWant(given, 'your own limits')?.limits;
  const leg = (of: FeatureKind, name: MeasuredName, coefficient: number): Leg => {
    const known = given.size(name)?.tightest;
    return { kind: of, size: known ? mean(known) : SOME_SIZE, coefficient };
  };
  switch (given.choice('bearing')) {
    case 'ball':
      return {
        limits: sleeveWant(given).limits,
        legs:
          kind === 'depth'
            ? [leg('depth', 'direct', 1)]
            : [leg('length', 'sleeve', 1), leg('length', 'between', -1)],
      };
    case 'taper':
      return own && kind === 'gap' ? { limits: own, legs: [leg('gap', 'endPlay', 1)] } : undefined;
    case 'seat': {
      const alsoIn = given.has('alsoIn') ? [leg('length', 'alsoIn', 1)] : [];
      return own && { limits: own, legs: [leg('length', 'width', 1), ...alsoIn, leg('depth', 'depth', -1)] };
    }
    case 'ring': {
      const question = bearingQuestion(given);
      const fit = question?.kind === 'ring' ? ringFit(question.ask) : undefined;
      if (fit?.ok !== true || question?.kind !== 'ring') return undefined;
      const { seat, source } = fit.value;
      return { limits: { ...seat, source }, legs: [{ kind, size: question.ask.nominal, coefficient: 1 }] };
    }
    default:
      return undefined;
  }
}

type MeasuredName = 'direct' | 'sleeve' | 'between' | 'endPlay' | 'alsoIn' | 'width' | 'depth';
