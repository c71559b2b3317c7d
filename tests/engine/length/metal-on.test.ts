import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  decimalText,
  isLess,
  isMore,
  lengthOf,
  roundToStep,
  sameLength,
  type Length,
} from '../../../src/engine/length/length.ts';
import {
  cutTarget,
  roundMetalOn,
  sizeStep,
  type CutKind,
  type Dial,
} from '../../../src/engine/length/metal-on.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length) => decimalText(length, 'in', 5);
const radius: Dial = { reads: 'radius', graduation: inch('.001') };
const diameter: Dial = { reads: 'diameter', graduation: inch('.001') };

const kinds: readonly CutKind[] = [
  'outside',
  'length',
  'bore',
  'recess-depth',
  'slot-depth',
  'slot-width',
  'tap-drill',
];

describe('the step a dial gives', () => {
  test.each([
    ['outside', '0.00200'],
    ['bore', '0.00200'],
    ['tap-drill', '0.00200'],
    ['length', '0.00100'],
    ['recess-depth', '0.00100'],
    ['slot-depth', '0.00100'],
    ['slot-width', '0.00100'],
  ] as const)('that reads radius in .001 is %s %s', (kind, step) => {
    expect(shown(sizeStep(kind, radius))).toBe(step);
  });

  test('that reads diameter is its graduation whatever is cut', () => {
    expect(kinds.every((kind) => sameLength(sizeStep(kind, diameter), inch('.001')))).toBe(true);
  });
});

describe('rounding metal-on', () => {
  test.each([
    ['outside', '1.4974', '1.49800'],
    ['length', '.3772', '0.37800'],
    ['bore', '.5009', '0.50000'],
    ['recess-depth', '.0629', '0.06200'],
    ['slot-depth', '.0629', '0.06200'],
    ['slot-width', '.2509', '0.25000'],
    ['tap-drill', '.3319', '0.33100'],
  ] as const)('leaves a %s of %s standing at %s', (kind, size, rounded) => {
    expect(shown(roundMetalOn(inch(size), kind, inch('.001')))).toBe(rounded);
  });

  test('leaves a size on a step alone', () => {
    expect(kinds.map((kind) => shown(roundMetalOn(inch('.377'), kind, inch('.001'))))).toEqual(
      kinds.map(() => '0.37700'),
    );
  });
});

describe('the target of a cut', () => {
  const cut = (kind: CutKind, present: string, aim: string, lower: string, upper: string, step = '.001') => {
    const result = cutTarget({
      aim: inch(aim),
      lower: inch(lower),
      upper: inch(upper),
      present: inch(present),
      kind,
      step: inch(step),
    });
    return result.ok
      ? { target: shown(result.value.target), take: shown(result.value.take) }
      : result.refusal.code;
  };

  test('takes what lies between the present size and the rounded target, not a rounded amount', () => {
    // .38535 − .378 = .00735
    expect(cut('length', '.38535', '.3772', '.376', '.379')).toEqual({ target: '0.37800', take: '0.00735' });
  });

  test('of an outside on a radius dial lands on even thous', () => {
    expect(cut('outside', '1.625', '1.4971', '1.4965', '1.4985', '.002')).toEqual({
      target: '1.49800',
      take: '0.12700',
    });
  });

  test('of a bore stays below its aim', () => {
    expect(cut('bore', '.4375', '.4997', '.4985', '.5002')).toEqual({ target: '0.49900', take: '0.06150' });
  });

  test('is the step inside the limits that leaves most metal when the rounded aim is outside them', () => {
    // aim .3776 rounds up to .378, past .3778; the largest step inside is .377
    expect(cut('length', '.385', '.3776', '.3765', '.3778')).toEqual({ target: '0.37700', take: '0.00800' });
    // aim .5003 rounds down to .500, short of .5002; the smallest step inside is .501
    expect(cut('bore', '.490', '.5003', '.5002', '.5012')).toEqual({ target: '0.50100', take: '0.01100' });
  });

  test('is refused when no step lies inside the limits', () => {
    expect(cut('length', '.385', '.3775', '.3772', '.3778')).toBe('no-step-in-limits');
  });

  test('takes a limit that is a step as inside', () => {
    expect(cut('length', '.385', '.3775', '.3772', '.378')).toEqual({ target: '0.37800', take: '0.00700' });
  });

  test('is refused when the metal is gone already: an outside under its least, a bore over its most', () => {
    expect(cut('outside', '.960', '.970', '.968', '.972')).toBe('metal-gone');
    expect(cut('bore', '.975', '.970', '.968', '.972')).toBe('metal-gone');
  });

  test('takes nothing off a part that is past the target but inside the limits', () => {
    expect(cut('outside', '.9690', '.970', '.968', '.972')).toEqual({ target: '0.96900', take: '0.00000' });
  });

  test('always lies inside the limits and on a step', () => {
    const tenThous = (least: number, most: number) =>
      fc.integer({ min: least, max: most }).map((n) => lengthOf(`${n}/10000 in`));
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        tenThous(3000, 3050),
        tenThous(3000, 3050),
        tenThous(3000, 3050),
        fc.constantFrom('.0005', '.001', '.002'),
        (kind, aim, a, b, graduation) => {
          const [lower, upper] = isLess(a, b) ? [a, b] : [b, a];
          const step = inch(graduation);
          const present = inch(kind === 'outside' || kind === 'length' ? '.4' : '.2');
          const result = cutTarget({ aim, lower, upper, present, kind, step });
          const isNoneInside = isLess(roundToStep(upper, step, 'down'), lower);
          const target = result.ok ? result.value.target : undefined;
          expect(target === undefined).toBe(isNoneInside);
          const rounded = roundMetalOn(target ?? upper, kind, step);
          expect(target === undefined || sameLength(rounded, target)).toBe(true);
          expect(target !== undefined && (isLess(target, lower) || isMore(target, upper))).toBe(false);
        },
      ),
    );
  });
});
