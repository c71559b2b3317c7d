import { bushing } from '../../engine/press/bushing.ts';
import type { CheckOffer } from '../../engine/reading/check-offer.ts';
import {
  checksOfSeat,
  checksOfSleeve,
  checksOfTaper,
} from '../../engine/worksheets/bearing-seat/checks-of-bearing.ts';
import {
  checksOfBushing,
  checksOfFit,
  checksOfHoleAndPin,
} from '../../engine/worksheets/fit/checks-of-fits.ts';
import {
  centreCheckOf,
  checksOfLineUp,
  provesTooLittle,
} from '../../engine/worksheets/axle-line-up/checks-of-line-up.ts';
import { worksheets } from '../../engine/worksheets/all-worksheets.ts';
import { checksOfStack } from '../../engine/worksheets/spacer-stack/checks-of-stack.ts';
import {
  checksOfEngagement,
  checksOfInsert,
} from '../../engine/worksheets/thread-engagement/checks-of-threads.ts';
import { fitLimits } from '../../engine/fit/fits.ts';
import { jointNominal, limitsAsked } from '../../engine/worksheets/hole-and-pin/hole-and-pin-limits.ts';
import { axleLineUpQuestion } from '../worksheets/axle-line-up-question.ts';
import { bearingQuestion } from '../worksheets/bearing-seat-question.ts';
import { bushingQuestion } from '../worksheets/bushing-question.ts';
import { fitQuestion } from '../worksheets/fit-question.ts';
import { holeAndPinQuestion } from '../worksheets/hole-and-pin-question.ts';
import { givenOf } from '../worksheets/given-of.ts';
import { spacerStackQuestion } from '../worksheets/spacer-stack-question.ts';
import { engagementQuestion, heldOf } from '../worksheets/thread-engagement-question.ts';
import { threadInsertQuestion } from '../worksheets/thread-insert-question.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

type Offers = (data: WorksheetData) => readonly CheckOffer[];

// By kind; one that isn't here has nothing to be proved on the machine: trail is worked out, not read.
const OFFERS: Readonly<Record<string, Offers>> = {
  'spacer-stack': (data) => {
    const question = spacerStackQuestion(data);
    return question ? checksOfStack(question.want) : [];
  },
  'hole-and-pin': (data) => {
    const question = holeAndPinQuestion(data);
    return question
      ? checksOfHoleAndPin(question, limitsAsked(question, jointNominal(question).size), data.unit)
      : [];
  },
  fit: (data) => {
    const question = fitQuestion(data);
    const fit = question && fitLimits(question);
    return fit?.ok === true ? checksOfFit(fit.value) : [];
  },
  bushing: (data) => {
    const question = bushingQuestion(data);
    const answer = question && bushing(question);
    return answer?.ok === true ? checksOfBushing(answer.value) : [];
  },
  'thread-insert': (data) => (threadInsertQuestion(data) ? checksOfInsert() : []),
  ring: (data) => worksheets.ring.checks(givenOf(data)),
  'bearing-seat': bearingOffers,
  'axle-line-up': (data) => {
    const question = axleLineUpQuestion(data);
    return question ? checksOfLineUp(question) : [];
  },
  'thread-engagement': (data) =>
    engagementQuestion(data) ? checksOfEngagement(heldOf(data.worksheet.choices['held'])) : [],
};

/** What can be checked on the machine of a worksheet's answer, with its own limits; nothing while it has no answer. */
export function offersOf(data: WorksheetData): readonly CheckOffer[] {
  return OFFERS[data.worksheet.kind]?.(data) ?? [];
}

/** What of an axle is to be read in place of a check whose limits, as they are kept, would let pass what must not be. */
export function insteadOfKept(
  kept: Pick<CheckOffer, 'sizeName' | 'limits'>,
  data: WorksheetData,
): CheckOffer | undefined {
  const question = data.worksheet.kind === 'axle-line-up' ? axleLineUpQuestion(data) : undefined;
  if (!question || !provesTooLittle(kept, question)) return undefined;
  return offersOf(data).find((offer) => offer.sizeName === kept.sizeName) ?? centreCheckOf(question);
}

function bearingOffers(data: WorksheetData): readonly CheckOffer[] {
  const question = bearingQuestion(data);
  switch (question?.kind) {
    case 'ball':
      return checksOfSleeve(question.ask.want);
    case 'taper':
      return checksOfTaper(question.ask.want);
    case 'seat':
      return question.ask.want ? checksOfSeat(question.ask.want) : [];
    case undefined:
      return [];
    default:
      return question satisfies never;
  }
}
