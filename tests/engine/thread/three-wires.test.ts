import { expect, test } from 'vitest';
import { decimalText, lengthOf } from '../../../src/engine/length/length.ts';
import { overThreeWires } from '../../../src/engine/thread/three-wires.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';

const halfThirteen = threadNamed('1/2-13 UNC');
if (!halfThirteen) throw new Error('1/2-13 is a thread');

test('1/2-13 over the best wires: W .04441, M .51662 with a pitch diameter of .4500 (standard 60° formula, WE33)', () => {
  const { wire, overWires } = overThreeWires(halfThirteen, lengthOf('.4500 in'));
  expect(decimalText(wire, 'in', 5)).toBe('0.04441');
  expect(decimalText(overWires, 'in', 5)).toBe('0.51662');
});

test('the basic pitch diameter stands in where none is measured: 1/2 − 0.649519 / 13 = .45004', () => {
  expect(decimalText(overThreeWires(halfThirteen).pitchDiameter, 'in', 5)).toBe('0.45004');
});
