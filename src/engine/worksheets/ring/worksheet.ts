import { checksOfRing } from './checks-of-ring.ts';
import { cutsOfRing } from './cuts-of-ring.ts';
import { getsOfRing } from './gets-of-ring.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { mean } from '../../reading/estimate.ts';
import { lengthOf } from '../../length/length.ts';
import { ring } from './ring.ts';
import { sayRingRefusal } from './say-ring.ts';
import { figure } from '../../length/show.ts';
import type { Given } from '../given.ts';
import { worksheet } from '../worksheet.ts';
import { leastRing } from './tables/ring-practice.ts';
import { ringAccount } from './account.ts';
import { ringFields, type RingFields } from './fields.ts';
import { ringClearances, ringQuestion } from './question.ts';

// Stands in for a size nothing is known of yet; it only decides which tools' range is asked for.
const SOME_SIZE = lengthOf('1/2 in');

/** A ring or shield for a recess: its sizes, the washer it comes from, and the cuts in their order. */
export const ringWorksheet = worksheet({
  name: 'Ring',
  asks: 'Ring or shield in a recess: outside, inside, thickness',
  fields: ringFields,
  needs: ['recess', 'stem'],
  starts: {},
  lacks: 'It needs the bore of the recess and the stem.',
  question: ringQuestion,
  answer: ring,
  sayRefusal: sayRingRefusal,
  usual: usualWords,
  assumed: () => [{ field: 'locates', words: 'the recess locates it' }],
  account: ringAccount,
  cuts: ({ question, answer }) => cutsOfRing(question, answer),
  checks: ({ question }) => checksOfRing(question),
  makes: ({ answer: { outside, inside, thickness, fromBlanks } }) => [
    {
      name: 'Ring',
      outside: outside.target,
      inside: inside.target,
      length: fromBlanks.best?.thickness ?? thickness?.target,
    },
  ],
  gets: ({ question, answer, unit }) => getsOfRing(question, answer, unit),
  // The ring is cut to what is read: the band of the reading has to leave room in the clearance.
  wanted: (given, kind) => {
    const { outside, inside } = ringClearances(given);
    const leg = (size: Estimate | undefined) => [
      { kind, size: size ? mean(size) : SOME_SIZE, coefficient: 1 },
    ];
    if (kind === 'bore') return { limits: outside, legs: leg(given.size('recess')?.tightest) };
    if (kind === 'pin') return { limits: inside, legs: leg(given.size('stem')?.tightest) };
    return undefined;
  },
  demo: {
    title: 'Dust ring',
    sizes: { recess: '1.500 in', stem: '.750 in', depth: '.093 in', stayFree: '.010 in' },
    choices: { locates: 'recess' },
  },
});

function usualWords(given: Given<RingFields>): Readonly<Partial<Record<keyof RingFields, string>>> {
  const { outside, inside } = ringClearances(given);
  const usual = (size: Parameters<typeof figure>[0]) => `usual: ${figure(size, given.unit)}`;
  return {
    outLeast: usual(outside.lower),
    outMost: usual(outside.upper),
    inLeast: usual(inside.lower),
    inMost: usual(inside.upper),
    depth: 'not given; then nothing limits the thickness',
    stayFree: 'nothing; it may fill the recess',
    leastThickness: usual(leastRing[given.unit]),
  };
}
