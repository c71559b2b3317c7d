import { describe, expect, test } from 'vitest';
import { bushing } from '../../../../src/engine/press/bushing.ts';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import * as engine from '../../../../src/engine/worksheets/bushing/question.ts';
import { bushingWorksheet } from '../../../../src/engine/worksheets/bushing/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import { featureOf, is, ofFeature, readingOf, typedSize, worksheetOf } from '../worksheet-for-test.ts';

const bushingQuestion = (data: WorksheetData) => engine.bushingQuestion(givenOf(data));

const sizes = { bore: typedSize('.5050'), pin: typedSize('.5000'), wall: typedSize('.400') };
// How it runs is asked before the metals.
const runs = { joint: 'turns-under-load' };
const choices = {
  ...runs,
  partMetal: 'low-carbon-steel',
  bushingMetal: 'bearing-bronze',
};

describe('what a bushing worksheet asks', () => {
  test('is the worn bore, the pin, how it runs, the wall and both metals, one after the other; nothing of it is taken for granted', () => {
    const asked = (given: Partial<typeof sizes>, chosen: Record<string, string> = {}) =>
      bushingWorksheet.nextNeed(givenOf(worksheetOf('bushing', { sizes: given, choices: chosen })));
    expect(asked({})).toBe('bore');
    expect(asked({ bore: sizes.bore })).toBe('pin');
    expect(asked({ bore: sizes.bore, pin: sizes.pin })).toBe('joint');
    expect(asked({ bore: sizes.bore, pin: sizes.pin }, runs)).toBe('wall');
    expect(asked(sizes, runs)).toBe('partMetal');
    expect(asked(sizes, { ...runs, partMetal: 'alloy-steel' })).toBe('bushingMetal');
    expect(asked(sizes, choices)).toBe(undefined);
  });

  test('gives no figure while a metal is not said', () => {
    const started = worksheetOf('bushing', { sizes, choices: runs });
    expect(bushingQuestion(started)).toBe(undefined);
  });

  test.each([
    { without: 'the bore', given: { sizes: { pin: sizes.pin }, choices } },
    { without: 'the pin', given: { sizes: { bore: sizes.bore }, choices } },
    { without: 'a metal of the part', given: { sizes, choices: { ...choices, partMetal: 'unobtainium' } } },
    { without: 'a metal of the bushing', given: { sizes, choices: { ...choices, bushingMetal: 'cheese' } } },
    { without: 'a way to run', given: { sizes, choices: { ...choices, joint: 'wobbles' } } },
  ])('can’t be asked without $without', ({ given }) => {
    expect(bushingQuestion(worksheetOf('bushing', given))).toBe(undefined);
  });

  test('takes the usual for what was not said', () => {
    const question = bushingQuestion(worksheetOf('bushing', { sizes, choices }));
    expect(question).toMatchObject({
      insideClass: 'RC4',
      pressClass: 'FN1',
      finish: 'usual',
      condition: 'plain',
      cold: 'freezer',
      shopCelsius: 20,
    });
    expect(question).not.toHaveProperty('length');
    expect(question).not.toHaveProperty('hotCelsius');
    expect(question && is(question.step, '.001 in')).toBe(true);
  });

  test('a bore typed in millimetres takes ISO classes, whatever the screen shows', () => {
    const metric = { ...sizes, bore: typedSize('12.83 mm') };
    const question = bushingQuestion(worksheetOf('bushing', { sizes: metric, choices, unit: 'in' }));
    expect(question).toMatchObject({ insideClass: 'H8/f7', pressClass: 'H7/r6' });
  });

  test('takes all that was said', () => {
    const question = bushingQuestion(
      worksheetOf('bushing', {
        sizes: {
          ...sizes,
          length: typedSize('1'),
          reamTo: typedSize('.640'),
          reamed: typedSize('.6402'),
          outside: typedSize('.6410'),
          plating: typedSize('.0002'),
          leastWall: typedSize('.100'),
          leastBushingWall: typedSize('.050'),
        },
        choices: {
          ...choices,
          system: 'ansi',
          ansiClass: 'RC3',
          ansiPress: 'LN3',
          finish: 'fine',
          condition: 'plated',
          cold: 'dry-ice',
          shopTemperature: '15',
          hotTemperature: '120',
          partYield: '300',
          bushingYield: '140',
        },
      }),
    );
    expect(question).toMatchObject({
      insideClass: 'RC3',
      pressClass: 'LN3',
      finish: 'fine',
      condition: 'plated',
      cold: 'dry-ice',
      shopCelsius: 15,
      hotCelsius: 120,
      partYieldMpa: 300,
      bushingYieldMpa: 140,
    });
    expect(is(question?.length, '1 in') && is(question?.reamTo, '.640 in')).toBe(true);
    expect(is(question?.plating, '.0002 in') && is(question?.leastWall, '.100 in')).toBe(true);
    expect(is(question?.leastBushingWall, '.050 in')).toBe(true);
    expect(question?.reamed && is(mean(question.reamed.tightest), '.6402 in')).toBe(true);
    expect(question?.outside && is(mean(question.outside.loosest), '.6410 in')).toBe(true);
  });

  test.each([
    { finish: 'coarse', condition: 'hardened', cold: 'nitrogen' },
    { finish: 'fine', condition: 'plated', cold: 'dry-ice' },
  ])('$finish, $condition, $cold are taken as they are', (said) => {
    expect(
      bushingQuestion(worksheetOf('bushing', { sizes, choices: { ...choices, ...said } })),
    ).toMatchObject(said);
  });

  test('inches and millimetres mixed in one question: 12.7 mm pin in a .505 bore', () => {
    const mixed = { ...sizes, pin: typedSize('12.7 mm') };
    const question = bushingQuestion(worksheetOf('bushing', { sizes: mixed, choices }));
    const answer = question && bushing(question);
    // RC4 at 1/2: .5006 to .5023
    expect(answer?.ok === true && is(answer.value.inside.lower, '.5006 in')).toBe(true);
  });

  test('a worn bore’s readings rule the reamer by their loosest place', () => {
    const data = worksheetOf('bushing', {
      sizes: { ...sizes, bore: ofFeature('bore') },
      choices,
      features: [featureOf('bore', 'bore')],
      readings: [
        readingOf('bore', '.7000', { place: 'middle' }),
        readingOf('bore', '.7100', { place: 'top' }),
      ],
    });
    const question = bushingQuestion(data);
    const answer = question && bushing(question);
    // .710 + .002 and its band: 23/32 = .71875
    expect(answer?.ok === true && answer.value.ream.name).toBe('23/32 in');
  });
});
