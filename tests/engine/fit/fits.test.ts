import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fitByAllowance,
  fitLimits,
  fitLimitsInchForm,
  jointClass,
  systemOf,
  type FitLimits,
} from '../../../src/engine/fit/fits.ts';
import { jointLimits, type Joint } from '../../../src/engine/fit/joint-limits.ts';
import {
  isLess,
  isMore,
  lengthOf,
  minus,
  sameLength,
  type Length,
} from '../../../src/engine/length/length.ts';
import { usualIsoFits } from '../../../src/engine/fit/tables/joint-classes.ts';

function fitOf(fitClass: string, nominal: string): FitLimits {
  const fit = fitLimits({ fitClass, nominal: lengthOf(nominal) });
  if (!fit.ok) throw new Error(fit.refusal.code);
  return fit.value;
}

const is = (length: Length, text: string) => sameLength(length, lengthOf(text));

type Row = {
  readonly what: string;
  readonly fitClass: string;
  readonly nominal: string;
  readonly hole: readonly [string, string];
  readonly pin: readonly [string, string];
  readonly clearance: readonly [string, string];
  readonly kind: FitLimits['kind'];
};

const worked: readonly Row[] = [
  {
    what: 'WE05, Shigley 9th ed. Example 7-7',
    fitClass: 'H11/c11',
    nominal: '34 mm',
    hole: ['34.000 mm', '34.160 mm'],
    pin: ['33.720 mm', '33.880 mm'],
    clearance: ['.120 mm', '.440 mm'],
    kind: 'clearance',
  },
  {
    what: 'WE08, Bhandari Example 3.2',
    fitClass: 'H7/s6',
    nominal: '20 mm',
    hole: ['20.000 mm', '20.021 mm'],
    pin: ['20.035 mm', '20.048 mm'],
    clearance: ['-.048 mm', '-.014 mm'],
    kind: 'interference',
  },
  {
    what: 'WE09, Bhandari Example 3.3',
    fitClass: 'H7/s6',
    nominal: '50 mm',
    hole: ['50.000 mm', '50.025 mm'],
    pin: ['50.043 mm', '50.059 mm'],
    clearance: ['-.059 mm', '-.018 mm'],
    kind: 'interference',
  },
  {
    what: 'WE12, ISO 286 table values IT8 33, IT7 21, f −20 µm',
    fitClass: 'H8/f7',
    nominal: '25 mm',
    hole: ['25.000 mm', '25.033 mm'],
    pin: ['24.959 mm', '24.980 mm'],
    clearance: ['.020 mm', '.074 mm'],
    kind: 'clearance',
  },
  {
    what: 'WE15, JIS B 0401 and ISO 286 h6',
    fitClass: 'N7/h6',
    nominal: '40 mm',
    hole: ['39.967 mm', '39.992 mm'],
    pin: ['39.984 mm', '40.000 mm'],
    clearance: ['-.033 mm', '.008 mm'],
    kind: 'transition',
  },
  {
    what: 'WE16, Mott 4th ed. Example Problem 13-1',
    fitClass: 'RC5',
    nominal: '2.0000 in',
    hole: ['2.0000 in', '2.0018 in'],
    pin: ['1.9963 in', '1.9975 in'],
    clearance: ['.0025 in', '.0055 in'],
    kind: 'clearance',
  },
  {
    what: 'WE17, Machinery’s Handbook 27 Table 11',
    fitClass: 'FN2',
    nominal: '1.0000 in',
    hole: ['1.0000 in', '1.0008 in'],
    pin: ['1.0014 in', '1.0019 in'],
    clearance: ['-.0019 in', '-.0006 in'],
    kind: 'interference',
  },
  {
    what: 'WE19, Machinery’s Handbook 31 Table 10',
    fitClass: 'LT2',
    nominal: '.7500 in',
    hole: ['.7500 in', '.7512 in'],
    pin: ['.7496 in', '.7504 in'],
    clearance: ['-.0004 in', '.0016 in'],
    kind: 'transition',
  },
  {
    what: 'WE20, Machinery’s Handbook 31 Table 8a',
    fitClass: 'RC2',
    nominal: '.6250 in',
    hole: ['.6250 in', '.6254 in'],
    pin: ['.62445 in', '.62475 in'],
    clearance: ['.00025 in', '.00095 in'],
    kind: 'clearance',
  },
];

test.each(worked)('$nominal $fitClass: hole $hole, pin $pin ($what)', (row) => {
  const fit = fitOf(row.fitClass, row.nominal);
  expect(is(fit.hole.lower, row.hole[0])).toBe(true);
  expect(is(fit.hole.upper, row.hole[1])).toBe(true);
  expect(is(fit.pin.lower, row.pin[0])).toBe(true);
  expect(is(fit.pin.upper, row.pin[1])).toBe(true);
  expect(is(fit.clearance.lower, row.clearance[0])).toBe(true);
  expect(is(fit.clearance.upper, row.clearance[1])).toBe(true);
  expect(fit.kind).toBe(row.kind);
});

