import { describe, expect, test } from 'vitest';
import { fitFields } from '../../../../src/engine/worksheets/fit/fields.ts';
import { fitAnswer } from '../../../../src/engine/worksheets/fit/fit.ts';
import * as engine from '../../../../src/engine/worksheets/fit/question.ts';
import { fitWorksheet } from '../../../../src/engine/worksheets/fit/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import { featureOf, is, ofFeature, readingOf, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

const fitQuestion = (data: WorksheetData) => engine.fitQuestion(givenOf(data));

const half = { nominal: typedSize('1/2') };
const turns = { joint: 'turns' };

describe('what a fit worksheet asks', () => {
  const asked = (given: Parameters<typeof worksheetOf>[1]) =>
    fitWorksheet.nextNeed(givenOf(worksheetOf('fit', given)));

  test('is one measured part and how the joint runs, one after the other', () => {
    expect(asked({})).toBe('bore');
    expect(asked({ sizes: { bore: typedSize('.5005') } })).toBe('joint');
    expect(asked({ sizes: { pin: typedSize('.4985') } })).toBe('joint');
    expect(asked({ sizes: { bore: typedSize('.5005') }, choices: turns })).toBe(undefined);
  });

  test('is only how it runs where a nominal size was given, for its limits are an answer', () => {
    expect(asked({ sizes: half })).toBe('joint');
    expect(asked({ sizes: half, choices: turns })).toBe(undefined);
  });

  test('is not how it runs where its class was picked', () => {
    expect(asked({ sizes: half, choices: { ansiClass: 'LC6' } })).toBe(undefined);
    // A class of the other system says nothing of this one.
    expect(asked({ sizes: half, choices: { isoClass: 'H7/g6' } })).toBe('joint');
  });

  test('is the nominal too where no preferred size lies near, as a measured size is none', () => {
    // .4700 lies between 15/32 (.46875) and 31/64 (.484375): .0012 over the one, past what a bore is made over.
    expect(asked({ sizes: { pin: typedSize('.4750') } })).toBe('nominal');
    expect(fitQuestion(worksheetOf('fit', { sizes: { pin: typedSize('.4750') }, choices: turns }))).toBe(
      undefined,
    );
  });

  test.each([
    { what: 'a pin a little under 7/16', sizes: { pin: typedSize('.4365') }, nominal: '7/16 in' },
    { what: 'a bore worn over 1/2', sizes: { bore: typedSize('.5023') }, nominal: '1/2 in' },
    { what: 'a bore in millimetres', sizes: { bore: typedSize('12.04 mm') }, nominal: '12 mm' },
    {
      what: 'the pin before the bore',
      sizes: { pin: typedSize('.4985'), bore: typedSize('.5005') },
      nominal: '1/2 in',
    },
    {
      what: 'what was given before both',
      sizes: { nominal: typedSize('7/16'), pin: typedSize('.4985') },
      nominal: '7/16 in',
    },
  ])('$what: its class goes by $nominal', ({ sizes, nominal }) => {
    expect(is(fitQuestion(worksheetOf('fit', { sizes, choices: turns }))?.nominal, nominal)).toBe(true);
  });

  test('a nominal that was measured is the preferred size near it', () => {
    const nominal = typedSize('.4985', tool('digital-caliper'));
    expect(
      is(fitQuestion(worksheetOf('fit', { sizes: { nominal }, choices: turns }))?.nominal, '1/2 in'),
    ).toBe(true);
  });

  test.each([
    { without: 'a size', given: { choices: turns } },
    { without: 'how it runs', given: { sizes: half } },
    { without: 'a way to run that is known', given: { sizes: half, choices: { joint: 'wobbles' } } },
  ])('can’t be asked without $without', ({ given }) => {
    expect(fitQuestion(worksheetOf('fit', given))).toBe(undefined);
  });

  test.each([
    { what: 'inches', sizes: half, choices: turns, fitClass: 'RC5' },
    { what: 'thou', sizes: { nominal: typedSize('500 thou') }, choices: turns, fitClass: 'RC5' },
    { what: 'millimetres', sizes: { nominal: typedSize('12 mm') }, choices: turns, fitClass: 'H8/e8' },
    { what: 'inches, ISO chosen', sizes: half, choices: { ...turns, system: 'iso' }, fitClass: 'H8/e8' },
    { what: 'an ANSI class', sizes: half, choices: { ...turns, ansiClass: 'LC6' }, fitClass: 'LC6' },
    {
      what: 'an ISO class',
      sizes: half,
      choices: { ...turns, system: 'iso', isoClass: 'H7/k6', ansiClass: 'LC6' },
      fitClass: 'H7/k6',
    },
    {
      what: 'a pair of its own',
      sizes: half,
      choices: {
        ...turns,
        system: 'iso',
        isoClass: 'own',
        holeLetter: 'JS',
        holeGrade: '9',
        pinLetter: 'm',
        pinGrade: '5',
      },
      fitClass: 'JS9/m5',
    },
    {
      what: 'a pair of its own, half picked: the usual stands for the rest',
      sizes: half,
      choices: { ...turns, system: 'iso', isoClass: 'own', pinLetter: 'm' },
      fitClass: 'H8/m8',
    },
  ])('$what: $fitClass', ({ sizes, choices, fitClass }) => {
    expect(fitQuestion(worksheetOf('fit', { sizes, choices }))?.fitClass).toBe(fitClass);
  });

  test('the class stays what it is when the screen shows the other unit', () => {
    const asked = (unit: 'in' | 'mm') =>
      fitQuestion(worksheetOf('fit', { sizes: half, choices: turns, unit }));
    expect(asked('mm')?.fitClass).toBe(asked('in')?.fitClass);
  });

  test('a nominal taken from readings in millimetres is an ISO fit', () => {
    const data = worksheetOf('fit', {
      sizes: { nominal: ofFeature('pin') },
      choices: turns,
      features: [featureOf('pin', 'pin')],
      readings: [readingOf('pin', '12.00 mm')],
    });
    expect(fitQuestion(data)?.fitClass).toBe('H8/e8');
  });

  test('every class it offers by name is answered at 1 in', () => {
    const valuesOf = (name: 'isoClass' | 'ansiClass') => fitFields[name].options.map(({ value }) => value);
    for (const fitClass of [
      ...valuesOf('isoClass').filter((one) => one !== 'own'),
      ...valuesOf('ansiClass'),
    ]) {
      const data = worksheetOf('fit', {
        sizes: { nominal: typedSize('1') },
        choices: {
          ...turns,
          system: fitClass.includes('/') ? 'iso' : 'ansi',
          isoClass: fitClass,
          ansiClass: fitClass,
        },
      });
      const question = fitQuestion(data);
      expect(question?.fitClass).toBe(fitClass);
      expect(question && fitAnswer(question).ok).toBe(true);
    }
  });
});

