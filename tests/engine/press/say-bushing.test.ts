import { describe, expect, test } from 'vitest';
import type { BushingRefusal } from '../../../src/engine/press/bushing.ts';
import type { BushingWarning } from '../../../src/engine/press/bushing-warnings.ts';
import { lengthOf, zero } from '../../../src/engine/length/length.ts';
import {
  sayBushingRefusal,
  sayBushingWarning,
  sayForce,
  sayHeatLimited,
  sayHeatWay,
  sayHold,
  sayInterference,
  sayStress,
  sayTemperature,
} from '../../../src/engine/press/say-bushing.ts';

describe('figures in the unit of the sizes first, both given', () => {
  test('33.6 MPa is 4,873 psi, three digits: 4,870', () => {
    expect(sayStress(33.6, 'in')).toBe('4,870 psi (33.6 MPa)');
    expect(sayStress(33.6, 'mm')).toBe('33.6 MPa (4,870 psi)');
  });

  test('12037 N is 2706 lbf, three digits: 2,710; under a kilonewton it stays newtons', () => {
    expect(sayForce(12037, 'in')).toBe('2,710 lbf (12 kN)');
    expect(sayForce(528.4, 'mm')).toBe('528 N (119 lbf)');
    expect(sayForce(1000, 'mm')).toBe('1 kN (225 lbf)');
  });

  test('no force for sure is said so', () => {
    expect(sayHold(0, 'in')).toBe('no hold can be counted on');
    expect(sayHold(528.4, 'mm')).toBe('holds 528 N (119 lbf) at least, along the axis');
  });

  test('120 °C is 248 °F; below zero has a minus', () => {
    expect(sayTemperature(120, 'in')).toBe('248 °F (120 °C)');
    expect(sayTemperature(-78, 'mm')).toBe('−78 °C (−108 °F)');
  });
});

const steel = { celsius: 250, of: 'part', material: 'Low carbon steel (1018, 1020)' } as const;
const acetal = { celsius: 80, of: 'bushing', material: 'Acetal (POM)' } as const;

describe('ways to drop it in', () => {
  test.each([
    {
      way: { way: 'heat', heatCelsius: 120, allowed: true },
      title: 'Heat the part to 120 °C (248 °F)',
      detail: 'drops in by hand, in insulated gloves',
    },
    {
      way: { way: 'heat', heatCelsius: 300, allowed: false },
      title: 'Heat alone won’t do',
      detail: 'It takes 300 °C (572 °F); the low carbon steel part takes 250 °C (482 °F) at most',
    },
    {
      way: { way: 'cold', coldCelsius: -78, allowed: true },
      title: 'Cool the bushing to −78 °C (−109 °F)',
      detail: 'drops in by hand, in insulated gloves',
    },
    {
      way: { way: 'cold', allowed: false },
      title: 'Cold alone won’t do',
      detail: 'It has to be colder than you can make it',
    },
    {
      way: { way: 'both', heatCelsius: 120, coldCelsius: -18, allowed: true },
      title: 'Bushing at −18 °C (0 °F), part at 120 °C (248 °F)',
      detail: 'drops in by hand, in insulated gloves',
    },
    {
      way: { way: 'both', heatCelsius: 300, coldCelsius: -18, allowed: false },
      title: 'Both won’t do',
      detail: 'It takes 300 °C (572 °F); the low carbon steel part takes 250 °C (482 °F) at most',
    },
  ] as const)('$title: $detail', ({ way, title, detail }) => {
    expect(sayHeatWay(way, steel, 'mm')).toEqual({ title, detail });
  });

  test('what may not be done has no temperature to go to, however near it is', () => {
    const way = { way: 'heat', heatCelsius: 80.2, allowed: false } as const;
    // 80.2 is shown as what it takes at least: 81, never "80 of 80"; 80.2 °C is 176.36 °F: 177
    expect(sayHeatWay(way, acetal, 'mm')).toEqual({
      title: 'Heat alone won’t do',
      detail: 'It takes 81 °C (177 °F); the acetal bushing takes 80 °C (176 °F) at most',
    });
  });

  test('a plated part is said not to be heated, though its metal would bear what it takes', () => {
    const plated = { celsius: 100, of: 'plated', material: 'Aluminium 6061', plated: true } as const;
    expect(sayHeatWay({ way: 'heat', heatCelsius: 84, allowed: false }, plated, 'mm')).toEqual({
      title: 'Heat alone won’t do',
      detail: 'It takes 84 °C (184 °F); a plated part is not heated',
    });
    const way = { weighs: 'mind', code: 'no-way-in', most: plated } as const;
    expect(sayBushingWarning(way, 'mm')).toBe(
      'Neither heat nor cold drops it in: a plated part is not heated. Press it.',
    );
  });

  test('what is heated is heated at least so far: 119.2 °C is 120, 246.56 °F is 247', () => {
    const way = { way: 'heat', heatCelsius: 119.2, allowed: true } as const;
    expect(sayHeatWay(way, steel, 'in').title).toBe('Heat the part to 247 °F (120 °C)');
  });

  test.each([
    { of: 'plated', words: 'the plated part' },
    { of: 'hardened', words: 'the hardened part' },
    { of: 'bushing', words: 'the brass C36000 bushing' },
  ] as const)('spoilt first: $words', ({ of, words }) => {
    expect(sayHeatLimited({ celsius: 100, of, material: 'Brass C36000, free cutting' })).toBe(words);
  });
});

