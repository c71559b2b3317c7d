import { describe, expect, test } from 'vitest';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import {
  sayBlank,
  sayGood,
  sayHolding,
  sayProud,
  sayRingCut,
  sayRingDeed,
  sayRingRefusal,
  sayWhyNot,
} from '../../../../src/engine/worksheets/ring/say-ring.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const bored = {
  kind: 'bore',
  from: inch('.688'),
  to: inch('.770'),
  take: inch('.082'),
  lower: inch('.760'),
  upper: inch('.780'),
} as const;

describe('a ring is said', () => {
  test('cut by cut, with what comes off and where it is good', () => {
    expect(sayRingDeed(bored)).toBe('Bore the inside');
    expect(sayRingCut(bored, 'in')).toBe('.688 → .770, .082 off; good from .760 to .780.');
    // .688 · 25.4 = 17.4752; .770 · 25.4 = 19.558; .082 · 25.4 = 2.0828; .760 and .780: 19.304, 19.812
    expect(sayRingCut(bored, 'mm')).toBe('17.475 → 19.558, 2.083 mm off; good from 19.304 to 19.812 mm.');
    expect(sayRingDeed({ kind: 'slot-width' })).toBe('slot-width');
  });

  test('with only a most where there is no least', () => {
    expect(sayGood({ lower: inch('0'), upper: inch('.073') }, 'in')).toBe('good up to .073');
  });

  test('below, level with or proud of the face', () => {
    expect(sayProud({ proud: inch('-.020') }, 'in')).toBe('It lies .020 in below the face.');
    expect(sayProud({ proud: inch('0') }, 'in')).toBe('It stands level with the face.');
    expect(sayProud({ proud: inch('.010') }, 'in')).toBe('It stands .010 in proud of the face.');
    expect(sayProud({}, 'in')).toMatch(/depth of the recess/);
  });

  test('with the washer it comes from', () => {
    const blank = { id: 'w', name: 'Washer 5/8' };
    const said = (cuts: number) =>
      sayBlank({
        blank,
        cuts: Array.from({ length: cuts }, () => bored),
        thickness: inch('.073'),
        holding: [],
      });
    expect([0, 1, 3].map(said)).toEqual([
      'Washer 5/8 goes in as it is.',
      'Washer 5/8: one cut.',
      'Washer 5/8: 3 cuts.',
    ]);
  });

  test.each([
    ['too-small-outside', /small outside/],
    ['too-wide-inside', /hole is too wide/],
    ['too-thin', /too thin/],
    ['not-measured', /size is missing/],
  ] as const)('a washer that won’t do: %s', (why, words) => {
    expect(sayWhyNot(why)).toMatch(words);
  });

  test.each([
    ['bore-first', /Bore first/],
    ['mandrel', /on a mandrel/],
    ['face-on-mandrel', /Face it on a mandrel/],
    ['thin', /squeeze it out of round/],
  ] as const)('how it is held: %s', (holding, words) => {
    expect(sayHolding(holding)).toMatch(words);
  });

  test('refused, with its figures and what can be done', () => {
    const said = [
      { code: 'ring-no-wall', outside: inch('1.497'), inside: inch('1.505'), least: inch('.020') },
      { code: 'ring-no-depth', depth: inch('.093'), stayFree: inch('.100'), most: inch('-.007') },
      { code: 'ring-too-thin', most: inch('.040'), least: inch('.050') },
      { code: 'no-step-in-limits', step: inch('.001'), lower: inch('.0501'), upper: inch('.0505') },
    ] as const;
    expect(said.map((refusal) => sayRingRefusal(refusal, 'in'))).toEqual([
      'No ring fits: 1.497 in outside, 1.505 in inside, wall under .020 in. Check recess and stem, or take less clearance.',
      'No depth left for a ring: .093 in deep, .100 in must stay free. Leave it out, or deepen the recess.',
      'Ring too thin: .040 in at most, want .050 in or more. Leave it out, or deepen the recess.',
      'No step of the dial (.001 in) falls between .0501 in and .0505 in. Use a finer dial or wider limits.',
    ]);
  });
});
