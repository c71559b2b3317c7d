import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readable } from '../../../src/engine/reading/check-offer.ts';
import { checkState, goResult, type CheckBy, type CheckGo } from '../../../src/engine/reading/check.ts';
import { lengthOf, sameLength, toText } from '../../../src/engine/length/length.ts';
import { usualTools, type FeatureKind } from '../../../src/engine/reading/measuring-tool.ts';
import type { Reading } from '../../../src/engine/reading/reading.ts';
import {
  quantityOf,
  sayCheckSettler,
  sayCheckState,
  sayGo,
  sayHowMany,
  sayWanted,
} from '../../../src/engine/reading/say-check.ts';
import { usualChecks } from '../../../src/engine/job/tables/usual-checks.ts';
import type { Limits } from '../../../src/engine/reading/verdict.ts';

function toolNamed(id: string) {
  const tool = usualTools.find((one) => one.id === id);
  if (!tool) throw new Error(`no tool ${id}`);
  return tool;
}

const read = (size: string, more: Partial<Reading> = {}): Reading => ({
  exact: lengthOf(size),
  tool: toolNamed('test-indicator'),
  zeroChecked: false,
  ...more,
});
const go = (...sizes: readonly string[]): CheckGo => ({ readings: sizes.map((size) => read(size)) });
const limits = (lower?: string, upper?: string): Limits => ({
  source: 'test',
  ...(lower !== undefined && { lower: lengthOf(lower) }),
  ...(upper !== undefined && { upper: lengthOf(upper) }),
});
const float = limits('.008 in', '.012 in');
const judge = (by: FeatureKind, wanted: Limits, one: CheckGo) => goResult({ by, limits: wanted, go: one });
const state = (by: CheckBy, wanted: Limits, ...goes: readonly CheckGo[]) =>
  checkState({ by, limits: wanted, goes });

