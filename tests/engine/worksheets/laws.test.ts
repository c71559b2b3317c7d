import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { bandOf, estimateOf, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { holeAndPin } from '../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { floatMm, isMore, lengthOf, toText, type Length } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import type { Reading } from '../../../src/engine/reading/reading.ts';
import { spacerStack, stackWantPreset } from '../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';

/** Laws that go across the worksheets: they hold whatever the figures are. */

const [tool] = usualTools;
if (!tool) throw new Error('the shop has a tool');

const microinches = fc.integer({ min: 100_000, max: 900_000 });

/** The same size typed in inches and in millimetres: a millionth of an inch is 0.0000254 mm exactly. */
function typedBothWays(size: number): readonly [Length, Length] {
  const inch = readEntry(`.${String(size).padStart(6, '0')}`, { unit: 'in' });
  const millionths = BigInt(size) * 254n;
  const text = millionths.toString().padStart(9, '0');
  const mm = readEntry(`${text.slice(0, -7)}.${text.slice(-7)}`, { unit: 'mm' });
  if (!inch.ok || !mm.ok) throw new Error(`${size} can be typed`);
  return [inch.value.exact, mm.value.exact];
}

describe('inch and millimetre entry give the same exact answer', () => {
  test('for the gap of a stack', () => {
    fc.assert(
      fc.property(microinches, fc.array(microinches, { minLength: 1, maxLength: 5 }), (sleeve, parts) => {
        const gaps = [0, 1].map((unit) => {
          const size = (one: number) => typedEstimate(typedBothWays(one)[unit] ?? lengthOf('0 mm'));
          const { gap } = spacerStack({
            fixed: { name: 'sleeve', length: size(sleeve) },
            parts: parts.map((one, index) => ({
              name: `part ${index}`,
              thickness: size(one),
              count: 1,
              adjustable: true,
            })),
            want: stackWantPreset('float'),
            step: lengthOf('.001 in'),
          });
          return toText(gap);
        });
        expect(gaps[0]).toBe(gaps[1]);
      }),
    );
  });

  test('for the slop of a pin in its bore', () => {
    fc.assert(
      fc.property(microinches, microinches, (bore, pin) => {
        const slops = [0, 1].map((unit) => {
          const size = (one: number) => {
            const estimate = typedEstimate(typedBothWays(one)[unit] ?? lengthOf('0 mm'));
            return { tightest: estimate, loosest: estimate };
          };
          return toText(holeAndPin({ bore: size(bore), pin: size(pin), joint: 'turns' }).loosest);
        });
        expect(slops[0]).toBe(slops[1]);
      }),
      { numRuns: 50 },
    );
  });
});

test('more readings never widen a band beyond what their scatter says', () => {
  const reading = (thou: number): Reading => ({ exact: lengthOf(`${thou} thou`), tool, zeroChecked: false });
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 440, max: 450 }), { minLength: 3, maxLength: 8 }), (sizes) => {
      const [first, ...rest] = sizes.map(reading);
      if (!first) return;
      const once = bandOf(estimateOf([first, ...rest])).halfWidth;
      // The same readings taken twice over: their spread is no wider, so their band may not be.
      const twice = bandOf(estimateOf([first, ...rest, first, ...rest])).halfWidth;
      expect(isMore(twice, once)).toBe(false);
      // And never narrower than the tool's own error allows: 1.96 · MPE / √3 (JCGM 100:2008 4.3.7).
      const floorMm = (1.95 * floatMm(tool.mpe)) / Math.sqrt(3);
      expect(floatMm(twice)).toBeGreaterThan(floorMm);
    }),
  );
});