describe('interference', () => {
  test.each([
    { least: '.0005 in', greatest: '.0016 in', words: '.0005 to .0016 in' },
    { least: '-.0002 in', greatest: '.0011 in', words: '.0002 loose to .0011 in tight' },
  ])('$words', ({ least, greatest, words }) => {
    expect(sayInterference(lengthOf(least), lengthOf(greatest), 'in')).toBe(words);
  });
});

const size = lengthOf('.625 in');
const stress = {
  what: 'bushing',
  material: 'Bearing bronze',
  stressMpa: 268,
  yieldMpa: 125,
  own: false,
} as const;

describe('what speaks against it is a sentence with what to do', () => {
  const sentences: readonly { warning: BushingWarning; words: string }[] = [
    {
      warning: {
        weighs: 'stop',
        code: 'thin-bushing',
        wall: lengthOf('.050 in'),
        least: lengthOf('.060 in'),
        source: 'yours',
      },
      words:
        'The bushing’s wall is .050 in, and .060 in is the least (yours). Ream larger, or run a thinner pin.',
    },
    {
      warning: {
        weighs: 'stop',
        code: 'thin-part',
        wall: lengthOf('.240 in'),
        least: lengthOf('.3125 in'),
        source: 'yours',
      },
      words:
        '.240 in is left round the hole, and .3125 in is the least (yours). Ream to less, or build the part up first.',
    },
    {
      warning: { weighs: 'stop', code: 'yields', ...stress },
      words:
        'The bushing gives way: 38,900 psi (268 MPa) where Bearing bronze yields at 18,100 psi (125 MPa) (from memory). Take a lighter class.',
    },
    {
      warning: { weighs: 'mind', code: 'takes-a-set', ...stress, own: true },
      words:
        'The bushing takes a set: 38,900 psi (268 MPa) where Bearing bronze yields at 18,100 psi (125 MPa). It holds, but bore it to size only after pressing.',
    },
    {
      warning: { weighs: 'mind', code: 'near-yield', ...stress, stressMpa: 100, own: true },
      words:
        'The bushing is near its yield: 14,500 psi (100 MPa) of 18,100 psi (125 MPa), and the load comes on top.',
    },
    {
      warning: { weighs: 'stop', code: 'loose-when-hot', celsius: 120, left: lengthOf('-.0002 in') },
      words:
        'At 248 °F (120 °C) it is loose by .0002 in in the worst case: the part grows more than the bushing. Take a heavier class, or pin it.',
    },
    {
      warning: { weighs: 'stop', code: 'loose-when-cold', celsius: -20, left: lengthOf('-.0022 in') },
      words:
        'At −4 °F (−20 °C) it is loose by .0022 in in the worst case: the bushing shrinks more than the part. Take a heavier class, or pin it.',
    },
    {
      warning: { weighs: 'stop', code: 'seizes', celsius: 80, left: lengthOf('-.0012 in') },
      words:
        'At 176 °F (80 °C) it seizes on the pin: the least clearance is gone by .0012 in. Take a freer class inside.',
    },
    {
      warning: { weighs: 'mind', code: 'no-way-in', most: acetal },
      words: 'Neither heat nor cold drops it in: the acetal bushing takes 176 °F (80 °C) at most. Press it.',
    },
    {
      warning: { weighs: 'stop', code: 'spoilt-when-hot', celsius: 100, most: acetal },
      words:
        'At 212 °F (100 °C) in use it is spoilt: the acetal bushing takes 176 °F (80 °C) at most. Take another metal.',
    },
    {
      warning: { weighs: 'mind', code: 'draws-soft', mostCelsius: 150 },
      words:
        'A hardened part is drawn soft above 302 °F (150 °C). Use an oven and a thermometer, never a torch.',
    },
  ];

  test.each(sentences)('$warning.code', ({ warning, words }) => {
    expect(sayBushingWarning(warning, 'in')).toBe(words);
  });

  test('brittle metal is told from its tensile strength', () => {
    const warning = {
      weighs: 'stop',
      code: 'may-crack',
      material: 'iron',
      hoopMpa: 90,
      bearableMpa: 68,
    } as const;
    expect(sayBushingWarning(warning, 'mm')).toMatch(/^The part may crack: the bore is pulled with 90 MPa/);
  });

  test('no grip offers turning to the bore while that can still be done', () => {
    const warning = {
      weighs: 'mind',
      code: 'no-grip',
      least: zero,
      flattened: lengthOf('.0003 in'),
    } as const;
    expect(sayBushingWarning({ ...warning, turned: false }, 'in')).toContain(
      'Turn the bushing to the measured bore',
    );
    expect(sayBushingWarning({ ...warning, turned: true }, 'in')).toContain('Take a heavier class');
  });

  test('fumes and boring after pressing need no figure', () => {
    expect(sayBushingWarning({ weighs: 'mind', code: 'plating-fumes' }, 'in')).toContain(
      'cadmium fumes kill',
    );
    expect(sayBushingWarning({ weighs: 'mind', code: 'band-too-wide' }, 'in')).toContain('finer tool');
    expect(sayBushingWarning({ weighs: 'mind', code: 'bore-after-pressing' }, 'in')).toContain(
      'after pressing',
    );
  });
});

