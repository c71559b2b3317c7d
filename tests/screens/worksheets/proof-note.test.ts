import { describe, expect, test } from 'vitest';
import { proofNote } from '../../../src/screens/worksheets/proof-note.ts';
import { featureOf, ofFeature, partOf, tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

const bore = featureOf('bore', 'bore');
const ONE_THOU_APART = { lower: typedSize('.0005'), upper: typedSize('.0015') };

function boreNote(toolId: string, more: Partial<Parameters<typeof worksheetOf>[1]> = {}): string {
  const data = worksheetOf('hole-and-pin', {
    sizes: { bore: ofFeature('bore'), pin: typedSize('.4375'), ...ONE_THOU_APART },
    choices: { joint: 'located' },
    features: [bore],
    ...more,
  });
  return proofNote(data, 'bore', tool(toolId));
}

describe('before the first reading', () => {
  test('a caliper asked to prove .001 between its limits says that it can’t, how far off it is, and what can', () => {
    const note = boreNote('digital-caliper-inside');
    // Bore: ±.0018 / √3 = .00104 and .0004 / √3 = .00023 of three readings. Pin, with the 0–1 micrometer: .00006 and
    // .00003. Together .00107; at 95 % and some 900 degrees of freedom 1.963 of it: ±.0021.
    expect(note).toContain("The digital caliper, inside jaws can't prove this");
    expect(note).toContain('±.0021');
    expect(note).toContain('the limits are only .001 apart');
    expect(note).toContain('dial bore gauge');
  });

  test('a dial bore gauge can prove .001, and nothing is said', () => {
    // .0003 / √3 = .00017 and .0001 / √3 = .00006, with the pin's .00006 and .00003 together .00019; 1.97 of it is
    // ±.0004, less than half of .001.
    expect(boreNote('dial-bore-gauge')).toBe('');
  });

  test('a caliper can prove .010 between its limits, and nothing is said', () => {
    const wide = { lower: typedSize('.0010'), upper: typedSize('.0110') };
    // ±.0021 is less than half of .010.
    const sizes = { bore: ofFeature('bore'), pin: typedSize('.4375'), ...wide };
    expect(boreNote('digital-caliper-inside', { sizes })).toBe('');
  });

  test('with one limit there is always a bore that can be proved, and nothing is said', () => {
    const sizes = { bore: ofFeature('bore'), pin: typedSize('.4375'), upper: typedSize('.0015') };
    expect(boreNote('digital-caliper-inside', { sizes })).toBe('');
  });

  test('with a worksheet that doesn’t know yet how the joint runs, nothing is said', () => {
    expect(boreNote('digital-caliper-inside', { sizes: { bore: ofFeature('bore') }, choices: {} })).toBe('');
  });

  test('with no finer tool in Shop it says that none can', () => {
    const tools = [tool('digital-caliper-inside'), tool('digital-caliper')];
    expect(boreNote('digital-caliper-inside', { tools })).toContain('No tool in Shop can.');
  });
});

describe('a stack', () => {
  const sleeve = featureOf('sleeve', 'length');
  const stack = worksheetOf('spacer-stack', {
    sizes: { fixed: ofFeature('sleeve') },
    choices: { want: 'float' },
    parts: {
      a: partOf(1, typedSize('.480')),
      b: partOf(2, typedSize('.400')),
      c: partOf(3, typedSize('.080')),
    },
    features: [sleeve],
  });

  test('of three parts and a sleeve by caliper adds up to more than a float of .004 can be proved with', () => {
    // The error of one caliper is common to what it reads: net 3 − 1 = 2, at least √4 = 2; 2 · .001 / √3 = .00115.
    // 1.96 of it is .0023, and half of .012 − .008 is .002.
    expect(proofNote(stack, 'length', tool('digital-caliper'))).toContain('the limits are only .004 apart');
  });

  test('by micrometer can be proved', () => {
    expect(proofNote(stack, 'length', tool('micrometer-0-1'))).toBe('');
  });

  test('whose gap is read directly hangs on the feeler alone', () => {
    // Feeler: .0005 / √3 = .00029, a step of .001 / √12 = .00029, .0003 / √3 = .00017: together .00044, ±.0009 < .002.
    expect(proofNote(stack, 'gap', tool('feeler-gauges'))).toBe('');
  });
});

test('a thread insert has no limits to prove beforehand, and nothing is said', () => {
  const data = worksheetOf('thread-insert', {
    sizes: { hole: ofFeature('bore') },
    choices: { thread: '7/16-20 UNF' },
    features: [bore],
  });
  expect(proofNote(data, 'bore', tool('digital-caliper-inside'))).toBe('');
});

describe('a fit', () => {
  const fit = worksheetOf('fit', {
    sizes: { nominal: typedSize('25 mm'), bore: ofFeature('bore') },
    choices: { joint: 'located' },
    features: [bore],
  });

  test('of H8 at 25 mm says before the first reading that the caliper can’t prove the bore', () => {
    // ISO 286-1:2010 table 1, over 18 to 30 mm: IT8 is 33 µm, .0013 in; the caliper's band is ±.0021 as above.
    const note = proofNote(fit, 'bore', tool('digital-caliper-inside'));
    expect(note).toContain('to ±.0021 and the limits are only .0013 apart');
    expect(proofNote(fit, 'bore', tool('dial-bore-gauge'))).toBe('');
  });

  test('of h7 at 25 mm asks a micrometer of the pin', () => {
    // IT7 is 21 µm, .0008 in. Caliper: .001 / √3 = .00058 and .0002 / √3 = .00012, together .00059; 1.96 of it ±.0012.
    expect(proofNote(fit, 'pin', tool('digital-caliper'))).toContain(
      'to ±.0012 and the limits are only .0008 apart',
    );
    expect(proofNote(fit, 'pin', tool('micrometer-0-1'))).toBe('');
  });

  test('whose joint isn’t chosen yet says nothing', () => {
    const open = worksheetOf('fit', { sizes: { nominal: typedSize('25 mm') } });
    expect(proofNote(open, 'bore', tool('digital-caliper-inside'))).toBe('');
  });
});

describe('a bushing', () => {
  const bushing = worksheetOf('bushing', {
    sizes: {
      bore: typedSize('.4490'),
      pin: typedSize('.4372'),
      wall: typedSize('.2'),
      reamed: ofFeature('reamed'),
    },
    choices: { joint: 'located', partMetal: 'low-carbon-steel', bushingMetal: 'bearing-bronze' },
    features: [featureOf('reamed', 'bore')],
  });

  test('asks for more than a caliper of the reamed bore it is pressed into', () => {
    // ANSI B4.1, FN1, over .40 to .56 in: .1 to .8 thou of interference.
    const note = proofNote(bushing, 'bore', tool('digital-caliper-inside'), 'reamed');
    expect(note).toContain('the limits are only .0007 apart');
  });

  test('asks nothing of the worn bore, which is reamed away', () => {
    const worn = { ...bushing, worksheet: { ...bushing.worksheet, sizes: { bore: ofFeature('bore') } } };
    expect(proofNote(worn, 'bore', tool('digital-caliper-inside'), 'bore')).toBe('');
  });
});

describe('a ring', () => {
  const ring = worksheetOf('ring');

  test('that the recess locates asks for more than the caliper’s inside jaws', () => {
    // Usual clearance .001 to .005 (common practice): .004 apart, and ±.0021 is more than half of it.
    expect(proofNote(ring, 'bore', tool('digital-caliper-inside'))).toContain('limits are only .004 apart');
  });

  test('that is free of its stem is proved by a caliper', () => {
    // .010 to .030 (common practice).
    expect(proofNote(ring, 'pin', tool('digital-caliper'))).toBe('');
  });
});

describe('a bearing seat', () => {
  const own = (lower: string, upper: string) => ({ lower: typedSize(lower), upper: typedSize(upper) });

  test('with end play within .001 can’t be proved by feeler', () => {
    // ±.0009 as above, and half of .001 is .0005.
    const taper = (upper: string) =>
      worksheetOf('bearing-seat', { choices: { bearing: 'taper' }, sizes: own('.001', upper) });
    expect(proofNote(taper('.002'), 'gap', tool('feeler-gauges'))).toContain('only .001 apart');
    expect(proofNote(taper('.005'), 'gap', tool('feeler-gauges'))).toBe('');
  });

  test('wanted proud within .002 can’t be proved by the caliper’s depth rod', () => {
    const seat = worksheetOf('bearing-seat', { choices: { bearing: 'seat' }, sizes: own('.001', '.003') });
    expect(proofNote(seat, 'depth', tool('digital-caliper-depth'))).toContain('only .002 apart');
  });

  test('whose maker’s figures aren’t typed yet says nothing', () => {
    const taper = worksheetOf('bearing-seat', { choices: { bearing: 'taper' } });
    expect(proofNote(taper, 'gap', tool('feeler-gauges'))).toBe('');
  });

  test('with a sleeve .005 longer at most is proved by one caliper for both lengths', () => {
    // The caliper's error is in both and falls out: what is left is its repeatability, well under .0025.
    const ball = worksheetOf('bearing-seat', { choices: { bearing: 'ball' } });
    expect(proofNote(ball, 'length', tool('digital-caliper'))).toBe('');
  });
});

describe('an axle', () => {
  const axle = (sizes = {}) =>
    worksheetOf('axle-line-up', { choices: { layout: 'front-one-disc', side: 'right' }, sizes });

  test('whose spacers may be .005 off to either side is proved by caliper', () => {
    expect(proofNote(axle(), 'length', tool('digital-caliper'))).toBe('');
  });

  test('whose spacers may be .001 off can’t be: the sum of many sizes is not known that closely', () => {
    expect(proofNote(axle({ spacerLimit: typedSize('.001') }), 'length', tool('digital-caliper'))).toContain(
      'the limits are only .002 apart',
    );
  });

  test('without an arrangement chosen says nothing', () => {
    expect(proofNote(worksheetOf('axle-line-up'), 'length', tool('digital-caliper'))).toBe('');
  });
});
