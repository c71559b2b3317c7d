import { describe, expect, test } from 'vitest';
import { dialSetting, stepsIn, stepsToReach, type LatheDial } from '../../../src/engine/cut/dial.ts';
import { decimalText, lengthOf, type Length } from '../../../src/engine/length/length.ts';
import { onDial, type CutKind } from '../../../src/engine/length/metal-on.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length) => decimalText(length, 'in', 4);
// A cross slide with a 10 threads per inch screw: one turn is .100 in, 100 marks of .001 in.
const radius: LatheDial = { reads: 'radius', graduation: inch('.001'), marksPerTurn: 100 };
const diameter: LatheDial = { reads: 'diameter', graduation: inch('.001'), marksPerTurn: 200 };

function set(of: CutKind, dial: LatheDial, take: string) {
  const setting = dialSetting({ of, dial, take: inch(take) });
  if (!setting.ok) return setting.refusal.code;
  const { turns, figure, total, marks } = setting.value;
  return `${turns} turns + ${shown(figure)} (${marks} marks), ${shown(total)} in all`;
}

describe('the dial, zeroed where the size was last measured', () => {
  test('that reads radius goes in by half of what comes off a diameter', () => {
    expect(set('outside', radius, '.036')).toBe('0 turns + 0.0180 (18 marks), 0.0180 in all');
    expect(set('bore', radius, '.036')).toBe('0 turns + 0.0180 (18 marks), 0.0180 in all');
    expect(set('tap-drill', radius, '.036')).toBe('0 turns + 0.0180 (18 marks), 0.0180 in all');
  });

  test('that reads diameter goes in by all of it', () => {
    expect(set('outside', diameter, '.036')).toBe('0 turns + 0.0360 (36 marks), 0.0360 in all');
  });

  test('goes by all of it for lengths, depths and widths, whatever it reads', () => {
    for (const of of ['length', 'recess-depth', 'slot-depth', 'slot-width'] as const)
      expect(set(of, radius, '.036')).toBe('0 turns + 0.0360 (36 marks), 0.0360 in all');
  });

  test('goes round: .254 off the diameter is .127 on a dial of .100 a turn, one turn and .027', () => {
    expect(set('outside', radius, '.254')).toBe('1 turns + 0.0270 (27 marks), 0.1270 in all');
  });

  test('stands at zero again after a whole turn', () => {
    expect(set('outside', radius, '.200')).toBe('1 turns + 0.0000 (0 marks), 0.1000 in all');
    expect(set('outside', radius, '.198')).toBe('0 turns + 0.0990 (99 marks), 0.0990 in all');
  });

  test('of one mark a turn is all turns', () => {
    expect(set('outside', { ...radius, marksPerTurn: 1 }, '.006')).toBe(
      '3 turns + 0.0000 (0 marks), 0.0030 in all',
    );
  });

  test('never goes round where nobody knows how many marks it has', () => {
    const plain: LatheDial = { reads: 'radius', graduation: inch('.001') };
    expect(set('outside', plain, '.254')).toBe('0 turns + 0.1270 (127 marks), 0.1270 in all');
    expect(set('outside', { ...plain, marksPerTurn: 0 }, '.254')).toBe(
      '0 turns + 0.1270 (127 marks), 0.1270 in all',
    );
  });

  test('is not set between two marks: .003 off a diameter on a radius dial of .001', () => {
    const setting = dialSetting({ of: 'outside', dial: radius, take: inch('.003') });
    expect(setting).toEqual({
      ok: false,
      refusal: { code: 'between-marks', take: inch('.003'), step: inch('.002') },
    });
  });

  test.each([
    ['outside', 'in'],
    ['bore', 'out'],
    ['tap-drill', 'out'],
    ['length', 'to-chuck'],
    ['recess-depth', 'deeper'],
    ['slot-depth', 'deeper'],
    ['slot-width', 'wider'],
  ] as const)('takes %s off by going %s', (of, direction) => {
    const setting = dialSetting({ of, dial: radius, take: inch('.002') });
    expect(setting.ok && setting.value.direction).toBe(direction);
  });
});

test('a dial moves half of a take only where it reads radius and the size is a diameter', () => {
  expect(shown(onDial('outside', radius, inch('.036')))).toBe('0.0180');
  expect(shown(onDial('outside', diameter, inch('.036')))).toBe('0.0360');
  expect(shown(onDial('length', radius, inch('.036')))).toBe('0.0360');
});

test('whole steps in a length leave over what is over, and reach past it by less than one', () => {
  expect(stepsIn(inch('.0055'), inch('.002'))).toBe(2);
  expect(stepsToReach(inch('.0055'), inch('.002'))).toBe(3);
  expect(stepsIn(inch('.006'), inch('.002'))).toBe(3);
  expect(stepsToReach(inch('.006'), inch('.002'))).toBe(3);
  expect(stepsIn(lengthOf('-0.001 in'), inch('.002'))).toBe(-1);
  // 0.05 mm steps in .1254 in = 3.18516 mm: 63 make 3.15, 64 make 3.20.
  expect(stepsIn(inch('.1254'), lengthOf('0.05 mm'))).toBe(63);
});
