import { describe, expect, test } from 'vitest';
import { ansiClasses } from '../../../src/engine/fit/fits-ansi.ts';
import { fitLimits, type FitLimits } from '../../../src/engine/fit/fits.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import {
  limitFigure,
  sayClearance,
  sayFitClass,
  sayFitRefusal,
  sayLimits,
} from '../../../src/engine/fit/say-fit.ts';
import { usualIsoFits } from '../../../src/engine/fit/tables/joint-classes.ts';

function fitOf(fitClass: string, nominal: string): FitLimits {
  const fit = fitLimits({ fitClass, nominal: lengthOf(nominal) });
  if (!fit.ok) throw new Error(fit.refusal.code);
  return fit.value;
}

function refused(fitClass: string, nominal: string, unit: 'in' | 'mm' = 'in'): string {
  const fit = fitLimits({ fitClass, nominal: lengthOf(nominal) });
  if (fit.ok) throw new Error('not refused');
  return sayFitRefusal(fit.refusal, unit);
}

describe('the clearance of a class', () => {
  test.each([
    { fitClass: 'RC5', nominal: '1/2 in', unit: 'in', words: '.0012 to .0029 of clearance' },
    { fitClass: 'RC2', nominal: '5/8 in', unit: 'in', words: '.00025 to .00095 of clearance' },
    { fitClass: 'LC3', nominal: '1/2 in', unit: 'in', words: '0 to .0017 of clearance' },
    { fitClass: 'LT2', nominal: '3/4 in', unit: 'in', words: '.0004 of interference to .0016 of clearance' },
    { fitClass: 'FN2', nominal: '1 in', unit: 'in', words: '.0006 to .0019 of interference' },
    { fitClass: 'H8/f7', nominal: '25 mm', unit: 'mm', words: '0.020 to 0.074 mm of clearance' },
    {
      fitClass: 'N7/h6',
      nominal: '40 mm',
      unit: 'mm',
      words: '0.033 mm of interference to 0.008 mm of clearance',
    },
  ] as const)('$fitClass at $nominal leaves $words', ({ fitClass, nominal, unit, words }) => {
    expect(sayClearance(fitOf(fitClass, nominal), unit)).toBe(words);
  });
});

describe('limits keep the last place that the standard prints', () => {
  test.each([
    { size: '.62445 in', unit: 'in', shown: '.62445' },
    { size: '-.00025 in', unit: 'in', shown: '−.00025' },
    { size: '.6254 in', unit: 'in', shown: '.6254' },
    { size: '2.00005 in', unit: 'in', shown: '2.00005' },
    // ISO limits have no end in inches: four places, half to even. 25.021 mm = .985079 in
    { size: '25.021 mm', unit: 'in', shown: '.9851' },
    { size: '10.0075 mm', unit: 'mm', shown: '10.0075' },
    { size: '25.021 mm', unit: 'mm', shown: '25.021' },
    { size: '25.02 mm', unit: 'mm', shown: '25.020' },
    { size: '25 mm', unit: 'mm', shown: '25.000' },
    { size: '1/2 in', unit: 'in', shown: '.5000' },
    { size: '0 in', unit: 'in', shown: '0' },
  ] as const)('$size is shown as $shown', ({ size, unit, shown }) => {
    expect(limitFigure(lengthOf(size), unit)).toBe(shown);
  });

  test('a pair of limits reads from the smaller to the larger', () => {
    expect(sayLimits(fitOf('RC2', '5/8 in').pin, 'in')).toBe('.62445 to .62475');
  });
});

describe('what a class is for', () => {
  test.each(ansiClasses)('%s has words of its own', (fitClass) => {
    expect(sayFitClass({ fitClass, system: 'ansi', kind: 'clearance' })).not.toBe('always leaves room');
  });

  test.each(usualIsoFits)('%s has words of its own', (fitClass) => {
    const words = sayFitClass({ fitClass, system: 'iso', kind: 'clearance' });
    expect(words).not.toBe('always leaves room');
  });

  test('on a basic hole the pin’s letter speaks, on a basic pin the hole’s', () => {
    expect(sayFitClass(fitOf('H7/g6', '25 mm'))).toContain('sliding');
    expect(sayFitClass(fitOf('G7/h6', '25 mm'))).toContain('sliding');
  });

  test.each([
    { fitClass: 'F8/g6', words: 'always leaves room' },
    { fitClass: 'K7/k6', words: 'room or grip, as the parts fall out' },
    { fitClass: 'P7/s6', words: 'always grips' },
  ])('$fitClass, on neither, $words', ({ fitClass, words }) => {
    expect(sayFitClass(fitOf(fitClass, '25 mm'))).toBe(words);
  });
});

describe('why a class gives no limits', () => {
  test('a class that is none says how classes read', () => {
    expect(refused('RC44', '1 in')).toMatch(/^RC44 is no class of these tables\. Metric ones read H7\/g6/);
  });

  test('a class that is not made at a size names it', () => {
    expect(refused('FN3', '1/2 in')).toBe('FN3 is not made at .500 in. Pick the class next to it.');
  });

  test('a size past the table says where it ends and what can be done', () => {
    expect(refused('RC5', '5 in')).toBe(
      '5.000 in is past this table, which ends at 4.730 in. Set the clearance by hand, or use the other system.',
    );
    expect(refused('H7/g6', '501 mm', 'mm')).toContain('ends at 500.00 mm');
  });

  test('no size at all asks for one', () => {
    expect(refused('H7/g6', '0 mm', 'mm')).toMatch(/^A fit needs a size above zero\./);
  });

  test('a bore that differs by more than the class says by how much', () => {
    const refusal = {
      code: 'form-eats-class',
      part: 'bore',
      form: lengthOf('.0018 in'),
      room: lengthOf('.0017 in'),
    } as const;
    expect(sayFitRefusal(refusal, 'in')).toBe(
      'The bore is .0018 in out of true, and the class leaves only .0017 in. True it up first, or take a wider class.',
    );
  });
});
