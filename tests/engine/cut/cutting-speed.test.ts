import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { metresPerMinute, spindleRpm, surfaceFeetPerMinute } from '../../../src/engine/cut/cutting-speed.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';

test('90 ft/min at 1/2 in is 687.5 rev/min (handbook formula 12 V / π D, WE54)', () => {
  const rpm = spindleRpm({ surfaceFeetPerMinute: 90, diameter: lengthOf('.500 in') });
  expect(rpm.toFixed(1)).toBe('687.5');
});

test('1200 rev/min at 3/4 in is 235.6 ft/min (handbook formula π D R / 12, WE55)', () => {
  const speed = surfaceFeetPerMinute({ rpm: 1200, diameter: lengthOf('3/4 in') });
  expect(speed.toFixed(1)).toBe('235.6');
});

test('100 ft/min is 30.48 m/min (1 ft = 0.3048 m, NIST SP 811, B.8)', () => {
  expect(metresPerMinute(100).toFixed(2)).toBe('30.48');
});

test('the larger of two diameters turns slower, and speed and back is the same speed', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 1, max: 900 }), (feet, sixteenths) => {
      const diameter = lengthOf(`${sixteenths}/16 in`);
      const rpm = spindleRpm({ surfaceFeetPerMinute: feet, diameter });
      expect(surfaceFeetPerMinute({ rpm, diameter })).toBeCloseTo(feet, 8);
      expect(
        spindleRpm({ surfaceFeetPerMinute: feet, diameter: lengthOf(`${sixteenths + 1}/16 in`) }),
      ).toBeLessThan(rpm);
    }),
  );
});