describe('fits without a class', () => {
  test('WE03: 1.500 in, allowance .003, tolerances .002: hole 1.503 to 1.505, shaft 1.498 to 1.500, clearance .003 to .007', () => {
    const fit = fitByAllowance({
      basic: lengthOf('1.500 in'),
      allowance: lengthOf('.003 in'),
      holeTolerance: lengthOf('.002 in'),
      pinTolerance: lengthOf('.002 in'),
    });
    expect(is(fit.hole.lower, '1.503 in') && is(fit.hole.upper, '1.505 in')).toBe(true);
    expect(is(fit.pin.lower, '1.498 in') && is(fit.pin.upper, '1.500 in')).toBe(true);
    expect(is(fit.clearance.lower, '.003 in') && is(fit.clearance.upper, '.007 in')).toBe(true);
    expect(fit.kind).toBe('clearance');
  });

  test('WE04: .003 in of interference on 1.500: smallest hole 1.497 in', () => {
    const fit = fitByAllowance({
      basic: lengthOf('1.500 in'),
      allowance: lengthOf('-.003 in'),
      holeTolerance: lengthOf('0 in'),
      pinTolerance: lengthOf('0 in'),
    });
    expect(is(fit.hole.lower, '1.497 in')).toBe(true);
    expect(fit.kind).toBe('interference');
  });
});

describe('the inch form of an ISO class', () => {
  test('WE06: 2 in H7/s6 is hole 2.0000 to 2.0010, shaft 2.0017 to 2.0023 (Shigley 9th ed. Example 7-8)', () => {
    const fit = fitLimitsInchForm({ fitClass: 'H7/s6', nominal: lengthOf('2 in') });
    if (!fit.ok) throw new Error(fit.refusal.code);
    const { hole, pin, source } = fit.value;
    expect(is(hole.lower, '2.0000 in') && is(hole.upper, '2.0010 in')).toBe(true);
    expect(is(pin.lower, '2.0017 in') && is(pin.upper, '2.0023 in')).toBe(true);
    expect(source).toBe('ISO 286-1, H7/s6, inch form');
  });

  test('is refused where the class is', () => {
    expect(fitLimitsInchForm({ fitClass: 'Q7/s6', nominal: lengthOf('2 in') }).ok).toBe(false);
  });
});

describe('which kind a fit is', () => {
  test('line to line at its tightest is still a clearance fit', () => {
    expect(fitOf('H7/h6', '25 mm').kind).toBe('clearance');
  });

  test('line to line at its loosest is an interference fit', () => {
    // LN1 at .71 to 1.19: hole +.5, pin +1.0 +.5 thou: greatest clearance 0
    expect(fitOf('LN1', '1 in').kind).toBe('interference');
  });
});

test.each(['H7', 'g6/H7', 'H7/g6/h6', '', 'H7g6', 'H7/x6', 'H44/g6', 'T7/h6'])(
  '%s is no class',
  (fitClass) => {
    const fit = fitLimits({ fitClass, nominal: lengthOf('25 mm') });
    expect(fit).toMatchObject({ ok: false, refusal: { code: 'no-such-class' } });
  },
);

describe('how a joint runs decides its usual class', () => {
  const joints: readonly Joint[] = ['turns-under-load', 'turns', 'slides', 'located', 'pressed'];

  test.each(joints.flatMap((joint) => (['iso', 'ansi'] as const).map((system) => ({ joint, system }))))(
    'a joint that is $joint has a class in $system that is made from 3 to 100 mm',
    ({ joint, system }) => {
      const fitClass = jointClass(joint, system);
      expect(systemOf(fitClass)).toBe(system);
      for (const nominal of ['3 mm', '10 mm', '1/2 in', '25 mm', '100 mm']) {
        const fit = fitOf(fitClass, nominal);
        expect(fit.kind).toBe(joint === 'pressed' ? 'interference' : 'clearance');
      }
    },
  );

  test('its class lies about where a one-person shop would put it', () => {
    // Both from common practice: the class and the shop's own table must overlap at 1/2 in.
    for (const joint of joints) {
      const shop = jointLimits(joint, lengthOf('1/2 in'));
      const { clearance } = fitOf(jointClass(joint, 'ansi'), '1/2 in');
      expect(isMore(clearance.lower, shop.upper) || isLess(clearance.upper, shop.lower)).toBe(false);
    }
  });
});

test('every ISO fit that is offered by name is made at 25 and 40 mm', () => {
  for (const fitClass of usualIsoFits) {
    expect(fitLimits({ fitClass, nominal: lengthOf('25 mm') }).ok).toBe(true);
    expect(fitLimits({ fitClass, nominal: lengthOf('40 mm') }).ok).toBe(true);
  }
});

test('for any class and size, the clearance is as wide as the two tolerances together', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...usualIsoFits, 'RC1', 'RC9', 'LC4', 'LT1', 'LN2', 'FN2', 'FN5'),
      fc.integer({ min: 25, max: 120_000 }),
      (fitClass, micrometres) => {
        const fit = fitLimits({ fitClass, nominal: lengthOf(`${micrometres / 1000} mm`) });
        if (!fit.ok) return;
        const { hole, pin, clearance } = fit.value;
        const both = minus(minus(hole.upper, hole.lower), minus(pin.lower, pin.upper));
        expect(sameLength(minus(clearance.upper, clearance.lower), both)).toBe(true);
      },
    ),
  );
});

test('a size is the same fit whether it is said in inches or in millimetres', () => {
  const inches = fitOf('H7/g6', '1 in');
  const millimetres = fitOf('H7/g6', '25.4 mm');
  expect(sameLength(inches.pin.lower, millimetres.pin.lower)).toBe(true);
  expect(sameLength(inches.hole.upper, millimetres.hole.upper)).toBe(true);
});
