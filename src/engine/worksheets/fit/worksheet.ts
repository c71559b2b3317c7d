import { fitLimits, type FitLimits } from '../../fit/fits.ts';
import { nominalName } from '../../fit/nominal.ts';
import { sayFitRefusal } from '../../fit/say-fit.ts';
import type { FeatureKind } from '../../reading/measuring-tool.ts';
import { OWN_ZONES } from '../class-fields.ts';
import type { Fields } from '../fields.ts';
import { inUseUsual } from '../in-use.ts';
import { holeRunsWith } from '../runs-with.ts';
import { worksheet } from '../worksheet.ts';
import { fitAccount } from './account.ts';
import { checksOfFit } from './checks-of-fits.ts';
import { getsOfFit } from './gets-of-fit.ts';
import { cutsOfFitAnswer } from './cuts-of-fit.ts';
import { fitFields, type FitFields } from './fields.ts';
import { fitAnswer } from './fit.ts';
import { fitNeeds, fitQuestion, fitSystem, type FitGiven } from './question.ts';
import { whyOfRefusedFit } from './why-of-fit.ts';

/** Hole and pin of a class: the part that fits the one that is there, or what two measured parts are. */
export const fitWorksheet = worksheet({
  name: 'Fit',
  asks: 'The pin for this bore, the bore for this pin, or which class two parts keep',
  fields: fitFields,
  fieldsFor,
  needs: fitNeeds,
  starts: {},
  lacks: 'It needs a bore or a pin, and how the joint runs.',
  question: fitQuestion,
  answer: fitAnswer,
  sayRefusal: sayFitRefusal,
  whyRefused: whyOfRefusedFit,
  usual: usualWords,
  account: fitAccount,
  cuts: ({ question, answer, given }) => cutsOfFitAnswer(question, answer, given.dial),
  checks: ({ answer }) => checksOfFit(answer.fit),
  gets: ({ question, answer, given, unit }, way) =>
    getsOfFit(cutsOfFitAnswer(question, answer, given.dial), way, unit),
  runsWith: (given, of) => {
    const fitClass = fitQuestion(given)?.fitClass;
    return { ...holeRunsWith(given, of), ...(fitClass !== undefined && { fitClass }) };
  },
  // The class's limits of the one part; of the clearance where that is read itself.
  wanted: (given, kind) => {
    const question = fitQuestion(given);
    const fit = question && fitLimits(question);
    const range = fit?.ok === true ? rangeOf(fit.value, kind) : undefined;
    return question && fit?.ok === true && range
      ? {
          limits: { ...range, source: fit.value.source },
          legs: [{ kind, size: question.nominal, coefficient: 1 }],
        }
      : undefined;
  },
  demo: {
    title: 'Fit of the link',
    sizes: { nominal: '7/16 in', bore: '.4487 in' },
    choices: { joint: 'turns' },
  },
});

function rangeOf({ hole, pin, clearance }: FitLimits, kind: FeatureKind) {
  if (kind === 'bore') return hole;
  if (kind === 'pin') return pin;
  return kind === 'gap' ? clearance : undefined;
}

/** Of the two systems the fields of the one that counts; the four zones only where they are picked one by one. */
function fieldsFor(given: FitGiven): Fields {
  const { isoClass, ansiClass, holeLetter, holeGrade, pinLetter, pinGrade, ...always } = fitFields;
  const { slop, boreMetal, pinMetal, hotTemperature, coldTemperature, ...before } = always;
  const behind = { slop, boreMetal, pinMetal, hotTemperature, coldTemperature };
  if (fitSystem(given) === 'ansi') return { ...before, ansiClass, ...behind };
  const zones = given.choice('isoClass') === OWN_ZONES ? { holeLetter, holeGrade, pinLetter, pinGrade } : {};
  return { ...before, isoClass, ...zones, ...behind };
}

function usualWords(given: FitGiven): Readonly<Partial<Record<keyof FitFields, string>>> {
  const question = fitQuestion(given);
  const isIso = fitSystem(given) === 'iso';
  return {
    slop: 'not read; bore less pin counts',
    ...inUseUsual,
    system: `${isIso ? 'ISO 286' : 'ANSI B4.1'}, by the unit of the nominal size`,
    ...(question && {
      [isIso ? 'isoClass' : 'ansiClass']: `usual: ${question.fitClass} (common practice, no source)`,
      nominal: `${nominalName(question.nominal, given.unit)}, the nearest to the ${question.nominalFrom}`,
    }),
  };
}
