import { describe, expect, test } from 'vitest';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { askedSince, cutBefore, type CutBefore } from '../../../src/screens/lathe/dialled.ts';
import { dialledText, readDialled } from '../../../src/store/kept/dialled.ts';

const of = 'outside';
const before = lengthOf('1.5160 in');
const shown = lengthOf('.018 in');

describe('whether the pass on the screen was cut before it was measured', () => {
  test.each<[string, string[], CutBefore, string]>([
    ['1.4980 in', [], 'shown', 'all .018 came off'],
    ['1.5010 in', [], 'shown', '.015 came off: the tool sprang'],
    ['1.5160 in', [], 'dialled', 'nothing came off'],
    ['1.5158 in', [], 'dialled', 'two tenths came off: measured again'],
    // .018 was dialled and cut already, the next .018 is on the screen: 1.498 or 1.480
    ['1.4978 in', ['.018 in'], 'dialled', 'the one that was dialled came off'],
    ['1.4803 in', ['.018 in'], 'shown', 'both came off'],
  ])('%s after %j: %s, as %s', (measured, dialled, answer) => {
    const cut = cutBefore({
      of,
      before,
      measured: lengthOf(measured),
      dialled: dialled.map(lengthOf),
      shown,
    });
    expect(cut).toBe(answer);
  });

  test('a bore grows: .018 taken from .500 is .518', () => {
    const bore = { of: 'bore', before: lengthOf('.500 in'), dialled: [], shown } as const;
    expect(cutBefore({ ...bore, measured: lengthOf('.518 in') })).toBe('shown');
    expect(cutBefore({ ...bore, measured: lengthOf('.500 in') })).toBe('dialled');
  });

  test('with nothing left to take it was measured again', () => {
    expect(cutBefore({ of, before, measured: lengthOf('1.4980 in'), dialled: [] })).toBe('dialled');
  });
});

describe('what the dial was asked for since the last measurement', () => {
  test('passes that were cut without measuring add up with the one on the screen', () => {
    // .018 + .004 + .001 = .023
    const asked = askedSince('shown', {
      dialled: [shown, lengthOf('.004 in')],
      shown: lengthOf('.001 in'),
    });
    expect(asked && sameLength(asked, lengthOf('.023 in'))).toBe(true);
  });

  test('is nothing where the size was only measured again: no spring is learnt from that', () => {
    expect(askedSince('dialled', { dialled: [], shown })).toBeUndefined();
  });
});

test('what was dialled is kept exactly and read back the same', () => {
  const amounts = [shown, lengthOf('.0025 in')];
  const kept = { typed: dialledText(amounts), unit: 'mm' } as const;
  // .018 in = .4572 mm, .0025 in = .0635 mm
  expect(kept.typed).toBe('0.4572 0.0635');
  expect(dialledText(readDialled(kept))).toBe(kept.typed);
  expect(readDialled({ typed: 'two graduations', unit: 'mm' })).toEqual([]);
  expect(readDialled(undefined)).toEqual([]);
});
