import { describe, expect, test } from 'vitest';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import { steeringQuestion } from '../../../../src/engine/worksheets/steering-geometry/question.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { ownLimits } from '../../../../src/screens/worksheets/worksheet-data.ts';
import { is, typedSize, worksheetOf } from '../worksheet-for-test.ts';

const sizes = {
  frontRadius: typedSize('12.2 in'),
  rearRadius: typedSize('305 mm'),
  wheelbase: typedSize('57'),
  clampOffset: typedSize('50 mm'),
};
const choices = { rake: '27' };
const asked = (given: Parameters<typeof worksheetOf>[1]) =>
  steeringQuestion(givenOf(worksheetOf('steering-geometry', given)));

describe('what a steering-geometry worksheet asks', () => {
  test('is the machine as it stands, in mixed units, and no change until one is given', () => {
    const question = asked({ sizes, choices });
    expect(question?.before.rakeDegrees).toBe(27);
    expect(question && is(mean(question.before.frontRadius), '12.2 in')).toBe(true);
    expect(question && is(mean(question.before.rearRadius), '305 mm')).toBe(true);
    expect(question && is(mean(question.before.axleLead), '0 mm')).toBe(true);
    expect(question?.before.extraAngleDegrees).toBe(0);
    expect(question?.change).toEqual({});
  });

  test.each(['frontRadius', 'rearRadius', 'wheelbase', 'clampOffset'])(
    'can’t be asked without its %s',
    (name) => {
      const { [name]: _missing, ...without } = sizes as Record<string, ReturnType<typeof typedSize>>;
      expect(asked({ sizes: without, choices })).toBeUndefined();
    },
  );

  test('can’t be asked without a rake', () => {
    expect(asked({ sizes })).toBeUndefined();
  });

  test('takes a rake as known to .2° unless it says better', () => {
    expect(asked({ sizes, choices })?.before.rakeWithinDegrees).toBe(0.2);
    expect(asked({ sizes, choices: { ...choices, rakeWithin: '0.1' } })?.before.rakeWithinDegrees).toBe(0.1);
  });

  test('carries every change under its own name', () => {
    const question = asked({
      sizes: {
        ...sizes,
        axleLead: typedSize('-5 mm'),
        forkLength: typedSize('30'),
        forkLonger: typedSize('-2'),
        newFrontRadius: typedSize('12'),
        newRearRadius: typedSize('12.5'),
        rearHigher: typedSize('1'),
        newClampOffset: typedSize('60 mm'),
        newAxleLead: typedSize('10 mm'),
      },
      choices: { ...choices, extraAngle: '1', newExtraAngle: '3' },
    });
    const { change, before } = question ?? {};
    expect(before && is(mean(before.axleLead), '-5 mm') && before.extraAngleDegrees).toBe(1);
    expect(before?.forkLength && is(mean(before.forkLength), '30 in')).toBe(true);
    expect(is(change?.forkLonger, '-2 in') && is(change?.frontRadius, '12 in')).toBe(true);
    expect(is(change?.rearRadius, '12.5 in') && is(change?.rearHigher, '1 in')).toBe(true);
    expect(is(change?.clampOffset, '60 mm') && is(change?.axleLead, '10 mm')).toBe(true);
    expect(change?.extraAngleDegrees).toBe(3);
  });
});

describe('the trail that is wanted', () => {
  test('is only what the fitter says: there is no usual one', () => {
    expect(ownLimits(worksheetOf('steering-geometry', { sizes, choices }))).toBeUndefined();
    const limits = ownLimits(
      worksheetOf('steering-geometry', { sizes: { ...sizes, lower: typedSize('3.5') }, choices }),
    );
    expect(is(limits?.lower, '3.5 in') && limits?.upper === undefined).toBe(true);
    const most = ownLimits(worksheetOf('steering-geometry', { sizes: { upper: typedSize('5') } }));
    expect(is(most?.upper, '5 in') && most?.lower === undefined).toBe(true);
  });
});