describe('a float wanted from .008 to .012, read with an indicator good to ± .0002', () => {
  // One reading: u² = (.0002)²/3 + (.0001)² (usual repeatability), u = .000153; U = 1.96 · .000153 = .0003.
  test.each([
    { reads: '.0090 in', found: 'good' },
    { reads: '.0083 in', found: 'good' }, // .0083 − .0003 = .0080, to a hair inside
    { reads: '.0081 in', found: 'too-close' },
    { reads: '.0079 in', found: 'too-close' },
    { reads: '.0076 in', found: 'no-good' },
    { reads: '.0121 in', found: 'too-close' },
    { reads: '.0124 in', found: 'no-good' },
  ])('is $found at $reads', ({ reads, found }) => {
    expect(state('gap', float, go(reads)).found).toBe(found);
  });

  test('says which way it fails and by how much past the limit', () => {
    const result = judge('gap', float, go('.0040 in'));
    expect(result.kind === 'judged' && result.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    // .008 − .004 = .004
    expect(
      result.kind === 'judged' &&
        result.verdict.kind === 'no-good' &&
        sameLength(result.verdict.by, lengthOf('.004 in')),
    ).toBe(true);
  });

  test('counts with the mean of its readings at one place', () => {
    const atTop = ['.0098 in', '.0100 in', '.0105 in'].map((size) => read(size, { place: 'top' }));
    const result = judge('gap', float, { readings: atTop });
    // (.0098 + .0100 + .0105) / 3 = .0101
    expect(result.kind === 'judged' && sameLength(result.value, lengthOf('.0101 in'))).toBe(true);
  });

  test('counts with each reading for itself where nobody said where they were taken and they differ by more than scatter', () => {
    // s of .0075 and .0093 is .0013, usual .0001: .0075 ± .0003 fails alone, their mean .0084 would have been inside.
    const result = judge('gap', float, go('.0075 in', '.0093 in'));
    expect(result).toMatchObject({ kind: 'judged', verdict: { kind: 'no-good', way: 'under' } });
    expect(result.kind === 'judged' && sameLength(result.value, lengthOf('.0075 in'))).toBe(true);
  });

  test('can be proved by an indicator good to ± .0002 and not by inside jaws good to ± .0018', () => {
    const byJaws = { readings: [read('.010 in', { tool: toolNamed('digital-caliper-inside') })] };
    expect(judge('gap', float, go('.010 in'))).toMatchObject({ kind: 'judged', provable: true });
    expect(judge('gap', float, byJaws)).toMatchObject({ kind: 'judged', provable: false });
    expect(state('gap', float, byJaws).found).toBe('too-close');
  });
});

describe('a check with one limit', () => {
  test('of runout is good as far below its most as you like', () => {
    expect(state('runout', limits(undefined, '.010 in'), go('0 in')).found).toBe('good');
    expect(state('runout', limits(undefined, '.010 in'), go('.011 in')).found).toBe('no-good');
  });

  test('of a clearance is good as far above its least as you like', () => {
    expect(state('gap', limits('.200 in'), go('3 in')).found).toBe('good');
    expect(state('gap', limits('.200 in'), go('.190 in')).found).toBe('no-good');
  });
});

describe('a bore read at several places', () => {
  const bore = limits('.5000 in', '.5010 in');
  const places = (top: string, bottom: string): CheckGo => ({
    readings: [
      read(top, { place: 'top', tool: toolNamed('dial-bore-gauge') }),
      read(bottom, { place: 'bottom', tool: toolNamed('dial-bore-gauge') }),
    ],
  });

  test('fails by its narrowest place although the widest is good', () => {
    const result = judge('bore', bore, places('.5005 in', '.4990 in'));
    expect(result).toMatchObject({ kind: 'judged', verdict: { kind: 'no-good', way: 'under' } });
    expect(result.kind === 'judged' && toText(result.value)).toBe(toText(lengthOf('.4990 in')));
  });

  test('fails by its widest place although the narrowest is good', () => {
    const result = judge('bore', bore, places('.5005 in', '.5020 in'));
    expect(result).toMatchObject({ kind: 'judged', verdict: { kind: 'no-good', way: 'over' } });
    expect(result.kind === 'judged' && toText(result.value)).toBe(toText(lengthOf('.5020 in')));
  });

  test('is too close by its narrowest place: that is the figure shown', () => {
    const result = judge('bore', bore, places('.5005 in', '.5001 in'));
    expect(result).toMatchObject({ kind: 'judged', verdict: { kind: 'too-close', near: 'lower' } });
    expect(result.kind === 'judged' && toText(result.value)).toBe(toText(lengthOf('.5001 in')));
  });
});

describe('a bore read with two tools, limits .5005 to .5040', () => {
  const wanted = limits('.5005 in', '.5040 in');
  const gauge = toolNamed('dial-bore-gauge');
  // ±1.96·√(.0004² + .0018²/3) = ±.0022
  const caliper = toolNamed('digital-caliper-inside');

  test('is not good by the gauge on top alone where the caliper’s place below may be .4990', () => {
    const readings = [
      read('.5010 in', { place: 'top', tool: gauge }),
      read('.5012 in', { place: 'bottom', tool: caliper }),
    ];
    expect(judge('bore', wanted, { readings })).toMatchObject({
      verdict: { kind: 'too-close', near: 'lower' },
    });
  });

  test('is no good by a place that surely is past the limit, beside one that only may be further', () => {
    // top .5047 ± .0004 is past .5040; bottom .5030 ± .0022 may be .5052, and may be inside.
    const readings = [
      read('.5030 in', { place: 'bottom', tool: caliper }),
      read('.5047 in', { place: 'top', tool: gauge }),
    ];
    const result = judge('bore', wanted, { readings });
    expect(result).toMatchObject({ verdict: { kind: 'no-good', way: 'over' } });
    expect(result.kind === 'judged' && sameLength(result.value, lengthOf('.5047 in'))).toBe(true);
  });

  test.each(['.5015 in', '.5030 in'])(
    'of one place that contradict each other, .4980 and %s, is nothing until one stands',
    (size) => {
      for (const one of [wanted, limits('.4 in', '.6 in'), limits('.4 in'), limits('.51 in')]) {
        const readings = [
          read('.4980 in', { place: 'top', tool: caliper }),
          read(size, { place: 'top', tool: gauge }),
        ];
        expect(judge('bore', one, { readings })).toMatchObject({
          verdict: { kind: 'too-close', doubt: true },
        });
        expect(state('bore', one, { readings }).found).toBe('too-close');
      }
    },
  );
});

describe('goes at a check', () => {
  test('a check without a go is not done', () => {
    expect(state('gap', float)).toMatchObject({ found: 'not-done', last: { kind: 'nothing-yet' } });
    expect(state('gap', float, go())).not.toHaveProperty('wants');
  });

  test('the last one counts: a failed check that is taken again and holds is good', () => {
    const taken = state('gap', float, go('.004 in'), go('.010 in'));
    expect(taken.found).toBe('good');
    expect(taken.goes.map((one) => one.kind === 'judged' && one.verdict.kind)).toEqual(['no-good', 'good']);
  });

  test('a good check that is to be taken again is not done until it is', () => {
    expect(state('gap', float, go('.010 in'), go())).toMatchObject({ found: 'not-done', wants: 'retake' });
  });

  test('readings without limits prove nothing, and limits are wanted', () => {
    expect(state('gap', limits(), go('.010 in'))).toMatchObject({ found: 'not-done', wants: 'limits' });
  });

  test('by eye it holds, fails, or was not looked at; limits and readings say nothing', () => {
    expect(state('by-eye', limits(), { readings: [], seen: 'holds' }).found).toBe('good');
    expect(state('by-eye', limits(), { readings: [], seen: 'fails' }).found).toBe('no-good');
    expect(state('by-eye', limits(), go('.010 in')).found).toBe('not-done');
  });

  test('wider limits never turn good into anything else (seed 20261125)', () => {
    const hundredths = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(
        hundredths,
        hundredths,
        hundredths,
        fc.nat(200),
        fc.nat(200),
        (value, a, b, below, above) => {
          const [least, most] = [Math.min(a, b), Math.max(a, b)];
          const at = (n: number) => `${n}/64 mm`;
          const one = { readings: [read(at(value))] };
          const narrow = state('gap', limits(at(least), at(most)), one).found;
          const wide = state('gap', limits(at(Math.max(0, least - below)), at(most + above)), one).found;
          expect(narrow !== 'good' || wide === 'good').toBe(true);
        },
      ),
      { seed: 20261125 },
    );
  });
});

