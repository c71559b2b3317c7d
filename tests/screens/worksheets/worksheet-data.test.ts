import { describe, expect, test } from 'vitest';
import { bandOf, mean } from '../../../src/engine/reading/estimate.ts';
import { decimalText, isZero, lengthOf } from '../../../src/engine/length/length.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { exactSize, knownSize, missingWords } from '../../../src/screens/worksheets/worksheet-data.ts';
import {
  featureOf,
  is,
  ofFeature,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

const bore = featureOf('bore', 'bore');
const caliper = tool('digital-caliper-inside');

describe('a typed size', () => {
  test('without a tool is taken as exact', () => {
    const known = knownSize(worksheetOf('hole-and-pin'), typedSize('29/64'));
    expect(known && is(mean(known.tightest), '.453125 in')).toBe(true);
    expect(known && isZero(bandOf(known.tightest).halfWidth)).toBe(true);
    expect(known?.words).toBe('typed 29/64 in');
  });

  test('with a tool counts as one reading with it and says so', () => {
    const known = knownSize(worksheetOf('hole-and-pin'), typedSize('.4487', caliper));
    expect(known?.tightest.count).toBe(1);
    expect(known && isZero(bandOf(known.tightest).halfWidth)).toBe(false);
    expect(known?.words).toBe('typed .4487 in, as one reading with the digital caliper, inside jaws');
  });

  test('with the usual tool, as nobody named one, says that it is assumed', () => {
    const size = { ...typedSize('.4487', caliper), toolAssumed: true as const };
    expect(knownSize(worksheetOf('hole-and-pin'), size)?.words).toBe(
      'typed .4487 in, digital caliper, inside jaws assumed',
    );
  });

  test('of an old record, with a tool that can’t have read it, counts as by the caliper and says which can’t', () => {
    const known = knownSize(worksheetOf('spacer-stack'), typedSize('.227', tool('micrometer-1-2')));
    expect(known?.words).toBe(
      'typed .227 in: digital caliper, assumed (the 1–2 in micrometer can’t read this)',
    );
    // u² = .0002² + .001²/3: U = 1.96 · .000611 = .0012 in, not the .00055 that the micrometer would prove
    expect(known && decimalText(bandOf(known.tightest).halfWidth, 'in', 4)).toBe('0.0012');
  });

  test('with plugs is the middle between the one that goes and the next, and says both', () => {
    const known = knownSize(worksheetOf('hole-and-pin'), typedSize('.500', tool('plug-gauges')));
    expect(known && is(mean(known.tightest), '.5005 in')).toBe(true);
    expect(known?.words).toBe(
      'typed .500 in goes, .501 in doesn’t, as one reading with the plug gauges in steps of .001',
    );
  });

  test('is as tight as it is loose', () => {
    const known = knownSize(worksheetOf('hole-and-pin'), typedSize('.4487'));
    expect(known?.loosest).toEqual(known?.tightest);
  });
});

describe('a measured size', () => {
  const sizeFrom = (...readings: readonly ReturnType<typeof readingOf>[]) =>
    worksheetOf('hole-and-pin', { features: [bore], readings });

  test('is the mean of its readings at one place', () => {
    const at = { place: 'top' } as const;
    const data = sizeFrom(readingOf('bore', '.4486', at), readingOf('bore', '.4488', at));
    // (.4486 + .4488) / 2
    expect(is(exactSize(data, ofFeature('bore')), '.4487 in')).toBe(true);
  });

  test('leaves struck-out readings out, and says how many there are', () => {
    // .0001 apart is scatter: the gauge's usual is .0001
    const data = sizeFrom(
      readingOf('bore', '.4486'),
      readingOf('bore', '.4487'),
      readingOf('bore', '.4950', struckOut),
    );
    expect(is(exactSize(data, ofFeature('bore')), '.44865 in')).toBe(true);
    expect(knownSize(data, ofFeature('bore'))?.words).toBe(
      'Left bore, 2 readings, 1 struck out, dial bore gauge',
    );
  });

  test('of a pin that a ring goes over is the middle between that ring and the next smaller one', () => {
    const rings = { ...tool('plug-gauges'), id: 'rings', name: 'rings', measures: ['pin' as const] };
    const known = (stops?: string) =>
      knownSize(
        worksheetOf('hole-and-pin', {
          features: [featureOf('pin', 'pin')],
          readings: [
            readingOf('pin', '.500', {
              tool: rings,
              ...(stops !== undefined && { stops: typedSize(stops) }),
            }),
          ],
        }),
        ofFeature('pin'),
      );
    const [next, tried] = [known(), known('.497')];
    // .500 goes over it; .499, one step of .001 on, doesn't
    expect(next && is(mean(next.most), '.4995 in')).toBe(true);
    // .497 was the next one tried
    expect(tried && is(mean(tried.most), '.4985 in')).toBe(true);
  });

  test('read .517 and .518 without a place is small where it is small and large where it is large, never .5175', () => {
    const known = knownSize(
      sizeFrom(readingOf('bore', '.517'), readingOf('bore', '.518')),
      ofFeature('bore'),
    );
    expect(known && is(mean(known.tightest), '.517 in')).toBe(true);
    expect(known && is(mean(known.loosest), '.518 in')).toBe(true);
  });

  test('takes no reading of another feature', () => {
    const data = sizeFrom(readingOf('bore', '.4487'), readingOf('other', '.3000'));
    expect(is(exactSize(data, ofFeature('bore')), '.4487 in')).toBe(true);
  });

  test('of a bore read at two places is tight where it is small and loose where it is large', () => {
    const data = sizeFrom(
      readingOf('bore', '.4486', { place: 'top' }),
      readingOf('bore', '.4492', { place: 'bottom' }),
    );
    const known = knownSize(data, ofFeature('bore'));
    expect(known && is(mean(known.tightest), '.4486 in')).toBe(true);
    expect(known && is(mean(known.loosest), '.4492 in')).toBe(true);
  });

  test('of a pin is tight where it is large', () => {
    const data = worksheetOf('hole-and-pin', {
      features: [featureOf('pin', 'pin')],
      readings: [readingOf('pin', '.4370', { place: 'top' }), readingOf('pin', '.4374', { place: 'bottom' })],
    });
    expect(is(exactSize(data, ofFeature('pin')), '.4374 in')).toBe(true);
  });

  test('across the flats of a caliper’s inside jaws is the bore’s diameter, not the chord', () => {
    const jaws = { ...caliper, jawWidth: lengthOf('.070 in') };
    // √(.24² + .07²) = √(.0576 + .0049) = √.0625 = .25
    const data = sizeFrom(readingOf('bore', '.2400', { tool: jaws }));
    expect(is(exactSize(data, ofFeature('bore')), '.25 in')).toBe(true);
  });

  test('across jaws whose flats are not known stays as read', () => {
    const data = sizeFrom(readingOf('bore', '.2400', { tool: caliper }));
    expect(is(exactSize(data, ofFeature('bore')), '.24 in')).toBe(true);
  });

  test('of a pin is never put right for jaw flats: its outside touches them flat', () => {
    const data = worksheetOf('hole-and-pin', {
      features: [featureOf('pin', 'pin')],
      readings: [readingOf('pin', '.2400', { tool: { ...caliper, jawWidth: lengthOf('.070 in') } })],
    });
    expect(is(exactSize(data, ofFeature('pin')), '.24 in')).toBe(true);
  });
});

describe('a size that gives nothing', () => {
  test('with every reading struck out is not known, and says why', () => {
    const data = worksheetOf('hole-and-pin', {
      features: [bore],
      readings: [readingOf('bore', '.4487', struckOut)],
    });
    expect(knownSize(data, ofFeature('bore'))).toBeUndefined();
    expect(missingWords(data, ofFeature('bore'))).toBe('Left bore has no readings yet');
  });

  test('whose feature was removed is not known, and says why', () => {
    const data = worksheetOf('hole-and-pin', { readings: [readingOf('bore', '.4487')] });
    expect(knownSize(data, ofFeature('bore'))).toBeUndefined();
    expect(missingWords(data, ofFeature('bore'))).toBe('its readings were removed');
  });

  test('that was never given needs no words', () => {
    expect(knownSize(worksheetOf('hole-and-pin'), undefined)).toBeUndefined();
    expect(missingWords(worksheetOf('hole-and-pin'), undefined)).toBeUndefined();
  });
});

describe('a number among the choices', () => {
  // A plate has 2 to 24 holes in a circle (fields.ts): its pad takes nothing else.
  test.each(['999999999', '-1', '0', '1e9', 'Infinity', '0x18', '4.5', '25', ''])(
    'of holes that says “%s”, as out of a file, is asked for anew: nothing is worked out from it',
    (aCount) => {
      const given = givenOf(worksheetOf('adapter-plate', { choices: { aBy: 'circle', aCount } }));
      expect([given.number('aCount'), given.has('aCount')]).toEqual([undefined, false]);
    },
  );

  test('is there as any pad took it in, and at the end of its range as a shop in psi rounds it', () => {
    const given = givenOf(worksheetOf('thread-engagement', { choices: { parentTensile: '2500.03' } }));
    expect(given.number('parentTensile')).toBe(2500.03);
  });
});
