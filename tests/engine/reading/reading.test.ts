import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, lengthOf, sameLength, times, toText } from '../../../src/engine/length/length.ts';
import { slipQuestion, trueBoreAcrossJaws } from '../../../src/engine/reading/reading.ts';

const others = ['.4487 in', '.4490 in', '.4484 in'].map(lengthOf);

describe('a size that stands beside the other readings', () => {
  test.each([
    { typed: '11.397 in', kind: 'inch-for-mm', meant: '.4487 in', why: '.4487 in is 11.397 mm' },
    { typed: '.4487 mm', kind: 'mm-for-inch', meant: '.4487 in', why: 'inches typed with the key on mm' },
    { typed: '4.487 in', kind: 'point-slipped', meant: '.4487 in', why: 'point one place right' },
    { typed: '.04487 in', kind: 'point-slipped', meant: '.4487 in', why: 'a nought too many' },
    { typed: '448.7 in', kind: 'point-slipped', meant: '.4487 in', why: 'thou typed as inches' },
    { typed: '44.87 in', kind: 'point-slipped', meant: '.4487 in', why: 'point two places right' },
    { typed: '.0004487 in', kind: 'point-slipped', meant: '.4487 in', why: 'inches typed as thou' },
  ])('as $typed is asked about as $kind ($why)', ({ typed, kind, meant }) => {
    const question = slipQuestion(lengthOf(typed), others);
    expect(question?.kind).toBe(kind);
    expect(question && decimalText(question.meant, 'in', 4)).toBe(decimalText(lengthOf(meant), 'in', 4));
    expect(question && decimalText(question.usual, 'in', 4)).toBe('0.4487');
  });

  test.each(['.4950 in', '.4487 in', '.5100 in', '.9000 in', '.2200 in', '2 in', '0 in'])(
    'as %s is not asked about: no slip gives that',
    (typed) => {
      expect(slipQuestion(lengthOf(typed), others)).toBeUndefined();
    },
  );

  test('is never asked about while it is the only one', () => {
    expect(slipQuestion(lengthOf('11.397 in'), [])).toBeUndefined();
  });

  test('is not asked about when one of the others reads the same, odd as it is beside the median', () => {
    expect(slipQuestion(lengthOf('4.487 in'), [...others, lengthOf('4.480 in')])).toBeUndefined();
  });

  test('has the mean of the two in the middle for its usual size when they are even in number', () => {
    const two = ['.4480 in', '.4490 in'].map(lengthOf);
    expect(toText(slipQuestion(lengthOf('4.485 in'), two)?.usual ?? lengthOf('0 mm'))).toBe(
      toText(lengthOf('.4485 in')),
    );
  });

  test('close to the others is never asked about, whatever the size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400_000 }),
        fc.integer({ min: 900, max: 1100 }),
        (size, share) => {
          const usual = lengthOf(`${size} mm`);
          expect(slipQuestion(times(usual, String(share / 1000)), [usual])).toBeUndefined();
        },
      ),
    );
  });
});

describe('a bore read across jaw flats', () => {
  test('is the diagonal over reading and flat: 3, 4, 5', () => {
    const bore = trueBoreAcrossJaws({ measured: lengthOf('4 mm'), flatWidth: lengthOf('3 mm') });
    expect(sameLength(bore, lengthOf('5 mm'))).toBe(true);
  });

  test('of .4480 with .020 flats is .4484: the flats hide .0004', () => {
    // √(.4480² + .0200²) = √(.200704 + .0004) = √.201104 = .448446
    const bore = trueBoreAcrossJaws({ measured: lengthOf('.4480 in'), flatWidth: lengthOf('.020 in') });
    expect(decimalText(bore, 'in', 4)).toBe('0.4484');
  });
});