describe('what it answers', () => {
  const answerTo = (sizes: Parameters<typeof worksheetOf>[1]) => {
    const question = fitQuestion(worksheetOf('fit', { choices: turns, ...sizes }));
    const answer = question && fitAnswer(question);
    if (!answer?.ok) throw new Error('no answer');
    return answer.value;
  };

  test('limits alone while nothing is measured', () => {
    const answer = answerTo({ sizes: half });
    expect(is(answer.fit.hole.upper, '.5010 in')).toBe(true);
    expect(answer).not.toHaveProperty('clearance');
    expect(answer).not.toHaveProperty('pinForBore');
  });

  test('the pin for a measured bore, the bore for a measured pin, and both verdicts for both', () => {
    const bore = answerTo({ sizes: { ...half, bore: typedSize('.5023') } });
    expect(bore.pinForBore?.ok === true && is(bore.pinForBore.value.upper, '.5011 in')).toBe(true);
    expect(bore.bore?.verdict.kind).toBe('no-good');
    const pin = answerTo({ sizes: { ...half, pin: typedSize('.4950') } });
    expect(pin.boreForPin?.ok === true && is(pin.boreForPin.value.lower, '.4962 in')).toBe(true);
    const both = answerTo({ sizes: { ...half, bore: typedSize('.5023'), pin: typedSize('.5003') } });
    expect(both.clearance?.verdict.kind).toBe('good');
  });

  test('a class that isn’t made at the size is refused', () => {
    const data = worksheetOf('fit', { sizes: half, choices: { ...turns, ansiClass: 'FN3' } });
    const question = fitQuestion(data);
    expect(question && fitAnswer(question)).toMatchObject({
      ok: false,
      refusal: { code: 'class-not-at-size' },
    });
  });
});
