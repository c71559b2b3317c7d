import { assert, property, double, constantFrom } from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  mostTorque,
  otherTorques,
  sayTorque,
  sayWorkedTorque,
  torqueIn,
  torqueUnits,
} from '../../../src/engine/thread/torque.ts';

describe('a stated torque', () => {
  test.each([
    // NIST SP 811 (2008), B.8: 1 lbf·ft = 1.355 818 N·m, 1 lbf·in = 0.112 984 8 N·m.
    { one: 'lbf-ft', newtonMetres: 1.355818, places: 6 },
    { one: 'lbf-in', newtonMetres: 0.1129848, places: 7 },
  ] as const)('of one $one is $newtonMetres N·m (NIST SP 811)', ({ one, newtonMetres, places }) => {
    expect(torqueIn(1, one, 'Nm')).toBeCloseTo(newtonMetres, places);
  });

  test('has twelve pound-inches to the pound-foot', () => {
    expect(torqueIn(45, 'lbf-ft', 'lbf-in')).toBeCloseTo(540, 10);
  });

  test('is the same after it went through another unit and back', () => {
    const unit = constantFrom(...torqueUnits);
    assert(
      property(double({ min: 0.1, max: 2000, noNaN: true }), unit, unit, (torque, a, b) => {
        expect(torqueIn(torqueIn(torque, a, b), b, a)).toBeCloseTo(torque, 8);
      }),
    );
  });

  test('is shown as the manual has it, and beside it for wrenches that read another unit', () => {
    expect(sayTorque({ typed: '45', unit: 'lbf-ft' })).toBe('45 lbf·ft');
    // 45 × 1.355818 = 61.01; 45 × 12 = 540.
    expect(otherTorques({ typed: '45', unit: 'lbf-ft' })).toEqual(['61.0 N·m', '540 lbf·in']);
    // 12.5 / 1.355818 = 9.220; 12.5 / 0.1129848 = 110.6
    expect(otherTorques({ typed: '12.5', unit: 'Nm' })).toEqual(['9.22 lbf·ft', '111 lbf·in']);
    // 7.5 × 1.355818 = 10.17; 7.5 × 12 = 90. 0.4 / 1.355818 = 0.2950; 0.4 / 0.1129848 = 3.540.
    expect(otherTorques({ typed: '7.5', unit: 'lbf-ft' })).toEqual(['10.2 N·m', '90.0 lbf·in']);
    expect(otherTorques({ typed: '0.4', unit: 'Nm' })).toEqual(['0.295 lbf·ft', '3.54 lbf·in']);
    // 240 × 12 = 2880, which three figures would have called 2.88e+3.
    expect(otherTorques({ typed: '240', unit: 'lbf-ft' })).toEqual(['325 N·m', '2880 lbf·in']);
  });

  test('typed with a comma is converted like one with a point', () => {
    // 45.5 / 1.355818 = 33.56; 45.5 / 0.1129848 = 402.7
    expect(otherTorques({ typed: '45,5', unit: 'Nm' })).toEqual(['33.6 lbf·ft', '403 lbf·in']);
    expect(otherTorques({ typed: ' ,5 ', unit: 'Nm' })).toEqual(otherTorques({ typed: '.5', unit: 'Nm' }));
    // Nobody knows what is meant by it.
    expect(otherTorques({ typed: '1,234,5', unit: 'Nm' })).toEqual([]);
  });

  test.each([
    // M2 of 8.8: .2 · 2 mm · .75 · 580 MPa · 2.073 mm²
    { torque: 0.3607, said: '0.361 N·m' },
    { torque: 999.4, said: '999 N·m' },
    { torque: 999.7, said: '1000 N·m' },
    { torque: 1234.5, said: '1235 N·m' },
  ])('that is worked out, $torque N·m, is never nothing: $said', ({ torque, said }) => {
    expect(sayWorkedTorque(torque, 'Nm')).toBe(said);
  });

  test.each(['', '  ', 'by feel'])('that is not a figure (“%s”) has no twin in another unit', (typed) => {
    expect(otherTorques({ typed, unit: 'Nm' })).toEqual([]);
  });

  test('is taken up to 2000 N·m, whatever it is typed in', () => {
    // 2000 / 1.355818 = 1475.1; × 12 = 17701.5
    expect(torqueUnits.map(mostTorque)).toEqual([2000, 1475, 17_701]);
  });
});
