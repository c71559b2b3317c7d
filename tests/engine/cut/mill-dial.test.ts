import * as fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { comesBack, millSetting, sayTurns } from '../../../src/engine/cut/mill-dial.ts';
import { exactDecimalText, lengthOf } from '../../../src/engine/length/length.ts';

const inches = (text: string) => lengthOf(`${text} in`);
const fifth = { graduation: inches('.001'), marksPerTurn: 200 };

describe('a dial of .001 a mark and 200 marks, .200 a turn', () => {
  test.each([
    // 2.2248 = 11 · .200 + .0248
    { to: '2.2248', turns: 11, figure: '0.0248', marks: 24, past: '0.0008', said: '11 turns on' },
    // −1.6164 = −9 · .200 + .1836: nine turns back, and up to .1836
    { to: '-1.6164', turns: -9, figure: '0.1836', marks: 183, past: '0.0006', said: '9 turns back' },
    { to: '0', turns: 0, figure: '0', marks: 0, past: '0', said: 'in the first turn' },
    { to: '.2', turns: 1, figure: '0', marks: 0, past: '0', said: '1 turn on' },
    { to: '-.2', turns: -1, figure: '0', marks: 0, past: '0', said: '1 turn back' },
    { to: '-.0001', turns: -1, figure: '0.1999', marks: 199, past: '0.0009', said: '1 turn back' },
  ])('for $to: $said, then $figure', ({ to, turns, figure, marks, past, said }) => {
    const setting = millSetting(fifth, inches(to));
    expect([setting.turns, exactDecimalText(setting.figure, 'in')]).toEqual([turns, figure]);
    expect([setting.marks, exactDecimalText(setting.past, 'in')]).toEqual([marks, past]);
    expect(sayTurns(setting)).toBe(said);
  });
});

test('turns and figure make the coordinate again, in fractions; the figure is never below zero nor a turn or more', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -500_000, max: 500_000 }),
      fc.constantFrom(['.001', 200], ['.001', 125], ['.0005', 100], ['.00078740157', 250]),
      (tenths, [mark, marksPerTurn]) => {
        const to = new Fraction(tenths, 10_000);
        const { turns = 0, figure } = millSetting(
          { graduation: inches(mark), marksPerTurn },
          inches(`${tenths < 0 ? '-' : ''}${(Math.abs(tenths) / 10_000).toFixed(4)}`),
        );
        const turn = new Fraction(mark).mul(marksPerTurn);
        const shown = new Fraction(exactDecimalText(figure, 'in'));
        expect(turn.mul(turns).add(shown).sub(to).abs().valueOf()).toBeLessThan(1e-30);
        expect(shown.compare(0) >= 0 && shown.compare(turn) < 0).toBe(true);
      },
    ),
  );
});

test('without the marks of a turn the figure is the coordinate itself', () => {
  const setting = millSetting({ graduation: inches('.001') }, inches('-1.5'));
  expect([setting.turns, exactDecimalText(setting.figure, 'in')]).toEqual([undefined, '-1.5']);
});

test('a slide that stands further out goes past and comes up; one that stands nearer, or nowhere yet, just comes up', () => {
  expect(comesBack(inches('2'), inches('1'))).toBe(true);
  expect(comesBack(inches('1'), inches('2'))).toBe(false);
  expect(comesBack(undefined, inches('2'))).toBe(false);
});