describe('limits for what a tool can read', () => {
  test('leave out a least of zero or less: play that is read is never below zero', () => {
    expect(readable(limits('0 in', '.002 in'))).not.toHaveProperty('lower');
    expect(readable(limits('-.001 in', '.002 in'))).not.toHaveProperty('lower');
    expect(readable(limits('.001 in', '.002 in'))).toHaveProperty('lower');
  });
});

describe('the sentence of a check', () => {
  const said = { name: 'Float', by: 'gap', limits: float, unit: 'in' } as const;
  test.each([
    { goes: [] as CheckGo[], words: 'Not done yet; want .008 to .012.' },
    { goes: [go('.010 in')], words: 'Good: float .010, want .008 to .012.' },
    { goes: [go('.004 in')], words: 'Too tight: float .004, want .008 to .012.' },
    { goes: [go('.020 in')], words: 'Too loose: float .020, want .008 to .012.' },
    {
      goes: [go('.0081 in')],
      words: 'Too close to call: float .0081 ±.00030, want .008 to .012. Only .0001 inside.',
    },
    {
      goes: [go('.004 in'), go()],
      words: 'To be taken again; want .008 to .012.',
    },
  ])('$words', ({ goes, words }) => {
    const now = state('gap', float, ...goes);
    expect(sayCheckState(now, said)).toBe(words);
  });

  test('says of readings without limits what they read and what is missing', () => {
    const free = limits();
    const now = state('gap', free, go('.010 in'));
    expect(sayCheckState(now, { ...said, limits: free })).toBe(
      'Float .010 ±.00030; give a lower or an upper limit, and it is judged.',
    );
    expect(sayWanted({ by: 'gap', limits: free, unit: 'in' })).toBe('no limits yet');
  });

  test('says what was seen by eye', () => {
    const eye = { ...said, by: 'by-eye' } as const;
    expect(sayGo({ kind: 'seen', holds: true }, eye)).toBe('Good, seen by eye.');
    expect(sayGo({ kind: 'seen', holds: false }, eye)).toBe('No good, seen by eye.');
    expect(sayGo({ kind: 'nothing-yet' }, eye)).toBe('Nothing read.');
    expect(sayWanted(eye)).toBe('by eye');
  });

  test('names the unit of millimetres and one limit alone', () => {
    expect(sayWanted({ by: 'gap', limits: limits('5.0 mm'), unit: 'mm' })).toBe('want 5.00 mm or more');
    expect(sayWanted({ by: 'runout', limits: limits(undefined, '0.25 mm'), unit: 'mm' })).toBe(
      'want 0.25 mm or less',
    );
  });

  test.each([
    { name: 'Rock at the end of the arm', by: 'gap', quantity: 'rock' },
    { name: 'Bracket’s side play', by: 'gap', quantity: 'side play' },
    { name: 'End play of the bearings', by: 'gap', quantity: 'end play' },
    { name: 'Wheel rim, side to side', by: 'runout', quantity: 'runout' },
    { name: 'Stands proud of the face', by: 'depth', quantity: 'projection' },
    { name: 'Free above the ring', by: 'depth', quantity: 'clearance' },
    { name: 'Bore of the bushing, pressed in', by: 'bore', quantity: 'bore' },
    { name: 'Lever to grip', by: 'gap', quantity: 'gap' },
    { name: 'Floating', by: 'by-eye', quantity: '' },
  ] as const)('speaks of "$name" as $quantity', ({ name, by, quantity }) => {
    expect(quantityOf({ name, by })).toBe(quantity);
  });

  test('sums up what is still to do', () => {
    expect(sayHowMany(['good'])).toBe('The check is good.');
    expect(sayHowMany(['good', 'good'])).toBe('All 2 checks are good.');
    expect(sayHowMany(['not-done'])).toBe('1 check to do.');
    // Good as far as they were made is not finished.
    expect(sayHowMany(['good'], 12)).toBe('The check is good; 12 worksheets have none yet.');
    expect(sayHowMany(['good', 'not-done'], 1)).toBe('1 of 2 checks still to do; 1 worksheet has none yet.');
    expect(sayHowMany([], 12)).toBe('12 worksheets have no check yet.');
    expect(sayHowMany([], 1)).toBe('1 worksheet has no check yet.');
    expect(sayHowMany(['good', 'not-done', 'too-close'])).toBe('2 of 3 checks still to do.');
  });

  test('a check that failed was done: it is summed up as failed, not as still to do', () => {
    expect(sayHowMany(['no-good'])).toBe('The check failed.');
    expect(sayHowMany(['no-good', 'no-good'])).toBe('All 2 checks failed.');
    expect(sayHowMany(['good', 'no-good', 'good'])).toBe('1 of 3 checks failed.');
    expect(sayHowMany(['good', 'no-good', 'too-close'])).toBe('1 of 3 checks failed, 1 still to do.');
  });

  test('says that no tool settles a size at its very limit, and what would help', () => {
    expect(sayCheckSettler(undefined, 'in')).toMatch(/Move the size away from the limit/);
    const tool = toolNamed('test-indicator');
    const leg = { kind: 'gap', size: lengthOf('.0085 in'), coefficient: 1 } as const;
    expect(
      sayCheckSettler({ tools: [{ tool, leg }], readings: 1, halfWidth: lengthOf('.0003 in') }, 'in'),
    ).toBe('The test indicator with 1 reading would settle it, to ±.00030.');
  });
});

