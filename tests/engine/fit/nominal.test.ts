import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bushing, type BushingQuestion } from '../../../src/engine/press/bushing.ts';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { jointLimits } from '../../../src/engine/fit/joint-limits.ts';
import { exactDecimalText, lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { nominalName, nominalNear, nominalTyped, sayNominal } from '../../../src/engine/fit/nominal.ts';
import { materialNamed, type MaterialId } from '../../../src/engine/material/tables/materials.ts';

const mm = (text: string) => lengthOf(`${text} mm`);
const part = (size: string) => ({
  tightest: typedEstimate(lengthOf(size)),
  loosest: typedEstimate(lengthOf(size)),
});

describe('the nominal nearest a measured pin', () => {
  test.each([
    { pin: '30.000 mm', system: 'iso', nominal: '30 mm' },
    { pin: '30.001 mm', system: 'iso', nominal: '30 mm' },
    { pin: '29.986 mm', system: 'iso', nominal: '30 mm' },
    { pin: '17.99 mm', system: 'iso', nominal: '18 mm' },
    { pin: '18.004 mm', system: 'iso', nominal: '18 mm' },
    { pin: '50.005 mm', system: 'iso', nominal: '50 mm' }, // 1-31/32 in is 50.00625: nearer, and of the other system
    { pin: '12.5 mm', system: 'iso', nominal: '12.5 mm' },
    { pin: '.5002 in', system: 'iso', nominal: '1/2 in' },
    { pin: '.5002 in', system: 'ansi', nominal: '1/2 in' },
    { pin: '.4998 in', system: 'ansi', nominal: '1/2 in' },
    { pin: '.4372 in', system: 'ansi', nominal: '7/16 in' },
    { pin: '.4340 in', system: 'ansi', nominal: '7/16 in' }, // a bolt's shank is up to some thou under
    { pin: '12.000 mm', system: 'ansi', nominal: '12 mm' },
    { pin: '11.98 mm', system: 'ansi', nominal: '12 mm' },
    // Usual sizes come before odd ones, whatever their system: 25.4 is .1 under 25.5 and an inch to the last digit.
    { pin: '25.4 mm', system: 'iso', nominal: '1 in' },
    { pin: '25.39 mm', system: 'iso', nominal: '1 in' },
    { pin: '9.525 mm', system: 'iso', nominal: '3/8 in' },
    { pin: '9.51 mm', system: 'iso', nominal: '3/8 in' },
    { pin: '12.53 mm', system: 'iso', nominal: '12.5 mm' },
    { pin: '19.04 mm', system: 'iso', nominal: '3/4 in' }, // .04 over a 19 is no dowel, .01 under a 3/4 is wear
    { pin: '15.87 mm', system: 'iso', nominal: '5/8 in' },
    { pin: '15.92 mm', system: 'iso', nominal: '16 mm' },
    { pin: '25.00 mm', system: 'ansi', nominal: '25 mm' }, // 63/64 in is 25.003
    { pin: '.7480 in', system: 'ansi', nominal: '3/4 in' }, // worn by .002, though 19 mm is .74803
    { pin: '50.011 mm', system: 'iso', nominal: '50 mm' },
  ] as const)('$pin by $system is a $nominal', ({ pin, system, nominal }) => {
    expect(sameLength(nominalNear(lengthOf(pin), system), lengthOf(nominal))).toBe(true);
  });

  test('a pin that is near no preferred size was made to its own: 30.253 is .253 over 30 and .09 over 1-3/16', () => {
    expect(sameLength(nominalNear(mm('30.253'), 'iso'), mm('30.253'))).toBe(true);
  });

  test('it is never further away than .15 mm, nor below the pin by more than .04', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 90_000 }),
        fc.constantFrom('iso', 'ansi'),
        (microns, system) => {
          const size = mm(String(microns / 1000));
          const near = nominalNear(size, system);
          const over = microns / 1000 - Number(exactDecimalText(near, 'mm'));
          expect(over).toBeLessThanOrEqual(0.0401);
          expect(over).toBeGreaterThanOrEqual(-0.1525); // .006 in
        },
      ),
    );
  });
});

test('typed as a nominal .5002 is a 1/2 dowel; .501 and 30.2 are what was meant', () => {
  const typed = (size: string) => exactDecimalText(nominalTyped(lengthOf(size)), 'mm');
  expect(typed('.5002 in')).toBe('12.7');
  expect(typed('.501 in')).toBe('12.7254');
  expect(typed('30.2 mm')).toBe('30.2');
  expect(typed('8.012 mm')).toBe('8');
  // m6, ISO 286-2: over 10 to 18 +7 to +18 µm, over 18 to 30 +8 to +21, over 30 to 50 +9 to +25
  expect(typed('12.018 mm')).toBe('12');
  expect(typed('30.021 mm')).toBe('30');
  expect(typed('50.011 mm')).toBe('50');
  expect(typed('1.0002 in')).toBe('25.4');
  // An odd size that has a name is that one: 1-31/32, and 25.5 mm
  expect(typed('1-31/32 in')).toBe('50.00625');
  expect(typed('25.5 mm')).toBe('25.5');
  expect(typed('.3745 in')).toBe('9.5123');
  expect(typed('.4998 in')).toBe('12.69492');
});