describe('why it can’t be worked out', () => {
  const refusals: readonly { refusal: BushingRefusal; words: string }[] = [
    {
      refusal: { code: 'no-reamer', needs: size },
      words: 'No standard reamer is .625 in or larger. Bore it, and type the size you bore to.',
    },
    {
      refusal: { code: 'reams-too-small', reamTo: lengthOf('.600 in'), needs: size },
      words: '.600 in does not clean the worn bore up: it takes .625 in at least. Go larger.',
    },
    {
      refusal: { code: 'no-bushing-wall', reamTo: lengthOf('.500 in'), inside: size },
      words:
        'At .500 in there is no room for a bushing: its own bore is .625 in. Go larger, or run a thinner pin.',
    },
    {
      refusal: { code: 'breaks-through', reamTo: size, by: lengthOf('.010 in') },
      words:
        'Opened to .625 in the bore breaks through the part’s edge by .010 in. Ream to less, or make the part new.',
    },
    {
      refusal: { code: 'breaks-through', reamTo: size, by: zero },
      words: 'Opened to .625 in the bore breaks through the part’s edge. Ream to less, or make the part new.',
    },
    {
      refusal: { code: 'class-not-at-size', fitClass: 'FN3', nominal: size },
      words: 'FN3 is not made at .625 in. Pick the class next to it.',
    },
  ];

  test.each(refusals)('$words', ({ refusal, words }) => {
    expect(sayBushingRefusal(refusal, 'in')).toBe(words);
  });
});