describe('the list of usual checks', () => {
  test.each(usualChecks.map((check) => ({ check, name: check.name })))(
    '$name says how it is done, and marks its limits as what they are',
    ({ check }) => {
      expect(check.how).toMatch(/\.$/);
      for (const { lower, upper, source } of [check.limits.in, check.limits.mm]) {
        // No paper at hand states them: a limit says so, and that the manual comes first.
        expect(source).toBe(
          lower || upper
            ? 'common practice, no source; the service manual rules'
            : check.by === 'by-eye'
              ? 'by eye'
              : 'the service manual states it',
        );
      }
      expect(check.by === 'by-eye' && (check.limits.in.lower ?? check.limits.in.upper)).toBeFalsy();
    },
  );

  test('has each check once', () => {
    expect(new Set(usualChecks.map(({ id }) => id)).size).toBe(usualChecks.length);
    expect(new Set(usualChecks.map(({ name }) => name)).size).toBe(usualChecks.length);
  });

  test('has what the trade asks of brake and steering: runout, both stops, hoses, play and free turning', () => {
    const ids = usualChecks.map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'disc-runout',
        'left-stop',
        'right-stop',
        'hose-lock',
        'hose-travel',
        'head-play',
        'head-free',
        'brake-hot',
        'cotter-pin',
        'chain-line',
      ]),
    );
  });
});