describe('a joint’s limits don’t change over a thousandth of a millimetre of pin', () => {
  const iso = (pin: string): HoleAndPinQuestion => ({
    bore: part('30.075 mm'),
    pin: part(pin),
    joint: 'turns-under-load',
    fitSystem: 'iso',
  });

  // H8/f7 over 18 to 30: 33 + 41 = 74 µm at most. Over 30 to 50 it would be 39 + 50 = 89.
  test('30.000 and 30.001 mm: both 74 µm at most, H8/f7 at 30', () => {
    const most = ['29.999', '30.000', '30.001', '30.010'].map((pin) => {
      const { limits } = holeAndPin(iso(`${pin} mm`));
      return limits.upper && exactDecimalText(limits.upper, 'mm');
    });
    expect(most).toEqual(['0.074', '0.074', '0.074', '0.074']);
  });

  test('the nominal can be said, and then it stands', () => {
    const { limits, nominal } = holeAndPin({ ...iso('30.000 mm'), nominal: mm('32') });
    expect(limits.upper && exactDecimalText(limits.upper, 'mm')).toBe('0.089');
    expect(nominal.from).toBe('given');
  });

  test('of a bolt it is the thread’s own size', () => {
    const { nominal } = holeAndPin({ ...iso('10.96 mm'), pinThread: '7/16-20 UNF', joint: 'located' });
    expect(nominal.from).toBe('thread');
    expect(sameLength(nominal.size, lengthOf('7/16 in'))).toBe(true);
  });

  test('common practice has no step over a half either: .5002 runs as .500', () => {
    // turns, to 1/2: .0010 to .0030; the next row would be .0015 to .0040
    const upper = (size: string) => exactDecimalText(jointLimits('turns', lengthOf(size)).upper, 'in');
    expect(['.4995 in', '.5000 in', '.5002 in', '.5010 in'].map(upper)).toEqual([
      '0.003',
      '0.003',
      '0.003',
      '0.003',
    ]);
    expect(upper('33/64 in')).toBe('0.004');
  });
});

describe('a bushing', () => {
  const metal = (id: MaterialId) => {
    const found = materialNamed(id);
    if (!found) throw new Error(id);
    return found;
  };
  const q = (pin: string, more: Partial<BushingQuestion> = {}): BushingQuestion => ({
    bore: part('31 mm'),
    pin: part(pin),
    insideClass: 'H8/f7',
    pressClass: 'H7/r6',
    part: metal('low-carbon-steel'),
    bushing: metal('bearing-bronze'),
    finish: 'usual',
    condition: 'plain',
    cold: 'freezer',
    shopCelsius: 20,
    step: mm('.01'),
    ...more,
  });
  const solved = (question: BushingQuestion) => {
    const answer = bushing(question);
    if (!answer.ok) throw new Error(answer.refusal.code);
    return answer.value;
  };

  test('runs as H8/f7 at 30 on a pin of 30.000 and of 30.001', () => {
    for (const pin of ['30.000', '30.001']) {
      const { insideFit, nominal } = solved(q(`${pin} mm`));
      expect(exactDecimalText(insideFit.clearance.upper, 'mm')).toBe('0.074');
      expect(exactDecimalText(nominal.size, 'mm')).toBe('30');
    }
  });

  test('is pressed by the class at 30 into a hole reamed to 30.001, whatever was planned', () => {
    // H7/r6 over 24 to 30: r6 +28 to +41, hole 0 to +21: greatest 41 µm; over 30 to 50: r6 +34 to +50
    const { pressFit } = solved(
      q('20 mm', { bore: part('29.8 mm'), reamTo: mm('29.9'), reamed: part('30.001 mm') }),
    );
    expect(exactDecimalText(pressFit.clearance.lower, 'mm')).toBe('-0.041');
  });
});

test('it is said in one line, with the decimal beside the fraction', () => {
  expect(nominalName(lengthOf('1/2 in'), 'in')).toBe('1/2 in (.500)');
  expect(nominalName(mm('30'), 'mm')).toBe('30 mm');
  // A shop reads its own unit first: 1/2 · 25.4 = 12.7 mm, 12 / 25.4 = .4724 in.
  expect(nominalName(lengthOf('1/2 in'), 'mm')).toBe('12.70 mm (1/2 in)');
  expect(nominalName(mm('12'), 'in')).toBe('.4724 in (12 mm)');
  expect(sayNominal({ size: lengthOf('7/16 in'), from: 'nearest' }, 'in')).toBe(
    'Limits for a nominal of 7/16 in (.4375), the nearest to the pin.',
  );
  expect(sayNominal({ size: mm('30'), from: 'thread' }, 'mm')).toBe(
    'Limits for a nominal of 30 mm, the bolt’s own.',
  );
});
