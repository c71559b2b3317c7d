import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isLess, isMore, lengthOf, type Length } from '../../../src/engine/length/length.ts';
import { sayGood } from '../../../src/engine/worksheets/ring/say-ring.ts';
import { sayRouteReason } from '../../../src/engine/worksheets/hole-and-pin/say-route-reason.ts';
import { sayVerdict } from '../../../src/engine/reading/say-verdict.ts';
import { showAgainst, showBeside } from '../../../src/engine/length/show-limits.ts';
import { verdictOf } from '../../../src/engine/reading/verdict.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);

describe('a size beside its limits', () => {
  test.each([
    // Limits that end on a half tenth are shown whole, as ANSI B4.1 prints them: RC2, .56 to .71 in: .00025 to .00095
    { value: '.0010', lower: '.00025', upper: '.00095', shown: '.001, .00025 to .00095' },
    { value: '.0002', lower: '.00025', upper: '.00095', shown: '.0002, .00025 to .00095' },
    { value: '.010', lower: '.008', upper: '.012', shown: '.010, .008 to .012' },
    // Rounded to four places it would be the limit itself
    { value: '.01204', lower: '.008', upper: '.012', shown: '.01204, .008 to .012' },
    { value: '.0119996', lower: '.008', upper: '.012', shown: '.012, .008 to .012' },
    { value: '.0120004', lower: '.008', upper: '.012', shown: '.0120004, .008 to .012' },
    // Limits that end nowhere are rounded inwards: .4484033.. up, .4489987.. down
    { value: '.4486', lower: '.44840333', upper: '.44899877', shown: '.4486, .4485 to .4489' },
    { value: '.44841', lower: '.44840333', upper: '.44899877', shown: '.44841, .44841 to .44899' },
  ])('$value in $lower to $upper is shown as $shown', ({ value, lower, upper, shown }) => {
    const { values, ...ends } = showAgainst([inch(value)], { lower: inch(lower), upper: inch(upper) }, 'in');
    expect(`${values.join(' ')}, ${ends.lower ?? ''} to ${ends.upper ?? ''}`).toBe(shown);
  });

  test('is shown inside what it is inside of, and outside what it is outside of', () => {
    // Millionths of a millimetre, as close together as a test may put them.
    const size = fc.integer({ min: 1, max: 3000 }).map((parts) => lengthOf(`${parts / 1_000_000} mm`));
    fc.assert(
      fc.property(size, size, size, fc.constantFrom('in', 'mm'), (a, b, value, unit) => {
        const [lower, upper] = isMore(a, b) ? [b, a] : [a, b];
        const shown = showAgainst([value], { lower, upper }, unit);
        const read = (text = '') => lengthOf(`${text} ${unit}`);
        const at = read(shown.values[0]);
        expect(isLess(at, read(shown.lower))).toBe(isLess(value, lower));
        expect(isMore(at, read(shown.upper))).toBe(isMore(value, upper));
      }),
    );
  });

  test('is written as the limit it is, in whatever unit, and nothing is no plain 0 unless it is nothing', () => {
    const [least, most] = [lengthOf('13 mm'), lengthOf('13.018 mm')];
    const shown = (value: Length) => showAgainst([value], { lower: least, upper: most }, 'in').values;
    // 13/25.4 = .511811.., 13.018/25.4 = .512519..
    expect(showAgainst([], { lower: least, upper: most }, 'in')).toMatchObject({
      lower: '.5119',
      upper: '.5125',
    });
    expect([shown(least), shown(most)]).toEqual([['.5119'], ['.5125']]);
    const float = { lower: inch('0'), upper: inch('.005') };
    expect(showAgainst([inch('.00003'), inch('0')], float, 'in').values).toEqual(['.0000', '0']);
  });

  test('just under its only limit shows both apart, and by how much', () => {
    expect(showBeside(inch('.05998'), { limit: inch('.060'), is: 'least' }, 'in')).toEqual({
      value: '.05998 in',
      limit: '.060 in',
      by: '.00002 in',
    });
  });
});

describe('no sentence sets a size against a limit that reads the same', () => {
  const rc2 = { lower: inch('.00025'), upper: inch('.00095'), source: 'ANSI B4.1, RC2' };
  const said = (value: string) => {
    const sizes = { value: inch(value), halfWidth: inch('0'), limits: rc2 };
    return sayVerdict(verdictOf(sizes), { quantity: 'clearance', unit: 'in', ...sizes });
  };

  test('a verdict', () => {
    expect(said('.0010')).toBe('Too loose: clearance .001, want .00025 to .00095.');
    expect(said('.0002')).toBe('Too tight: clearance .0002, want .00025 to .00095.');
    expect(said('.00025')).toBe('Good: clearance .00025, want .00025 to .00095.');
  });

  test('a slop a hair past what the joint may have', () => {
    const reason = {
      code: 'too-loose',
      loosest: inch('.00204'),
      upper: inch('.002'),
      by: inch('.00004'),
      timesTheMost: 1.02,
    } as const;
    expect(sayRouteReason(reason, 'in')).toContain('(.00204 of .002 in)');
  });

  test('a bore to be opened, between limits rounded inwards', () => {
    const reason = {
      code: 'too-tight',
      by: inch('.001'),
      boreLower: inch('.62525'),
      boreUpper: inch('.62595'),
    } as const;
    expect(sayRouteReason(reason, 'in')).toContain('Open the bore to .6253 to .6259 in');
  });

  test('a thickness that is good up to its limit', () => {
    expect(sayGood({ lower: inch('0'), upper: inch('.06247') }, 'in')).toBe('good up to .0624');
  });
});
