import { figure } from '../../length/show.ts';
import { stockFor } from '../../job/stock.ts';
import { worksheet } from '../worksheet.ts';
import { taperAccount } from './account.ts';
import { checksOfTaper } from './checks-of-taper.ts';
import { cutsOfTaper } from './cuts-of-taper.ts';
import { taperFields } from './fields.ts';
import {
  besidesOf,
  setChosen,
  taperFieldsFor,
  taperNeeds,
  taperQuestion,
  USUAL_MATE_WITHIN,
  USUAL_SINE_BAR,
  USUAL_WITHIN,
  type TaperGiven,
} from './question.ts';
import { sayTaperRefusal } from './say-taper.ts';
import { stepsOfTaper } from './steps-of-taper.ts';
import { blockSets } from './tables/gauge-block-sets.ts';
import { taper } from './taper.ts';

/** A taper: its slope by whatever is known of it, and how compound, tailstock and sine bar are set for it. */
export const taperWorksheet = worksheet({
  name: 'Taper',
  asks: 'Where do I set compound, tailstock or sine bar, and what size is it where?',
  fields: taperFields,
  fieldsFor: taperFieldsFor,
  needs: taperNeeds,
  starts: {},
  lacks: 'It needs what is known of the taper, and its length.',
  question: taperQuestion,
  answer: taper,
  sayRefusal: sayTaperRefusal,
  besides: (_given, field, value) => besidesOf(field, value),
  usual: usualWords,
  assumed: (given) =>
    ['rollers', 'balls'].includes(given.choice('by') ?? '')
      ? []
      : [{ field: 'side', words: 'an outside taper' }],
  account: taperAccount,
  cuts: ({ question, answer, given }) => cutsOfTaper(question, answer, given.dialFor(question.side)),
  checks: ({ question, answer, unit }) => checksOfTaper(question, answer, unit),
  makes: ({ question, answer: { cone } }) =>
    question.side === 'bore'
      ? [{ name: 'Taper socket', inside: cone.large, insideFar: cone.small, length: cone.length }]
      : [{ name: 'Taper', outside: cone.large, outsideFar: cone.small, length: cone.length, solid: true }],
  steps: () => stepsOfTaper(),
  gets: ({ question, answer: { cone }, unit }) =>
    question.side === 'outside' && !question.blank
      ? [stockFor({ part: 'taper', outside: cone.large, length: cone.length }, unit)]
      : [],
  demo: {
    title: 'Taper of the magneto drive',
    sizes: { large: '.750 in', small: '.650 in', length: '1.200 in', between: '6.000 in', at: '.600 in' },
    choices: { by: 'diameters' },
  },
});

function usualWords(given: TaperGiven): Readonly<Partial<Record<keyof typeof taperFields, string>>> {
  const { unit } = given;
  const set = setChosen(given);
  return {
    at: 'not asked',
    blank: 'not measured yet',
    within: `usual: ${figure(USUAL_WITHIN[unit], unit)} (common practice, no source)`,
    mate: 'nothing; then it is not judged',
    mateWithin: `usual: ${figure(USUAL_MATE_WITHIN[unit], unit)} (common practice, no source)`,
    between: 'not given; then for each inch of it'.replace('inch', unit === 'in' ? 'inch' : '10 mm'),
    sineBar: `usual: ${figure(USUAL_SINE_BAR[unit], unit)}`,
    blocks:
      set === 'drawer'
        ? 'those in the drawer'
        : `usual: ${blockSets[set].words} (common practice, no source)`,
    lacksOne: 'none',
    lacksTwo: 'none',
    lacksThree: 'none',
  };
}
